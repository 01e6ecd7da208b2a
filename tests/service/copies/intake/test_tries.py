"""Acts are tried in turn: all that is wrong is told, and then nothing is recorded."""

import shutil
from pathlib import Path

import pytest

from ledger.domain.entries import Note
from ledger.service.copies.intake.column_map import read_map
from ledger.service.copies.intake.table_maps import shipped_map
from ledger.service.copies.intake.take_in import Asked, take_in
from ledger.service.desk.book import How
from ledger.service.evidence.seal import seal
from ledger.service.masters.house import init
from tests.keeper import Keeper, SetClock
from tests.path import HOUSE
from tests.service.copies.intake.tables import GERMAN, csv, places, taken


def test_a_release_that_is_past_wants_the_facts_of_its_label_or_a_reason(
    tmp_path: Path,
) -> None:
    """In a book without materials: the facts are to be written where the tables tell of them."""
    clock = SetClock()
    book = init(str(tmp_path / "new.db"), **HOUSE, clock=clock)
    with Keeper(book, clock) as keeper:
        keeper.do("person", initials="AB", name="Ada Brook")
        _released_on_paper(keeper)


def _released_on_paper(keeper: Keeper) -> None:
    asked = Asked(shipped_map("german-season"))
    told = taken(keeper, GERMAN, asked)
    assert [(each.line, each.what, each.todo) for each in told.found] == [
        (
            2,
            f"Whether {name} carries allergens is not recorded. A label of O-26-1-F, which has "
            f"{code} in it, declares that.",
            f'Record what its papers say, where {code} is told of: allergens = "NONE OR WHICH"',
        )
        for name, code in (("Orangenöl", "orange-oil"), ("Weingeist", "spirit"))
    ]
    assert (told.answerable, told.is_recorded) == (2, False)
    told = taken(keeper, GERMAN, asked, because="released on paper")
    assert (told.found, told.rows, told.is_recorded) == ((), 8, True)
    text = "allergens is not recorded"
    assert sum(text in each.what for each in told.remarks) == 2
    assert told.kinds["deviation"] == 2


