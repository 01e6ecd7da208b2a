"""What every way of storing the book must do, run once for each of them."""

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace

import pytest
from sqlalchemy import text as sql

from ledger.domain.entries import Draft, Note, When
from ledger.errors import InputError, RefusedError, StorageError
from ledger.service.desk.book import Book
from ledger.store.engine.connections import check_book
from ledger.store.write import recorder
from tests.keeper import Keeper, row_counts
from tests.path import walk_main_path
from tests.store.contract.changes import ChangesContract
from tests.store.contract.control import ControlContract
from tests.store.contract.guards import GuardsContract
from tests.store.contract.reach import ReachContract
from tests.store.contract.rows import RowsContract


def note_draft(keeper: Keeper, by: str | None = "AB") -> Draft:
    return Draft(Note("Some words."), None, When(keeper.clock(), 0), by)


def append(keeper: Keeper, draft: Draft) -> None:
    """Append a draft past the rules."""
    with keeper.book.writing() as connection:
        recorder.append(connection, draft, ((), None), keeper.clock())


def append_and_break_off(keeper: Keeper) -> None:
    with keeper.book.writing() as connection:
        recorder.append(connection, note_draft(keeper), ((), None), keeper.clock())
        raise KeyboardInterrupt


class BookContract(RowsContract, GuardsContract, ChangesContract, ReachContract, ControlContract):
    """Its tests need two fixtures: `keeper`, a book set up, and `walked`, with every table filled.

    A subclass of it also says how its storage tells of a breach of a foreign key.
    """

    unknown_person: str
    """What the storage says of an entry by somebody who is not in the book."""

    def test_a_new_book_is_of_this_version(self, keeper: Keeper) -> None:
        check_book(keeper.book.engine, keeper.book.where)

    def test_the_main_path_is_recorded_to_its_end(self, keeper: Keeper) -> None:
        lots = walk_main_path(keeper)
        told = {code: (keeper.on_hand(code), keeper.held(code)) for code in keeper.lot_codes()}
        amounts = {
            lots.oil: 500_000 - 30_769,  # 26 g at 0.845 g/mL
            lots.spirit: 5_000_000 - 420_000 - 20_000,
            lots.carb: 485_000,
            lots.sugar: 22_600_000,
            lots.water: 97_600_000,
            lots.bottles: 85_000_000,
            lots.essence: 448_000 - 30_000,
            lots.syrup: 50_000,
            lots.packed: 9_000_000,
        }
        assert told == {code: (amount, amount) for code, amount in amounts.items()}

    def test_views_for_people_tell_amounts_in_their_units_and_times_on_their_clock(
        self, keeper: Keeper
    ) -> None:
        keeper.do("receive", material="orange-oil", amount="500mL", cost="48.00")
        keeper.do("note", text="In the small hours.", at="2026-03-01 00:30")
        with keeper.reading() as connection:
            oil = connection.execute(sql("SELECT on_hand_ml, what FROM v_stock")).one()
            price = connection.execute(sql("SELECT amount, currency, per_ml FROM v_money")).one()
            last = "SELECT happened, known FROM v_entries ORDER BY entry DESC LIMIT 1"
            when = connection.execute(sql(last)).one()
        assert (float(oil.on_hand_ml), oil.what) == (500.0, "orange-oil")
        assert (float(price.amount), price.currency, float(price.per_ml)) == (48.0, "EUR", 0.096)
        assert tuple(when) == ("2026-03-01 00:30", "exact")

    def test_entries_are_numbered_from_1_without_gaps(self, keeper: Keeper) -> None:
        before = len(keeper.bodies())
        for text in ("One.", "Two.", "Three."):
            keeper.do("note", text=text)
        with pytest.raises(RefusedError):
            keeper.do("note", text="Refused.", lot="NONE-1")
        last = keeper.do("note", text="Four.")
        assert last.seq == before + 4
        assert [seq for seq, _ in keeper.bodies()] == list(range(1, before + 5))

    def test_writers_at_once_take_turns(self, keeper: Keeper) -> None:
        before = len(keeper.bodies())

        def write(number: int) -> int:
            with Book(keeper.book.where, keeper.clock) as book:
                return keeper_of(book, keeper).do("note", text=f"Note {number}.").seq

        with ThreadPoolExecutor(4) as writers:
            numbers = list(writers.map(write, range(12)))
        assert sorted(numbers) == list(range(before + 1, before + 13))
        assert [seq for seq, _ in keeper.bodies()] == list(range(1, before + 13))

    def test_a_refused_verb_leaves_nothing(self, walked: Keeper) -> None:
        before = row_counts(walked.book)
        lot = walked.lot_codes()[0]
        with pytest.raises(RefusedError):
            walked.do("finish", lot=lot, volume="1L")
        assert row_counts(walked.book) == before

    def test_a_verb_broken_off_leaves_nothing(self, walked: Keeper) -> None:
        before = row_counts(walked.book)
        with pytest.raises(KeyboardInterrupt):
            append_and_break_off(walked)
        assert row_counts(walked.book) == before

    def test_an_entry_by_nobody_known_is_refused_by_the_storage_too(self, walked: Keeper) -> None:
        """The rules refuse it first; this is what holds when they are passed by."""
        before = row_counts(walked.book)
        with pytest.raises(StorageError) as raised:
            append(walked, note_draft(walked, by="ZZ"))
        assert raised.value.problems == (
            (
                f"The book refused what was to be stored: {self.unknown_person}.",
                "Nothing was recorded. Run pottle verify to see whether the book is sound.",
            ),
        )
        assert row_counts(walked.book) == before

    def test_words_that_are_no_text_are_told(self, keeper: Keeper) -> None:
        """A shell hands on bytes that are not UTF-8, and Python makes half characters of them."""
        before = keeper.bodies()
        for verb, words in (
            ("receive", {"material": "spirit\udcff", "amount": "1L"}),
            ("start", {"formula": "orange\udcff", "target": "1L"}),
        ):
            with pytest.raises(InputError) as raised:
                keeper.do(verb, **words)
            assert raised.value.problems == (
                ("What was typed holds bytes that are no text in UTF-8.", "Type it again by hand."),
            )
        assert keeper.bodies() == before

    def test_an_unknown_lot_is_told_with_its_nearest(self, keeper: Keeper) -> None:
        keeper.do("receive", material="spirit", amount="5L")
        with pytest.raises(RefusedError) as raised:
            keeper.do("note", text="Where is it?", lot="NS-002-H")
        assert raised.value.problems == (
            (
                "There is no lot NS-002-H in the book. Near to it: NS-001-J.",
                "pottle stock lists the lots that are.",
            ),
        )


def keeper_of(book: Book, keeper: Keeper) -> Keeper:
    """Return another keeper of the same book, with a connection and a clock of its own."""
    return Keeper(book, replace(keeper.clock))
