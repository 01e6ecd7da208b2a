"""What stood around a lot in words; what is not in the book is said not to be."""

from ledger.domain.entries import Clean, Equipment, Person
from ledger.service.lots.around import Around, Seen
from reports.words.lots import around as module
from reports.words.lots.around import around_rows
from tests.domain.builders import at, entry
from tests.kept.said import check_said

CLEANED = entry(Clean("jar 1", "hot water, twice", "Lemon essence"), 7, at(8))
CHECKED = entry(Equipment("scale 1", "200 g read 200.0 g"), 9, at(9))


def test_things_have_their_last_act() -> None:
    found = Around(
        people=(Person("AB", "Ada Notreal", "makes"), Person("CD", "Cleo Dunn")),
        vessels=(Seen("jar 1", CLEANED), Seen("jar 2", None)),
        instruments=(Seen("scale 1", CHECKED), Seen("meter", None)),
    )
    assert around_rows(found) == (
        (
            "Vessel",
            "jar 1: cleaned after Lemon essence 2026-03-02 08:00 by AB (entry 7), hot water, twice",
        ),
        ("Vessel", "jar 2: no cleaning of it before is in the book"),
        (
            "Instrument",
            "scale 1: last seen to 2026-03-02 09:00 by AB (entry 9), 200 g read 200.0 g",
        ),
        ("Instrument", "meter: no check of it before is in the book"),
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
