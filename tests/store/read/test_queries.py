"""Single questions to the book: lots by code, entries by number, the latest of a kind."""

from dataclasses import astuple

from ledger.store.read import queries
from tests.store.read.numbers import Walked


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
