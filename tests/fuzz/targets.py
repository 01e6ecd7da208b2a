"""Every reader of text from outside, with what it is tried with."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from tests.fuzz import books, documents, mutators, numbers, seeds, tables, words


@dataclass(frozen=True, slots=True)
class Target:
    """A reader and its laws."""

    check: Callable[[bytes], None]
    """Gives the reader an input; raises when a law does not hold."""
    seeds: Callable[[], Sequence[bytes]]
    """Makes the inputs to begin with."""
    mutate: mutators.Mutator | None = None
    """Changes an input and knows what it is; None to change it blindly."""
    longest: int = 200
    """Most bytes of an input."""


LONG = 20_000
TARGETS: dict[str, Target] = {
    "quantities": Target(words.quantities, seeds.words(seeds.AMOUNTS)),
    "numerals": Target(words.numerals, seeds.words(seeds.AMOUNTS)),
    "packs": Target(words.packs, seeds.words(seeds.AMOUNTS)),
    "codes": Target(words.codes, seeds.words(seeds.CODES)),
    "times": Target(words.times, seeds.words(seeds.TIMES)),
    "scaled": Target(numbers.scaled, seeds.words(seeds.NUMBERS)),
    "figures": Target(numbers.figures, seeds.words(seeds.NUMBERS)),
    "strengths": Target(numbers.strengths, seeds.words(seeds.STRENGTHS)),
    "looks": Target(numbers.looks, seeds.words(seeds.LOOKS, seeds.NUMBERS)),
    "formulas": Target(documents.formulas, seeds.formulas, mutators.text_lines, LONG),
    "seasons": Target(documents.seasons, seeds.seasons, mutators.text_lines, LONG),
    "tables": Target(tables.tables, tables.seeds, mutators.text_lines, 4000),
    "acts": Target(books.acts, seeds.acts, mutators.text_lines, 1000),
    "canonical": Target(documents.canonical, seeds.entries, mutators.json_value, LONG),
    "entries": Target(documents.entries, seeds.entries, mutators.json_value, LONG),
    "seals": Target(documents.seals, seeds.seals, None, 400),
    "proofs": Target(documents.proofs, seeds.proofs, mutators.proof, LONG),
    "lines": Target(books.lines, seeds.books, mutators.book_lines, 60_000),
}
"""Targets by the names of what they read, the quickest first."""
