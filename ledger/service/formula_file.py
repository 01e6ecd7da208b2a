"""Reading a formula from the text of a TOML file.

Guarantees: all that is wrong is told at once, each with the line on which it stands. Refuses: keys
it does not know, limits that are none of their step, ends that are the wrong way round.
"""

import tomllib
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass
from typing import Any, TypeVar

from ledger.domain.entries import Formula
from ledger.domain.entries.masters import FormulaLine, FormulaStep, Keeping
from ledger.domain.entries.words import Grade, LookedAt, ProductKind, RestFor
from ledger.domain.quantity import Measure, Quantity
from ledger.domain.toml_places import Place, line_numbers, toml_values
from ledger.errors import InputError, LedgerError
from ledger.service.batches import read_pour
from ledger.service.words import Words, read_text, with_article

ValueT = TypeVar("ValueT")
LONGEST_BITS = 63
"""Bits of the longest whole number that TOML promises to read, without its sign."""
LONGEST_DAYS = 100 * 365
"""The longest time that anything keeps."""
HEAD = (
    *("code", "version", "product", "kind", "basis", "wanted-clarity", "pour"),
    *("best-before-days", "yield-min", "yield-max", "abv-min", "abv-max", "claim", "label"),
    *("caution", "prepared-by", "checked-by", "valid-from", "line", "step", "keeping"),
)
"""Keys of the formula itself."""
LINE = ("material", "amount", "tolerance", "overage")
"""Keys of a line."""
KEEPING = ("storage", "days", "opened-days", "brix-min")
"""Keys of a row that says how long it keeps."""
_TIMES, _TEMPS = ("at-least", "at-most"), ("temp-min", "temp-max")
STEPS: dict[str, tuple[str, ...]] = {
    "add": (*_TIMES, *_TEMPS),
    "rest": ("rest-for", *_TIMES, *_TEMPS),
    "filter": ("pore-max", "passes-min", "precoat-min", *_TIMES, *_TEMPS),
    "rinse": (),
    "decant": (),
    "measure": _TEMPS,
    "makeup": _TEMPS,
    "look": ("looked-at", "dilution", "worst", "age", *_TEMPS),
    "finish": _TEMPS,
    "bottle": (),
    "labels": (),
    "check": (),
    "note": (),
}
"""Verbs that a step may have, each with the limits that it may have."""
PAIRS = {
    "": (("yield-min", "yield-max"), ("abv-min", "abv-max")),
    "step": (_TIMES, _TEMPS),
}
"""Keys of which the first is never more than the second."""


