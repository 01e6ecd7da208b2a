"""Put small faults into the source, one at a time, and see whether a test notices.

``python -m tests.mutants [N] [SEED] [PATH]`` tries N mutants (100 if not said), drawn by SEED (the
day, as 20260311, if not said) from the whole source or a file or folder of it. It tells the mutants
that no test noticed, with their change, and scores by area and by kind. The map of lines and tests
is made as far as it is needed: first of the tests nearest to the modules, then, for mutants that
these and all others that are known do not notice, of what was changed since. `--near` runs the
nearest tests alone, `--most SECONDS` so many seconds of tests a mutant: quicker, and what is told
is then what the score is at least. `--map` only makes the map of all tests.
It needs the extra `mutants`.
"""

import argparse
import sys
from datetime import UTC, datetime
from importlib.util import find_spec
from math import inf

from tests.mutants.making.sampling import drawn, texts
from tests.mutants.making.tree import ROOT, mutable, project_files
from tests.mutants.telling.equivalents import LISTED, listed
from tests.mutants.telling.report import report
from tests.mutants.trying.kept import Kept
from tests.mutants.trying.near import files_of_tests, hash_text, keys, nearest
from tests.mutants.trying.noting import KEPT, BrokenError, renew
from tests.mutants.trying.trier import Trier

NOTED = 2
"""How many times longer than those a mutant is tried by the tests may take that are noted anew."""


def main(asked: argparse.Namespace) -> int:
    """Try mutants and print the report; return the exit code, which tells of a broken harness."""
    files = project_files()
    modules = dict(texts((name for name in files if name.endswith(".py")), ROOT))
    tests = files_of_tests(modules)
    source = {name: hash_text(modules[name]) for name in mutable(files)}
    kept = Kept(KEPT, keys(tests), source)
    if asked.map:
        renew(kept, tests, files, asked.cores)
        return 0
    mutants, places = drawn(texts(mutable(files, asked.under), ROOT), asked.count, asked.seed)
    near = {file: nearest(file, tests) for file in {one.file for one in mutants}}
    known = kept.known()
    first = (name for file, own in near.items() for name in own - known | own & kept.stale(file))
    renew(kept, set(first), files, asked.cores)
    equivalent = listed(LISTED.read_text(encoding="utf-8"))
    with Trier(files, asked.cores, near, equivalent, asked.most) as trier:
        outcomes = trier.tried(mutants, kept.map(), is_near=asked.near)
        if not asked.near:
            left = [one.mutant for one in outcomes if one.end in ("survived", "unrun")]
            lacking = set().union(*(kept.lacking(one.file) for one in left))
            renew(kept, kept.quickest(lacking, NOTED * asked.most), files, asked.cores)
            outcomes = trier.tried_again(outcomes, kept.map())
    print(report(outcomes, places, asked.seed, _by(asked)))
    return 2 if any(one.end == "broken" for one in outcomes) else 0


def _by(asked: argparse.Namespace) -> str:
    """Return by which tests mutants were tried, where not by all."""
    if asked.near:
        return "the nearest tests alone"
    return f"{asked.most:.0f} s of tests a mutant" if asked.most < inf else ""


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.mutants", description=__doc__)
    parser.add_argument("count", metavar="N", nargs="?", type=int, default=100)
    today = int(f"{datetime.now(UTC):%Y%m%d}")
    parser.add_argument("seed", metavar="SEED", nargs="?", type=int, default=today)
    parser.add_argument("under", metavar="PATH", nargs="?", default="")
    parser.add_argument("--near", action="store_true", help="run the nearest tests alone")
    parser.add_argument("--most", metavar="SECONDS", type=float, default=inf)
    parser.add_argument("--map", action="store_true", help="only make the map of all tests")
    parser.add_argument("--cores", metavar="N", type=int, default=2, help="processes at once (2)")
    asked = parser.parse_args()
    if find_spec("coverage") is None:
        parser.error("Coverage is not installed: pip install -e '.[test,mutants]'.")
    if not mutable(project_files(), asked.under):
        parser.error(f"There is no source in {asked.under}.")
    return asked


if __name__ == "__main__":
    try:
        sys.exit(main(_asked()))
    except BrokenError as error:
        sys.exit(str(error))
