#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Asks GNU `units` for the size of every unit that the program knows and writes unit_conversions.csv
# beside this script. Needs the Debian package `units`. Run it again when a unit is added.
set -euo pipefail
here=$(dirname "$(readlink -f "$0")")
tool="GNU units $(units --version | sed -n '1s/[^0-9]*\([0-9.]*\).*/\1/p')"
data=$(units --version | sed -n "s/.*data file is '\(.*\)'.*/\1/p")
source="$tool, definitions file $(sed -n 's/^#.*\(Version [0-9.]*\)$/\1/p' "$data" | head -n 1 | tr 'V' 'v')"

# symbol | the same unit as GNU units writes it | the SI unit that the core keeps
table='
|1|1
%|percent|1
m|m|m
cm|cm|m
mm|mm|m
µm|micrometer|m
in|inch|m
ft|foot|m
m²|m^2|m^2
ha|hectare|m^2
ac|intacre|m^2
s|s|s
min|minute|s
h|hour|s
m/s|m/s|m/s
km/h|km/hour|m/s
mph|mile/hour|m/s
Pa|Pa|Pa
kPa|kPa|Pa
bar|bar|Pa
psi|lbf/in^2|Pa
m³|m^3|m^3
L|liter|m^3
mL|milliliter|m^3
US gal|usgallon|m^3
fl oz|usfloz|m^3
imp gal|brgallon|m^3
m³/s|m^3/s|m^3/s
L/min|liter/minute|m^3/s
gal/min|usgallon/minute|m^3/s
imp gal/min|brgallon/minute|m^3/s
mL/min|milliliter/minute|m^3/s
fl oz/min|usfloz/minute|m^3/s
L/ha|liter/hectare|m
gal/ac|usgallon/intacre|m
imp gal/ac|brgallon/intacre|m
kg|kg|kg
t|tonne|kg
lb|lb|kg
kg/L|kg/liter|kg/m^3
kg/m³|kg/m^3|kg/m^3
lb/gal|lb/usgallon|kg/m^3
kg/ha|kg/hectare|kg/m^2
lb/ac|lb/intacre|kg/m^2
mm²/s|mm^2/s|m^2/s
'

{
    echo "symbol,gnu_expression,si,in_si,source"
    while IFS='|' read -r symbol expression si; do
        [[ -n $expression ]] || continue
        value=$(units -o '%.17g' --terse "$expression" "$si")
        printf '%s,%s,%s,%s,"%s"\n' "$symbol" "$expression" "$si" "$value" "$source"
    done <<<"$table"
} >"$here/unit_conversions.csv"
