"""Answering a recall: held, tried or looked at again, on screen and in files.

Guarantees: nothing is recorded before the folder for its papers is known to be free.
"""

import time
from pathlib import Path

from cli.kit.call import Call
from cli.kit.files import once_recorded, tell_boxed
from cli.kit.progress import progress
from cli.kit.tables import print_json, print_lines, print_table
from cli.screens.recall.pack import check_folder, drawn_pack, write_pack
from ledger.errors import InputError
from ledger.service.desk.book import Book, Tick
from ledger.service.lots.dossier import find_lot
from ledger.service.recall.order import close_recall, recall
from ledger.service.recall.standing import Recall, recall_of, with_days
from reports.kit.boxed import noting_boxed
from reports.words.recall.standing import (
    AIM,
    AUTHORITY,
    accounted_line,
    balance_line,
    balance_rows,
    call_lines,
    course,
    lot_rows,
    lots_made,
    next_line,
)


def recall_lot(
    call: Call, text: str, *, drill: bool, close: str | None, out: Path | None, force: bool
) -> None:
    """Recall a lot, try it, close it or show how far it is; write its papers if asked to."""
    began = time.monotonic()
    if drill and close:
        raise InputError(
            "A drill begins no recall, so there is none to close.",
            "Leave out --drill or --close.",
        )
    if out:
        check_folder(out, force=force)
    book = call.book()
    code = find_lot(book, text, call.writer)
    if out and not drill:
        drawn_pack(book, code, drill=True)  # what cannot be drawn is told before anything is held
    with progress("Recalling", quiet=call.json) as tick:
        _act(call, book, code, tick, drill=drill, close=close)
    found = recall_of(book, code)
    written = _written(book, code, out, drill=drill, force=force) if out else []
    took_ms = round(1000 * (time.monotonic() - began))
    if call.json:
        from reports.json.recall.recall import recall_answer

        paths, dated = [str(path) for path in written], with_days(book, found)
        print_json(recall_answer(dated, drill=drill, took_ms=took_ms, paths=paths))
        return
    _show(found, drill=drill)
    if drill:
        print_lines(["", f"The drill took {took_ms / 1000:.1f} s. {AIM}"])
    if written:
        names = ", ".join(path.name for path in written)
        print_lines(["", f"In {out}: {names}."])
    print_lines([f"Next: {next_line(found, drill=drill)}"])


def _written(book: Book, code: str, out: Path, *, drill: bool, force: bool) -> list[Path]:
    done = "Nothing was recorded." if drill else f"The recall of {code} stands in the book."
    with (
        once_recorded(done, f"Get its papers with: pottle recall {code} --out FOLDER"),
        noting_boxed() as boxed,
    ):
        files = drawn_pack(book, code, drill=drill)
        written = write_pack(files, out, force=force)
    tell_boxed(boxed)
    return written


def _act(call: Call, book: Book, code: str, tick: Tick, *, drill: bool, close: str | None) -> None:
    if drill:
        return
    if close is not None:
        close_recall(book, call.how(), lot=code, cause=close)
        return
    now = recall_of(book, code)
    if now.begun is None or (call.because and now.not_held):
        recall(book, call.how(), tick, lot=code)


def _show(found: Recall, *, drill: bool) -> None:
    print_lines([lots_made(found), *course(found, drill=drill), ""])
    print_table(("lot", "what", "here", "status"), lot_rows(found), right="here")
    print_lines(["", "Where all of it is"])
    heads, rows = balance_rows(found)
    print_table(heads, rows, right=",".join(heads[1:]))
    print_lines([balance_line(found), accounted_line(found), ""])
    calls = list(call_lines(found))
    print_lines(["Whom to call, in this order" if calls else "Nobody was sent any.", *calls])
    print_lines(["", *AUTHORITY])
