"""What stands on an entry that was corrected: it is told when it fits no longer."""

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Add, Entry, Finish, Level, Opened, Posting, Receipt, Start
from ledger.domain.entries.choices import LotType, Place
from ledger.domain.rules.recheck import History, broken, touched
from tests.domain.builders import at, entry, make, ml

OIL = Opened("O-1", LotType.RECEIVED, Measure.UL)


def came(amount_ml: int, hour: int = 8) -> Entry:
    told = entry(Receipt("oil", ml(amount_ml)), 1, at(hour), lot="O-1", opens=OIL)
    return replace(told, postings=(Posting(None, "O-1", Place.SUPPLIER, 0, amount_ml * 1000),))


def drawn(amount_ml: int) -> Entry:
    told = entry(make(Add, source="O-1"), 2, at(9), lot="E-1")
    amount = amount_ml * 1000
    return replace(told, postings=(Posting("O-1", "E-1", None, amount, amount),))


def history(*entries: Entry) -> dict[str, History]:
    return {"O-1": History(OIL, 1, sorted(entries, key=lambda item: item.position))}


def test_an_entry_touches_its_lot_and_the_lots_it_moves_between_each_once() -> None:
    assert touched(drawn(5)) == ("E-1", "O-1")
    assert touched(came(5)) == ("O-1",)


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


BATCH = Opened("E-1", LotType.MADE, Measure.UL)


def made(*went_in: Entry) -> dict[str, History]:
    """Return the history of a batch of which 450 mL came out."""
    begun = entry(make(Start), 1, at(8), lot="E-1", opens=BATCH)
    end = replace(entry(make(Finish, volume=ml(450)), 9, at(12), lot="E-1"),
                  level=Level("E-1", 450_000))  # fmt: skip
    return {"E-1": History(BATCH, 1, [begun, *went_in, end])}


def goes_in(seq: int, taken: int, given: int) -> Entry:
    told = entry(make(Add), seq, at(9, seq), lot="E-1")
    return replace(told, postings=(Posting("O-1", "E-1", None, taken, given),))
