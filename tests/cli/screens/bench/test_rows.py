"""A row over the jars of a trial is one line for each jar, or is refused."""

import pytest

from cli.screens.bench import rows as module
from cli.screens.bench.rows import Plan, lines_of
from ledger.errors import InputError
from tests.kept.said import check_constants

A_WORD_EACH = (
    "Write one for each, - for a jar that is left out, or one for all; what is the same for all "
    "stands behind a stroke: filter 40 38 / paper 20"
)
JARS_ARE = (
    "A trial's jars are told by their number and what is in them.",
    "Write it as: jars 6 orange-essence 50",
)
ROWS: dict[str, list[str | None]] = {
    "oil 1": ["oil 1", "oil 1", "oil 1"],
    "oil 1 - 2": ["oil 1", None, "oil 2"],
    "oil 1 mL 2 mL 3 mL": ["oil 1 mL", "oil 2 mL", "oil 3 mL"],
    "rest": ["rest", "rest", "rest"],
    "rest 24h 48h 24h / settle": ["rest 24h settle", "rest 48h settle", "rest 24h settle"],
    "filter 40 / same": ["filter 40 same"] * 3,
    "clear hazy cloudy": ["clear", "hazy", "cloudy"],
    "- hazy clear / neat": [None, "hazy neat", "clear neat"],
    "cloudy": ["cloudy", "cloudy", "cloudy"],
}


@pytest.mark.parametrize(("row", "lines"), ROWS.items())
def test_a_row_has_a_word_for_each_jar_or_one_for_all(row: str, lines: list[str | None]) -> None:
    assert lines_of(row, 3) == lines


@pytest.mark.parametrize("row", ["oil 1 2", "clear hazy", "oil 1 2 3 4"])
def test_a_row_with_more_or_fewer_words_than_jars_is_refused(row: str) -> None:
    with pytest.raises(InputError) as refused:
        lines_of(row, 3)
    words = len(row.split()) - row.startswith("oil")
    assert refused.value.problems == ((f"The row has {words} words for 3 jars.", A_WORD_EACH),)


def test_jars_are_begun_with_what_was_set_in_them() -> None:
    plan = Plan().with_row(["rest", "24h", "-"]).with_row(["pore", "5", "-"])
    assert plan.starts(["2", "orange", "50"], "rests") == [
        (*("orange", "50", "--trial", "rests"), *("--factor", "rest=24h", "--factor", "pore=5")),
        ("orange", "50", "--trial", "rests", "--control"),
    ]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["6"], JARS_ARE),
        (["many", "orange", "50"], JARS_ARE),
        (["3", "orange", "50"], ("The row has 2 words for 3 jars.", A_WORD_EACH)),
    ],
)
def test_jars_that_fit_no_row_of_factors_are_refused(
    words: list[str], told: tuple[str, str]
) -> None:
    with pytest.raises(InputError) as refused:
        Plan().with_row(["rest", "24h", "48h"]).starts(words, "rests")
    assert refused.value.problems == (told,)


def test_a_factor_without_levels_is_refused() -> None:
    with pytest.raises(InputError) as refused:
        Plan().with_row(["rest"])
    assert refused.value.problems == (
        (
            "A factor has a name and a level for each jar.",
            "Write it as: factor rest 24h 48h 24h 48h",
        ),
    )


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
