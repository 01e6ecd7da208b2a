"""Put small faults into the source, one at a time, and see whether a test notices.

``python -m tests.mutants [N] [SEED] [PATH]`` tries N mutants (100 if not said), drawn by SEED (the
day, as 20260311, if not said) from the whole source or a file or folder of it, on two cores at
most. It tells the mutants that no test noticed, with their change, and scores by area and by kind.
With N = 0 it only makes the map of lines and tests. It needs the extra `mutants`.
"""

import argparse
import sys
import time
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack
from datetime import UTC, datetime
from importlib.util import find_spec
from queue import SimpleQueue

from tests.mutants.equivalents import LISTED, listed, reason_of
from tests.mutants.mapping import Map, running
from tests.mutants.noting import WORKERS, BrokenError, map_of
from tests.mutants.report import report
from tests.mutants.running import Outcome, Worker
from tests.mutants.sampling import Mutant, drawn, texts
from tests.mutants.tree import ROOT, copy_to, mutable, project_files, workspace


def tried(mutants: Sequence[Mutant], files: list[str], known: Map) -> list[Outcome]:
    """Try mutants, two at a time, each worker in a copy of its own."""
    equivalents = listed(LISTED.read_text(encoding="utf-8"))
    trusted: set[str] = set()
    free: SimpleQueue[Worker] = SimpleQueue()
    with ExitStack() as stack:
        for _ in range(WORKERS):
            space = stack.enter_context(workspace())
            free.put(Worker(copy_to(space / "copy", files), space, known, trusted))

        def one(mutant: Mutant, tests: list[str]) -> Outcome:
            if reason_of(mutant, equivalents):
                return Outcome(mutant, "equivalent")
            began, worker = time.monotonic(), free.get()
            try:
                end, by = worker.tried(mutant, tests)
            finally:
                free.put(worker)
            outcome = Outcome(mutant, end, by, len(tests), time.monotonic() - began)
            print(_progress(outcome), file=sys.stderr, flush=True)
            return outcome

        chosen = [running(one.place, one.file, one.before, known) for one in mutants]
        with ThreadPoolExecutor(WORKERS) as pool:
            return list(pool.map(one, mutants, chosen))


def _progress(one: Outcome) -> str:
    what = f"{one.mutant.file}:{one.mutant.line}  {one.by or one.mutant.change}"
    return f"{one.end:<9}{one.seconds:>6.1f} s {one.tests:>5} tests  {what}"


def main(count: int, seed: int, under: str) -> int:
    """Try mutants and print the report; return the exit code, which tells of a broken harness."""
    files = project_files()
    mutants, places = drawn(texts(mutable(files, under), ROOT), count, seed)
    outcomes = tried(mutants, files, map_of(files))
    print(report(outcomes, places, seed))
    return 2 if any(one.end == "broken" for one in outcomes) else 0


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.mutants", description=__doc__)
    parser.add_argument("count", metavar="N", nargs="?", type=int, default=100)
    today = int(f"{datetime.now(UTC):%Y%m%d}")
    parser.add_argument("seed", metavar="SEED", nargs="?", type=int, default=today)
    parser.add_argument("under", metavar="PATH", nargs="?", default="")
    asked = parser.parse_args()
    if find_spec("coverage") is None:
        parser.error("Coverage is not installed: pip install -e '.[test,mutants]'.")
    if not mutable(project_files(), asked.under):
        parser.error(f"There is no source in {asked.under}.")
    return asked


if __name__ == "__main__":
    asked = _asked()
    try:
        sys.exit(main(asked.count, asked.seed, asked.under))
    except BrokenError as error:
        sys.exit(str(error))
