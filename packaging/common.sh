# SPDX-License-Identifier: GPL-3.0-or-later
# What the scripts of this folder share. Sourced, not run.
root=$(cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/.." && pwd)

say() { printf '%s\n' "$*"; }
fail() {
    printf '%s\n' "$*" >&2
    exit 1
}

# Compilers at once: one per processor, but not more than one per 1.2 GB of memory.
jobCount() {
    local processors memory
    processors=$(nproc)
    memory=$(awk '/^MemAvailable:/ {print int($2 / 1200000)}' /proc/meminfo)
    [[ $memory -lt 1 ]] && memory=1
    if [[ $memory -lt $processors ]]; then echo "$memory"; else echo "$processors"; fi
}

# build <preset> [cmake --build options]: configures and builds; says how far it is and how long it
# took. What the compiler complains of is shown.
build() {
    local preset=$1 began=$SECONDS log="$root/build/$1/configure.log"
    shift
    say "Building ($preset) ..."
    mkdir -p "$root/build/$preset"
    if ! (cd "$root" && cmake --preset "$preset" >"$log" 2>&1); then
        cat "$log"
        return 1
    fi
    cmake --build "$root/build/$preset" -j "$(jobCount)" "$@" 2>&1 | shorten || return 1
    say "Built ($preset) in $((SECONDS - began)) s."
}

# One line in forty of the builder's own progress, every line of anything else.
shorten() {
    awk '/^\[[0-9]+\/[0-9]+\] / { if (++n % 40 == 0) { print "  " $1; fflush() } next } { print; fflush() }'
}
