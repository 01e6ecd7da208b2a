"""The command `start`: begin a batch; opens a lot."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_formula
from cli.kit.options import BestBefore, Code, Force, Text, Vessel
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def start(
    call: Call,
    formula: Annotated[
        Text,
        typer.Argument(help="Formula to follow, if there is one.", autocompletion=complete_formula),
    ] = None,
    volume: Annotated[list[str] | None, typer.Argument(help="Target volume.")] = None,
    product: Annotated[Text, typer.Option(help="Name of what is made.")] = None,
    kind: Annotated[
        Text,
        typer.Option(
            help="essence, washed-essence, gum-emulsion, blend, macerate, base-syrup, syrup or "
            "rework."
        ),
    ] = None,
    target: Annotated[Text, typer.Option(help="Target volume.")] = None,
    pour: Annotated[Text, typer.Option(help="How a syrup is poured, such as 1:7.")] = None,
    best_before: BestBefore = None,
    vessel: Vessel = None,
    trial: Annotated[Text, typer.Option(help="Name of the trial it belongs to.")] = None,
    factor: Annotated[
        list[str] | None, typer.Option(help="Factor set on purpose: rest=48h.")
    ] = None,
    control: Annotated[
        bool, typer.Option("--control", help="The control of its trial: the house method.")
    ] = False,
    repeat: Annotated[Text, typer.Option(help="Which repeat of the same factors, from 1.")] = None,
    from_plan: Annotated[
        Text, typer.Option(metavar="TRIAL", help="Begin the jars of a planned trial's evening.")
    ] = None,
    version: Annotated[
        Text, typer.Option(help="Version of the formula; default the newest in use.")
    ] = None,
    sheet_out: Annotated[
        Path | None, typer.Option("--out", metavar="FILE", help="PDF file for its batch sheet.")
    ] = None,
    force: Force = False,
    code: Code = None,
) -> None:
    """Begin a batch; opens a lot."""
    if from_plan:
        from cli.screens.causes.trial import begin_jars

        begin_jars(call, " ".join([from_plan, formula or "", *(volume or [])]))
        return
    from cli.screens.bench.sheet import begin
    from ledger.service.bench.start import start as verb

    begin(
        call,
        lambda book: verb(
            book,
            call.how(),
            formula=formula,
            product=product,
            kind=kind,
            target=target or " ".join(volume or []),
            pour=pour,
            best_before=best_before,
            vessel=vessel,
            trial=trial,
            factors="; ".join(factor or []),
            control="yes" if control else None,
            repeat=repeat,
            version=version,
            code=code,
        ),
        sheet_out,
        force=force,
    )


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.bench.start import StartAnswer
    from reports.json.causes.trial import JarsAnswer

    return (StartAnswer, JarsAnswer)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(start, answers))
