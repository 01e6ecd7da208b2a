"""The command `bench`: a session for an evening's work, in short lines."""

import sys
from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_lot
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def bench(
    call: Call,
    lot: Annotated[
        Text,
        typer.Argument(
            help="Lot to take in hand; default the one you had in hand here.",
            autocompletion=complete_lot,
        ),
    ] = None,
    trial: Annotated[
        Text, typer.Option(metavar="NAME", help="Work along the jars of a trial, a row an act.")
    ] = None,
    scale: Annotated[
        Text,
        typer.Option(metavar="PORT", help="Serial port of a scale; weigh in a line reads it."),
    ] = None,
    plain: Annotated[
        bool, typer.Option("--plain", help="Draw nothing below the line, for a screen reader.")
    ] = False,
) -> None:
    """Work in short lines: oil 15, rest 48h, filter 178, cloudy."""
    from cli.screens.bench.evening import Evening

    evening = Evening(call, call.book(), scale=scale)
    if trial:
        from cli.screens.bench.trial import trial_evening

        evening = trial_evening(call, evening.book, trial)
    evening.begin(lot)
    if sys.stdin.isatty() and sys.stdout.isatty() and not call.json:
        from cli.screens.bench.terminal import play

        play(evening, plain=plain)
        return
    from cli.screens.bench.piped import play as play_lines

    if code := play_lines(evening, sys.stdin):
        raise typer.Exit(code)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.desk.recorded import RecordedAnswer

    return (list[RecordedAnswer],)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(bench, answers))
