"""Entries as plain values and back: nothing lost, nothing null, every kind."""

import json
from collections.abc import Iterator
from datetime import UTC, datetime
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import (
    FACTS,
    Facts,
    Level,
    Look,
    Note,
    Opened,
    Party,
    Posting,
    Receipt,
    Start,
)
from ledger.domain.entries.bench import Factor
from ledger.domain.entries.canonical import canonical_text, read_canonical
from ledger.domain.entries.choices import LotType, Origin, Place, Precision
from ledger.domain.entries.plain import (
    entry_from_plain,
    entry_text,
    entry_to_plain,
    facts_from_plain,
    facts_to_plain,
    has_commitment,
    instant_text,
    kept_entry,
    read_entry,
    read_instant,
)
from tests.domain.builders import EXAMPLES, at, draft, entry, make, when
from tests.domain.strategies import INSTANTS, entries

KINDS = pytest.mark.parametrize("kind", sorted(FACTS))


def all_values(plain: Any) -> Iterator[Any]:
    """Yield a plain value and all that stands in it."""
    yield plain
    inside = plain.values() if isinstance(plain, dict) else plain if isinstance(plain, list) else ()
    for item in inside:
        yield from all_values(item)


def test_every_kind_of_facts_is_listed_and_has_an_example() -> None:
    assert {facts.KIND for facts in Facts.__subclasses__()} == set(FACTS)
    assert set(EXAMPLES) == set(FACTS.values())
    assert all(kind == facts.KIND for kind, facts in FACTS.items())


@KINDS
@settings(max_examples=25)
@given(data=st.data())
def test_an_entry_comes_back_from_its_plain_form_and_from_its_one_text(
    kind: str, data: st.DataObject
) -> None:
    """What is absent of it is left out of both and never null."""
    told = data.draw(entries(kind))
    plain, text = entry_to_plain(told), entry_text(told)
    assert entry_from_plain(plain) == told
    assert read_entry(text) == told
    assert entry_text(read_entry(text)) == text
    assert canonical_text(read_canonical(text)) == text
    assert all(value is not None for value in all_values(json.loads(text)))
    there = {name for name in plain["facts"] if getattr(told.facts, name) not in (None, ())}
    assert set(plain["facts"]) == there
    for name in ("lot", "by", "sheet", "reason", "corrects", "opens"):
        assert (name in plain) == (getattr(told.draft, name) is not None)
    assert ("postings" in plain) == bool(told.postings)
    assert ("level" in plain) == (told.level is not None)


def test_the_text_of_a_bare_entry_is_this_and_no_other() -> None:
    bare = entry(make(Note, text="crème"), 3, at(9), lot=None, by=None)
    assert entry_text(bare) == (
        '{"facts":{"text":"crème"},"happened_at":"2026-03-02T09:00:00Z","kind":"note",'
        '"offset_min":0,"origin":"bench","precision":"exact","recorded_at":'
        '"2026-03-02T09:00:00Z","seq":3,"stands_for":3,"v":1}'
    )


def test_the_text_of_a_full_entry_is_this_and_no_other() -> None:
    facts = make(Start, best_before=datetime(2027, 1, 31, tzinfo=UTC).date(), formula_version=2)
    told = draft(
        replace(facts, factors=(Factor("rest", "48 h"),)),
        happened=when(at(9), 60, "about"),
        origin=Origin.PAPER,
        sheet="S-1",
        reason="misread",
        corrects=4,
        opens=Opened("E-1", LotType.MADE, Measure.UL),
    )
    moves = (Posting("A", "E-1", None, 5, 0), Posting(None, "E-1", Place.SUPPLIER, 7, 7))
    full = replace(
        entry(facts, 9, at(10)),
        draft=told,
        stands_for=4,
        postings=moves,
        level=Level("E-1", 450_000),
    )
    assert entry_to_plain(full) == {
        "v": 1,
        "seq": 9,
        "kind": "start",
        "stands_for": 4,
        "recorded_at": "2026-03-02T10:00:00Z",
        "happened_at": "2026-03-02T09:00:00Z",
        "offset_min": 60,
        "precision": "about",
        "origin": "paper",
        "lot": "E-1",
        "by": "AB",
        "sheet": "S-1",
        "reason": "misread",
        "corrects": 4,
        "opens": {"code": "E-1", "lot_type": "made", "measure": "uL"},
        "postings": [
            {"source": "A", "target": "E-1", "taken": 5, "given": 0},
            {"target": "E-1", "place": "supplier", "taken": 7, "given": 7},
        ],
        "level": {"lot": "E-1", "amount": 450_000},
        "facts": {
            "product": "Orange essence",
            "product_kind": "essence",
            "target": {"amount": 450_000, "measure": "uL", "written": "450 mL"},
            "formula_version": 2,
            "purpose": "sale",
            "best_before": "2027-01-31",
            "factors": [{"name": "rest", "planned": "48 h"}],
        },
    }


