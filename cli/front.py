"""The list of commands, known without loading any.

Guarantees: help reads this list alone; a command's module is loaded only when that command is
called. Refuses: to list what does not work; a test holds each line to its command's own words.
"""

import sys
from collections.abc import Sequence
from importlib import import_module
from keyword import iskeyword
from typing import Any

import typer
from typer._click import Command, Context
from typer._click.exceptions import NoArgsIsHelpError, NoSuchOption, UsageError
from typer._click.formatting import HelpFormatter
from typer.core import TyperGroup

from cli.kit.errors import complain
from cli.other_words import question_after
from ledger.errors import did_you_mean, visible

COMMANDS: dict[str, tuple[str, str]] = {
    "guide": ("guide", "Show a page of the guide, or list its pages."),
    "help": ("guide", "Show the help of a command, or of the options that all have."),
    "init": ("masters", "Make a new book; at a terminal it asks for what is not given."),
    "demo": ("copies", "Play an invented season into a new book; trace a bottle."),
    "house": ("masters", "Show the house, or say anew what is given."),
    "person": ("masters", "People who write in the book."),
    "material": ("masters", "Materials that are bought and used."),
    "party": ("masters", "Suppliers and customers, and how to reach them."),
    "formula": ("masters", "Versioned master formulas."),
    "limits": ("masters", "List limits and their sources, show one, or say one anew."),
    "bench": ("bench", "Work in short lines: oil 15, rest 48h, filter 178, cloudy."),
    "receive": ("bench", "Record a delivery; opens a lot."),
    "start": ("bench", "Begin a batch; opens a lot."),
    "add": ("bench", "Put some of a lot into a batch."),
    "rest": ("bench", "Begin a rest, end it, or tell a whole one."),
    "filter": ("bench", "Record one pass through a filter."),
    "rinse": ("bench", "Rinse the cake; kept apart, the liquor opens a lot."),
    "decant": ("bench", "Draw the clear liquid off its sediment."),
    "look": ("bench", "Record how clear a lot looked."),
    "measure": ("bench", "Record an instrument's reading."),
    "makeup": ("bench", "Make a batch up to a volume."),
    "note": ("bench", "Write a note."),
    "finish": ("bench", "End the making of a batch with what came out."),
    "clean": ("bench", "Record that a vessel was cleaned."),
    "equipment": (
        "bench",
        "Record that an instrument was taken into use, checked or set.",
    ),
    "bottle": ("goods", "Fill a lot into bottles; opens a packed lot."),
    "case": ("goods", "Put bottles into cases, each with a number of its own."),
    "label": ("goods", "Print a sheet of bottle labels, or record what became of them."),
    "send": ("goods", "Send goods out, write them off, or take them back."),
    "count": ("goods", "Count, measure or weigh what is there of a lot."),
    "check": ("verdicts", "Record that a second person checked a lot or an entry."),
    "hold": ("verdicts", "Put a lot on hold."),
    "release": ("verdicts", "Release a lot, if nothing stands in the way."),
    "reject": ("verdicts", "Reject a lot."),
    "complain": ("goods", "Record a complaint; say what it points to."),
    "complaints": ("lots", "List complaints: what is open, and what became of the others."),
    "answer": ("goods", "Say what became of a complaint, and who told the customer."),
    "due": ("lots", "List what is due: rests, samples to look at, dates, holds, complaints."),
    "stock": ("lots", "List what is on hand."),
    "lot": ("lots", "Show one lot: its inputs, what was done, where it went."),
    "journal": ("lots", "List entries as they were written, corrections included."),
    "list": ("lots", "List sales, deliveries or cleanings of a period."),
    "trace": ("lots", "Trace a lot back to its inputs and forward to who has it."),
    "serving": ("glass", "Say what a glass delivers: strength, sugar, oils, limits."),
    "page": ("glass", "Write a small page of a lot for who pours it, or of all."),
    "foretell": ("glass", "Foretell how clear a lot or a formula will be; keep the score."),
    "cost": ("glass", "Reckon what a lot cost, a mL, a bottle and a glass."),
    "recall": ("recall", "Hold a lot and all made of it; say where it is and whom to call."),
    "contact": ("recall", "Record a call to somebody who holds goods of a lot."),
    "forget": ("recall", "Erase for good who a party or a person is; what they did stays."),
    "suspects": (
        "causes",
        "Say what failed lots share that clear ones do not, and how sure that is.",
    ),
    "trial": ("causes", "Plan a trial that decides among suspects; print its sheet."),
    "compare": (
        "causes",
        "Compare the batches of a trial: response by factor, control beside it.",
    ),
    "chart": (
        "causes",
        "Chart how batches turned out, one after the other, and what the next may show.",
    ),
    "dilute": ("glass", "Say how much spirit and water make a strength."),
    "strength": ("glass", "Say a strength in every measure, and what an amount holds."),
    "syrup": ("glass", "Say how strong a simple syrup is, and whether it stays clear."),
    "sheet": ("bench", "Print or show the batch sheet that a batch is made from."),
    "record": ("lots", "Print the record of a batch or a delivery."),
    "packet": ("lots", "Gather all that an inspector asks for of a lot or a period in one PDF."),
    "correct": ("evidence", "Correct an entry by a new one; the old one stays readable."),
    "strike": ("evidence", "Strike out an entry made by mistake; it stays readable."),
    "verify": ("evidence", "Recompute the whole book and name what does not fit."),
    "seal": ("evidence", "Print the seal of the book: house, number of entries, root."),
    "prove": ("evidence", "Prove what the book says of a lot, or check such a proof."),
    "backup": ("copies", "Write a verified copy of the book, named by day and seal."),
    "restore": ("copies", "Put a backup where no book is yet, after verifying it."),
    "export": (
        "copies",
        "Write the book as lines that any place can import, as tables, key data or events.",
    ),
    "import": ("copies", "Take a spreadsheet into the book, or make a new book of an export."),
    "upgrade": ("copies", "Bring an older book to this version, after a backup."),
}
"""Each command with its room and its line in the help, in the order of the work."""
ROOMS = {
    "guide": "Learning it",
    "masters": "Who and what there is",
    "bench": "At the bench",
    "goods": "Bottles, labels, sending, complaints",
    "verdicts": "May it leave",
    "lots": "Looking up",
    "glass": "What a glass delivers and costs",
    "causes": "Why it failed",
    "recall": "People outside: getting it back, forgetting who they are",
    "evidence": "Trust in the book",
    "copies": "The book as a whole",
}
"""The rooms in the order of the help, each as its heading has it."""


