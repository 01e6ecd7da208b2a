"""The command `record`: print the record of a batch or a delivery."""

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force, Lot, Out
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def record(
    call: Call,
    lot: Lot,
    out: Out,
    force: Force = False,
) -> None:
    """Print the record of a batch or a delivery."""
    from cli.kit.answer import say, step_for
    from cli.screens.lots.record import print_record
    from reports.json.lots.record import RecordAnswer

    book = call.book()
    found = print_record(book, lot, out, by=call.writer, force=force)
    code = found.state.code
    lines = f"The record of {code} is in {out}.", f"Next: {step_for(book, found)}"
    say(call, lambda: RecordAnswer(code, str(out)), *lines)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.lots.record import RecordAnswer

    return (RecordAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(record, answers))
