"""What stands on an entry that was corrected: it is told when it fits no longer."""

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Add, Count, Entry, Finish, Level, Opened, Posting, Receipt
from ledger.domain.entries.choices import LotType, Place
from ledger.domain.rules.recheck import History, broken, touched
from tests.domain.builders import at, entry, make, ml

OIL = Opened("O-1", LotType.RECEIVED, Measure.UL)


def came(amount_ml: int, hour: int = 8) -> Entry:
    told = entry(Receipt("oil", ml(amount_ml)), 1, at(hour), lot="O-1", opens=OIL)
    return replace(told, postings=(Posting(None, "O-1", Place.SUPPLIER, 0, amount_ml * 1000),))


def drawn(amount_ml: float, seq: int = 2) -> Entry:
    told = entry(make(Add, source="O-1"), seq, at(9 if seq == 2 else 11), lot="E-1")
    amount = round(amount_ml * 1000)
    return replace(told, postings=(Posting("O-1", "E-1", None, amount, amount),))


def elsewhere(amount_ml: int, hour: int) -> Entry:
    """Return a finish of another lot, which says what that one holds."""
    told = entry(make(Finish), 5, at(hour, 30), lot="E-1")
    return replace(told, level=Level("E-1", amount_ml * 1000))


def history(*entries: Entry) -> dict[str, History]:
    return {"O-1": History(OIL, 1, sorted(entries, key=lambda item: item.position))}


def test_an_entry_touches_its_lot_and_the_lots_it_moves_between_each_once() -> None:
    assert touched(drawn(5)) == ("E-1", "O-1")
    assert touched(came(5)) == ("O-1",)
    told = replace(
        entry(make(Finish), lot="E-1", opens=OIL),
        level=Level("E-2", 5),
        postings=(Posting("E-3", "E-4", None, 5, 5), Posting(None, "E-5", Place.SUPPLIER, 0, 5)),
    )
    assert touched(told) == ("E-1", "O-1", "E-2", "E-3", "E-4", "E-5")


def test_what_was_drawn_too_much_after_the_correction_is_told() -> None:
    before, after = history(came(100), drawn(30)), history(came(20), drawn(30))
    assert broken(before, after, but=1) == (
        "Entry 2: 30 mL of O-1 was drawn, but by the book it now held 20 mL.",
    )


def test_what_happened_before_the_lot_came_is_told() -> None:
    before, after = history(came(100), drawn(30)), history(came(100, hour=10), drawn(30))
    assert broken(before, after, but=1) == (
        "Entry 2 is of 2026-03-02 09:00, but O-1 is now in the book only from 2026-03-02 10:00.",
    )


def test_what_did_not_fit_before_and_the_correction_itself_are_not_told() -> None:
    short = history(came(20), drawn(30))
    assert broken(short, history(came(10), drawn(30)), but=1) == ()
    assert broken(history(came(100), drawn(30)), short, but=2) == ()


def counted(amount_ml: int, hour: int) -> Entry:
    told = entry(make(Count, amount=ml(amount_ml)), 3, at(hour), lot="O-1")
    return replace(told, level=Level("O-1", amount_ml * 1000))


def held_less(seq: int, taken: str, held: str) -> str:
    return f"Entry {seq}: {taken} of O-1 was drawn, but by the book it now held {held}."


@pytest.mark.parametrize(
    ("after", "told"),
    [
        ([came(30), drawn(30)], ()),
        ([came(30), drawn(30), drawn(0.001, 4)], (held_less(4, "0.001 mL", "0 mL"),)),
        ([came(50), drawn(30), drawn(30, 4)], (held_less(4, "30 mL", "20 mL"),)),
        (
            [came(20), drawn(30), drawn(5, 4)],
            (held_less(2, "30 mL", "20 mL"), held_less(4, "5 mL", "0 mL")),
        ),
        ([came(20), drawn(30), drawn(0, 4)], (held_less(2, "30 mL", "20 mL"),)),
        ([came(60), counted(70, 8), drawn(30), drawn(40, 4)], ()),
        (
            [came(100), drawn(30), counted(20, 10), drawn(30, 4)],
            (held_less(4, "30 mL", "20 mL"),),
        ),
        (
            [came(100), elsewhere(20, 8), drawn(30), drawn(90, 4)],
            (held_less(4, "90 mL", "70 mL"),),
        ),
    ],
)
def test_what_a_lot_held_at_each_draw_is_what_came_less_what_went_since_it_was_counted(
    after: list[Entry], told: tuple[str, ...]
) -> None:
    assert broken(history(), history(*after), but=1) == told


def test_a_lot_whose_first_entry_is_not_among_them_is_only_held_to_what_it_holds() -> None:
    opened_elsewhere = {"O-1": History(OIL, 7, [drawn(30)])}
    empty = {"O-1": History(OIL, 7, [])}
    assert broken(empty, opened_elsewhere, but=1) == (held_less(2, "30 mL", "0 mL"),)


def test_what_came_too_early_before_and_is_too_much_now_is_told() -> None:
    before, after = history(came(100, hour=10), drawn(30)), history(came(20), drawn(30))
    assert broken(before, after, but=1) == (held_less(2, "30 mL", "20 mL"),)