class Front(TyperGroup):
    """The group of all commands, each loaded when it is called."""

    def main(self, args: Sequence[str] | None = None, *rest: Any, **settings: Any) -> Any:  # noqa: ANN401 - as the class above has it
        """Run the command that words name; what is wrong with them is told as ever."""
        words = [shown_option(word) for word in (sys.argv[1:] if args is None else args)]
        is_whole = settings.pop("standalone_mode", True)
        try:
            code = super().main(words, *rest, **{**settings, "standalone_mode": False})
        except UsageError as error:
            if not is_whole:
                raise
            _show(error, as_json="--json" in words)
            sys.exit(error.exit_code)
        if is_whole:
            sys.exit(code or 0)
        return code

    def resolve_command(self, ctx: Context, args: list[str]) -> Any:  # noqa: ANN401 - as the class above has it
        """Return the command that words name, or say which names are near."""
        if args[0] not in COMMANDS and not args[0].startswith("-"):
            raise UsageError(
                f"No such command '{visible(args[0])}'.{question_after(args[0], COMMANDS)}", ctx
            )
        return super().resolve_command(ctx, args)

    def list_commands(self, ctx: Context) -> list[str]:
        """Return the names of the commands in the order of the work."""
        return list(COMMANDS)

    def get_command(self, ctx: Context, cmd_name: str) -> Command | None:
        """Load and return a command, or None when there is none of that name."""
        if cmd_name not in COMMANDS:
            return None
        if cmd_name not in self.commands:
            rooms = typer.Typer(rich_markup_mode=None)
            import_module(module_of(cmd_name)).register(rooms)
            self.commands.update(typer.main.get_group(rooms).commands)
        return self.commands[cmd_name]

    def format_commands(self, ctx: Context, formatter: HelpFormatter) -> None:
        """Write the commands into the help, room by room."""
        width = max(map(len, COMMANDS))
        for room, heading in ROOMS.items():
            with formatter.section(heading):
                formatter.write_dl(
                    [
                        (name.ljust(width), line)
                        for name, (its_room, line) in COMMANDS.items()
                        if its_room == room
                    ]
                )


def _show(error: UsageError, *, as_json: bool) -> None:
    # A group without a word shows its help, which is no mistake to be told of.
    if isinstance(error, NoArgsIsHelpError) and not as_json:
        error.show()
    else:
        complain([usage_problem(error)], "usage", as_json=as_json)


def shown_option(word: str) -> str:
    """Return a word of a call, the name of an option with no character that cannot be seen.

    One that is unknown is quoted, and a terminal would obey what is hidden in it.

    >>> shown_option("--en\u202etry=5"), shown_option("--because=so")
    ('--enU+202Etry=5', '--because=so')
    """
    if not word.startswith("-"):
        return word
    name, equals, value = word.partition("=")
    return f"{visible(name)}{equals}{value}"


def usage_problem(error: UsageError) -> tuple[str, str]:
    """Return what is wrong with the words of a call, and what to do."""
    from reports.kit.format import closed

    path = error.ctx.command_path if error.ctx else "pottle"
    is_bare = isinstance(error, NoArgsIsHelpError)
    what = "Missing command." if is_bare else closed(_what(error))
    return what, f"See how it is called: {path} --help"


def _what(error: UsageError) -> str:
    if not isinstance(error, NoSuchOption):
        return error.format_message()
    known = (name for param in error.ctx.command.params for name in param.opts) if error.ctx else ()
    return f"{error.message}.{did_you_mean(error.option_name, known)}"


def module_of(command: str) -> str:
    """Return the module of a command: it has the command's name.

    >>> module_of("add"), module_of("import")
    ('cli.commands.add', 'cli.commands.import_')
    """
    return f"cli.commands.{command}{'_' if iskeyword(command) else ''}"
