"""The books that benchmarks are run on are books like any other."""

from itertools import islice
from pathlib import Path

from sqlalchemy import text

from ledger.service.evidence.verify import verify
from tests.benchmarks.books import book_of, entries_of

LOTS = 400


def test_a_made_book_is_sound_and_has_the_shape_of_the_trade(tmp_path: Path) -> None:
    with book_of(LOTS, str(tmp_path / "book.db")) as book, book.reading() as connection:
        assert verify(book).faults == ()
        count = connection.execute(text("SELECT COUNT(*) FROM lot")).scalar_one()
        into = connection.execute(
            text("SELECT COUNT(*) FROM posting WHERE source IS NOT NULL AND target IS NOT NULL")
        ).scalar_one()
        added_as = connection.execute(text('SELECT DISTINCT added_as FROM "add"')).scalars().all()
        types = connection.execute(text("SELECT DISTINCT lot_type FROM lot")).scalars().all()
        least = connection.execute(text("SELECT MIN(amount) FROM on_hand")).scalar_one()
        corrected = connection.execute(text("SELECT COUNT(corrects) FROM entry")).scalar_one()
    assert count == LOTS
    assert 3.5 < into / count < 4.1
    assert set(added_as) == {"ingredient", "rework", "rinse-liquor", "top-up"}
    assert set(types) == {"received", "made", "rinse", "packed"}
    assert least >= 0
    assert corrected > 0


def test_the_same_number_of_lots_gives_the_same_entries() -> None:
    assert list(entries_of(60)) == list(entries_of(60))


def test_a_longer_book_begins_like_a_shorter_one() -> None:
    assert list(islice(entries_of(300), 100)) == list(islice(entries_of(60), 100))
