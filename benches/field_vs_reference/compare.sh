#!/usr/bin/env bash
# Our half joint against the opponent's, in one go on one machine.
#
#   PYTHON=/path/to/venv/bin/python OURS='command of our bench' ./compare.sh [ROUNDS]
#
# The two take turns, ROUNDS times (five unless said), so that a busy spell meets
# both. Each prints the CPU milliseconds of one thread for the same work: case
# A4-15 from its outline to its peaks at 1 %, nothing kept from an earlier run.
# Prints the median of each and their ratio, and the load of the machine.
# Ends with 2 when no bench of ours is named, 1 when one of the two fails.
set -u
cd "$(dirname "$0")" || exit 1

# Our bench: a command whose last line is a JSON object with "total_ms" (median
# CPU milliseconds) and "worst" (largest relative error of the six peaks).
ours=${OURS:-}

python=${PYTHON:-python3}
n_rounds=${1:-5}
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT

for ((round = 1; round <= n_rounds; round++)); do
    if ! "$python" ngsolve_peaks.py --runs 15 --json "$work/opponent.$round" >"$work/table"; then
        echo "the opponent did not run; see README.md for what it needs" >&2
        exit 1
    fi
    if [ -n "$ours" ]; then
        if ! (cd ../.. && bash -c "$ours") >"$work/output"; then
            echo "our bench failed: $ours" >&2
            exit 1
        fi
        tail -n 1 "$work/output" >"$work/ours.$round"
    fi
done
cat "$work/table"

"$python" - "$work" <<'PYTHON'
import json, os, pathlib, statistics, sys

work = pathlib.Path(sys.argv[1])
medians = {}
for name in ("opponent", "ours"):
    rows = [json.loads(path.read_text()) for path in sorted(work.glob(f"{name}.*"))]
    if rows:
        medians[name] = statistics.median(row["total_ms"] for row in rows)
        worst = max(abs(row["worst"]) for row in rows)
        print(f"{name}: median {medians[name]:.2f} ms CPU, worst peak {worst:.2%}, {len(rows)} rounds")
        if not worst <= 0.01:
            sys.exit(f"{name} missed 1 %: its time does not count")
print(f"load {os.getloadavg()[0]:.1f}")
if "ours" not in medians:
    print("no bench of ours was named: set OURS", file=sys.stderr)
    sys.exit(2)
print(f"opponent / ours = {medians['opponent'] / medians['ours']:.2f}")
PYTHON
