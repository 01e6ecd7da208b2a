"""A map is read whole, or all that is wrong in it is told."""

import pytest

from ledger.errors import InputError
from ledger.service.copies.intake.column_map import read_map
from ledger.service.copies.intake.table_maps import SHIPPED, shipped_map, shipped_text

WRONG = """
dates = "dym"
colour = "red"
[table.Batches]
vessel = "jar 1"
nose = "fine"
acts = [
  { do = "stir", lot = "{Batch}" },
  { do = "add", lot = "{Batch}", source = "{Oil", amount = "{mL} mL", smell = "{Nose}" },
  { do = "start", product = "{What}" },
]
"""


def test_all_that_is_wrong_in_a_map_is_told_at_once() -> None:
    with pytest.raises(InputError) as caught:
        read_map("my.toml", WRONG)
    whats = [what.removeprefix("The map my.toml: ") for what, _ in caught.value.problems]
    assert whats == [
        'It has "colour", which no map has.',
        "Its dates are in no known order.",
        'The table Batches has "nose", which none of its acts takes.',
        'The table Batches has the act "stir", which is no verb of the book.',
        'The table Batches, act add: "{Oil" has a brace without its other.',
        'The table Batches, act add, has an unknown word "smell".',
        "The table Batches, act start, does not say the target.",
    ]


@pytest.mark.parametrize("text", ["[table.A]\nacts = 7", "= 7", "words = 7", "[table]\nA = 1"])
def test_what_is_no_map_is_told(text: str) -> None:
    with pytest.raises(InputError):
        read_map("my.toml", text)


@pytest.mark.parametrize("name", SHIPPED)
def test_a_map_that_comes_with_pottle_can_be_read_and_has_under_forty_lines(name: str) -> None:
    assert shipped_map(name).tables
    assert len(shipped_text(name).splitlines()) < 40


def test_a_map_that_comes_with_no_version_of_pottle_is_refused_with_those_that_do() -> None:
    with pytest.raises(InputError) as caught:
        shipped_map("none")
    assert caught.value.problems == (
        (
            "There is no map none, neither as a file nor with pottle.",
            f"Name a file, or one of: {', '.join(SHIPPED)}.",
        ),
    )


def test_a_map_says_neither_order_nor_sign_where_its_text_does_not() -> None:
    told = read_map("my.toml", '[table.A]\nacts = [{do = "note", lot = "{L}", text = "{T}"}]')
    assert (told.dates, told.decimal, told.words) == (None, None, {"": {}})
