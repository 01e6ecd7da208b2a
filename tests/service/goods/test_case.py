"""Bottles in cases: each case has a number of its own, which no other ever gets."""

import pytest

from ledger.domain.entries import Cases
from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "cases": (
        "cases",
        {"lot": "BPS-001-X", "pack": "2 × 1"},
        None,
        {"count": 2, "holds": 1, "first_case": 1},
    ),
}

REFUSED: dict[str, Refused] = {
    "one number": (
        "cases",
        {"lot": "BPS-001-X", "pack": "12"},
        InputError,
        (
            (
                '"12" is not a number of cases and a number of bottles in each.',
                "Write both with an x between, such as 4 x 12, neither above 100000.",
            ),
        ),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_the_number_of_a_case_that_was_struck_is_not_given_again(bench: Keeper) -> None:
    def first(pack: str) -> tuple[int, str | None]:
        facts = bench.do("cases", lot="BPS-001-X", pack=pack).entry.facts
        assert isinstance(facts, Cases)
        return facts.first_case, facts.company_prefix

    assert first("2 x 1") == (1, None)
    bench.do("strike", entry=str(bench.entries()[-1].seq), because="not packed")
    bench.do("house", company_prefix="9521234")
    assert first("1 x 3") == (3, "9521234")
    bench.do("house", company_prefix="9521235")
    assert first("1 x 1") == (4, "9521235")


def test_a_prefix_with_too_few_digits_left_is_told_before_anything_is_recorded(
    bench: Keeper,
) -> None:
    bench.do("house", company_prefix="952123456789")
    bench.do("cases", lot="BPS-001-X", pack="99999 x 1", because="a trial of numbers")
    check_refused(
        (
            "cases",
            {"lot": "BPS-001-X", "pack": "1 x 1"},
            InputError,
            (
                (
                    "The prefix 952123456789 leaves 5 digits for a case, and 100000 has 6.",
                    "Ask GS1 for a further prefix.",
                ),
            ),
        ),
        bench,
    )


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "cases")
