"""The whole document: its events, and what their identifiers stand for.

Guarantees: whatever an event names is explained before the events, so far as the book knows it; the
same book at the same moment gives the same bytes. Refuses: telephone numbers, addresses of others,
prices, and the names of the house's people.

References:
    GS1 EPCIS 2.0, 7.2 (document) and 10; GS1 CBV 2.0, 10 (attributes of master data; from memory).
"""

from collections.abc import Iterable, Iterator, Sequence
from datetime import UTC, datetime

import msgspec
from msgspec import Struct

from ledger.domain.lots.lot import Lot
from ledger.service.lots.sales import Period
from ledger.service.recall.story import Story
from reports.epcis.events import (
    CONTEXT,
    OWN,
    AggregationEvent,
    Attribute,
    Body,
    Document,
    Element,
    Header,
    MasterData,
    ObjectEvent,
    TransformationEvent,
    Vocabulary,
)
from reports.epcis.mapping import Told, events_of
from reports.epcis.names import Names, names_of

VERSION = "2.0"
"""Version of the standard."""
_KIND = "urn:epcglobal:epcis:vtype:"
_WHAT = "cbvmda:"


class Exported(Struct, frozen=True):
    """A document, and what is said of it."""

    content: bytes
    """The document."""
    objects: int
    """How many events tell of goods that stayed what they were."""
    transformations: int
    """How many tell what was made of what."""
    mistaken: int
    """How many of all are declared an error."""
    rough: int
    """How many have a time that is not known to the minute."""
    cases: int
    """How many tell of bottles that were put into a case."""
    articles: tuple[str, ...]
    """What is named by the number of its article, in order."""
    web: str
    """The address below which all else is named."""


def export_of(story: Story, period: Period, now: datetime) -> Exported:
    """Return what happened in a period as a document.

    Raises:
        RefusedError: The house has no address on the web.
    """
    lots = {each.lot.code: each.lot for act in story.acts for each in act}
    names = names_of(story.house, lots.values(), story.numbers)
    told = events_of(story.acts, names, period)
    events = tuple(each.event for each in told)
    return Exported(
        content=_written(
            Document(
                context=(CONTEXT, {OWN: names.terms}),
                schema_version=VERSION,
                creation_date=f"{now.astimezone(UTC):%Y-%m-%dT%H:%M:%SZ}",
                epcis_header=Header(MasterData(tuple(_vocabularies(told, names)))),
                epcis_body=Body(events),
            )
        ),
        objects=sum(isinstance(event, ObjectEvent) for event in events),
        transformations=sum(isinstance(event, TransformationEvent) for event in events),
        mistaken=sum(event.error_declaration is not None for event in events),
        rough=sum(event.time_known is not None for event in events),
        cases=sum(isinstance(event, AggregationEvent) for event in events),
        articles=_articles(told, names),
        web=names.house.web or "",
    )


def _written(document: Document) -> bytes:
    return msgspec.json.format(msgspec.json.encode(document), indent=1) + b"\n"


def _articles(told: Iterable[Told], names: Names) -> tuple[str, ...]:
    lots = (lot for each in told for lot in each.lots)
    return tuple(sorted({lot.name for lot in lots if lot.code in names.gtins}))


def _vocabularies(told: Sequence[Told], names: Names) -> Iterator[Vocabulary]:
    lots = {lot.code: lot for each in told for lot in each.lots}
    others = sorted({each.party for each in told if each.party})
    parties = {names.party(other): other for other in others}
    if lots:
        yield Vocabulary(
            f"{_KIND}EPCClass",
            tuple(Element(names.lot(lot), tuple(_of_lot(lot))) for lot in lots.values()),
        )
    yield Vocabulary(f"{_KIND}Location", (Element(names.here, tuple(_of_house(names))),))
    yield Vocabulary(
        f"{_KIND}Party",
        (
            Element(names.maker, tuple(_of_house(names))),
            *(
                Element(address, (Attribute(f"{_WHAT}name", other),))
                for address, other in parties.items()
                if address != names.maker
            ),
        ),
    )


def _of_lot(lot: Lot) -> Iterator[Attribute]:
    yield Attribute(f"{_WHAT}descriptionShort", lot.name)
    # Outside the house a delivery is followed by its supplier's own code, where that is known.
    yield Attribute(f"{_WHAT}lotNumber", lot.supplier_lot or lot.code)
    if lot.best_before:
        yield Attribute(f"{_WHAT}bestBeforeDate", f"{lot.best_before}")


def _of_house(names: Names) -> Iterator[Attribute]:
    house = names.house
    yield Attribute(f"{_WHAT}name", house.name)
    if house.address:
        yield Attribute(f"{_WHAT}streetAddressOne", house.address)
    if house.country:
        yield Attribute(f"{_WHAT}countryCode", house.country)
