"""A maker's own spreadsheet comes into the book whole, or not at all."""

import shutil
from pathlib import Path

import pytest
from openpyxl import Workbook

from ledger.domain.entries import Receipt
from ledger.domain.entries.choices import Origin, Precision
from ledger.domain.tables.days import DayOrder
from ledger.errors import InputError
from ledger.service.copies.intake.column_map import read_map
from ledger.service.copies.intake.row_acts import Act
from ledger.service.copies.intake.row_sums import summed
from ledger.service.copies.intake.table_maps import map_of_verb, shipped_map
from ledger.service.copies.intake.take_in import Asked
from ledger.service.copies.intake.taken import taken_rows
from ledger.service.evidence.seal import seal
from ledger.service.evidence.verify import verify
from ledger.service.glass.cost import cost
from ledger.service.lots.trace import trace
from ledger.store.read import queries
from tests.keeper import Keeper
from tests.service.copies.intake.tables import GERMAN, csv, places, taken

SPANISH = Path(__file__).parent / "spanish_season"
"""The season of another invented maker, parted by tabs, its months named, with a map of its own."""
FRENCH = (
    "N° de lot;Préparé le;Recette;Prévu (ml);Lot huile;Bidon huile (ml);Prix huile;Fournisseur;"
    "Huile (ml);Lot alcool;Bidon alcool (l);Prix alcool;Alcool (ml);Repos jusqu'au;Limpidité;NTU;"
    "Fini le;Obtenu (ml);Statut;Vendu (ml);Client;Bon;Vendu le\r\n"
    "OR 1;06/01/26;Essence d'orange;480;HO-1;500;40,00 €;Huiles Inventées;30,5;AL-1;5;250,50;450;"
    "9/1/26 9h30;limpide;2,4;12/01/26;470,5;libéré;120;Bar Imaginé;B-1;15/01/26\r\n"
    "OR 2;13/01/26;Essence d'orange;960;HO-1;;;;61;AL-1;;;900;;trouble;41;19/01/26;948;;;;;\r\n"
)
"""An invented notebook of one table, its deliveries told in the row that first draws on them."""


def test_a_german_season_comes_in_with_its_codes_its_traces_and_its_costs(
    sqlite_keeper: Keeper,
) -> None:
    keeper, before = sqlite_keeper, len(sqlite_keeper.entries())
    keeper.book.recorded.clear()
    told = taken(keeper, GERMAN, Asked(shipped_map("german-season")))
    assert (told.found, told.rows, told.is_recorded) == ((), 8, True)
    assert keeper.book.recorded == [entry.seq for entry in keeper.entries() if entry.seq > before]
    assert told.tables[0].said == (
        *("german-season as its map", "parted by semicolons", "UTF-8"),
        *("decimal comma", "days as dmy"),
    )
    assert {"OEL-23", "SPR-9", "O-26-1", "O-26-1-F", "O-26-3"} <= set(keeper.lot_codes())
    assert keeper.on_hand("OEL-23") == 500_000 - 30_500 - 78_000 - 30_000
    back = trace(keeper.book, "O-26-1-F")
    assert {"O-26-1", "OEL-23", "MAG-1", "SPR-9"} <= {node.brief.code for node in back.nodes}
    # By hand: (30.5/500 × 48.00 + 15/500 × 9.50 + 450/10,000 × 1,190.00) × 400/452 = 50.23.
    assert cost(keeper.book, "O-26-1-F").total_minor == 5023
    assert not verify(keeper.book).faults


def test_entries_say_that_they_are_late_and_from_which_row(sqlite_keeper: Keeper) -> None:
    taken(sqlite_keeper, GERMAN, Asked(shipped_map("german-season")), sheet="B-7")
    with sqlite_keeper.reading() as connection:
        rows = taken_rows(connection).values()
    assert {(row.file, row.line) for row in rows} >= {("Verkauf.csv", 3), ("Chargen.csv", 2)}
    sold = sqlite_keeper.entries()[-1]
    assert sold.is_late
    assert (sold.draft.origin, sold.draft.happened.precision) == (Origin.PAPER, Precision.DAY)
    assert (sold.draft.sheet or "").startswith("B-7, Verkauf.csv line 3, row ")


