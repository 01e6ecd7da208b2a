"""Showing planned trials: the plan, its sheet, its draw repeated, its jars begun.

Guarantees: a sheet is drawn whole before its file is made; what was recorded is told whatever
becomes of the sheet.
"""

from contextlib import nullcontext
from pathlib import Path

from cli.kit.answer import say
from cli.kit.call import Call
from cli.kit.files import check_place, draw, once_recorded, paper_at
from cli.kit.tables import print_json, print_lines, print_table, table_lines
from ledger.errors import FindingError
from ledger.service.bench.jars import jars
from ledger.service.causes.layout import planned
from ledger.service.causes.plan import plan
from ledger.service.causes.redrawn import root_faults
from ledger.service.desk.book import Book, Recorded
from ledger.service.desk.clock import house_of, written_at
from ledger.service.evidence.seal import seal
from ledger.service.lots.stock import stock
from reports.json.causes.trial import jars_answer, plan_answer, trial_answer
from reports.kit.frame import Frame, frame_of
from reports.pdf.causes.trial import trial_sheet
from reports.words.causes.trial import HEADS, jar_rows, plan_lines, proved_lines
from reports.words.causes.trial_sheet import trial_sheet_view
from reports.words.desk.answer import answer

VERIFY = "Nothing is proved. Run pottle verify to see what else does not fit."


def record_plan(call: Call, words: dict[str, str | None], out: Path | None, *, force: bool) -> None:
    """Plan a trial, tell how large it is and why, and print its sheet when asked."""
    with paper_at(out, force=force) if out else nullcontext() as paper:
        book = call.book()
        done = plan(book, call.how(), **words)  # type: ignore[arg-type]
        found = planned(book, done.entry.facts.name)
        step = f'pottle start --from-plan "{found.plan.name}"'
        if paper:
            with once_recorded(
                f"Entry {done.seq} is recorded: the trial is planned.",
                f'Print its sheet with: pottle trial sheet "{found.plan.name}" --out FILE',
            ):
                view = trial_sheet_view(found, names_in(book), frame_in(book))
                paper.draw(lambda target: trial_sheet(view, target))
    say(
        call,
        lambda: plan_answer(done, found, step, str(out) if out else None),
        answer(done, None, None).done,
        *plan_lines(found, names_in(book)),
        "",
        *table_lines(HEADS, jar_rows(found), right="jar,evening"),
        *([f"Its sheet is in {out}."] if out else []),
        f"Next: {step}",
    )


def show_sheet(call: Call, name: str, out: Path | None, *, force: bool) -> None:
    """Show the plan of a trial, or print its sheet."""
    if out:
        check_place(out, force=force)
    book = call.book()
    found = planned(book, name)
    if out:
        view = trial_sheet_view(found, names_in(book), frame_in(book))
        draw(out, lambda target: trial_sheet(view, target), force=force)
    if call.json:
        print_json(trial_answer(found, str(out) if out else None))
    elif out:
        print_lines([f"The sheet of {found.plan.name} is in {out}."])
    else:
        print_lines([*plan_lines(found, names_in(book)), ""])
        print_table(HEADS, jar_rows(found), right="jar,evening")
        print_lines([f'Next: pottle start --from-plan "{found.plan.name}"'])


def prove_plan(call: Call, name: str) -> None:
    """Draw the jars of a trial again.

    Raises:
        FindingError: The root in the plan is not the book's.
    """
    book = call.book()
    found = planned(book, name)
    if faults := root_faults(book, found):
        raise FindingError.of([(what, VERIFY) for what in faults])
    if call.json:
        print_json(trial_answer(found, None))
        return
    print_lines([*proved_lines(found), ""])
    print_table(HEADS, jar_rows(found), right="jar,evening")
    print_lines([f'Next: pottle compare "{found.plan.name}"'])


def begin_jars(call: Call, name: str) -> None:
    """Begin the jars of the next evening of a planned trial."""
    book = call.book()
    first = jars(book, call.how(), trial=name)
    opened: tuple[Recorded, ...] = (first, *first.others)
    found = planned(book, name)
    step = f"pottle add {first.code} LOT AMOUNT"
    codes = {each.code for each in opened}
    rows = [row for jar, row in zip(found.jars, jar_rows(found), strict=True) if jar.code in codes]
    say(
        call,
        lambda: jars_answer(opened, found, step),
        f"Recorded {first.seq} to {opened[-1].seq}: {len(opened)} jars of "
        f"{found.plan.name} are begun, in this order.",
        *table_lines(HEADS, rows, right="jar,evening"),
        "Write only the mark on a jar. Each is the ending of its lot: pottle look "
        f"{rows[0][2]} GRADE",
        f"Next: {step}",
    )


def frame_in(book: Book) -> Frame:
    """Return the frame of a paper of the book as it is now."""
    return frame_of(house_of(book), seal(book), written_at(book))


def names_in(book: Book) -> dict[str, str]:
    """Return what every lot is, by its code."""
    return {lot.code: lot.name for lot in stock(book, everything=True)}
