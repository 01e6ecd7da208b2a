"""Hold many random books to the second model: ``python -m tests.model [BOOKS] [--from SEED]``."""

import argparse
import sys
import tempfile
from pathlib import Path

from ledger.service.desk.book import open_book
from tests.conftest import new_keeper
from tests.keeper import MORNING, Keeper, SetClock, copy_book
from tests.model.agree import disagreements
from tests.model.books import played
from tests.model.compare import differences


def main() -> None:
    """Keep so many books and print every difference with what was done in that book."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("books", nargs="?", type=int, default=1000)
    parser.add_argument("--from", dest="first", type=int, default=0)
    told = parser.parse_args()
    wrong = 0
    with tempfile.TemporaryDirectory() as folder:
        template = Path(folder) / "template.db"
        new_keeper(str(template)).book.engine.dispose()
        for seed in range(told.first, told.first + told.books):
            found = _differences(template, Path(folder) / f"{seed}.db", seed)
            wrong += bool(found)
            print("\n".join([f"book {seed}: {len(found)} differences", *found]), flush=True)
    print(f"{told.books} books, {wrong} with differences")
    sys.exit(wrong > 0)


def _differences(template: Path, where: Path, seed: int) -> list[str]:
    clock = SetClock(MORNING)
    keeper = Keeper(open_book(str(copy_book(template, where)), clock), clock)
    book = played(keeper, seed)
    found = [*differences(book), *disagreements(keeper.book)]
    keeper.book.engine.dispose()
    where.unlink()
    return [*found, *book.told] if found else []


if __name__ == "__main__":
    main()
