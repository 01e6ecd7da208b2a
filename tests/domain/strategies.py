"""Facts and entries of every kind, made up at random from the types of their fields."""

from datetime import UTC, date, datetime
from enum import StrEnum
from functools import cache
from typing import Any

from hypothesis import strategies as st

from ledger.domain.amounts.quantity import MOST, Measure, Quantity
from ledger.domain.entries import FACTS, Draft, Entry, Level, Opened, Posting, When
from ledger.domain.entries.choices import LotType, Origin, Place, Precision
from ledger.domain.entries.fields import FieldSpec, specs

TEXTS = st.text(st.characters(codec="utf-8"), max_size=12)
AMOUNTS = st.integers(0, MOST)
QUANTITIES = st.builds(Quantity, st.integers(1, MOST), st.sampled_from(Measure), TEXTS)
INSTANTS = st.datetimes(datetime(1970, 1, 1), datetime(2199, 12, 31), timezones=st.just(UTC)).map(  # noqa: DTZ001 - hypothesis asks for bounds without a zone
    lambda moment: moment.replace(microsecond=0)
)
SEQS = st.integers(1, 10**9)
WHENS = st.builds(When, INSTANTS, st.integers(-720, 840), st.sampled_from(Precision))

_BY_SHAPE: dict[type, st.SearchStrategy[Any]] = {
    str: TEXTS,
    bool: st.booleans(),
    Quantity: QUANTITIES,
    date: st.dates(date(1970, 1, 1), date(2199, 12, 31)),
    datetime: INSTANTS,
}


def _value(spec: FieldSpec) -> st.SearchStrategy[Any]:
    if spec.is_many:
        return st.lists(of_class(spec.shape), max_size=3).map(tuple)
    if spec.shape is int:
        one: st.SearchStrategy[Any] = st.integers(-MOST if spec.is_signed else 0, MOST)
    elif issubclass(spec.shape, StrEnum):
        one = st.sampled_from(spec.shape)
    else:
        one = _BY_SHAPE[spec.shape]
    return st.none() | one if spec.is_optional else one


def of_class(facts_class: type) -> st.SearchStrategy[Any]:
    """Return facts of a kind, or rows that are their children."""
    built = st.builds(facts_class, **{spec.name: _value(spec) for spec in specs(facts_class)})
    return built.map(_as_a_text_says)


def _as_a_text_says(facts: Any) -> Any:
    """Leave out what stands beside the text."""
    if getattr(facts, "commitment", None) is None:
        return facts
    given = [spec.name for spec in specs(type(facts)) if not spec.is_beside]
    return type(facts)(**{name: getattr(facts, name) for name in given})


def drafts(kind: str) -> st.SearchStrategy[Draft]:
    """Return drafts of a kind, with everything or nothing of what may be absent."""
    some_text, some_seq = st.none() | TEXTS, st.none() | SEQS
    opens = st.builds(Opened, TEXTS, st.sampled_from(LotType), st.sampled_from(Measure))
    return st.builds(
        Draft,
        facts=of_class(FACTS[kind]),
        lot=some_text,
        happened=WHENS,
        by=some_text,
        origin=st.sampled_from(Origin),
        sheet=some_text,
        reason=some_text,
        corrects=some_seq,
        opens=st.none() | opens,
    )


@cache
def entries(kind: str) -> st.SearchStrategy[Entry]:
    """Return entries of a kind, with any movements at all."""
    some_text = st.none() | TEXTS
    place = st.none() | st.sampled_from(Place)
    posting = st.builds(Posting, some_text, some_text, place, AMOUNTS, AMOUNTS)
    return st.builds(
        Entry,
        seq=SEQS,
        draft=drafts(kind),
        recorded_at=INSTANTS,
        stands_for=SEQS,
        postings=st.lists(posting, max_size=3).map(tuple),
        level=st.none() | st.builds(Level, TEXTS, AMOUNTS),
    )