def test_a_flag_that_is_off_is_written_down_as_off() -> None:
    plain = facts_to_plain(make(Look))
    assert (plain["ring"], plain["grade"]) == (False, "bright")


def test_words_come_back_as_the_words_of_their_list() -> None:
    back = entry_from_plain(entry_to_plain(entry(make(Look), happened=when(at(9), 0, "day"))))
    assert back.draft.happened.precision is Precision.DAY
    assert back.draft.origin is Origin.BENCH


UNREADABLE: list[tuple[str, dict[str, Any], type[Exception]]] = [
    ("no such kind", {"kind": "brew"}, KeyError),
    ("no such field", {"facts": {"text": "x", "colour": "red"}}, KeyError),
    ("a field too few", {"facts": {}}, TypeError),
    ("no such precision", {"precision": "roughly"}, ValueError),
    ("no such origin", {"origin": "hearsay"}, ValueError),
    ("no such instant", {"recorded_at": "yesterday"}, ValueError),
]


@pytest.mark.parametrize(
    ("changes", "error"), [row[1:] for row in UNREADABLE], ids=[row[0] for row in UNREADABLE]
)
def test_what_no_entry_could_have_written_is_not_read(
    changes: dict[str, Any], error: type[Exception]
) -> None:
    plain = entry_to_plain(entry(make(Note)))
    assert entry_from_plain(plain).facts == make(Note)
    with pytest.raises(error):
        entry_from_plain({**plain, **changes})


def test_a_child_row_with_an_unknown_field_is_not_read() -> None:
    plain = {**facts_to_plain(make(Start)), "factors": [{"name": "rest", "level": "48 h"}]}
    with pytest.raises(KeyError):
        facts_from_plain("start", plain)


def test_a_number_is_read_back_as_written_even_when_it_is_large() -> None:
    facts = make(Receipt, cost_minor=10**15)
    assert facts_from_plain("receipt", facts_to_plain(facts)) == facts


@given(moment=INSTANTS)
def test_an_instant_is_text_of_fixed_width_and_sorts_as_time_does(moment: datetime) -> None:
    text = instant_text(moment)
    assert len(text) == 20
    assert read_instant(text) == moment
    assert (text < instant_text(at(9))) == (moment < at(9))


OTHER_TYPES: dict[type, Any] = {str: 5, int: "5", bool: 1}
"""For each type a value of another, which Python would pass on without a word."""


def with_another_type(value: Any) -> Iterator[Any]:
    """Yield a plain value once for each number, word or truth in it, that one changed."""
    places = value.items() if isinstance(value, dict) else enumerate(value)
    for key, item in list(places):
        for other in (
            with_another_type(item) if isinstance(item, dict | list) else [OTHER_TYPES[type(item)]]
        ):
            copy = value.copy()
            copy[key] = other
            yield copy


@KINDS
def test_a_value_of_another_type_is_refused(kind: str) -> None:
    """A proof from elsewhere may hold any; it would come to grief where the entry is shown."""
    example = EXAMPLES[FACTS[kind]]
    full = replace(
        entry(example, 9, at(10)),
        draft=draft(
            example,
            sheet="S-1",
            reason="misread",
            corrects=4,
            opens=Opened("E-1", LotType.MADE, Measure.UL),
        ),
        postings=(Posting("A", "E-1", Place.SUPPLIER, 5, 0),),
        level=Level("E-1", 450_000),
    )
    plain = entry_to_plain(full)
    assert entry_from_plain(plain) == full
    del plain["v"]
    for changed in with_another_type(plain):
        with pytest.raises((KeyError, TypeError, ValueError)):
            entry_from_plain(changed)


def test_a_text_that_is_kept_is_read_as_the_entry_that_wrote_it() -> None:
    told = entry(make(Note), 7)
    assert kept_entry(entry_text(told)) == told == read_entry(entry_text(told))


def test_only_facts_that_say_a_commitment_have_one() -> None:
    stall = make(Party, phone="555 0100", code="P1", commitment="ab" * 32)
    assert [has_commitment(facts) for facts in (stall, make(Party), make(Note))] == [
        *(True, False, False),
    ]
    assert facts_to_plain(stall) == {"code": "P1", "commitment": "ab" * 32}
