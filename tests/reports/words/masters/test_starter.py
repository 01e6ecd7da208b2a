"""A formula to begin with is read as it stands."""

import tomllib

from reports.words.masters import starter as module
from reports.words.masters.starter import PROPORTION, starter_formula
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said


def test_every_line_names_the_materials_it_was_given() -> None:
    text = starter_formula("lemon-essence", "Lemon “dry” essence", "lemon-oil", "spirit", "carb")
    told = tomllib.loads(text)
    assert [line["material"] for line in told["line"]] == ["lemon-oil", "carb", "spirit"]
    assert (told["code"], told["product"]) == ("lemon-essence", "Lemon “dry” essence")
    assert PROPORTION in text
    check_golden("starter_formula.txt", text)


def test_nothing_clears_what_has_no_clarifier() -> None:
    told = tomllib.loads(starter_formula("a", "A", "oil", "spirit", None))
    assert [line["material"] for line in told["line"]] == ["oil", "spirit"]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
