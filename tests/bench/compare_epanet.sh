#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Our boom of 144 nozzles beside EPANET's, in one run. Needs node and npm, and a built bw_bench:
#   tests/bench/compare_epanet.sh build/core-only/tests/bw_bench
set -euo pipefail
here=$(cd "$(dirname "$(readlink -f "$0")")" && pwd)
bench=$(readlink -f "${1:?the built bw_bench}")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cp "$here/epanet_bench.mjs" "$work/"
cd "$work"
npm install --silent --no-save epanet-js@0.9.0 >/dev/null
read -r whole solving version < <(node epanet_bench.mjs)
ours=$("$bench" --benchmark_filter=BoomOf144Nozzles --benchmark_format=csv 2>/dev/null |
    awk -F, '/BoomOf144Nozzles/ {printf "%.0f", $4}')
awk -v o="$ours" -v w="$whole" -v s="$solving" -v v="$version" 'BEGIN {
    printf "ours %.1f us; EPANET %s: solving %.1f us (%.1f times ours), with reading the network %.1f us (%.1f times)\n",
        o / 1000, v, s / 1000, s / o, w / 1000, w / o }'
