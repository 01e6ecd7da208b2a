"""Entries in words: every kind has a title and tells all that was recorded."""

from datetime import timedelta
from types import ModuleType
from typing import Any

import pytest
from msgspec.structs import fields, replace

from ledger.domain.entries import Deviation, Facts, Note, Receipt, Strike
from ledger.domain.entries.bench import Rest
from ledger.domain.entries.choices import MoveAs, Origin, RestFor
from reports.words.entries import bench, goods, masters, parts
from reports.words.entries import bench as reports_words_entries_bench
from reports.words.entries import goods as reports_words_entries_goods
from reports.words.entries import sentence as sentences
from reports.words.entries.goods import gone
from reports.words.entries.sentence import KINDS, notes, sentence, strikes, title
from tests.domain.builders import make
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.reports.words.examples import EXAMPLES, NOON, entry

BY_KIND = {facts.KIND: facts for facts, _ in EXAMPLES}
UNTOLD = {
    ("rest", "began"),
    ("start", "formula_version"),
    ("filter", "vacuum_reference"),
    ("deviation", "about"),
    ("house", "hour_digits"),
    ("receipt", "cost_digits"),
    ("trial", "draw"),
    ("party", "commitment"),
    ("person", "commitment"),
}
"""Fields that may be left out without a word: which entry began a rest, what goes with another
field or how exactly it is kept, and what a note beside the line tells. A formula is told whole by
its own command."""


def all_kinds() -> set[str]:
    return {facts_class.KIND for facts_class in Facts.__subclasses__() if facts_class.KIND}


def test_every_kind_of_entry_has_a_title_and_an_example() -> None:
    assert {facts.KIND for facts in KINDS} == all_kinds() == set(BY_KIND)
    assert len({kind.title for kind in KINDS.values()}) == len(KINDS)
    told = [f"{facts.KIND}: {title(entry(facts))}" for facts in BY_KIND.values()]
    check_golden("titles.txt", "\n".join(told) + "\n")


@pytest.mark.parametrize(("facts", "words"), EXAMPLES, ids=[facts.KIND for facts, _ in EXAMPLES])
def test_an_entry_tells_all_that_was_recorded(facts: Facts, words: str) -> None:
    assert sentence(entry(facts)) == words


def test_money_is_in_the_currency_of_the_house_where_it_is_known() -> None:
    paid = make(Receipt, cost_minor=7450, duty_minor=1000)
    told, bare = sentence(entry(paid), "EUR"), sentence(entry(paid))
    assert "cost 74.50 EUR" in told
    assert "of it duty 10.00 EUR" in told
    assert bare == told.replace(" EUR", "")


def optional_fields() -> list[tuple[str, str]]:
    found = []
    for facts, _ in EXAMPLES:
        for field in fields(facts):
            if facts.KIND == "formula" or (facts.KIND, field.name) in UNTOLD:
                continue
            if field.default is None:
                found.append((facts.KIND, field.name))
    return found


def test_a_field_left_out_leaves_its_words_out_and_no_others() -> None:
    told = []
    for kind, field in optional_fields():
        facts: Any = BY_KIND[kind]
        without = sentence(entry(replace(facts, **{field: None})))
        assert without != sentence(entry(facts)), (kind, field)
        told.append(f"{kind} without {field}: {without}")
    check_golden("entries_without.txt", "\n".join(told) + "\n")


def test_a_rest_that_goes_on_says_so() -> None:
    assert sentence(entry(Rest(RestFor.MACERATE, NOON))) == "to macerate, begun"


GONE = {
    "sale": "sold to A stall",
    "sample": "given as samples to A stall",
    "tasting": "poured at a tasting with A stall",
    "on-return": "sent on sale or return to A stall",
    "returned": "came back from A stall",
    "breakage": "broken at A stall",
    "retained": "kept back as samples by A stall",
    "destroyed": "destroyed by A stall",
}


@pytest.mark.parametrize("moved_as", MoveAs)
def test_every_way_of_moving_says_what_became_of_the_goods(moved_as: MoveAs) -> None:
    assert gone(moved_as, "A stall") == GONE[moved_as]
    assert GONE[moved_as].startswith(f"{gone(moved_as, None)} ")


def test_a_deviation_names_the_entry_it_goes_with() -> None:
    facts = Deviation("barred", "NS-001-J is on hold.", 7)
    assert notes(entry(facts), None, is_struck=False) == ("About entry 7.",)


def test_what_a_reader_must_know_besides_is_said_in_sentences() -> None:
    late = replace(
        entry(
            Note("x"), reason="misread the cylinder", corrects=18, origin=Origin.PAPER, sheet="S-4"
        ),
        recorded_at=NOON + timedelta(days=3),
    )
    assert notes(late, 41, is_struck=False) == (
        "Corrects entry 18.",
        "Written 2026-03-05, later than it happened.",
        "From paper sheet S-4.",
        "Reason: misread the cylinder.",
        "Corrected by entry 41.",
    )


def test_a_plain_entry_needs_no_notes() -> None:
    assert notes(entry(Note("x")), None, is_struck=False) == ()


def test_a_strike_says_what_it_strikes_and_the_struck_entry_by_what() -> None:
    strike = entry(Strike(), seq=41, corrects=18, reason="The wrong lot.")
    assert notes(strike, None, is_struck=False) == ("Strikes entry 18.", "Reason: The wrong lot.")
    assert notes(entry(Note("x"), seq=18), 41, is_struck=True) == ("Struck by entry 41.",)
    assert strikes([strike, entry(Note("x"), corrects=3)]) == {18}


@pytest.mark.parametrize("module", [bench, goods, masters, parts, sentences])
def test_what_is_said_of_every_field_alone_is_the_kept_one(module: ModuleType) -> None:
    check_said(module)


@pytest.mark.parametrize("module", [reports_words_entries_bench, reports_words_entries_goods])
def test_its_tables_figures_and_words_are_the_kept_ones(module: ModuleType) -> None:
    check_constants(module)
