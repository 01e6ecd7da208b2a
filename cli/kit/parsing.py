"""Reading a command's words before its options are told apart.

Guarantees: a figure below zero reaches the command, which says what is wrong with it; what an
option was called before still works, with a remark. Refuses: unknown options, as ever.
"""

import re
from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise
from typing import Any

import typer
from typer._click import Command, Context
from typer._click.exceptions import UsageError
from typer._click.formatting import HelpFormatter
from typer.core import TyperCommand

from cli.kit.call import COMMON
from cli.kit.complete import words

OLD_NAMES: dict[str, dict[str, str]] = {
    "add": {"--over": "--took"},
    "suspects": {"--since": "--from"},
    "start": {"--print": "--out"},
    "plan": {"--print": "--out"},
}
"""What options were called before the same idea had the same name everywhere, by command."""
_BELOW_ZERO = re.compile(r"-[.,]?\d", re.ASCII)
_FIGURE = re.compile(r"(?:[\w-]+=)?[-−+]?\d+(?:[.,/]\d+)?", re.ASCII)
UNITS = frozenset(
    unit.casefold()  # which makes of the sign for a millionth the Greek letter
    for unit in (
        *("µl", "ul", "ml", "cl", "dl", "l", "mg", "g", "kg", "oz", "lb", "each", "fl", "pt"),
        *("qt", "gal", "us", "imp", "av", "%", "kpa", "mbar", "hpa", "bar", "inhg", "mmhg"),
        *("°c", "°f", "c", "f", "µm", "um", "min", "h", "d", "ntu", "°bx"),
    )
)
"""What may stand alone after a figure and belongs to it."""
_CLOSED = re.compile(r"(?:[^:]*: )?([\w-]+(?:, [\w-]+)* or [\w-]+)\.")
"""A help that is a list of the words to choose from."""
MINUS = "\N{MINUS SIGN}"


class Verb(TyperCommand):
    """A command whose amounts and readings may be written with a minus sign."""

    def __init__(self, *args: Any, **settings: Any) -> None:  # noqa: ANN401 - of any command
        """Name what each option takes after the option."""
        super().__init__(*args, **settings)
        for parameter in self.params:
            if parameter.metavar is None and parameter.name and not is_switch(parameter):
                parameter.metavar = placeholder(parameter.name, parameter.nargs)
            known = closed_list(getattr(parameter, "help", None) or "")
            if known and parameter._custom_shell_complete is None:
                parameter._custom_shell_complete = _completer(known)

    def format_options(self, ctx: typer.Context, formatter: HelpFormatter) -> None:  # type: ignore[override]
        """Write the options of the command itself, and one line that names those of all."""
        common = [param for param in self.get_params(ctx) if is_common(param)]
        write_options(self, ctx, formatter, without=common)
        if common:
            names = ", ".join(param.opts[0] for param in common)
            formatter.write_paragraph()
            formatter.write_text(f"Common options: {names}; see pottle help options.")

    def format_epilog(self, ctx: typer.Context, formatter: HelpFormatter) -> None:  # type: ignore[override]
        """Write examples of the command."""
        from cli.kit.examples import EXAMPLES

        told = EXAMPLES.get(ctx.command_path.partition(" ")[2], ())
        if told:
            with formatter.section("Examples"):
                for line in told:
                    formatter.write(f"{' ' * formatter.current_indent}pottle {line}\n")

    def parse_args(self, ctx: typer.Context, args: list[str]) -> list[str]:  # type: ignore[override]
        """Parse the words; a figure such as -18 is no option, and an old name is understood."""
        told = with_new_names(args, OLD_NAMES.get(self.name or "", {}))
        # Completion parses too, and machines read what stands on standard error.
        if not (ctx.resilient_parsing or "--json" in args or ctx.find_root().params.get("json")):
            for old, new in zip(args, told, strict=True):
                if old != new:
                    name, now = old.partition("=")[0], new.partition("=")[0]
                    typer.echo(f"Note: {name} is called {now} now; {name} still works.", err=True)
        self._refuse_swallowed(ctx, told)
        try:
            return super().parse_args(ctx, with_minus_signs(with_units(told)))
        except UsageError as error:
            error.ctx = error.ctx or ctx  # so that the help of this command is pointed to
            raise

    def _refuse_swallowed(self, ctx: typer.Context, args: Sequence[str]) -> None:
        """Refuse an option without its value that would take the next option for one."""
        options = [param for param in self.get_params(ctx) if param.param_type_name == "option"]
        names = {name for param in options for name in (*param.opts, *param.secondary_opts)}
        bare = {name for param in options if is_switch(param) for name in param.opts}
        before_end = args[: args.index("--")] if "--" in args else args
        for name, value in pairwise(before_end):
            if name in names - bare and value in names:
                raise UsageError(f"Option '{name}' requires an argument.", ctx)


