"""Entries as rows: a key where it is new, the entry, its facts, what it moves."""

from datetime import UTC, date, datetime

import pytest

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import (
    Entry,
    Facts,
    Filter,
    Level,
    Look,
    Material,
    Note,
    Opened,
    Person,
    Posting,
    Receipt,
    Rest,
)
from ledger.domain.entries.choices import Grade, LotType, Place
from ledger.store.form.columns import columns_of
from ledger.store.form.mapping import Cells, lot_codes, rows
from tests.domain.builders import draft, make, ml, when


def told(entry: Entry, *, is_new: bool = False, **ids: int) -> list[tuple[str, Cells]]:
    codes = {name.replace("_", "-"): number for name, number in ids.items()}
    return rows(entry, "body", b"leaf", codes, lambda _kind, _key: is_new)


def note() -> Entry:
    written = draft(make(Note), "E-1", corrects=7, reason="why")
    return Entry(seq=9, draft=written, recorded_at=when().at, stands_for=7)


def test_a_note_is_a_row_of_the_entry_and_one_of_its_own_table() -> None:
    (table, spine), own = told(note(), E_1=3)
    cells = dict(zip(columns_of(table), spine, strict=True))
    assert (table, cells["seq"], cells["kind"], cells["lot"]) == ("entry", 9, "note", 3)
    assert (cells["happened_at"], cells["corrects"], cells["stands_for"]) == (
        "2026-03-02T12:00:00Z",
        7,
        7,
    )
    assert (cells["reason"], cells["body"], cells["leaf"]) == ("why", "body", b"leaf")
    assert own == ("note", (9, "note", "smells of the peel"))


def test_a_delivery_opens_its_lot_and_moves_into_it() -> None:
    opened = Opened("O-1", LotType.RECEIVED, Measure.UL)
    entry = Entry(
        seq=9,
        draft=draft(Receipt("oil", ml(100)), "O-1", opens=opened),
        recorded_at=when().at,
        stands_for=9,
        postings=(Posting(None, "O-1", Place.SUPPLIER, 0, 100_000),),
    )
    assert lot_codes(entry) == set()
    found = dict(told(entry))
    assert [*found] == ["lot", "entry", "receipt", "posting"]
    assert found["lot"] == (9, "O-1", "received", "uL")
    assert found["posting"] == (9, 1, None, 9, "supplier", 0, 100_000)


def test_what_comes_from_no_lot_or_goes_into_none_has_no_number_there() -> None:
    moved = (Posting("S-1", None, Place.WASTE, 5, 0), Posting(None, "E-1", Place.SUPPLIER, 0, 5))
    entry = Entry(
        seq=9, draft=draft(make(Note), "E-1"), recorded_at=when().at, stands_for=9, postings=moved
    )
    cells = [cells for table, cells in told(entry, S_1=4, E_1=3) if table == "posting"]
    assert cells == [(9, 1, 4, None, "waste", 5, 0), (9, 2, None, 3, "supplier", 0, 5)]


def test_the_lots_of_an_entry_are_what_it_is_about_moves_and_measures() -> None:
    entry = Entry(
        seq=9,
        draft=draft(make(Note), "E-1"),
        recorded_at=when().at,
        stands_for=9,
        postings=(Posting("O-1", None, Place.WASTE, 5, 5), Posting(None, "W-1", None, 0, 5)),
        level=Level("S-1", 7),
    )
    assert lot_codes(entry) == {"E-1", "O-1", "W-1", "S-1"}


@pytest.mark.parametrize(
    ("facts", "kind", "key"),
    [
        (make(Person, initials="CD"), "person", "CD"),
        (make(Material, code="lime-oil"), "material", "lime-oil"),
    ],
)
def test_the_key_of_a_person_or_material_is_kept_with_the_first_entry_alone(
    facts: Facts, kind: str, key: str
) -> None:
    entry = Entry(seq=2, draft=draft(facts, None), recorded_at=when().at, stands_for=2)
    first, *others = rows(entry, "body", b"leaf", {}, lambda of, named: (of, named) == (kind, key))
    assert first == (f"{kind}_key", (key, 2))
    assert [table for table, _ in others] == ["entry", kind]
    assert told(entry) == others


def test_a_day_is_kept_as_it_is_written_and_a_truth_as_nought_or_one() -> None:
    """ISO 8601, a calendar date in full; where nothing is told there is nothing."""
    for day, cell in ((date(2027, 6, 3), "2027-06-03"), (None, None)):
        delivery = Receipt("oil", ml(100), best_before=day)
        entry = Entry(
            seq=9, draft=draft(delivery, None), recorded_at=when().at, stands_for=9, postings=()
        )
        kept = dict(told(entry))["receipt"]
        assert kept[columns_of("receipt").index("best_before")] == cell
    amount = ("amount", "amount_measure", "amount_written")
    assert [kept[columns_of("receipt").index(name)] for name in amount] == [100_000, "uL", "100 mL"]


def test_an_amount_that_is_not_told_is_none_in_all_of_its_cells_and_a_truth_a_number() -> None:
    cells = dict(told(filtered(precoat=None, volume_out=ml(430))))["filter"]
    row = dict(zip(columns_of("filter"), cells, strict=True))
    of = ("precoat", "precoat_measure", "precoat_written")
    assert [row[name] for name in of] == [None] * 3
    assert [row[name.replace("precoat", "volume_out")] for name in of] == [430_000, "uL", "430 mL"]
    for truth, cell in ((True, 1), (False, 0)):
        look = dict(told(entry_of(make(Look, ring=truth))))["look"]
        assert look[columns_of("look").index("ring")] == cell


def filtered(**cells: object) -> Entry:
    return entry_of(make(Filter, **cells))


def entry_of(facts: Facts) -> Entry:
    return Entry(seq=9, draft=draft(facts, None), recorded_at=when().at, stands_for=9)


def test_a_moment_is_kept_as_an_instant_and_a_choice_as_its_word_alone() -> None:
    rest = make(Rest, started_at=datetime(2026, 3, 2, 9, tzinfo=UTC), ended_at=None)
    cells = dict(told(entry_of(rest)))["rest"]
    row = dict(zip(columns_of("rest"), cells, strict=True))
    assert (row["started_at"], row["ended_at"]) == ("2026-03-02T09:00:00Z", None)
    look = dict(told(entry_of(make(Look, grade=Grade.HAZY))))["look"]
    (grade,) = (cell for cell in look if cell == "hazy")
    assert type(grade) is str
