"""Limits in words: where one stands today is said, and what is to come in its place."""

from datetime import date

from ledger.domain.entries import Limit
from ledger.domain.masters.limits import listed_on
from reports.json.masters.limits import limit_answer
from reports.words.entries import limits as module
from reports.words.entries.limits import card, listed_words
from tests.domain.builders import make
from tests.kept.said import check_constants, check_said

ON = date(2026, 3, 2)
NOW = make(Limit)
ENDED = make(Limit, until=date(2026, 3, 1))
WAITING = make(Limit, value_micro=500_000, since=date(2026, 4, 1))


def lines(*said: Limit) -> list[str]:
    return [words for _, words in listed_words(listed_on(said, ON))]


def test_a_limit_in_force_is_listed_without_a_word_of_its_days() -> None:
    assert lines(NOW) == ["safrole none at all as sold"]


def test_a_limit_that_is_past_is_said_to_be_compared_no_more() -> None:
    assert lines(ENDED) == [
        "safrole none at all as sold (past, held until 2026-03-01: not compared)"
    ]


def test_a_limit_to_come_is_said_not_to_be_compared_yet() -> None:
    assert lines(WAITING) == [
        "safrole at most 0.5 mg/kg as sold (to come, from 2026-04-01: not compared yet)"
    ]


def test_what_takes_the_place_of_a_limit_stands_beside_it() -> None:
    assert lines(NOW, WAITING) == [
        "safrole none at all as sold",
        "safrole at most 0.5 mg/kg as sold (to come, from 2026-04-01)",
    ]
    told = listed_on((NOW, WAITING), ON)
    assert card(told) == [
        "safrole: safrole none at all as sold.",
        "Place: US.",
        "Source: 21 CFR 189.180 (value read in it).",
        "safrole: safrole at most 0.5 mg/kg as sold (to come, from 2026-04-01).",
        "Place: US, since 2026-04-01.",
        "Source: 21 CFR 189.180 (value read in it).",
        "Next: pottle limits safrole --value NUMBER --citation SOURCE says it anew.",
    ]
    plain = limit_answer(told)
    assert plain.to_come is not None
    assert (plain.holds, plain.to_come.since) == ("in force", date(2026, 4, 1))


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