def test_a_french_notebook_of_one_table_comes_in(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    (tmp_path / "Carnet.csv").write_bytes(FRENCH.encode("cp1252"))
    told = taken(sqlite_keeper, tmp_path / "Carnet.csv", Asked(shipped_map("french-season")))
    assert (told.found, told.rows, told.is_recorded) == ((), 2, True)
    assert "Windows letters (cp1252)" in told.tables[0].said
    assert sqlite_keeper.on_hand("HO-1") == 500_000 - 30_500 - 61_000
    # By hand: 30.5/500 × 40.00 + 450/5,000 × 250.50 = 24.985 for all of it.
    assert cost(sqlite_keeper.book, "OR-1").total_minor in (2498, 2499)
    ahead = {node.brief.code for node in trace(sqlite_keeper.book, "HO-1").nodes}
    assert {"OR-1", "OR-2"} <= ahead


def test_a_grown_file_gives_only_what_is_new(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    folder = Path(shutil.copytree(GERMAN, tmp_path / "season"))
    asked = Asked(shipped_map("german-season"))
    taken(sqlite_keeper, folder, asked)
    again = taken(sqlite_keeper, folder, asked)
    assert (again.rows, again.known, again.numbers, again.is_recorded) == (0, 8, (), False)
    sales = folder / "Verkauf.csv"
    # Of two rows that say the same the second is new, wherever in the file it stands.
    head, first, *rest = sales.read_text(encoding="utf-8").splitlines()
    sales.write_text("\n".join([head, first.replace(";2;", ";1;"), first, *rest, rest[-1]]) + "\n")
    grown = taken(sqlite_keeper, folder, asked, because="more than are left by the book")
    assert (grown.found, grown.rows, grown.known) == ((), 2, 8)


def test_a_row_that_was_taken_and_says_something_else_now_is_found(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    folder = Path(shutil.copytree(GERMAN, tmp_path / "season"))
    asked = Asked(shipped_map("german-season"))
    first = taken(sqlite_keeper, folder, asked).numbers
    sales = folder / "Verkauf.csv"
    sales.write_text(sales.read_text(encoding="utf-8").replace("LS-2", "LS-3"), encoding="utf-8")
    told = taken(sqlite_keeper, folder, asked)
    assert places(told) == [
        (3, None, f"It was taken before in other words, from entry {first[-1]} on.")
    ]
    assert told.found[0].todo == (
        "Put the row back as it was and correct what is wrong with: pottle correct "
        f"{first[-1]}; or strike out what was taken."
    )
    sqlite_keeper.do("strike", entry=str(first[-1]), because="typed wrong")
    assert taken(sqlite_keeper, folder, asked).rows == 1


def test_a_rehearsal_changes_nothing(sqlite_keeper: Keeper) -> None:
    before = seal(sqlite_keeper.book)
    asked = Asked(shipped_map("german-season"), is_rehearsal=True)
    told = taken(sqlite_keeper, GERMAN, asked)
    assert (told.found, told.is_recorded, len(told.numbers)) == ((), False, 29)
    assert seal(sqlite_keeper.book) == before


def test_a_day_with_two_readings_is_never_guessed(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    file = csv(tmp_path, "note.csv", "at,text\n03/02/2026,Fine\n13/02/2026,Fine too\n")
    told = taken(sqlite_keeper, file, Asked())
    assert places(told) == [(2, "at", '"03/02/2026" could be 2026-02-03 or 2026-03-02.')]
    assert told.found[0].todo == "Say which with --dates dmy or --dates mdy."
    assert taken(sqlite_keeper, file, Asked(dates=DayOrder.DMY)).rows == 2
    assert sqlite_keeper.entries()[-2].draft.happened.local().date().isoformat() == "2026-02-03"


def test_a_row_in_another_year_s_format_is_found(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    file = csv(tmp_path, "note.csv", "at,text\n13.02.2026,Fine\n02/14/2026,Odd\n")
    told = taken(sqlite_keeper, file, Asked(dates=DayOrder.DMY))
    assert places(told) == [(3, "at", '"02/14/2026" is no day in the order dmy.')]


def test_a_number_with_two_readings_is_never_guessed(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    file = csv(tmp_path, "receive.csv", "at;material;amount\n2026-02-13;spirit;1.250 mL\n")
    told = taken(sqlite_keeper, file, Asked())
    assert places(told) == [(2, "amount", '"1.250" could be 1250 or 1.250.')]
    assert taken(sqlite_keeper, file, Asked(decimal=",")).found == ()
    assert sqlite_keeper.on_hand("NS-001-J") == 1_250_000


def test_a_workbook_comes_in_sheet_by_sheet(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    book = Workbook()
    sheet = book.active
    sheet.title = "receive"
    sheet.append(["at", "material", "amount", "code"])
    sheet.append(["2026-02-13", "spirit", "1.5 L", "SP-7"])
    notes = book.create_sheet("note")
    notes.append(["at", "lot", "text"])
    notes.append(["2026-02-14", "SP-7", "Smells clean"])
    book.save(tmp_path / "season.xlsx")
    told = taken(sqlite_keeper, tmp_path / "season.xlsx", Asked())
    assert (told.found, told.rows) == ((), 2)
    assert sqlite_keeper.on_hand("SP-7") == 1_500_000


def test_a_stall_s_sheet_is_known_by_its_columns(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    sqlite_keeper.do("receive", material="b250", amount="20", code="GL-1")
    file = csv(
        tmp_path,
        "saturday.csv",
        "date,stall,lot,out,sold,back,document,by,sheet no\n"
        "2026-03-02,Bridge Street Stall,GL-1,12,8,4,,AB,S-9\n",
    )
    told = taken(sqlite_keeper, file, Asked(), because="bottles alone, for a test")
    assert (told.found, told.kinds["move"], told.kinds["note"]) == ((), 2, 1)
    assert sqlite_keeper.on_hand("GL-1") == 12_000_000
    assert told.tables[0].said[0] == "stall-sheet as its map"


STALL = "date,stall,lot,out,sold,back,tasted,lost,document,by,sheet no\n"


def test_a_spanish_season_with_tabs_and_named_months_comes_in_by_a_map_of_forty_lines(
    sqlite_keeper: Keeper,
) -> None:
    keeper, text = sqlite_keeper, (SPANISH / "map.toml").read_text(encoding="utf-8")
    assert len(text.splitlines()) < 40
    keeper.clock.forward(days=2)
    told = taken(keeper, SPANISH, Asked(read_map("map.toml", text)), because="sold without a card")
    assert (told.found, told.rows, told.is_recorded) == ((), 12, True)
    assert told.tables[0].said == (
        *("map.toml as its map", "parted by tabs", "UTF-8"),
        *("decimal comma", "days as dmy"),
    )
    back = trace(keeper.book, "BJN-01")
    assert {"JN-01", "ES-N-01", "AN-01", "AL-01"} <= {node.brief.code for node in back.nodes}
    assert keeper.on_hand("AN-01") == 500_000 - 30_500 - 30_000
    with keeper.reading() as connection:
        assert "aceite-de-naranja" in queries.material_codes(connection)


def test_a_stall_s_sheet_adds_up_to_what_went_out(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    sqlite_keeper.do("receive", material="b250", amount="50", code="GL-1")
    row = "2026-03-02,Bridge Street Stall,GL-1"
    file = csv(
        tmp_path,
        "saturday.csv",
        f"{STALL}{row},12,8,2,1,1,,AB,S-9\n{row},12,8,2,,,,AB,S-10\n{row},4,3,2,,,,AB,S-11\n"
        f"{row},6,,,,,,AB,S-12\n{row},6,all,,,,,AB,S-13\n",
    )
    told = taken(sqlite_keeper, file, Asked(), because="bottles alone, for a test")
    again = "Count again, or write the rest under sold, back, tasted or lost."
    assert [(each.line, each.column, each.what, each.todo) for each in told.found] == [
        (3, "out", "sold 8 and back 2 come to 2 less than out, 12.", again),
        (4, "out", "sold 3 and back 2 come to 1 more than out, 4.", again),
        (6, "sold", '"all" is no number, and the row must add up.', "Write the number alone."),
    ]
    assert not told.is_recorded
    file.write_text(f"{STALL}{row},12,8,2,1,1,,AB,S-9\n{row},6,,,,,,AB,S-12\n", encoding="utf-8")
    told = taken(sqlite_keeper, file, Asked(), because="bottles alone, for a test")
    assert (told.found, told.kinds["move"], told.kinds["note"]) == ((), 3, 3)


def test_a_table_that_no_map_fits_is_refused(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    file = csv(tmp_path, "season.csv", "Charge;Datum\nO 1;2026-01-01\n")
    with pytest.raises(InputError) as caught:
        taken(sqlite_keeper, file, Asked())
    assert caught.value.problems == (
        (
            f"No table in {file} is named after a verb of the book or fits a map.",
            f"Propose a map with: pottle import {file} --like map.toml",
        ),
    )


def test_a_table_of_a_verb_with_another_column_and_one_without_a_map_are_told(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    csv(tmp_path, "note.csv", "at,text,hue,amount\n2026-02-13,Fine,red,1.5\n")
    csv(tmp_path, "other.csv", "Charge;Datum\nO 1;2026-01-01\n")
    told = taken(sqlite_keeper, tmp_path, Asked())
    columns = "at, by, because, origin, sheet, recorded, as, lot, text"
    assert [(each.file, each.line, each.column, each.what) for each in told.found] == [
        ("note.csv", 1, "hue", 'It has an unknown column "hue".'),
        ("note.csv", 1, "amount", 'It has an unknown column "amount".'),
    ]
    assert {each.todo for each in told.found} == {f"Its columns are: {columns}."}
    assert [(each.file, each.said) for each in told.tables if each.file == "other.csv"] == [
        ("other.csv", ("left out: no map has a part for it",))
    ]
    csv(tmp_path, "note.csv", "at,text\n2026-02-13,Fine\n")
    csv(tmp_path, "receive.csv", "at;material;amount\n2026-02-13;spirit;1.25 mL\n")
    told = taken(sqlite_keeper, tmp_path, Asked())
    assert [each.said for each in told.tables if each.file == "receive.csv"] == [
        ("words of the book as its map", "parted by semicolons", "UTF-8", "decimal point")
    ]


def test_a_shared_book_takes_tables_alike(postgres_keeper: Keeper) -> None:
    told = taken(postgres_keeper, GERMAN, Asked(shipped_map("german-season")))
    assert (told.found, told.rows, told.is_recorded) == ((), 8, True)
    assert not verify(postgres_keeper.book).faults


def test_columns_may_be_named_as_the_options_are(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    path = csv(
        tmp_path,
        "receive.csv",
        "at,material,amount,from,their-lot,best-before\n"
        "2026-03-01,orange-oil,500mL,Pretend Orchard Oils,C7,2027-06-30\n",
    )
    told = taken(sqlite_keeper, path, Asked())
    assert (told.found, told.kinds) == ((), {"receipt": 1})
    facts = sqlite_keeper.entry(told.numbers[0]).facts
    assert isinstance(facts, Receipt)
    assert (facts.supplier, facts.supplier_lot) == ("Pretend Orchard Oils", "C7")
    assert facts.best_before is not None


def drew(line: int, amount: str, *, code: str = "O-1", cost: str = "", **how: bool) -> Act:
    words = {"code": code, "amount": amount, **({"cost": cost} if cost else {})}
    told = {"is_summed": True, **how}
    return Act("receive", words, {}, "a.csv", line, f"{line}", ("", 0, line, 0), **told)


def test_rows_of_one_code_are_one_delivery_told_by_the_first_of_them() -> None:
    first, second = drew(2, "30.5 mL", cost="3.02"), drew(3, "62 mL", code="o-1", cost="5.95")
    told = summed([second, first])
    assert [act.words for act in told] == [
        second.words,
        {"code": "O-1", "amount": "92.5 mL", "cost": "8.97"},
    ]


def test_what_is_broken_alone_or_of_another_unit_is_not_summed() -> None:
    acts = [
        drew(2, "1 mL"),
        drew(3, "2 mL", is_broken=True),
        drew(4, "3 mL", code="O-2"),
        drew(5, "4 mL", code="O-3"),
        drew(6, "5 g", code="O-3"),
        drew(7, "6 mL", is_summed=False),
    ]
    assert summed(acts) == acts


def test_columns_of_a_table_of_one_verb_are_its_words_and_when_by_whom_and_as_what() -> None:
    (act,) = map_of_verb("look", ("As", "Grade", "Colour", "At", "grade")).acts
    assert act.words == {"as": "{As}", "grade": "{Grade}", "at": "{At}"}
