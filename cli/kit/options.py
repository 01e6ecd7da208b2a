"""The arguments and options that several commands share.

Guarantees: the same thing has the same name and the same help everywhere; codes of lots complete
in the shell. Refuses: options of one command only; they stand with it.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.complete import complete_lot, complete_source

Text = str | None
"""What a person may write or leave out."""
Lot = Annotated[
    str,
    typer.Argument(
        help="Code of the lot, or its ending; . for the lot in hand.", autocompletion=complete_lot
    ),
]
LotOrNone = Annotated[
    Text, typer.Argument(help="Only entries about this lot.", autocompletion=complete_lot)
]
LotOrHouse = Annotated[
    str,
    typer.Argument(
        help="Code of the lot; - for the house as a whole.", autocompletion=complete_lot
    ),
]
Source = Annotated[
    str,
    typer.Argument(
        help="Code of the lot that goes in, or its material.", autocompletion=complete_source
    ),
]
With = Annotated[
    str,
    typer.Option(
        "--with",
        metavar="LOT",
        help="Lot it is done with, or its material.",
        autocompletion=complete_source,
    ),
]
Amount = Annotated[
    list[str], typer.Argument(help="Amount with its unit, such as 30mL or 0.5 fl oz.")
]
Temp = Annotated[Text, typer.Option("--temp", help="Temperature of the liquid in °C.")]
BestBefore = Annotated[Text, typer.Option("--best-before", help="As 2027-06-30.")]
Code = Annotated[Text, typer.Option("--code", help="The maker's own code for the new lot.")]
Vessel = Annotated[Text, typer.Option("--vessel", help="What it stands in.")]
Glass = Annotated[Text, typer.Option("--glass", help="Size of a glass; default 240mL.")]
Pour = Annotated[
    Text, typer.Option("--pour", help="How it is poured, such as 1:7; default as the batch says.")
]
Labour = Annotated[Text, typer.Option("--labour", help="Time of work it took, such as 54min.")]
EntryNumber = Annotated[str, typer.Argument(help="Number of the entry.")]
Out = Annotated[Path, typer.Option("--out", help="PDF file to write.")]
Force = Annotated[bool, typer.Option("--force", help="Write over a file that is there.")]
