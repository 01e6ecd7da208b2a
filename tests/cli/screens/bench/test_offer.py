"""A step that is offered is the command that the book proposes, its capitals filled in."""

import pytest

from cli.screens.bench import offer as module
from cli.screens.bench.offer import filled_in, offer
from ledger.errors import InputError
from tests.kept.said import check_constants

UNITS = {"LMC-001-F": "g"}


def filled(step: str, *words: str) -> str:
    return " ".join(filled_in(offer(step, "OE-001-5"), words, UNITS.get))


def test_a_step_without_capitals_is_done_as_it_stands() -> None:
    assert filled("pottle add OE-001-5 SOO-001-3 30mL") == "add OE-001-5 SOO-001-3 30mL"
    assert offer("pottle release OE-001-5", "OE-001-5").shown == "release"


def test_a_bare_number_is_in_what_the_lot_is_counted_in() -> None:
    assert filled("pottle finish OE-001-5 VOLUME", "452") == "finish OE-001-5 452mL"
    assert filled("pottle add OE-001-5 LMC-001-F AMOUNT", "7") == "add OE-001-5 LMC-001-F 7g"
    assert filled("pottle bottle OE-001-5 COUNT x SIZE", "16x30") == "bottle OE-001-5 16x30mL"
    assert (
        filled("pottle look OE-001-5 GRADE --of neat", "clear") == "look OE-001-5 clear --of neat"
    )


def test_words_of_a_quoted_name_stay_together() -> None:
    step = 'pottle start --product "NAME" --kind KIND --target VOLUME'
    assert offer(step, None).blanks == ("NAME", "KIND", "VOLUME")


def test_too_few_and_too_many_words_are_refused() -> None:
    with pytest.raises(InputError) as refused:
        filled("pottle finish OE-001-5 VOLUME")
    assert refused.value.problems == (
        ("This step leaves open: VOLUME.", "Write it after the number of the step."),
    )
    with pytest.raises(InputError) as refused:
        filled("pottle finish OE-001-5 VOLUME", "452", "20")
    assert refused.value.problems == (('"20" is more than this step takes.', "It takes: VOLUME."),)
    with pytest.raises(InputError) as refused:
        filled("pottle release OE-001-5", "now")
    assert refused.value.problems == (
        ('"now" is more than this step takes.', "Write the number alone."),
    )


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
