#!/bin/sh
# Times a thousand sets of part values at two thousand frequencies in one run, for a coil with
# controls and for one with a transformer: this package; ngspice by alter and run in one process, curves
# thrown away; ngspice on one netlist of a thousand copies; numpy solving all matrices of a set
# in one call; and numpy evaluating the chain's formula worked out by hand. Prints seconds and how many
# times as long as this package each takes. Needs Go, ngspice, python3 and numpy; PYTHON names another
# interpreter. A missing tool is a failure.
set -eu
cd "$(dirname "$0")/../.."
python=${PYTHON:-}
for p in $python python3 /usr/bin/python3; do
	if "$p" -c 'import numpy' 2>/dev/null; then python=$p && break; fi
done
"$python" -c 'import numpy' || { echo "no python3 with numpy" >&2; exit 1; }
scratch=$(mktemp -d)
trap 'rm -r "$scratch"' EXIT

seconds() { # of a command
	start=$(date +%s.%N)
	"$@" >"$scratch/out" 2>&1
	echo "$start $(date +%s.%N)" | awk '{printf "%.3f", $2-$1}'
}
row() { awk -v name="$1" -v s="$2" -v o="$ours" 'BEGIN {printf "  %-28s %8.3f s  %6.1f\n", name, s, s/o}'; }

go test -c -o "$scratch/circuit.test" .
for chain in controls step_up; do
	ours=$("$scratch/circuit.test" -test.run XXX -test.bench "Sets/$chain\$" -test.benchtime 10x | awk '/^BenchmarkSets/ {print $3/1e9}')
	"$python" testdata/speed/copies.py "$chain" >"$scratch/copies.cir"
	set -- $("$python" testdata/speed/batch.py "$chain")
	echo "$chain"
	row "circuit.Levels" "$ours"
	row "ngspice, alter and run" "$(seconds ngspice -b testdata/speed/$chain.cir)"
	row "ngspice, a thousand copies" "$(seconds ngspice -b "$scratch/copies.cir")"
	row "numpy, matrices in batches" "$1"
	row "numpy, formula by hand" "$2"
done
