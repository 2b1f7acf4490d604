#!/bin/sh
# Writes conversions.toml from cases.txt with GNU units (package "units"):
#   sh make.sh > conversions.toml
# Sones and A-weighted decibels have no conversion and are not among the cases.
set -eu
cd "$(dirname "$0")"

trim() { printf '%s' "$1" | sed 's/^ *//; s/ *$//'; }

echo "# Conversions to SI as $(units --version | head -n 1) gives them."
echo "# Written by make.sh from cases.txt; do not edit."
grep -v '^#' cases.txt | while IFS='|' read -r text kind expression unit; do
	si=$(units --terse --output-format '%.17g' -- "$(trim "$expression")" "$(trim "$unit")")
	printf "\n[[conversion]]\ntext = '''%s'''\nkind = \"%s\"\nsi = %s\n" "$(trim "$text")" "$(trim "$kind")" "$si"
done
