"""The command's front door: lists the commands and takes the global options.

Guarantees: each command's module loads the book only when it runs. Refuses: to list what does not
work.
"""

import sys

import typer

from cli import (
    batches,
    clarifying,
    judging,
    keeping,
    lookup,
    materials,
    papers,
    selling,
    setting_up,
)
from cli.call import (
    AtOption,
    BecauseOption,
    ByOption,
    JsonOption,
    LedgerOption,
    OriginOption,
    SheetOption,
)

app = typer.Typer(
    name="pottle",
    help="The batch book of a small maker of soda-fountain essences and syrups.",
    no_args_is_help=True,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)


@app.callback()
def options(
    ledger: LedgerOption = None,
    by: ByOption = None,
    at: AtOption = None,
    because: BecauseOption = None,
    origin: OriginOption = None,
    sheet: SheetOption = None,
    json: JsonOption = False,
) -> None:
    """The batch book of a small maker of soda-fountain essences and syrups."""


for group in (
    setting_up,
    materials,
    batches,
    clarifying,
    selling,
    judging,
    lookup,
    papers,
    keeping,
):
    group.register(app)


def run() -> None:
    """Run the command; the entry point of the installed program."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")
    app()


if __name__ == "__main__":
    run()