def test_all_that_is_wrong_is_told_with_file_line_and_column_and_nothing_is_recorded(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    folder = Path(shutil.copytree(GERMAN, tmp_path / "season"))
    batches = folder / "Chargen.csv"
    text = batches.read_text(encoding="utf-8")
    text = text.replace(";30,5;", ";dreißig;").replace("14.01.2026", "31.02.2026")
    batches.write_text(text.replace(";OEL-23;30;", ";OEL-24;30;"), encoding="utf-8")
    before = seal(sqlite_keeper.book)
    told = taken(sqlite_keeper, folder, Asked(shipped_map("german-season")))
    assert places(told) == [
        (2, "Öl ml", '"dreißig mL" is not an amount, because it does not begin with a number.'),
        (3, "Angesetzt", '"31.02.2026" is no day in the order dmy.'),
        (
            4,
            "Öl-Los",
            'There is no lot "OEL-24" in the book, nor in an earlier row. Near to it: OEL-23.',
        ),
    ]
    assert (told.is_recorded, told.untried > 5) == (False, True)
    assert seal(sqlite_keeper.book) == before


def test_an_import_that_is_broken_off_leaves_nothing(sqlite_keeper: Keeper) -> None:
    before = seal(sqlite_keeper.book)

    def broken(done: int, _total: int) -> None:
        if done == 20:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        take_in(sqlite_keeper.book, How("AB"), GERMAN, Asked(shipped_map("german-season")), broken)
    assert seal(sqlite_keeper.book) == before
    assert not sqlite_keeper.book.recorded


def test_a_reason_is_kept_only_where_one_is_needed(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    receive = csv(tmp_path, "receive.csv", "at,material,amount,code\n2026-02-13,b250,5,GL-1\n")
    csv(tmp_path, "send.csv", "at,lot,amount,moved_as\n2026-02-14,GL-1,9,breakage\n")
    assert len(taken(sqlite_keeper, receive.parent, Asked()).found) == 1
    told = taken(sqlite_keeper, receive.parent, Asked(), because="counted by hand")
    assert told.is_recorded
    came, broke, _ = sqlite_keeper.entries()[-3:]
    assert (came.draft.reason, broke.draft.reason) == (None, "counted by hand")


KNOWN = """[table.told]
acts = [
  { do = "material", once = true, code = "{M}", name = "Spirit", kind = "ethanol" },
  { do = "party", once = true, name = "{P}", phone = "01 555 0101" },
  { do = "person", once = true, initials = "{I}", name = "Who" },
  { do = "receive", once = true, code = "{L}", material = "spirit", amount = "1L" },
]"""
"""A map by which rows tell of what may be in the book already."""


def test_what_the_book_or_an_earlier_row_has_is_taken_once(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """A material, a party, a person and a lot each; rows that tell of others come twice too."""
    sqlite_keeper.do("party", name="Quay Bar", phone="01 555 0100")
    sqlite_keeper.do("receive", material="spirit", amount="2L", code="S-1")
    known = "spirit,Quay Bar,ab,s-1\nSPIRIT,Quay Bar,AB,S-1\n"
    new = "gin,Sea Bar,CD,S-2\nrum,Sky Bar,EF,S-3\n"
    file = csv(tmp_path, "told.csv", f"M,P,I,L\n{known}{new}{new}")
    came = taken(sqlite_keeper, file, Asked(read_map("own", KNOWN)), at="2026-03-02 09:00")
    each = dict.fromkeys(("material", "party", "person", "receipt"), 2)
    assert (came.found, came.kinds, came.rows) == ((), each, 6)


def test_a_lot_is_not_named_by_the_ending_of_its_code(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    sqlite_keeper.do("receive", material="spirit", amount="1L", code="SPIRIT-2026")
    file = csv(tmp_path, "note.csv", "at,lot,text\n2026-03-02,2026,Fine\n")
    assert places(taken(sqlite_keeper, file, Asked())) == [
        (2, "lot", 'There is no lot "2026" in the book, nor in an earlier row.')
    ]


def test_what_a_row_says_of_itself_comes_before_what_is_said_of_all(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """Who, why and from what paper; a hold is given the reason for all from the start."""
    sqlite_keeper.do("person", initials="CD", name="Cy Dale")
    rows = (
        "at,material,amount,code,hold,because,by,origin\n"
        "2026-02-13,b250,5,GL-1,yes,,,\n"
        "2026-02-13,b250,5,GL-2,yes,no papers,cd,memory\n"
        "2026-02-13,b250,5,GL-3,,,,\n"
    )
    file = csv(tmp_path, "receive.csv", rows)
    said = {"because": "told by the driver", "sheet": "7"}
    assert taken(sqlite_keeper, file, Asked(), **said).found == ()
    told = [
        (entry.kind, entry.draft.reason, entry.draft.by, str(entry.draft.origin))
        for entry in sqlite_keeper.entries()[-5:]
    ]
    assert told == [
        ("receipt", "told by the driver", "AB", "paper"),
        ("judge", "told by the driver", "AB", "paper"),
        ("receipt", "no papers", "CD", "memory"),
        ("judge", "no papers", "CD", "memory"),
        ("receipt", None, "AB", "paper"),
    ]
    assert (sqlite_keeper.entries()[-1].draft.sheet or "").startswith("7, receive.csv line 4, row ")


def test_a_row_names_the_lot_and_the_entry_of_an_earlier_row_by_its_nickname(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """A nickname stands for no lot of the book; what it stands for is told once it is recorded."""
    receive = csv(tmp_path, "receive.csv", "at,as,material,amount\n2026-02-13,first,spirit,5L\n")
    csv(tmp_path, "note.csv", "at,as,lot,text\n2026-02-14,said,first,Clear.\n")
    csv(tmp_path, "correct.csv", "at,entry,changes,because\n2026-02-15,said,text=Hazy.,misread\n")
    told = taken(sqlite_keeper, receive.parent, Asked())
    assert (told.found, told.is_recorded) == ((), True)
    came, note, corrected = sqlite_keeper.entries()[-3:]
    assert note.draft.lot == came.draft.lot == corrected.draft.lot
    assert (corrected.draft.corrects, corrected.facts) == (note.seq, Note("Hazy."))
