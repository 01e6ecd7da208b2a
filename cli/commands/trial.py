"""The command `trial`: plan a trial, print its sheet, draw its jars again."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads, writes
from cli.kit.options import Force, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds

TrialName = Annotated[list[str], typer.Argument(help="Name of the trial.")]


def plan(
    call: Call,
    name: TrialName,
    tries: Annotated[
        list[str] | None,
        typer.Option(
            "--try",
            metavar="WHAT",
            help="What it tries: a lot that is suspected, or NAME=USUAL/SUSPECTED. Once for each.",
        ),
    ] = None,
    formula: Annotated[Text, typer.Option(help="Formula that the jars follow.")] = None,
    product: Annotated[Text, typer.Option(help="Name of what is made in the jars.")] = None,
    kind: Annotated[Text, typer.Option(help="What kind of thing it is; default essence.")] = None,
    jar: Annotated[Text, typer.Option(help="Volume of a jar; default 50 mL.")] = None,
    judged_by: Annotated[Text, typer.Option(help="look (clear or cloudy; default) or ntu.")] = None,
    age: Annotated[Text, typer.Option(help='Age that decides: "7 d" (default) or "1 d".')] = None,
    worst: Annotated[Text, typer.Option(help="Worst grade that still counts as clear.")] = None,
    chance: Annotated[
        Text, typer.Option(help="Chance to name the cause, per cent; default 90.")
    ] = None,
    fails: Annotated[
        Text, typer.Option(help="Per cent of jars that fail with the cause; default as seen.")
    ] = None,
    otherwise: Annotated[
        Text, typer.Option(help="Per cent that fail without it; default as seen.")
    ] = None,
    evening: Annotated[Text, typer.Option(help="Most jars of an evening; default 8.")] = None,
    sheet_out: Annotated[
        Path | None, typer.Option("--out", metavar="FILE", help="PDF file for its sheet.")
    ] = None,
    force: Force = False,
) -> None:
    """Plan a trial that decides among suspects; its jars are drawn from the book before it."""
    from cli.screens.causes.trial import record_plan

    words = {
        "name": " ".join(name),
        "tries": ";".join(tries or ()),
        "formula": formula,
        "product": product,
        "kind": kind,
        "jar": jar,
        "decides": judged_by,
        "age": age,
        "worst": worst,
        "chance": chance,
        "fails": fails,
        "otherwise": otherwise,
        "evening": evening,
    }
    record_plan(call, words, sheet_out, force=force)


def sheet(
    call: Call,
    name: TrialName,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    force: Force = False,
) -> None:
    """Show the plan of a trial, or print its sheet with a table to fill."""
    from cli.screens.causes.trial import show_sheet

    show_sheet(call, " ".join(name), out, force=force)


def prove(call: Call, name: TrialName) -> None:
    """Draw the jars of a trial again, and hold its root to that of the book."""
    from cli.screens.causes.trial import prove_plan

    prove_plan(call, " ".join(name))


def planned() -> Kinds:
    """Return what `trial plan` answers."""
    from reports.json.causes.trial import PlanAnswer

    return (PlanAnswer,)


def shown() -> Kinds:
    """Return what `trial sheet` and `trial prove` answer."""
    from reports.json.causes.trial import TrialAnswer

    return (TrialAnswer,)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    group = typer.Typer(
        help="Plan a trial that decides among suspects; print its sheet.",
        no_args_is_help=True,
        rich_markup_mode=None,
    )
    group.command("plan", cls=Verb)(writes(plan, planned))
    group.command("sheet", cls=Verb)(reads(sheet, shown))
    group.command("prove", cls=Verb)(reads(prove, shown))
    app.add_typer(group, name="trial")
