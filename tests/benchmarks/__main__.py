"""All benchmarks, one after the other, and their ratios as a table: ``python -m tests.benchmarks``.

The trace at a million lots takes long to make its book; ask for it by itself.
"""

import subprocess
import sys

RUNS = (
    ("bench_startup",),
    ("bench_append",),
    ("bench_workbook",),
    ("bench_session",),
    ("bench_bulk",),
    ("bench_writers",),
    ("bench_writers", "--server"),
    ("bench_server",),
    ("bench_trace", "10000", "100000"),
    ("bench_contents", "10000"),
    ("bench_verify",),
    ("bench_big",),
    ("bench_papers",),
)


def main() -> None:
    """Run each in a process of its own, so that none warms another up."""
    for name, *words in RUNS:
        print(f"== {' '.join([name, *words])}", flush=True)
        subprocess.run([sys.executable, "-m", f"tests.benchmarks.{name}", *words], check=True)


if __name__ == "__main__":
    main()
