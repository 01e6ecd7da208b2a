"""Commands of formulas: load, new, list, show, diff, scale, withdraw, samples.

Guarantees: amounts and limits read alike in all of them.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads, writes
from cli.kit.complete import complete_formula, complete_material
from cli.kit.options import Amount, Force, Text
from cli.kit.parsing import Verb
from cli.kit.record import record
from cli.kit.schema import Kinds

FormulaCode = Annotated[
    str, typer.Argument(help="Short name of a formula.", autocompletion=complete_formula)
]
Version = Annotated[int | None, typer.Option(help="Which version; default the newest.")]


def load(call: Call, file: Annotated[Path, typer.Argument(help="A formula in TOML.")]) -> None:
    """Record a version of a formula from a file."""
    from ledger.service.masters.formula import load as verb

    record(call, verb, file=str(file))


def new(
    call: Call,
    code: Annotated[str, typer.Argument(help="Its short name, such as lemon-essence.")],
    product: Annotated[
        Text, typer.Option(help="Name of what it makes; default after its short name.")
    ] = None,
    oil: Annotated[
        Text,
        typer.Option(
            help="Material it is made of; default the oil its short name is near to.",
            autocompletion=complete_material,
        ),
    ] = None,
    out: Annotated[
        Path | None, typer.Option("--out", help="File to write; default CODE.toml.")
    ] = None,
    force: Force = False,
) -> None:
    """Write the file of a formula to begin with, every key explained."""
    from cli.screens.masters.new_formula import write_starter

    write_starter(call, code, product, oil, out, force=force)


def show_list(call: Call) -> None:
    """List the formulas in the book with their versions."""
    from cli.screens.masters.formula import list_formulas

    list_formulas(call)


def show(
    call: Call,
    code: FormulaCode,
    version: Version = None,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    force: Force = False,
) -> None:
    """Show a formula."""
    from cli.screens.masters.formula import show_formula

    show_formula(call, code, version, out, force=force)


def diff(
    call: Call,
    code: FormulaCode,
    old: Annotated[int, typer.Argument(help="One version.")],
    new: Annotated[int, typer.Argument(help="The other version.")],
) -> None:
    """Say what differs between two versions of a formula."""
    from cli.screens.masters.formula import compare_formulas

    compare_formulas(call, code, old, new)


def scale(call: Call, code: FormulaCode, volume: Amount, version: Version = None) -> None:
    """Say how much of everything a volume calls for."""
    from cli.screens.masters.formula import scale_formula

    scale_formula(call, code, " ".join(volume), version)


def withdraw(
    call: Call,
    code: FormulaCode,
    version: Annotated[str, typer.Argument(help="Number of the version.")],
) -> None:
    """Say that a version is no longer to be followed."""
    from ledger.service.masters.formula import withdraw as verb

    record(call, verb, code=code, version=version)


def written() -> Kinds:
    """Return what `formula new` answers."""
    from reports.json.masters.new_formula import NewFormulaAnswer

    return (NewFormulaAnswer,)


def samples(
    call: Call,
    folder: Annotated[
        Path, typer.Argument(metavar="DIR", help="Folder for them; made if missing.")
    ] = Path("formulas"),
    force: Force = False,
) -> None:
    """Write the sample formulas that come with pottle, to be changed and loaded."""
    from cli.screens.masters.samples import write_samples

    write_samples(call, folder, force=force)


def sampled() -> Kinds:
    """Return what `formula samples` answers."""
    from reports.json.kit.answer import File

    return (list[File],)


def listed() -> Kinds:
    """Return what `formula list` answers."""
    from reports.json.masters.formula import FormulaRow

    return (list[FormulaRow],)


def shown() -> Kinds:
    """Return what `formula show` answers."""
    from reports.json.kit.answer import File
    from reports.json.masters.formula import FormulaAnswer

    return (FormulaAnswer, File)


def differing() -> Kinds:
    """Return what `formula diff` answers."""
    from reports.json.masters.formula import DifferenceRow

    return (list[DifferenceRow],)


def scaled() -> Kinds:
    """Return what `formula scale` answers."""
    from reports.json.masters.formula import ScaledAnswer

    return (ScaledAnswer,)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    group = typer.Typer(
        help="Versioned master formulas.", no_args_is_help=True, rich_markup_mode=None
    )
    group.command("load", cls=Verb)(writes(load))
    group.command("new", cls=Verb)(reads(new, written))
    group.command("list", cls=Verb)(reads(show_list, listed))
    group.command("show", cls=Verb)(reads(show, shown))
    group.command("diff", cls=Verb)(reads(diff, differing))
    group.command("scale", cls=Verb)(reads(scale, scaled))
    group.command("withdraw", cls=Verb)(writes(withdraw))
    group.command("samples", cls=Verb)(reads(samples, sampled))
    app.add_typer(group, name="formula")
