"""The command `rinse`: rinse the cake; kept apart, the liquor opens a lot."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Code, Lot, With
from cli.kit.parsing import Verb
from cli.kit.record import record


def rinse(
    call: Call,
    lot: Lot,
    source: With,
    put_in: Annotated[str, typer.Option("--in", help="Volume put on the cake.")],
    out: Annotated[str, typer.Option("--out", help="Volume that ran through.")],
    to: Annotated[str, typer.Option("--to", help="batch, apart or waste.")],
    code: Code = None,
) -> None:
    """Rinse the cake; kept apart, the liquor opens a lot."""
    from ledger.service.bench.rinse import rinse as verb

    record(
        call,
        verb,
        lot=lot,
        source=source,
        volume_in=put_in,
        volume_out=out,
        went_to=to,
        code=code,
    )


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(rinse))
