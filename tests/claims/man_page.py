"""The man page, made from what the commands say of themselves.

Guarantees: every command with its arguments, options and examples stands in it, in the macros of
man(7). `python -m tests.renew` writes it; a test holds it to the commands.
"""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import typer
from typer._click import Context

from cli.front import COMMANDS, ROOMS
from cli.kit.examples import EXAMPLES
from cli.kit.parsing import is_common
from cli.main import app

PAGE = Path(__file__).parents[2] / "cli" / "man" / "pottle.1"
ENVIRONMENT = (
    ("POTTLE_LEDGER", "The book, where none is given with --ledger."),
    ("POTTLE_BY", "Initials of who writes, where none are given with --by."),
    ("NO_COLOR", "Anything: no letters are set in bold."),
)
EXITS = (
    ("0", "Done."),
    ("1", "A check found something; a release has something in its way."),
    ("2", "The words could not be read."),
    ("3", "It cannot be true."),
    ("4", "It wants a reason."),
    ("5", "The book or a file could not be used."),
)


def page() -> str:
    """Return the man page."""
    return "\n".join(_lines()) + "\n"


def _lines() -> Iterator[str]:
    group: Any = typer.main.get_command(app)
    yield '.TH POTTLE 1 "" "Pottle" "User Commands"'
    yield from (".SH NAME", r"pottle \- the batch book of a small maker of essences and syrups")
    yield from (".SH SYNOPSIS", r".B pottle", r"\fICOMMAND\fR [\fIARGUMENT\fR ...]")
    yield from (".SH DESCRIPTION", _text(f"{group.help} The book is one file, only ever added to."))
    yield from (".SH OPTIONS OF EVERY COMMAND", *_options(filter(is_common, group.params)))
    for room, heading in ROOMS.items():
        yield f".SH {_text(heading.upper())}"
        for name in (name for name, (its, _) in COMMANDS.items() if its == room):
            yield from _command(name, group.get_command(Context(group), name))
    for title, rows in (("ENVIRONMENT", ENVIRONMENT), ("EXIT STATUS", EXITS)):
        yield f".SH {title}"
        for term, words in rows:
            yield from (".TP", f".B {_text(term)}", _text(words))
    yield from (".SH SEE ALSO", r"\fBpottle guide\fR lists pages to read in the terminal.")


def _command(name: str, command: Any) -> Iterator[str]:
    below = getattr(command, "commands", None)
    if below:
        for verb, found in below.items():
            yield from _command(f"{name} {verb}", found)
        return
    arguments = [param for param in command.params if param.param_type_name == "argument"]
    options = [
        param
        for param in command.params
        if param.param_type_name == "option" and not param.hidden and not is_common(param)
    ]
    taken = " ".join(rf"\fI{_text(str(param.metavar))}\fR" for param in arguments)
    yield from (".SS " + rf"pottle {name} {taken}".rstrip(), _text(command.help or ""))
    yield from _options(options)
    for line in EXAMPLES[name]:
        yield from (".PP", rf"\fBpottle {_text(line)}\fR")


def _options(options: Any) -> Iterator[str]:
    for option in options:
        taken = "" if option.is_flag else rf" \fI{_text(option.metavar)}\fR"
        names = ", ".join(_text(word) for word in option.opts)
        yield from (".TP", rf"\fB{names}\fR{taken}", _text(option.help))


def _text(words: str) -> str:
    r"""Return words as roff has them: nothing of them is a request or an escape.

    >>> print(_text("--out 5 \\ 3"))
    \-\-out 5 \e 3
    """
    told = words.replace("\\", r"\e").replace("-", r"\-").replace("\n", " ")
    return rf"\&{told}" if told.startswith((".", "'")) else told


def renew() -> None:
    """Write the page anew."""
    PAGE.write_text(page(), "utf-8")
