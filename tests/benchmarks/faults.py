"""The tables of faults and of crowds that stand in RESULTS.md, by one command.

``python -m tests.benchmarks.faults [RUNS [SECONDS]]``
"""

import sys

from tests.benchmarks import crash, crowds

if __name__ == "__main__":
    runs, seconds = (*map(int, sys.argv[1:]), *(200, 10)[len(sys.argv) - 1 :])
    losses = crash.main(runs, seed=20260302)
    print()
    sys.exit(bool(losses + crowds.main(seconds)))
