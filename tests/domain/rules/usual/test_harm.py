"""A complaint that may mean harm is met with a caution at once."""

import pytest

from ledger.domain.entries import Complaint
from ledger.domain.rules.usual.harm import complaint_may_mean_harm
from tests.domain.builders import draft, make, scene


def told(symptom: str, words: str | None = None) -> list[tuple[str, str]]:
    """Return what is remarked on a complaint about OS-001-7."""
    facts = make(Complaint, symptom=symptom, words=words)
    found = complaint_may_mean_harm(draft(facts, "OS-001-7"), scene())
    return [(finding.what, finding.todo) for finding in found]


def test_gas_in_a_bottle_may_burst_it() -> None:
    assert told("gas") == [
        (
            'The complaint says "gas": a bottle that ferments stands under pressure and may burst.',
            "Have bottles of it kept cold, apart from people and children, and opened by nobody "
            "without shelter for eyes and hands; hold the rest: "
            'pottle hold OS-001-7 --because "WHY"',
        )
    ]


def test_somebody_unwell_is_no_matter_of_looks() -> None:
    assert told("odd taste", "My guest had a Rash after it.") == [
        (
            'The complaint says "rash": somebody may be harmed, or may have been.',
            "Do not wait: ask your food authority today what is to be done, as local law says, and "
            'hold the rest: pottle hold OS-001-7 --because "WHY"',
        )
    ]


@pytest.mark.parametrize(
    "symptom",
    [
        "fizzing", "a hiss", "under pressure", "burst", "exploded", "bulging cap", "fermented",
        "gassy", "fermentation", "made her sick", "fell ill", "vomiting", "poisoned", "allergic",
        "hives", "a sharp thing", "something sharp", "glass in it", "shards", "splinter",
        "cut his lip", "choked",
    ],
)  # fmt: skip
def test_words_for_harm_are_known(symptom: str) -> None:
    assert len(told(symptom)) == 1


@pytest.mark.parametrize(
    "symptom",
    ["cloudy, grey glass of soda", "ring", "tastes sharp", "no fizz in the glass", "gasket brown"],
)
def test_words_for_looks_and_taste_raise_no_alarm(symptom: str) -> None:
    assert told(symptom) == []


def test_a_bottle_that_burst_and_cut_somebody_is_told_both() -> None:
    assert [what.split('"')[1] for what, _ in told("burst", "it cut her hand")] == [
        "burst",
        "cut her",
    ]


def test_gas_and_harm_are_remarked_on_each_by_its_own_rule() -> None:
    facts = make(Complaint, symptom="gas", words="My guest had a rash after it.")
    found = complaint_may_mean_harm(draft(facts, "OS-001-7"), scene())
    assert [finding.rule for finding in found] == ["pressure", "harm"]
