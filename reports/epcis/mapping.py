"""What happened to goods, as events.

Guarantees: one event for each version of each act, its identifier its own; an amount that nobody
measured is left out, and what one's words do not fit. Refuses: to tell of a case that no entry
tells of, and what became of one later, which the book does not know.

References:
    GS1 EPCIS 2.0, 7.4.1.2 (declaring an error), 7.4.2 (objects), 7.4.3 (aggregation), 7.4.6
        (transformation).
    GS1 CBV 2.0, 7.1 (steps), 7.2 (dispositions), 7.4 (sources, destinations), 7.5 (reasons).
    UN/CEFACT Recommendation 20: MLT millilitre, GRM gram.
"""

from collections.abc import Iterable, Iterator, Mapping
from datetime import UTC, datetime
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Cases, Count, Judge, Move, Receipt, When
from ledger.domain.entries.choices import MoveAs, Precision, Verdict
from ledger.domain.lots.lot import Lot
from ledger.service.lots.sales import Period
from ledger.service.recall.story import End, Ended, Happened
from reports.epcis.event_id import event_id
from reports.epcis.events import (
    AggregationEvent,
    Amount,
    AnyEvent,
    Destination,
    ErrorDeclaration,
    ObjectEvent,
    Source,
    Spot,
    TransformationEvent,
)
from reports.epcis.names import Names

Owned = Literal["owning_party", "possessing_party"]
_UNITS = {Measure.UL: ("MLT", 1000), Measure.MG: ("GRM", 1000), Measure.UEACH: (None, 10**6)}
"""Unit and how many of the book's smallest are one of it, by measure; pieces have no unit."""
_REASONS = {End.STRUCK: "did_not_occur", End.CORRECTED: "incorrect_data"}
"""Reasons for an error; that more went in later is neither."""


class Way(Struct, frozen=True):
    """How an act is told in the standard's words."""

    step: str
    """What was being done."""
    disposition: str | None = None
    """Where the goods stand after it."""
    action: Literal["ADD", "OBSERVE", "DELETE"] = "OBSERVE"
    """Whether they came into being, were seen, or are no more."""
    is_here: bool = True
    """Whether they are with the house after it."""


MOVED: Mapping[MoveAs, Way] = {
    MoveAs.SALE: Way("shipping", "in_transit", is_here=False),
    MoveAs.SAMPLE: Way("shipping", "in_transit", is_here=False),
    MoveAs.ON_RETURN: Way("shipping", "in_transit", is_here=False),
    MoveAs.TASTING: Way("dispensing", "dispensed", "DELETE", is_here=False),
    MoveAs.RETURNED: Way("receiving", "returned"),
    MoveAs.BREAKAGE: Way("destroying", "destroyed", "DELETE", is_here=False),
    MoveAs.DESTROYED: Way("destroying", "destroyed", "DELETE", is_here=False),
    MoveAs.RETAINED: Way("sampling"),
}
"""How goods that move are told, by where they go."""
JUDGED: Mapping[Verdict, Way] = {
    Verdict.RELEASE: Way("inspecting", "sellable_not_accessible"),
    Verdict.HOLD: Way("holding", "non_sellable_other"),
    Verdict.REJECT: Way("inspecting", "non_conformant"),
    Verdict.REWORK: Way("inspecting", "non_sellable_other"),
    Verdict.RECALL: Way("holding", "recalled"),
}
"""How a verdict is told. What was released may be sold, and nobody can reach it yet."""
RECEIVED = Way("receiving", "in_progress")
COUNTED = Way("cycle_counting")
MADE = Way("creating_class_instance", "in_progress", "ADD")
CASED = Way("packing", "in_progress", "ADD")
TO_CUSTOMERS = (MoveAs.SALE, MoveAs.SAMPLE, MoveAs.ON_RETURN)
"""Ways on which somebody gets goods."""


class Told(Struct, frozen=True):
    """An event, and what it is of."""

    event: AnyEvent
    """The event."""
    lots: tuple[Lot, ...]
    """Lots in it."""
    party: str | None
    """Who else is in it."""


def events_of(
    acts: Iterable[tuple[Happened, ...]], names: Names, period: Period
) -> tuple[Told, ...]:
    """Return the events of a period: of what happened in it, or was found wrong in it.

    What stands in the place of an event that was found wrong comes with it.
    """
    return tuple(told for act in acts for told in _versions(act, names, period))


def _versions(act: tuple[Happened, ...], names: Names, period: Period) -> Iterator[Told]:
    events = [_identified(_event(version, names), names) for version in act]
    last_place = {event.event_id: place for place, event in enumerate(events)}
    followers = set[str]()
    for place, (version, event) in enumerate(zip(act, events, strict=True)):
        after = events[place + 1] if _is_followed(version) and place + 1 < len(act) else None
        is_in = _is_in(version, period) or event.event_id in followers
        # A version that says the same as a later one was not wrong in anything that is told.
        if not is_in or last_place[event.event_id] != place:
            continue
        followers |= {after.event_id} if after else set()
        ended = version.ended
        told = replace(event, error_declaration=_error(ended, after)) if ended else event
        yield Told(told, (version.lot, *(each.lot for each in version.inputs)), _party(version))


def _is_followed(version: Happened) -> bool:
    return version.ended is not None and version.ended.how is not End.STRUCK


def _is_in(version: Happened, period: Period) -> bool:
    when = version.entry.draft.happened
    if period.holds(version.entry):
        return True
    if version.ended is None:
        return False
    found = When(version.ended.at, when.offset_min).local().date()
    return period.first <= found <= period.last