@dataclass(frozen=True, slots=True)
class Table:
    """One table of a file, read word by word."""

    words: Words
    """Reads single words and keeps what is wrong."""
    file: str
    """Name of the file."""
    lines: dict[Place, int]
    """Where everything stands."""
    name: str
    """Name of the table; empty for the head."""
    number: int
    """Which of that name it is, from 0."""
    cells: dict[str, Any]
    """Its values."""
    wrong: list[tuple[int, LedgerError]]
    """What is wrong with the file, each with its line."""

    def say(self, key: str, error: LedgerError) -> None:
        """Keep an error about a key, with the line where the key or its table stands."""
        line = self.lines.get((self.name, self.number, key))
        line = line or self.lines.get((self.name, self.number, ""), 1)
        placed = [(f"{self.file} line {line}: {what}", todo) for what, todo in error.problems]
        self.wrong.append((line, type(error).of(placed)))

    def cell(self, key: str) -> str | None:
        """Return a value as text, or None when the key is not there."""
        value = self.cells.get(key)
        if isinstance(value, list | dict):
            self.say(key, InputError(f'"{key}" is not a single value.', 'Write it in "quotes".'))
            return None
        if isinstance(value, int) and value.bit_length() > LONGEST_BITS:
            self.say(key, InputError(f'"{key}" is too long a number.', "Check the number."))
            return None
        return None if value is None else str(value)

    def read(self, key: str, reader: Callable[[str | None], ValueT]) -> ValueT:
        """Read a value; what is wrong with it is kept with its line."""
        before = len(self.words.errors)
        text = self.cell(key)
        value = reader(text)
        wrong = self.words.errors[before:]
        if not wrong and isinstance(value, int) and value < 0 and key not in _TEMPS:
            wrong = [InputError(f'"{key}" is below zero.', "Write a number from zero up.")]
        del self.words.errors[before:]
        for error in wrong:
            self.say(key, error)
        return value

    def text(self, key: str) -> str:
        """Return a text that must be given."""
        what = key.replace("-", " ")
        return self.read(key, lambda text: self.words.read(lambda: read_text(text or "", what), ""))

    def text_or_none(self, key: str) -> str | None:
        """Return a text, or None."""
        return self.read(key, lambda text: self.words.text_or_none(text, key))

    def number_of(self, key: str, scale: int, unit: str) -> int | None:
        """Return a number in a smaller unit, or None."""
        what = key.replace("-", " ")
        return self.read(key, lambda text: self.words.scaled(text, scale, unit, what))

    def days(self, key: str) -> int | None:
        """Return a number of days that can be added to a date, or None."""
        found = self.number_of(key, 1, "")
        if found is not None and found > LONGEST_DAYS:
            error = InputError(f'"{key}" is more than a hundred years.', "Check the number.")
            self.say(key, error)
        return found

    def needs(self, key: str) -> None:
        """Keep an error when a key is not there."""
        if key not in self.cells:
            what = f'{with_article(self.name or "formula").capitalize()} has no "{key}".'
            self.say(key, InputError(what, f"Write {key} = and its value."))

    def amount(self, key: str, measure: Measure | None) -> Quantity | None:
        """Return an amount in a measure; None when it is not given."""
        found = self.read(key, self.words.amount_or_none)
        if found and found.written and measure and found.measure is not measure:
            kind = "volume" if measure is Measure.UL else "weight"
            such = "480mL" if measure is Measure.UL else "4g"
            error = InputError(
                f'{found.written} is not a {kind}, so it cannot be the "{key}".',
                f"Write a {kind}, such as {such}.",
            )
            self.say(key, error)
        return found

    def known(self, keys: Sequence[str], where: str) -> None:
        """Keep an error for each key that is not one of `keys`."""
        for key in self.cells:
            if key not in keys:
                todo = f"Choose from: {', '.join(keys)}." if keys else "Leave it out."
                self.say(key, InputError(f'"{key}" is not known in {where}.', todo))

    def in_order(self, values: dict[str, int | None]) -> None:
        """Keep an error for each pair of ends that are the wrong way round."""
        for low, high in PAIRS[self.name]:
            least, most = values.get(low), values.get(high)
            if least is not None and most is not None and least > most:
                what = f'"{low}" {self.cell(low)} is more than "{high}" {self.cell(high)}.'
                self.say(high, InputError(what, "Exchange them, or put right whichever is wrong."))


def read_formula(
    text: str, file: str, words: Words, people: Collection[str], materials: Collection[str]
) -> Formula:
    """Return the formula that a text tells.

    What is wrong with it, and whom and what it names that the book does not know, is kept in
    `words`, in the order of the lines.

    Raises:
        InputError: It is not in the form of TOML.
    """
    try:
        cells = toml_values(text)
    except tomllib.TOMLDecodeError as error:
        raise InputError(
            f"The file {file} is not in the form of TOML: {error}.",
            "Mend that place and load it again.",
        ) from error
    head = Table(words, file, line_numbers(text), "", 0, cells, [])
    formula = _formula(head)
    _check_names(head, formula, people, materials)
    words.errors += [error for _, error in sorted(head.wrong, key=lambda item: item[0])]
    return formula


def _formula(head: Table) -> Formula:
    words = head.words
    head.known(HEAD, "the formula")
    head.needs("basis")
    basis = head.amount("basis", Measure.UL) or Quantity(1, Measure.UL, "")
    limits = {
        key: head.number_of(key, 1000, "%")
        for key in ("yield-min", "yield-max", "abv-min", "abv-max")
    }
    head.in_order(limits)
    return Formula(
        code=head.text("code").lower(),
        version=_version(head),
        product=head.text("product"),
        product_kind=head.read(
            "kind", lambda kind: words.needed(kind, ProductKind, "kind of product")
        ),
        basis=basis,
        wanted_clarity=head.read("wanted-clarity", lambda word: words.one_of(word, Grade, "grade")),
        pour_parts=head.read("pour", lambda pour: words.read(lambda: read_pour(pour), None)),
        best_before_days=head.days("best-before-days"),
        yield_min_mpct=limits["yield-min"],
        yield_max_mpct=limits["yield-max"],
        label_text=head.text_or_none("label"),
        caution=head.text_or_none("caution"),
        prepared_by=_initials(head, "prepared-by"),
        checked_by=_initials(head, "checked-by"),
        valid_from=head.read("valid-from", words.day),
        lines=tuple(_line(row) for row in _rows(head, "line")),
        steps=tuple(_step(row) for row in _rows(head, "step")),
        abv_min_mpct=limits["abv-min"],
        abv_max_mpct=limits["abv-max"],
        claim=head.text_or_none("claim"),
        keeping=tuple(_keeping(row) for row in _rows(head, "keeping")),
    )


