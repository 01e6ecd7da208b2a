"""The list of commands, known without loading any.

Guarantees: help reads this list alone; a command's module is loaded only when that command is
called. Refuses: to list what does not work; a test holds each line to its command's own words.
"""

from importlib import import_module

import typer
from typer._click import Command, Context
from typer._click.formatting import HelpFormatter
from typer.core import TyperGroup
from typer.main import get_command_name

COMMANDS: dict[str, tuple[str, str]] = {
    "init": ("init", "Make a new book."),
    "demo": ("init", "Play an invented season into a new book; trace a bottle."),
    "house": ("init", "Show the house, or say anew what is given."),
    "person": ("init", "People who write in the book."),
    "material": ("material", "Materials that are bought and used."),
    "party": ("party", "Suppliers and customers, and how to reach them."),
    "formula": ("formula", "Versioned master formulas."),
    "limits": ("limits", "List limits and their sources, show one, or say one anew."),
    "receive": ("start", "Record a delivery; opens a lot."),
    "start": ("start", "Begin a batch; opens a lot."),
    "add": ("start", "Put some of a lot into a batch."),
    "rest": ("start", "Begin a rest, end it, or tell a whole one."),
    "filter": ("filter", "Record one pass through a filter."),
    "rinse": ("filter", "Rinse the cake; kept apart, the liquor opens a lot."),
    "decant": ("filter", "Draw the clear liquid off its sediment."),
    "look": ("filter", "Record how clear a lot looked."),
    "measure": ("filter", "Record an instrument's reading."),
    "makeup": ("start", "Make a batch up to a volume."),
    "note": ("start", "Write a note."),
    "finish": ("start", "End the making of a batch with what came out."),
    "clean": ("check", "Record that a vessel was cleaned."),
    "equipment": (
        "check",
        "Record that an instrument was taken into use, checked or set.",
    ),
    "bottle": ("bottle", "Fill a lot into bottles; opens a packed lot."),
    "label": ("bottle", "Print a sheet of bottle labels, or record what became of them."),
    "send": ("bottle", "Send goods out, write them off, or take them back."),
    "count": ("check", "Count, measure or weigh what is there of a lot."),
    "check": ("check", "Record that a second person checked a lot or an entry."),
    "hold": ("release", "Put a lot on hold."),
    "release": ("release", "Release a lot, if nothing stands in the way."),
    "reject": ("release", "Reject a lot."),
    "complain": ("release", "Record a complaint; say what it points to."),
    "due": ("stock", "List what is due: rests, samples to look at, dates, holds."),
    "stock": ("stock", "List what is on hand."),
    "lot": ("stock", "Show one lot: its inputs, what was done, where it went."),
    "journal": ("stock", "List entries as they were written, corrections included."),
    "trace": ("stock", "Trace a lot back to its inputs and forward to who has it."),
    "serving": ("serving", "Say what a glass delivers: strength, sugar, oils, limits."),
    "cost": ("cost", "Reckon what a lot cost, a mL, a bottle and a glass."),
    "recall": ("recall", "Hold a lot and all made of it; say where it is and whom to call."),
    "contact": ("recall", "Record a call to somebody who holds goods of a lot."),
    "suspects": (
        "suspects",
        "Say what failed lots share that clear ones do not, and how sure that is.",
    ),
    "compare": (
        "suspects",
        "Compare the batches of a trial: response by factor, control beside it.",
    ),
    "dilute": ("dilute", "Say how much spirit and water make a strength."),
    "syrup": ("dilute", "Say how strong a simple syrup is, and whether it stays clear."),
    "sheet": ("record", "Print or show the batch sheet that a batch is made from."),
    "record": ("record", "Print the record of a batch or a delivery."),
    "correct": ("correct", "Correct an entry by a new one; the old one stays readable."),
    "strike": ("correct", "Strike out an entry made by mistake; it stays readable."),
    "verify": ("correct", "Recompute the whole book and name what does not fit."),
    "seal": ("correct", "Print the seal of the book: house, number of entries, root."),
    "prove": ("correct", "Prove what the book says of a lot, or check such a proof."),
    "backup": ("backup", "Write a verified copy of the book, named by day and seal."),
    "restore": ("backup", "Put a backup where no book is yet, after verifying it."),
    "export": ("backup", "Write the book as lines of text that any place can import."),
    "import": ("backup", "Make a new book from the lines of an export."),
    "upgrade": ("backup", "Bring an older book to this version, after a backup."),
}
"""Each command with the module that has it and its line in the help, in the order of the work."""


class Front(TyperGroup):
    """The group of all commands, each loaded when it is called."""

    def list_commands(self, ctx: Context) -> list[str]:
        """Return the names of the commands in the order of the work."""
        return list(COMMANDS)

    def get_command(self, ctx: Context, cmd_name: str) -> Command | None:
        """Load and return a command, or None when there is none of that name."""
        if cmd_name not in COMMANDS:
            return None
        if cmd_name not in self.commands:
            rooms = typer.Typer(rich_markup_mode=None)
            import_module(f"cli.commands.{COMMANDS[cmd_name][0]}").register(rooms)
            _leave_only(rooms, cmd_name)
            self.commands.update(typer.main.get_group(rooms).commands)
        return self.commands[cmd_name]

    def format_commands(self, ctx: Context, formatter: HelpFormatter) -> None:
        """Write the list of commands into the help."""
        with formatter.section("Commands"):
            formatter.write_dl([(name, line) for name, (_, line) in COMMANDS.items()])


def _leave_only(rooms: typer.Typer, name: str) -> None:
    """Take out all commands and groups but one: the words of each take long to look through."""
    rooms.registered_commands = [
        info
        for info in rooms.registered_commands
        if (info.name or get_command_name(getattr(info.callback, "__name__", ""))) == name
    ]
    rooms.registered_groups = [info for info in rooms.registered_groups if info.name == name]
