"""Reading a formula from the text of a TOML file.

Guarantees: all that is wrong is told at once, each with the line on which it stands. Refuses: keys
it does not know, limits that are none of their step, ends that are the wrong way round.
"""

import tomllib
from collections.abc import Collection

from msgspec import Struct

from ledger.domain.amounts.pours import read_pour
from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import Grade, LookedAt, ProductKind, RestFor
from ledger.domain.entries.masters import FormulaLine, FormulaStep, Keeping
from ledger.domain.masters.toml import line_numbers, toml_values
from ledger.errors import InputError
from ledger.service.desk.reader import Words
from ledger.service.masters.formula_table import TEMPS, TIMES, Table

HEAD = (
    *("code", "version", "product", "kind", "basis", "wanted-clarity", "pour"),
    *("best-before-days", "yield-min", "yield-max", "abv-min", "abv-max", "claim", "label"),
    *("dose", "dose-into", "caution", "prepared-by", "checked-by", "valid-from", "packaging"),
    *("line", "step", "keeping"),
)
"""Keys of the formula itself."""
LINE = ("material", "formula", "amount", "tolerance", "overage")
"""Keys of a line."""
KEEPING = ("storage", "days", "opened-days", "brix-min")
"""Keys of a row that says how long it keeps."""
STEPS: dict[str, tuple[str, ...]] = {
    "add": (*TIMES, *TEMPS),
    "rest": ("rest-for", *TIMES, *TEMPS),
    "filter": ("pore-max", "passes-min", "precoat-min", *TIMES, *TEMPS),
    "rinse": (),
    "decant": (),
    "measure": TEMPS,
    "makeup": TEMPS,
    "look": ("looked-at", "dilution", "worst", "age", *TEMPS),
    "finish": TEMPS,
    "bottle": (),
    "labels": (),
    "check": (),
    "note": (),
}
"""Verbs that a step may have, each with the limits that it may have."""
ASKED_FOR = {
    "rest": ("rest-for", "Say what it is for."),
    "look": ("looked-at", "Say what is to be looked at."),
}
"""What a step of a verb must tell, with what to do where it does not."""


class Known(Struct, frozen=True):
    """What is in the book that a formula may name."""

    people: Collection[str]
    """Initials."""
    materials: Collection[str]
    """Codes of materials."""
    formulas: Collection[str] = ()
    """Codes of formulas."""


def read_formula(text: str, file: str, words: Words, known: Known) -> Formula:
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
    _check_names(head, formula, known)
    # By line, since names are looked up after all else was read.
    words.errors += [error for _, error in sorted(head.wrong, key=lambda placed: placed[0])]
    return formula


def _formula(head: Table) -> Formula:
    words = head.words
    head.known(HEAD, "the formula")
    head.needs("basis")
    # A stand-in, so that the rest is read as well: what is missing was kept to be told.
    basis = head.amount("basis", Measure.UL) or Quantity(1, Measure.UL, "")
    limits = _limits(head)
    dose, dose_into = _dose(head)
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
        dose=dose,
        dose_into=dose_into,
        packaging=head.text_or_none("packaging"),
    )


def _dose(head: Table) -> tuple[Quantity | None, Quantity | None]:
    """Return how much of an essence goes into how much syrup; both or neither."""
    keys = ("dose", "dose-into")
    dose, into = (head.amount(key, Measure.UL) for key in keys)
    if (dose is None) != (into is None):
        told, missing = keys if dose else keys[::-1]
        head.say(
            told,
            InputError(
                f"A formula with {told} tells {missing} too.",
                'Write both, such as dose = "30mL" and dose-into = "1 US gal".',
            ),
        )
    return dose, into


def _limits(head: Table) -> dict[str, int | None]:
    """Return the least and the most of yield and strength, in thousandths of a per cent."""
    keys = ("yield-min", "yield-max", "abv-min", "abv-max")
    limits = {key: head.number_of(key, 1000, "%") for key in keys}
    head.in_order(limits)
    return limits


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
    material, formula = row.text_or_none("material"), row.text_or_none("formula")
    if "material" in row.cells and "formula" in row.cells:
        what = "A line calls for one thing, bought or made here, and this names both."
        row.say("formula", InputError(what, "Write each in a [[line]] of its own."))
    elif not (material or formula):
        todo = 'Write material = "CODE" for what is bought, or formula = "CODE" for what is made.'
        row.say("material", InputError("A line does not say what it calls for.", todo))
    return FormulaLine(
        material=material.lower() if material else None,
        amount=amount or Quantity(1, Measure.UL, ""),
        tolerance_mpct=row.number_of("tolerance", 1000, "%"),
        overage_mpct=row.number_of("overage", 1000, "%"),
        formula=formula.lower() if formula else None,
    )


def _step(row: Table) -> FormulaStep:
    verb, words = _step_verb(row), row.words
    # Beside a verb that is none, its keys are not called unknown too.
    own = STEPS.get(verb, tuple(row.cells))
    row.known(("verb", "words", *own), f"the step {verb}")
    _asks_for(row, verb)
    ends = _ends(row)
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
        age_minutes=row.read("age", words.minutes),
    )


def _step_verb(row: Table) -> str:
    verb = row.text("verb").lower()
    if verb and verb not in STEPS:
        todo = f"Choose one of: {', '.join(STEPS)}."
        row.say("verb", InputError(f'"{verb}" is not a verb of the bench.', todo))
    return verb


def _asks_for(row: Table, verb: str) -> None:
    """Say that a rest or a look does not tell what it is for."""
    if verb not in ASKED_FOR:
        return
    key, todo = ASKED_FOR[verb]
    if key not in row.cells:
        row.say(key, InputError(f'The step {verb} has no "{key}".', todo))


def _ends(row: Table) -> dict[str, int | None]:
    """Return the least and the most of a step's time and warmth."""
    ends = {
        "at-least": row.read("at-least", row.words.minutes),
        "at-most": row.read("at-most", row.words.minutes),
        "temp-min": row.number_of("temp-min", 1000, "°C"),
        "temp-max": row.number_of("temp-max", 1000, "°C"),
    }
    row.in_order(ends)
    return ends


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


def _check_names(head: Table, formula: Formula, known: Known) -> None:
    for key, initials in (
        ("prepared-by", formula.prepared_by),
        ("checked-by", formula.checked_by),
    ):
        if initials and initials not in known.people:
            todo = f'Add the person with: pottle person add {initials} "FULL NAME"'
            head.say(key, InputError(f"The initials {initials} are not in the book.", todo))
    for row, line in zip(_rows(head, "line"), formula.lines, strict=True):
        if line.material and line.material not in known.materials:
            error = InputError(
                f"The material {line.material} is not in the book.",
                f'Add it with: pottle material add {line.material} --name "NAME" --kind KIND',
            )
            row.say("material", error)
        if line.formula and line.formula not in known.formulas:
            what = f"The formula {line.formula} is not in the book."
            row.say("formula", InputError(what, "Load that first: pottle formula load FILE"))
