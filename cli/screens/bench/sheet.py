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
from ledger.service.bench.draws import propose
from ledger.service.desk.book import Book, Recorded
from ledger.service.lots.dossier import dossier, find_lot
from ledger.service.masters.material import materials
from reports.views.bench import BatchSheetView, SheetRow
from reports.words.bench.draws import HEADS, commands, rows, shortages
from reports.words.bench.sheet import batch_sheet_view
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
    view = _view(book, code)
    if out:
        draw(out, _drawing(view), force=force)
    if call.json:
        from reports.json.bench.sheet import sheet_answer

        print_json(sheet_answer(view, code, str(out) if out else None))
    elif out:
        print_lines([_where(code, out)])
    else:
        _print(view)


def _print(view: BatchSheetView) -> None:
    print_lines([f"Batch sheet {view.number}: {view.title}"])
    print_lines([f"{label}: {value}" for label, value in view.facts])
    print_lines([""])
    rows = [_row(row) for row in (*view.additions, *view.steps)]
    print_table(("code", "act", "what", "write down"), rows)
    print_lines(["", *view.cautions, view.how_to_type])


def _row(row: SheetRow) -> list[str]:
    return [row.code, row.act, row.words, ", ".join(row.blanks)]


def _view(book: Book, code: str) -> BatchSheetView:
    return batch_sheet_view(dossier(book, code), propose(book, code), materials(book))
