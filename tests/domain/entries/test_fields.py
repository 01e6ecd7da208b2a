"""The shape of every entry's fields, as read from its class."""

from datetime import date, datetime
from enum import StrEnum
from itertools import permutations
from typing import Annotated

import pytest
from msgspec import Struct
from msgspec.structs import fields, replace

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries import (
    FACTS,
    Add,
    Count,
    Facts,
    Filter,
    Formula,
    Look,
    Measurement,
    Receipt,
    Rest,
    Start,
    Strike,
)
from ledger.domain.entries.bench import Factor
from ledger.domain.entries.choices import Grade, ProductKind, RestFor
from ledger.domain.entries.fields import SCALES, FieldSpec, scale_ending, specs
from ledger.domain.entries.masters import FormulaLine, FormulaStep

SHAPES: list[tuple[type, FieldSpec]] = [
    (Start, FieldSpec("product", str, False, False, None, False)),
    (Start, FieldSpec("product_kind", ProductKind, False, False, None, False)),
    (Start, FieldSpec("target", Quantity, False, False, None, False)),
    (Start, FieldSpec("pour_parts", int, True, False, None, False)),
    (Start, FieldSpec("best_before", date, True, False, None, False)),
    (Start, FieldSpec("factors", Factor, False, True, None, False)),
    (Rest, FieldSpec("purpose", RestFor, False, False, None, False)),
    (Rest, FieldSpec("started_at", datetime, False, False, None, False)),
    (Rest, FieldSpec("ended_at", datetime, True, False, None, False)),
    (Rest, FieldSpec("began", int, True, False, "entry", False)),
    (Rest, FieldSpec("temp_mdegc", int, True, False, None, True)),
    (Measurement, FieldSpec("reading_micro", int, False, False, None, True)),
    (Look, FieldSpec("ring", bool, False, False, None, False)),
    (Look, FieldSpec("grade", Grade, False, False, None, False)),
    (Add, FieldSpec("source", str, False, False, "lot", False)),
    (Filter, FieldSpec("cake_of", str, True, False, "lot", False)),
    (Receipt, FieldSpec("material", str, False, False, "material", False)),
    (Formula, FieldSpec("checked_by", str, True, False, "person", False)),
    (Formula, FieldSpec("wanted_clarity", Grade, True, False, None, False)),
    (Formula, FieldSpec("lines", FormulaLine, False, True, None, False)),
    (FormulaLine, FieldSpec("material", str, True, False, "material", False)),
    (Count, FieldSpec("amount", Quantity, False, False, None, False, may_be_nothing=True)),
    (FormulaStep, FieldSpec("temp_min_mdegc", int, True, False, None, True)),
]


@pytest.mark.parametrize(
    ("facts", "spec"), SHAPES, ids=[f"{facts.__name__}.{spec.name}" for facts, spec in SHAPES]
)
def test_a_field_is_described_as_its_class_has_it(facts: type, spec: FieldSpec) -> None:
    assert spec in specs(facts)


@pytest.mark.parametrize("facts", FACTS.values(), ids=str)
def test_fields_are_described_in_their_order_and_read_once(facts: type[Facts]) -> None:
    assert [spec.name for spec in specs(facts)] == [item.name for item in fields(facts)]
    assert specs(facts) is specs(facts)


def test_a_kind_without_fields_has_none() -> None:
    assert specs(Strike) == ()


@pytest.mark.parametrize(
    ("name", "plain"),
    [
        ("temp_mdegc", "temp"),
        ("density_mg_per_l", "density"),
        ("density_temp_mdegc", "density_temp"),
        ("abv_mpct", "abv"),
        ("cost_minor", "cost"),
        ("ntu_milli", "ntu"),
        ("reading_micro", "reading"),
        ("pore_low_nm", "pore_low"),
        ("vacuum_pa", "vacuum"),
        ("fill_check_mg", "fill_check"),
        ("fraction_ppm", "fraction"),
        ("minutes", "minutes"),
        ("best_before", "best_before"),
    ],
)
def test_people_type_the_name_without_its_unit(name: str, plain: str) -> None:
    assert FieldSpec(name, int, True, False, None, False).plain_name == plain


def test_a_text_may_lack_what_is_optional_and_what_stands_beside_it() -> None:
    spec = FieldSpec("words", str, False, False, None, False)
    assert [replace(spec, is_optional=one, is_beside=other).may_lack
            for one in (False, True) for other in (False, True)
            ] == [False, True, True, True]  # fmt: skip


@pytest.mark.parametrize("facts", FACTS.values(), ids=str)
def test_no_two_fields_of_a_kind_have_one_plain_name(facts: type[Facts]) -> None:
    names = [spec.plain_name for spec in specs(facts)]
    assert len(names) == len(set(names))


def test_of_two_endings_that_fit_the_longer_is_found_first() -> None:
    order = list(SCALES)
    for longer, shorter in permutations(order, 2):
        if longer.endswith(shorter):
            assert order.index(longer) < order.index(shorter)
            assert scale_ending(f"x{longer}") == longer


def test_only_whole_numbers_have_an_ending_for_their_unit() -> None:
    classes: list[type[Struct]] = [*FACTS.values(), Factor, FormulaLine, FormulaStep]
    for facts in classes:
        for spec in specs(facts):
            assert spec.shape is int or scale_ending(spec.name) is None


class Word(StrEnum):
    ONE = "one"


class WithFloat(Struct, frozen=True):
    amount: float


class WithOptionalBytes(Struct, frozen=True):
    photo: bytes | None = None


class WithMarkedWord(Struct, frozen=True):
    word: Annotated[Word, "signed", "lot"]


@pytest.mark.parametrize(
    ("unknown", "name"), [(WithFloat, "amount"), (WithOptionalBytes, "photo")], ids=str
)
def test_a_type_that_the_book_cannot_store_is_refused(unknown: type, name: str) -> None:
    with pytest.raises(TypeError) as caught:
        specs(unknown)
    assert str(caught.value) == f"The field {name} has a type that the book cannot store."


def test_the_marks_of_a_field_are_read_in_any_order() -> None:
    assert specs(WithMarkedWord) == (FieldSpec("word", Word, False, False, "lot", True),)
