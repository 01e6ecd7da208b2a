"""The batch sheet and the beginning of a batch by a formula.

Guarantees: plain lines or JSON, never both; a sheet is drawn whole before its file is made.
"""

from collections.abc import Callable
from contextlib import nullcontext
from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO

from cli.kit.answer import say
from cli.kit.call import Call
from cli.kit.files import check_place, draw, once_recorded, paper_at
from cli.kit.tables import print_json, print_lines, print_table, table_lines
from ledger.domain.amounts.quantity import Measure, parse_quantity
from ledger.errors import InputError
from ledger.service.bench.draws import propose, propose_for
from ledger.service.desk.book import Book, Recorded
from ledger.service.desk.clock import house_of, written_at
from ledger.service.evidence.seal import seal
from ledger.service.lots.dossier import dossier, find_lot
from ledger.service.masters.formula import version
from ledger.service.masters.material import materials
from reports.kit.frame import frame_of
from reports.views.bench import BatchSheetView, SheetRow
from reports.words.bench.draws import HEADS, commands, rows, shortages
from reports.words.bench.sheet import batch_sheet_view, formula_sheet_view
from reports.words.desk.answer import answer
from reports.words.desk.next_step import next_step

if TYPE_CHECKING:
    from reports.json.bench.start import StartAnswer


def begin(call: Call, start: Callable[[Book], Recorded], out: Path | None, *, force: bool) -> None:
    """Begin a batch; by a formula, say what to draw, and print its sheet when asked."""
    with paper_at(out, force=force) if out else nullcontext() as paper:
        book = call.book()
        done = start(book)
        code = done.code or ""
        proposed, found = propose(book, code), dossier(book, code)
        step = next_step(done.entry, found, proposed)
        if paper:
            with once_recorded(
                f"Entry {done.seq} is recorded: {code} is begun.",
                f"Print its sheet with: pottle sheet {code} --out FILE",
            ):
                paper.draw(_drawing(_view(book, code)))

    def plain() -> "StartAnswer":
        from reports.json.bench.start import start_answer

        return start_answer(done, found, step, proposed, str(out) if out else None)

    if call.held:
        call.held.hear(done, found, step)
        print_lines(shortages(proposed))
        return
    said = answer(done, found, step)
    sheet = (_where(code, out),) if out else ()
    if not proposed:
        say(call, plain, *said.lines, *sheet)
        return
    told = table_lines(HEADS, rows(proposed), right="calls for,take")
    typed = [f"  {line}" for line in commands(code, proposed)]
    ready = ["Next, as it is done:", *typed] if typed else []
    say(call, plain, said.done, *said.found, *told, *shortages(proposed), *ready, *sheet)


def _drawing(view: BatchSheetView) -> Callable[[BinaryIO], None]:
    """Return what draws a sheet."""
    from reports.pdf.bench.sheet import batch_sheet

    return lambda paper: batch_sheet(view, paper)


def _where(code: str, out: Path) -> str:
    return f"The sheet of {code} is in {out}."


def show_sheet(call: Call, text: str, out: Path | None, *, force: bool) -> None:
    """Print the sheet of a batch, or show it."""
    if out:
        check_place(out, force=force)
    book = call.book()
    code = find_lot(book, text, call.writer)
    _show(call, _view(book, code), code, out, force=force)


def show_formula_sheet(
    call: Call, code: str, volume: str | None, out: Path | None, *, force: bool
) -> None:
    """Print the sheet of a batch that is not begun yet, or show it."""
    if out:
        check_place(out, force=force)
    book = call.book()
    formula = version(book, code)
    house = house_of(book)
    target = formula.basis
    if volume is not None:
        target = parse_quantity(volume, fluid_ounce=house.fluid_ounce if house else "US")
        if target.measure is not Measure.UL:
            raise InputError(f"{volume} is not a volume.", "Give a volume, such as 480mL.")
    frame = frame_of(house, seal(book), written_at(book))
    drawn = propose_for(book, formula, target.amount)
    view = formula_sheet_view(formula, target, drawn, materials(book), frame)
    _show(call, view, None, out, force=force)


def _show(
    call: Call, view: BatchSheetView, code: str | None, out: Path | None, *, force: bool
) -> None:
    if out:
        draw(out, _drawing(view), force=force)
    if call.json:
        from reports.json.bench.sheet import sheet_answer

        print_json(sheet_answer(view, code, str(out) if out else None))
    elif out:
        print_lines([_where(view.number, out)])
    else:
        _print(view)


def _print(view: BatchSheetView) -> None:
    print_lines([f"Batch sheet {view.number}: {view.title}"])
    print_lines([f"{label}: {value}" for label, value in view.facts])
    print_lines([""])
    rows = [_row(row) for row in view.rows]
    print_table(("code", "act", "what", "write down"), rows)
    print_lines(["", *view.cautions, view.how_to_type])


def _row(row: SheetRow) -> list[str]:
    words = "; ".join(part for part in (row.target, row.words) if part)
    return [row.code, row.act, words, ", ".join(row.blanks)]


def _view(book: Book, code: str) -> BatchSheetView:
    return batch_sheet_view(dossier(book, code), propose(book, code), materials(book))
