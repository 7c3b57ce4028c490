#!/bin/sh
# Times a thousand sets of part values at two thousand frequencies in one run: this package,
# ngspice by alter and run, and numpy in batches where it is installed. Prints seconds and ratios.
set -eu
cd "$(dirname "$0")/../.."
ours=$(go test -run XXX -bench 'Sets$' -benchtime 5x . | awk '/^BenchmarkSets/ {print $3/1e9}')
echo "circuit.Levels      $ours s"
start=$(date +%s.%N)
ngspice -b testdata/speed/alter.cir >/dev/null 2>&1
theirs=$(echo "$start $(date +%s.%N)" | awk '{print $2-$1}')
echo "ngspice alter, run  $theirs s, ratio $(echo "$theirs $ours" | awk '{printf "%.0f", $1/$2}')"
if batch=$(python3 testdata/speed/batch.py 2>/dev/null); then
	echo "numpy in batches    $batch s, ratio $(echo "$batch $ours" | awk '{printf "%.0f", $1/$2}')"
else
	echo "numpy               not installed"
fi
