"""The command `prove`: prove what the book says of a lot, or check such a proof."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.complete import complete_lot
from cli.kit.options import Force
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds
from cli.kit.seals import SealText


def prove(
    call: Call,
    lot: Annotated[
        str | None,
        typer.Argument(help="Code of the lot, or its ending.", autocompletion=complete_lot),
    ] = None,
    out: Annotated[Path | None, typer.Option(help="File to write the proof to.")] = None,
    check: Annotated[
        Path | None, typer.Option(help="Check this proof; needs no book.", metavar="FILE")
    ] = None,
    seal: SealText = None,
    force: Force = False,
) -> None:
    """Prove what the book says of a lot, or check such a proof."""
    from cli.screens.evidence.prove import check_proof, write_proof

    if check:
        check_proof(call, check, seal, lot, out)
    else:
        write_proof(call, lot, out, seal, force=force)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.evidence.prove import ProveAnswer

    return (ProveAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(prove, answers))
