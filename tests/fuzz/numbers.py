"""Targets: numbers in smaller units, strengths, syrups, pore sizes and words from lists."""

import re
from collections.abc import Callable
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from functools import partial

from ledger.domain.amounts.pours import read_pour
from ledger.domain.amounts.quantity import MOST
from ledger.domain.amounts.scaled import read_scaled
from ledger.domain.entries.choices import Grade, LookedAt, MaterialKind, Measured, RestFor
from ledger.domain.entries.fields import SCALES
from ledger.domain.entries.texts import LONGEST_TEXT, read_text, read_word
from ledger.science.liquids.strengths import dilution_asked, parse_strength, parse_temperature
from ledger.science.liquids.syrup_asked import syrup_asked
from ledger.service.bench.filter import read_pores
from ledger.service.bench.look import FLAGS, read_flags
from ledger.service.glass.cost import read_margin
from ledger.service.glass.sizes import read_glass
from ledger.service.masters.material import read_strength
from ledger.service.masters.short_names import read_code
from tests.fuzz.laws import attempt, holds, same, text_of

LISTS: tuple[type[StrEnum], ...] = (Grade, LookedAt, MaterialKind, Measured, RestFor)
FIGURE = re.compile(r"[-+]?[0-9]+(?:\.[0-9]+)?")
"""A number as it is written in full."""
HIGHEST_STRENGTH = 100_000
"""All of it, in thousandths of a per cent."""


def scaled(data: bytes) -> None:
    """A number in a smaller unit is whole, in bounds, and read again the same."""
    text = text_of(data)
    for scale, unit in dict.fromkeys((*SCALES.values(), (1, ""), (1000, "NTU"))):
        read = partial(read_scaled, scale=scale, unit=unit, what="figure")
        number = attempt(partial(read, text))
        if number is not None:
            holds(abs(number) <= MOST, "a number is in bounds", number)
            told = FIGURE.search(text.replace(",", ".").replace("−", "-"))
            same("nothing of a number is lost", told and Fraction(told[0]) * scale, number)
            written = f"{Decimal(number) / scale:f}"
            same("a number is read again the same", read(written), number)
            same("a number with its unit too", read(f"{written} {unit}"), number)


def figures(data: bytes) -> None:
    """Strengths, margins, ways to pour, glasses and short names lie where they can lie."""
    text = text_of(data)
    bounds: tuple[tuple[Callable[[str], int | None], int, int], ...] = (
        (read_strength, 0, HIGHEST_STRENGTH),
        (read_margin, 0, HIGHEST_STRENGTH - 1),
        (read_pour, 1, 1000),
        (read_glass, 1, MOST),
    )
    for reader, least, most in bounds:
        found = attempt(partial(reader, text))
        holds(found is None or least <= found <= most, "a figure is in bounds", found)
    code = attempt(lambda: read_code(text, "material", "orange-oil"))
    if code is not None:
        same("a short name is read again the same", read_code(code, "material", "x"), code)


def strengths(data: bytes) -> None:
    """What is asked of a spirit or a syrup is answered in figures that can be, or refused."""
    asked, *others = text_of(data).split("\n")
    more = [*others, *[""] * 4][:4]
    strength = attempt(lambda: parse_strength(asked))
    holds(strength is None or 0 <= strength <= 100, "a strength is in bounds", strength)
    warmth = attempt(lambda: parse_temperature(asked))
    holds(warmth is None or abs(warmth) < 10**10, "a temperature is a number", warmth)
    syrup = attempt(lambda: syrup_asked(asked, *(word or None for word in more)))
    if syrup:
        holds(0 <= syrup.brix <= 100, "a syrup is in bounds", syrup)
        holds(0 <= syrup.sugar_g_per_l < 1600, "sugar is in bounds", syrup)
    dilution = attempt(lambda: dilution_asked(asked, more[0], more[1], more[2] or None))
    holds(dilution is None or dilution.stock_ul >= 0, "no spirit is below zero", dilution)


def looks(data: bytes) -> None:
    """Pore sizes, flags, words from lists and free text are read again the same."""
    text = text_of(data)
    finer, coarser = attempt(lambda: read_pores(text)) or (None, None)
    if finer is not None and coarser is not None:
        holds(0 < finer <= coarser, "a pore is a size, the finer first", text, finer, coarser)
        written = "-".join(f"{Decimal(end) / 1000:f}" for end in (finer, coarser))
        same("pores are read again the same", read_pores(written), (finer, coarser))
    flags = attempt(lambda: read_flags(text))
    if flags is not None:
        holds(flags <= set(FLAGS), "a flag is one of the list", flags)
        same("flags are read again the same", read_flags(", ".join(flags)), flags)
    for words in LISTS:
        word = attempt(partial(read_word, text, words, "word"))
        same("a word is read again the same", word and read_word(word, words, "word"), word)
    kept = attempt(lambda: read_text(text, "text"))
    if kept is not None:
        holds(kept.isprintable() and 0 < len(kept) <= LONGEST_TEXT, "text is kept in bounds", kept)
        same("text is read again the same", read_text(kept, "text"), kept)