def closed_list(help_text: str) -> list[str]:
    """Return the words to choose from, where the help of a word is a list of them; else none.

    >>> closed_list("fresh or same."), closed_list("For parts: weight or volume.")
    (['fresh', 'same'], ['weight', 'volume'])
    >>> closed_list("Who gets it; or market, or walk-in.")
    []
    """
    found = _CLOSED.fullmatch(help_text)
    return re.split(", | or ", found[1]) if found else []


def _completer(known: Sequence[str]) -> Callable[[Context, object, str], list[str]]:
    complete = words(*known)
    return lambda context, _, incomplete: complete(context, incomplete)


def is_common(param: object) -> bool:
    """Return whether an option is one of those that every command has."""
    return getattr(param, "help", None) in COMMON


def write_options(
    command: Command, ctx: Context, formatter: HelpFormatter, without: Sequence[object]
) -> None:
    """Write what a command takes into its help, but for some of its options."""
    left = [param for param in command.get_params(ctx) if param not in without]
    for title, kind in (("Arguments", "argument"), ("Options", "option")):
        told = [
            record
            for param in left
            if param.param_type_name == kind and (record := param.get_help_record(ctx))
        ]
        if told:
            with formatter.section(title):
                formatter.write_dl(told)


def with_new_names(args: Sequence[str], names: Mapping[str, str]) -> list[str]:
    """Write options by their names of today, but for what stands after the end of options.

    >>> with_new_names(["--over=5min", "--as", "top-up", "--", "--over"], {"--over": "--took"})
    ['--took=5min', '--as', 'top-up', '--', '--over']
    """
    end = args.index("--") if "--" in args else len(args)
    parts = [arg.partition("=") for arg in args[:end]]
    return [*("".join((names.get(name, name), *rest)) for name, *rest in parts), *args[end:]]


def with_units(args: Sequence[str]) -> list[str]:
    """Put a figure and the units written after it with a blank together, as quotes would.

    >>> with_units(["--target", "1", "US", "gal", "--set", "amount=30", "mL", "--", "5", "L"])
    ['--target', '1 US gal', '--set', 'amount=30 mL', '--', '5', 'L']
    """
    end = args.index("--") if "--" in args else len(args)
    told = list[str]()
    for arg in args[:end]:
        if told and arg.casefold() in UNITS and _is_figure(told[-1]):
            told[-1] += f" {arg}"
        else:
            told.append(arg)
    return [*told, *args[end:]]


def _is_figure(text: str) -> bool:
    figure, *units = text.split(" ")
    return bool(_FIGURE.fullmatch(figure)) and all(unit.casefold() in UNITS for unit in units)


def placeholder(name: str, nargs: int) -> str:
    """Return what stands in the help for the words a person gives.

    >>> placeholder("added_as", 1), placeholder("amount", -1)
    ('ADDED-AS', 'AMOUNT ...')
    """
    return name.replace("_", "-").upper() + (" ..." if nargs < 0 else "")


def is_switch(parameter: object) -> bool:
    """Return whether an option is given without a value."""
    return bool(getattr(parameter, "is_flag", False))


def with_minus_signs(args: Sequence[str]) -> list[str]:
    """Write the hyphen before a figure as a minus sign, but for what an option takes.

    >>> with_minus_signs(["OE-001-5", "-30mL", "--at", "-2h"])
    ['OE-001-5', '−30mL', '--at', '-2h']
    """
    before = ["", *args]
    return [
        MINUS + arg[1:] if _BELOW_ZERO.match(arg) and not last.startswith("-") else arg
        for last, arg in zip(before, args, strict=False)
    ]
