"""The words of a line at the bench: parted, put together, and put into the slots of a verb.

Guarantees: pure; a unit stays with its number wherever it was written. Refuses: a word that has no
place, with those that have one.
"""

import re
import shlex
from collections.abc import Sequence

from cli.screens.bench.slots import ALL, LASTS, Slot, Verb
from ledger.errors import InputError

_UNITS = frozenset(
    {
        *("ml", "cl", "dl", "l", "us", "imp", "fl", "gal", "oz", "av", "lb", "mg", "g", "kg"),
        *("each", "pcs", "kpa", "µm", "um", "μm", "°c", "c", "ntu", "°bx", "g/ml"),
        *("min", "m", "h", "hour", "hours", "d", "day", "days", "w", "week", "weeks"),
    }
)
"""Words that stay with the number before them."""
_BARE = re.compile(r"\d+(?:[.,]\d+)?|\d+ ?[x×] ?\d+(?:[.,]\d+)?")

_LEFT_OUT = {"--temp": re.compile(r" ?°?[Cc]$"), "--shaken": re.compile("x$")}
"""What tells a word's slot and is no part of what the option takes."""


def told(slot: Slot, value: str) -> tuple[str, ...]:
    """Return the words of the command that a slot's word becomes; none for one without option."""
    if not slot.option or slot.option == LASTS:
        return ()
    plain = _LEFT_OUT[slot.option].sub("", value) if slot.option in _LEFT_OUT else value
    return slot.option, with_unit(plain, slot.unit)


def with_unit(value: str, unit: str) -> str:
    """Return a value with a unit where it is a bare number.

    >>> with_unit("15", "mL"), with_unit("15g", "mL"), with_unit("16x30", "mL")
    ('15mL', '15g', '16x30mL')
    """
    return f"{value}{unit}" if unit and _BARE.fullmatch(value) else value


def filled_slots(name: str, verb: Verb, words: Sequence[str]) -> list[tuple[Slot, str]]:
    """Return each word with the slot that it fills, in the order of the verb's bare words.

    Raises:
        InputError: A word has no place, or one that is needed is missing.
    """
    filled: list[tuple[Slot, str]] = []
    for word in words:
        taken = {slot.option or slot.name for slot, _ in filled if not slot.takes_many}
        free = (slot for slot in verb.slots if (slot.option or slot.name) not in taken)
        slot = next((slot for slot in free if slot.fits.fullmatch(word)), None)
        if slot is None:
            raise InputError(
                f'"{word}" has no place in a line of {name}.',
                f"It takes {_takes(verb)}; such as: {verb.example}",
            )
        filled.append((slot, word))
    there = {slot.name for slot, _ in filled}
    missing = [slot.name for slot in verb.slots if slot.is_needed and slot.name not in there]
    if missing:
        raise InputError(
            f"The {' and the '.join(missing)} {'is' if len(missing) == 1 else 'are'} missing.",
            f"Write it as: {verb.example}",
        )
    return filled


def _takes(verb: Verb) -> str:
    names = list(dict.fromkeys(slot.name for slot in verb.slots))
    return ", ".join(names)


def parted(text: str) -> tuple[str, list[str]]:
    """Return a line's own words, and those that go to the command as they are.

    >>> parted("15 --temp 19 because it was spilt")
    ('15', ['--temp', '19', '--because', 'it was spilt'])
    """
    plain, _, reason = f" {text}".partition(" because ")
    plain, dash, options = plain.partition(" --")
    raw = split(f"--{options}") if dash else []
    return plain.strip(), [*raw, *(["--because", reason] if reason else [])]


def split(text: str) -> list[str]:
    """Return words as a shell parts them.

    Raises:
        InputError: A quotation is not closed.
    """
    try:
        return shlex.split(text)
    except ValueError as error:
        raise InputError(
            "A quotation mark in the line has no other to close it.", "Close it, or leave it out."
        ) from error


def joined(words: Sequence[str]) -> list[str]:
    """Return words with each unit beside its number, and a count beside its size.

    >>> joined("16 x 30 mL".split()), joined("0.5 fl oz 19 °C".split())
    (['16x30 mL'], ['0.5 fl oz', '19 °C'])
    >>> joined("bottle caps b30 4 x 30 mL".split())
    ['bottle', 'caps', 'b30', '4x30 mL']
    """
    told: list[str] = []
    for word in words:
        last = told[-1] if told else ""
        if word.casefold() in ("x", "×") and last.isdecimal():
            told[-1] = f"{last}x"
        elif last.endswith("x") and last[:-1].isdecimal() and word[0].isdecimal():
            told[-1] = f"{last}{word}"
        elif word.casefold() in _UNITS and last.lstrip("-−")[:1].isdigit() and word != ALL:
            told[-1] = f"{last} {word}"
        else:
            told.append(word)
    return told
