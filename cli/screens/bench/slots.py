"""What may stand in a line at the bench: the verbs, and for each the words it takes.

Guarantees: pure data; a word of a line goes to the first slot that it fits and that is still free,
so that most words stand in any order.
"""

import re
from typing import NamedTuple

from ledger.domain.entries.choices import (
    AddedAs,
    Cake,
    Grade,
    LookedAt,
    Measured,
    Medium,
    RestFor,
    RinseTo,
)


class Slot(NamedTuple):
    """A place for one word of a line."""

    name: str
    """What it holds, as people are told."""
    fits: re.Pattern[str]
    """The words that fit it."""
    option: str = ""
    """The option of the command that it is given to; empty for a word without one."""
    unit: str = ""
    """What a bare number in it is counted in."""
    is_needed: bool = False
    """Whether the act is nothing without it."""
    takes_many: bool = False
    """Whether it may be filled more than once."""


class Verb(NamedTuple):
    """An act at the bench."""

    command: str
    """The command that it is."""
    slots: tuple[Slot, ...]
    """The words it takes, those that fit fewer words first."""
    example: str
    """A line of it."""
    ends_rest: bool = True
    """Whether a rest that goes on is over by it."""


_NUMBER = r"\d+(?:[.,]\d+)?"
_FIGURE = re.compile(_NUMBER)
_AMOUNT = re.compile(r"[\d½¼¾.,][\d./,½¼¾]*(?: ?[a-zA-Z].*)?")
_ANY = re.compile(r"[^\W\d_].*")


def _number(units: str) -> re.Pattern[str]:
    return re.compile(rf"[-−]?{_NUMBER} ?(?:{units})", re.IGNORECASE)


def _one_of(*words: str) -> re.Pattern[str]:
    return re.compile("|".join(words), re.IGNORECASE)


_TEMP = Slot("temperature", _number("°?C"), "--temp")
_TOOK = Slot("how long it took", _number("min|m|h"), "--took")
_OF_LABOUR = Slot("time of work", _number("min|m|h"), "--labour")
_LASTS = _number("min|m|h|hours?|d|days?|w|weeks?")
ALL = "all"
"""The word for all that is there of a lot."""
LASTS = "lasts"
"""Stands for an option where a rest's length is: the command has none, the bench counts it."""
GRADES = frozenset(map(str, Grade))
"""Words that are a look by themselves."""
READINGS = frozenset(map(str, Measured))
"""Words that are a reading by themselves."""
RESTS = frozenset(map(str, RestFor))
"""Words that begin a rest by themselves."""
FLAGS = ("ring", "louche", "sediment", "floc", "crystals")
"""What a look may find besides its grade."""

VERBS: dict[str, Verb] = {
    "add": Verb(
        "add",
        (
            _TEMP,
            _TOOK,
            Slot("why it goes in", _one_of(*AddedAs), "--as"),
            Slot("amount", re.compile(f"{ALL}|{_AMOUNT.pattern}"), "", "mL", is_needed=True),
        ),
        "oil 15",
    ),
    "rest": Verb(
        "rest",
        (
            _TEMP,
            Slot("purpose", _one_of(*RestFor), "--for"),
            Slot("how long it is to last", _LASTS, LASTS),
            Slot("times shaken", re.compile(r"\d+x"), "--shaken"),
        ),
        "rest 48h",
    ),
    "filter": Verb(
        "filter",
        (
            _TEMP,
            _TOOK,
            Slot("vacuum", _number("kPa"), "--vacuum"),
            Slot("pore", re.compile(rf"{_NUMBER}-{_NUMBER} ?(?:[µμu]m)?"), "--pore"),
            Slot("pore", _number("[µμu]m"), "--pore"),
            Slot("medium", _one_of(*Medium), "--medium"),
            Slot("cake", _one_of(*Cake), "--cake"),
            Slot("volume that came out", _AMOUNT, "--out", "mL", is_needed=True),
            Slot("pore", _FIGURE, "--pore"),
        ),
        "filter 178 same",
    ),
    "rinse": Verb(
        "rinse",
        (
            Slot("where it went", _one_of(*RinseTo), "--to"),
            Slot("volume put on", _AMOUNT, "--in", "mL", is_needed=True),
            Slot("volume that ran through", _AMOUNT, "--out", "mL", is_needed=True),
            Slot("lot it is rinsed with", _ANY, "--with"),
        ),
        "rinse 10 8",
    ),
    "decant": Verb(
        "decant",
        (
            Slot("volume drawn off", _AMOUNT, "", "mL", is_needed=True),
            Slot("heel", _AMOUNT, "--heel", "mL"),
        ),
        "decant 400 20",
    ),
    "makeup": Verb(
        "makeup",
        (
            _TEMP,
            Slot("volume", _AMOUNT, "", "mL", is_needed=True),
            Slot("lot it is made up with", _ANY, "--with"),
        ),
        "makeup 240",
    ),
    "look": Verb(
        "look",
        (
            _TEMP,
            Slot("age", _LASTS, "--age"),
            Slot("dilution", re.compile(r"\d+:\d+"), "--dilution"),
            Slot("grade", _one_of(*Grade), "", is_needed=True),
            Slot("what is looked at", _one_of(*LookedAt), "--of"),
            Slot("flag", _one_of(*FLAGS), "--flag", takes_many=True),
            Slot("turbidity", re.compile(rf"{_NUMBER} ?(?:NTU)?", re.IGNORECASE), "--ntu"),
        ),
        "hazy 9.4",
        ends_rest=False,
    ),
    "measure": Verb(
        "measure",
        (
            Slot("what is read", _one_of(*Measured), "", is_needed=True),
            _TEMP,
            Slot("reading", re.compile(rf"[-−]?{_NUMBER}.*"), "", is_needed=True),
        ),
        "brix 65.2 20C",
        ends_rest=False,
    ),
    "finish": Verb(
        "finish",
        (
            _TEMP,
            _OF_LABOUR,
            Slot("volume that came out", _AMOUNT, "", "mL", is_needed=True),
            Slot("waste", _AMOUNT, "--waste", "mL"),
        ),
        "finish 452",
    ),
    "bottle": Verb(
        "bottle",
        (
            _OF_LABOUR,
            Slot("best-before date", re.compile(r"\d{4}-\d\d-\d\d"), "--best-before"),
            Slot("count and size", re.compile(r"\d+ ?[x×].+"), "", "mL", is_needed=True),
        ),
        "bottle 16x30",
    ),
    "start": Verb(
        "start",
        (
            Slot("volume", _AMOUNT, "--target", "mL", is_needed=True),
            Slot("formula", _ANY, "", is_needed=True),
        ),
        "start orange-essence 240",
        ends_rest=False,
    ),
}
"""The acts with words of their own; whatever else is a command is done as it is typed."""