def _error(ended: Ended, after: AnyEvent | None) -> ErrorDeclaration:
    ids = (after.event_id,) if after else None
    return ErrorDeclaration(_utc(ended.at), _REASONS.get(ended.how), ids)


def _identified(event: AnyEvent, names: Names) -> AnyEvent:
    return replace(event, event_id=event_id(event, names.terms))


def _event(version: Happened, names: Names) -> AnyEvent:
    facts = version.entry.facts
    if isinstance(facts, Cases) and version.case:
        return _cased(version, names.case(version.case, facts.company_prefix), names)
    return _made(version, names) if version.inputs else _object(version, names)


def _cased(version: Happened, case: str, names: Names) -> AggregationEvent:
    entry, here = version.entry, Spot(names.here)
    return AggregationEvent(
        event_time=entry.draft.happened.local().isoformat(),
        event_time_zone_offset=_offset(entry.draft.happened),
        record_time=_utc(entry.recorded_at),
        biz_step=CASED.step,
        disposition=CASED.disposition,
        read_point=here,
        biz_location=here,
        entry=entry.stands_for,
        time_known=_known(entry.draft.happened),
        parent_id=case,
        action="ADD",
        child_quantity_list=(_amount(version.lot, version.amount, names),),
    )


def _made(version: Happened, names: Names) -> TransformationEvent:
    entry, here = version.entry, Spot(names.here)
    return TransformationEvent(
        event_time=entry.draft.happened.local().isoformat(),
        event_time_zone_offset=_offset(entry.draft.happened),
        record_time=_utc(entry.recorded_at),
        biz_step=MADE.step,
        disposition=MADE.disposition,
        read_point=here,
        biz_location=here,
        entry=entry.stands_for,
        time_known=_known(entry.draft.happened),
        input_quantity_list=tuple(_amount(each.lot, each.amount, names) for each in version.inputs),
        output_quantity_list=(_amount(version.lot, version.amount, names),),
    )


def _object(version: Happened, names: Names) -> ObjectEvent:
    entry, way, here = version.entry, way_of(version), Spot(names.here)
    sources, destinations = _ends(version, names)
    facts = entry.facts
    return ObjectEvent(
        event_time=entry.draft.happened.local().isoformat(),
        event_time_zone_offset=_offset(entry.draft.happened),
        record_time=_utc(entry.recorded_at),
        biz_step=way.step,
        disposition=way.disposition,
        read_point=here,
        biz_location=here if way.is_here else None,
        entry=entry.stands_for,
        document=facts.document if isinstance(facts, (Move, Receipt)) else None,
        time_known=_known(entry.draft.happened),
        action=way.action,
        quantity_list=(_amount(version.lot, version.amount, names),),
        source_list=sources or None,
        destination_list=destinations or None,
    )


def way_of(version: Happened) -> Way:
    """Return how an act that transformed nothing is told."""
    match version.entry.facts:
        case Receipt():
            return RECEIVED
        case Move(moved_as=way):
            return MOVED[way]
        case Judge(verdict=verdict):
            return JUDGED[verdict]
        case Count():
            return COUNTED
        case _:
            return MADE


def _party(version: Happened) -> str | None:
    facts = version.entry.facts
    if isinstance(facts, Receipt):
        return facts.supplier
    return facts.party if isinstance(facts, Move) else None


def _ends(version: Happened, names: Names) -> tuple[tuple[Source, ...], tuple[Destination, ...]]:
    """Return whence goods came and whither they went, where they passed from hand to hand.

    On sale or return they change hands and no owner. Who owned what came back is not in the book.
    """
    facts, party = version.entry.facts, _party(version)
    other = names.party(party) if party else None
    if isinstance(facts, Receipt):
        return _passed(other, names.maker, ("possessing_party", "owning_party"))
    if isinstance(facts, Move) and facts.moved_as is MoveAs.RETURNED:
        return _passed(other, names.maker, ("possessing_party",))
    if isinstance(facts, Move) and facts.moved_as in TO_CUSTOMERS:
        only_had = facts.moved_as is MoveAs.ON_RETURN
        owned: tuple[Owned, ...] = () if only_had else ("owning_party",)
        return _passed(names.maker, other, ("possessing_party", *owned))
    return (), ()


def _passed(
    source: str | None, target: str | None, as_what: tuple[Owned, ...]
) -> tuple[tuple[Source, ...], tuple[Destination, ...]]:
    sources = tuple(Source(source, way) for way in as_what) if source else ()
    targets = tuple(Destination(target, way) for way in as_what) if target else ()
    return sources, targets


def _amount(lot: Lot, amount: int | None, names: Names) -> Amount:
    unit, parts = _UNITS[lot.measure]
    if not amount:
        return Amount(names.lot(lot))
    number = amount // parts if amount % parts == 0 else amount / parts
    return Amount(names.lot(lot), number, unit)


def _known(when: When) -> str | None:
    return None if when.precision is Precision.EXACT else str(when.precision)


def _offset(when: When) -> str:
    """Return an offset as the standard writes it.

    >>> _offset(When(datetime(2026, 3, 2, tzinfo=UTC), -210))
    '-03:30'
    """
    hours, minutes = divmod(abs(when.offset_min), 60)
    return f"{'-' if when.offset_min < 0 else '+'}{hours:02}:{minutes:02}"


def _utc(at: datetime) -> str:
    return f"{at.astimezone(UTC):%Y-%m-%dT%H:%M:%SZ}"
