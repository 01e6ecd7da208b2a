"""What acts of the service refuse on one book, with what to do next."""

from collections.abc import Callable, Iterator, Mapping
from io import BytesIO
from pathlib import Path
from typing import Any

from ledger.errors import LedgerError
from ledger.service.causes import layout, suspects
from ledger.service.copies import lines
from ledger.service.copies.intake.take_in import Asked, take_in
from ledger.service.desk.book import How
from ledger.service.glass import foretell
from ledger.service.glass.cost import cost
from ledger.service.glass.serving import serving
from ledger.service.masters.formula import load_text
from ledger.service.masters.house import house
from ledger.service.masters.party import parties
from tests.formula_texts import orange, step, table
from tests.keeper import Keeper
from tests.service.hostile import run

Acts = Mapping[str, Callable[[], Any]]
BATCH = "TRL-001-2"
LINES = b'{"entries":1,"format":"pottle-book/0","house":"A","root":"00"}\n'


def acts(keeper: Keeper, folder: Path) -> Acts:
    """Return acts that are refused, by what is done, on a book with all kinds of entries."""
    book, do = keeper.book, keeper.do
    return {
        "rest, shaken often": lambda: do("rest", lot=BATCH, purpose="clear", shaken="often"),
        "a plan of no name": lambda: layout.planned(book, "no such trial"),
        "suspects, bought": lambda: suspects.suspects(book, ["SOO-001-3"]),
        "plan of what is gone": lambda: do("plan", name="new", tries="BOS-001-S"),
        "plan of what is none": lambda: do("plan", name="new", tries="NONE-1"),
        "foretell what is bought": lambda: foretell.foretell_lot(book, "SOO-001-3", None),
        "cost of what is none": lambda: cost(book, "NONE-1"),
        "serving what is none": lambda: serving(book, "NONE-1"),
        "add nearly a material": lambda: do("add", lot=BATCH, source="spirt", amount="1mL"),
        "correct no field": lambda: do("correct", entry="60", changes="x=1", because="wrong"),
        "correct a strike": lambda: do("correct", entry="52", changes="x=1", because="wrong"),
        "correct what is none": lambda: do("correct", entry="999", changes="x=1", because="wrong"),
        "party forgotten": lambda: _forgotten(keeper),
        "dose alone": lambda: _loaded(keeper, orange("240mL", dose="30mL")),
        "dose of nothing": lambda: _loaded(keeper, orange("240mL", dose_into="1L")),
        "lines of no list": lambda: _loaded(keeper, orange("240mL", line=7)),
        "a rest for nothing": lambda: _loaded(keeper, orange("240mL", step("rest"))),
        "a look at nothing": lambda: _loaded(keeper, orange("240mL", step("look"))),
        "a key of no formula": lambda: _loaded(keeper, orange("240mL", colour="red")),
        "a key of no table": lambda: _loaded(keeper, orange("240mL", table("clarity", a=1))),
        "lines of another form": lambda: lines.read_head(BytesIO(LINES)),
        "lines of no book": lambda: lines.read_head(BytesIO(b"{}\n")),
        "no text in lines": lambda: list(lines.read_lines(BytesIO(b"\xff\n"))),
        "rows of nobody": lambda: _handed_in(keeper, folder),
        "no house": lambda: _without_house(keeper),
    }


def _forgotten(keeper: Keeper) -> None:
    keeper.do("party", name="Quay Kiosk", phone="01 555 0199")
    code = next(one.code for one in parties(keeper.book) if one.name == "Quay Kiosk")
    keeper.do("forget", who="Quay Kiosk", because="they asked")
    keeper.do("party", name=code, phone="01 555 0199")


def _loaded(keeper: Keeper, text: str) -> None:
    load_text(keeper.book, How("AB"), text, "f.toml")


def _handed_in(keeper: Keeper, folder: Path) -> None:
    (folder / "note.csv").write_text("at,text\n2026-03-08,Cool\n", encoding="utf-8")
    take_in(keeper.book, How(None), folder / "note.csv", Asked(None))


def _without_house(keeper: Keeper) -> None:
    run(Path(keeper.book.where), "DELETE FROM house")
    house(keeper.book, How("AB"), name="Other")


def refused(keeper: Keeper, folder: Path) -> Iterator[str]:
    """Yield what is done, and below it what is said with what to do."""
    for name, act in acts(keeper, folder).items():
        yield name
        try:
            yield f"  = {act()}"
        except LedgerError as error:
            for what, todo in error.problems:
                yield from (f"  {type(error).__name__}: {what}", f"    {todo}")