def _version(head: Table) -> int:
    head.needs("version")
    version = head.number_of("version", 1, "")
    if version == 0:
        head.say("version", InputError("A version counts from 1.", "Write version = 1."))
    return version or 1


def _initials(head: Table, key: str) -> str | None:
    told = head.text_or_none(key)
    return told.upper() if told else None


def _rows(head: Table, key: str) -> list[Table]:
    rows = head.cells.get(key, [])
    if isinstance(rows, list) and all(isinstance(row, dict) for row in rows):
        return [
            Table(head.words, head.file, head.lines, key, number, row, head.wrong)
            for number, row in enumerate(rows)
        ]
    head.say(key, InputError(f'"{key}" is not a list of tables.', f"Write each as [[{key}]]."))
    return []


def _line(row: Table) -> FormulaLine:
    row.known(LINE, "a line")
    row.needs("amount")
    amount = row.amount("amount", None)
    return FormulaLine(
        material=row.text("material").lower(),
        amount=amount or Quantity(1, Measure.UL, ""),
        tolerance_mpct=row.number_of("tolerance", 1000, "%"),
        overage_mpct=row.number_of("overage", 1000, "%"),
    )


def _step(row: Table) -> FormulaStep:
    verb = row.text("verb").lower()
    if verb and verb not in STEPS:
        error = InputError(
            f'"{verb}" is not a verb of the bench.', f"Choose one of: {', '.join(STEPS)}."
        )
        row.say("verb", error)
    own = STEPS.get(verb, tuple(row.cells))
    row.known(("verb", "words", *own), f"the step {verb}")
    words, minutes = row.words, row.words.minutes
    for key in own[:1] if verb in ("rest", "look") else ():
        if key not in row.cells:
            todo = f"Say {'what it is for' if verb == 'rest' else 'what is to be looked at'}."
            row.say(key, InputError(f'The step {verb} has no "{key}".', todo))
    ends = {
        "at-least": row.read("at-least", minutes),
        "at-most": row.read("at-most", minutes),
        "temp-min": row.number_of("temp-min", 1000, "°C"),
        "temp-max": row.number_of("temp-max", 1000, "°C"),
    }
    row.in_order(ends)
    return FormulaStep(
        verb=verb,
        words=row.text_or_none("words"),
        minutes_min=ends["at-least"],
        minutes_max=ends["at-most"],
        temp_min_mdegc=ends["temp-min"],
        temp_max_mdegc=ends["temp-max"],
        pore_max_nm=row.number_of("pore-max", 1000, "µm"),
        passes_min=row.number_of("passes-min", 1, ""),
        rest_for=row.read("rest-for", lambda word: words.one_of(word, RestFor, "kind of rest")),
        precoat_min=row.amount("precoat-min", Measure.MG),
        looked_at=row.read("looked-at", lambda word: words.one_of(word, LookedAt, "thing to see")),
        dilution=row.text_or_none("dilution"),
        worst=row.read("worst", lambda word: words.one_of(word, Grade, "grade")),
        age_minutes=row.read("age", minutes),
    )


def _keeping(row: Table) -> Keeping:
    row.known(KEEPING, "how long it keeps")
    days = row.days("days")
    row.needs("days")
    return Keeping(
        storage=row.text("storage"),
        days=days or 0,
        opened_days=row.days("opened-days"),
        brix_min_mpct=row.number_of("brix-min", 1000, "°Bx"),
    )


def _check_names(
    head: Table, formula: Formula, people: Collection[str], materials: Collection[str]
) -> None:
    for key, initials in (
        ("prepared-by", formula.prepared_by),
        ("checked-by", formula.checked_by),
    ):
        if initials and initials not in people:
            todo = f'Add the person with: pottle person add {initials} "FULL NAME"'
            head.say(key, InputError(f"The initials {initials} are not in the book.", todo))
    for row, line in zip(_rows(head, "line"), formula.lines, strict=True):
        if line.material and line.material not in materials:
            error = InputError(
                f"The material {line.material} is not in the book.",
                f'Add it with: pottle material add {line.material} --name "NAME" --kind KIND',
            )
            row.say("material", error)
