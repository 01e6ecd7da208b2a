"""What is due, once or kept on the screen.

Guarantees: the screen is read anew each half minute and left as it was by Ctrl-C; in a pipe the
list is printed once.
"""

from pathlib import Path
from time import sleep
from typing import TYPE_CHECKING

from cli.kit.call import Call
from cli.kit.files import check_place, write
from cli.kit.sheets import check_sheet, put_sheet
from cli.kit.tables import is_screen, print_json, print_lines, print_table, screen_table, seen
from ledger.service.desk.book import Book
from ledger.service.desk.clock import house_of
from ledger.service.lots.due import DueList, due
from reports.json.lots.due import due_rows
from reports.kit.format import plural
from reports.words.lots.calendar import calendar, dated
from reports.words.lots.due import HEADS, folded, past_line, rows
from reports.words.lots.next_in_lists import step_of_due
from reports.words.lots.sheets import due_sheet

if TYPE_CHECKING:
    from rich.console import Group

OTHER_ICS = "Give another name with --ics, or --force to write over it."
EVERY_S = 30
"""Seconds between two readings."""
NOTHING = ["Nothing is due.", "Next: pottle stock"]


def show_due(
    call: Call,
    csv: Path | None = None,
    ics: Path | None = None,
    *,
    watch: bool = False,
    everything: bool = False,
    force: bool = False,
) -> None:
    """Print what is due, write it to a spreadsheet or a calendar, or keep it on the screen."""
    check_sheet(csv, force=force)
    if ics:
        check_place(ics, force=force, instead=OTHER_ICS)
    book = call.book()
    if csv:
        put_sheet(call, due_sheet(due(book)), csv, force=force)
    if ics:
        _put_calendar(call, book, ics, force=force)
    if call.json:
        print_json(due_rows(due(book)))
    elif csv or ics:
        return
    elif watch and is_screen():
        keep_watching(book)
    else:
        _print(due(book), everything=everything)


def _print(found: DueList, *, everything: bool) -> None:
    """Print what is due, what is long past in one line unless all is asked for."""
    shown, past = (found, ()) if everything else folded(found)
    if shown.items:
        print_table(HEADS, rows(shown))
    elif past:
        print_lines(["Nothing else is due."])
    if past:
        print_lines([past_line(past)])
    print_lines(_next(shown if shown.items else found) if found.items else NOTHING)


def _put_calendar(call: Call, book: Book, out: Path, *, force: bool) -> None:
    """Write what is due to a calendar and say so."""
    house, found = house_of(book), due(book)
    text = calendar(found, house.name if house else "")
    write(out, text.encode(), force=force, instead=OTHER_ICS)
    if not call.json:
        events = plural(len(dated(found)), "event")
        print_lines(
            [f"{events} in {out}: hand it to your calendar; written again, it renews them."]
        )


def _next(found: DueList) -> list[str]:
    """Return the line that names the command for what is due first."""
    return [f"Next: {step_of_due(found.items[0], found.now)}"]


def keep_watching(book: Book) -> None:
    """Keep what is due on the screen until Ctrl-C."""
    from rich.live import Live

    try:
        with Live(auto_refresh=False, screen=True) as live:
            while True:
                live.update(screen_of(due(book), live.console.width), refresh=True)
                sleep(EVERY_S)
    except KeyboardInterrupt:
        return


def screen_of(found: DueList, width: int) -> "Group":
    """Return what is due for a screen so many columns wide; what comes next stands on top."""
    from rich.console import Group
    from rich.text import Text

    head = [f"Due at {found.now:%Y-%m-%d %H:%M}; Ctrl-C ends."]
    if not found.items:
        return Group(*map(Text, (*head, "", *NOTHING)))
    now, past = folded(found)
    told = [past_line(past)] if past else []
    step = _next(now if now.items else found)
    shown = [[seen(cell) for cell in row] for row in rows(now)]
    table = screen_table(list(zip(HEADS, *shown, strict=True)), width)
    return Group(*map(Text, (*head, *step, "")), table, *map(Text, told))
