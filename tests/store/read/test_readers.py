"""What every reader of the store answers of a book with all kinds of entries is kept whole."""

from tests.keeper import Keeper
from tests.kept.fields import Told
from tests.kept.golden import check_golden
from tests.store.read.readers import asked


def test_all_that_readers_answer_is_kept_field_by_field(sqlite_walked: Keeper) -> None:
    """Renew with ``POTTLE_GOLDEN=write`` and read the difference."""
    keeper, told, lines = sqlite_walked, Told(), list[str]()
    for kind in ("look", "start", "move"):
        last = max(entry.seq for entry in keeper.entries() if entry.kind == kind)
        keeper.do("strike", entry=str(last), because="not so")
    with keeper.reading() as connection:
        for name, answer in asked(connection):
            lines += [name, *(f"  {line}" for line in told.lines(name, "", answer))]
    check_golden("readers.txt", "".join(f"{line}\n" for line in lines))
