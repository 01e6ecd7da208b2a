"""The tables of faults and of crowds that stand in RESULTS.md, by one command.

``python -m tests.benchmarks.faults [RUNS [SECONDS]]``
"""

import sys

from tests.benchmarks.faults import crash, crowds, lost_answers

if __name__ == "__main__":
    runs, seconds = (*map(int, sys.argv[1:]), *(200, 10)[len(sys.argv) - 1 :])
    losses = crash.main(runs, seed=20260302) + lost_answers.main(runs)
    print()
    sys.exit(bool(losses + crowds.main(seconds)))
