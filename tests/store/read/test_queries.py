"""Single questions to the book: lots by code, entries by number, the latest of a kind."""

from dataclasses import astuple

import pytest

from ledger.domain.entries import Formula
from ledger.domain.entries.plain import read_entry
from ledger.store.read import queries
from tests.domain.builders import make
from tests.keeper import MORNING
from tests.store.read.numbers import Walked, number


def test_a_lot_is_found_by_its_code_or_the_end_of_it(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        assert queries.lot_by_code(connection, "NONE-1") is None
        assert queries.codes_ending_in(connection, "002-M") == [lots.syrup]
        assert list(queries.all_codes(connection)) == list(astuple(lots))
        last = queries.last_about_a_lot(connection, "AB")
        assert last is not None
        assert last.draft.lot == lots.essence
        assert queries.last_about_a_lot(connection, "ZZ") is None


def test_a_correction_is_known_from_both_ends(walked: Walked) -> None:
    keeper, _ = walked
    with keeper.reading() as connection:
        chain = queries.chain(connection, 16)
        assert [(entry.seq, by) for entry, by in chain] == [(16, 36), (36, None)]
        assert queries.corrected_by(connection, 16) == 36
        assert queries.corrected_by(connection, 36) is None
        assert queries.entry(connection, 999) is None


def test_the_latest_that_was_said_of_the_house_and_a_material_counts(walked: Walked) -> None:
    keeper, _ = walked
    keeper.do("material", code="spirit", density="0.807", change=True)
    with keeper.reading() as connection:
        spirit, house = queries.material(connection, "spirit"), queries.house(connection)
        assert queries.people(connection) == {"AB"}
    assert spirit is not None
    assert (spirit.abv_mpct, spirit.density_mg_per_l) == (96_000, 807_000)
    assert house is not None
    assert house.name == "Quayside Essences"


def test_what_speaks_of_a_lot_is_counted_without_what_opened_it_and_what_was_struck(
    walked: Walked,
) -> None:
    keeper, lots = walked

    def counted() -> int:
        with keeper.reading() as connection:
            lot = queries.lot_by_code(connection, lots.spirit)
            assert lot is not None
            return queries.entries_about(connection, lot.seq)

    before = counted()
    assert before > 1
    note = keeper.do("note", lot=lots.spirit, text="Quiet.").seq
    keeper.do("add", lot=lots.essence, source=lots.spirit, amount="1 mL", because="to see")
    assert counted() == before + 2
    keeper.do("strike", entry=str(note), because="the wrong lot")
    assert counted() == before + 1


def test_signs_that_stand_for_others_in_a_pattern_stand_for_themselves(walked: Walked) -> None:
    """SQLite and PostgreSQL, LIKE: a per cent sign, a low line and what escapes them."""
    keeper, lots = walked
    with keeper.reading() as connection:
        for ending in ("%", "_", "\\", "%-M", "002_M"):
            assert queries.codes_ending_in(connection, ending) == []
        assert lots.syrup in queries.codes_ending_in(connection, "M")


def test_a_journal_is_of_all_or_of_a_lot_with_what_corrects_each_and_what_cannot_be_read(
    walked: Walked, monkeypatch: pytest.MonkeyPatch
) -> None:
    keeper, lots = walked

    def kinds(last: int, lot: int | None = None) -> list[tuple[int, str, int | None]]:
        with keeper.reading() as connection:
            told = queries.journal(connection, last, lot)
        return [(seq, entry.kind if entry else "", by) for seq, entry, by in told]

    with keeper.reading() as connection:
        essence = number(connection, lots.essence)
    assert len(kinds(0)) == 36
    assert kinds(2) == [(35, "complaint", None), (36, "add", None)]
    assert kinds(0, essence)[:2] == [(15, "start", None), (16, "add", 36)]
    assert {seq for seq, _, _ in kinds(0, essence)} == {*range(15, 26), 36}
    monkeypatch.setattr(queries, "told", lambda *_: read_entry("{}"))
    assert kinds(1) == [(36, "", None)]


def test_what_the_book_says_of_its_masters_is_told_in_order(walked: Walked) -> None:
    keeper, _ = walked
    keeper.do("person", initials="AA", name="Ada Ash")
    for name in ("Quay Bar", "Inn"):
        keeper.do("party", name=name)
    for version, code in ((1, "tonic"), (2, "tonic"), (1, "cordial")):
        keeper.record(make(Formula, code=code, version=version, product=code))
    with keeper.reading() as connection:
        assert queries.material_codes(connection) == [
            *("b250", "carb", "orange-oil", "spirit", "sugar", "water")
        ]
        assert [one.name for one in queries.persons(connection)] == ["Ada Ash", "Anna Bell"]
        assert [one.name for one in queries.parties(connection)] == ["Inn", "Quay Bar"]
        every = [(one.code, one.version) for one in queries.formulas(connection)]
        assert every == [("cordial", 1), ("tonic", 1), ("tonic", 2)]
        assert [one.version for one in queries.formulas(connection, "tonic")] == [1, 2]
        assert (queries.limits(connection), queries.withdrawn(connection)) == ((), frozenset())


def test_the_entries_about_a_lot_are_told_as_they_happened(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        essence, oil = number(connection, lots.essence), number(connection, lots.oil)
        in_force = [entry.seq for entry in queries.entries_of_lot(connection, essence)]
        every = [(entry.seq, by) for entry, by in queries.all_entries_of_lot(connection, essence)]
        without = [entry.seq for entry in queries.entries_of_lot(connection, essence, skip=16)]
        drawn = [entry.seq for entry in queries.draws_on(connection, oil, keeper.clock())]
        assert queries.draws_on(connection, oil, MORNING) == ()
    assert in_force == [15, 36, *range(17, 26)]
    assert every == [(15, None), (16, 36), (36, None), *((seq, None) for seq in range(17, 26))]
    assert without == [15, *range(17, 26)]
    assert drawn == [36]
