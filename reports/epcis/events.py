"""Events and their parts, as EPCIS 2.0 names them in JSON.

Guarantees: what is not known is not there; a field that is no part of the standard is one of the
house's own terms. Refuses: words of its own; which stand in an event is decided in
`reports.epcis.mapping`.

References:
    GS1 EPCIS 2.0, 7.4 (events), 10 (JSON, JSON-LD); schema: tests/reference/gs1/epcis.json.
"""

from typing import Literal

from msgspec import Struct

CONTEXT = "https://ref.gs1.org/standards/epcis/2.0.0/epcis-context.jsonld"
"""Where the standard says what its names mean."""
OWN = "pottle"
"""What stands before the names of the house's own terms."""
_NAMES = {
    "context": "@context",
    "event_id": "eventID",
    "parent_id": "parentID",
    "corrective_event_ids": "correctiveEventIDs",
    "entry": f"{OWN}:entry",
    "document": f"{OWN}:document",
    "time_known": f"{OWN}:timeKnown",
}


def standard_name(field: str) -> str:
    """Return the name of a field in the standard.

    >>> standard_name("event_time_zone_offset"), standard_name("event_id"), standard_name("entry")
    ('eventTimeZoneOffset', 'eventID', 'pottle:entry')
    """
    first, *rest = field.split("_")
    return _NAMES.get(field) or first + "".join(word.capitalize() for word in rest)


class Part(Struct, frozen=True, omit_defaults=True, rename=standard_name):
    """Base of events and their parts."""


class Amount(Part, frozen=True):
    """How much of a class of goods; `quantityElement` in the standard."""

    epc_class: str
    """The class: a lot."""
    quantity: int | float | None = None
    """How much; None where nobody measured it."""
    uom: str | None = None
    """Unit of UN/CEFACT Recommendation 20; none where things are counted."""


class Spot(Part, frozen=True):
    """Where something was."""

    id: str
    """The place."""


class Source(Part, frozen=True):
    """Whence goods came."""

    source: str
    """Who."""
    type: Literal["owning_party", "possessing_party"]
    """Whether that is who owned them, or who only had them."""


class Destination(Part, frozen=True):
    """Whither goods went."""

    destination: str
    """Who."""
    type: Literal["owning_party", "possessing_party"]
    """Whether that is who owns them now, or who only has them."""


class ErrorDeclaration(Part, frozen=True):
    """That an event was told wrongly."""

    declaration_time: str
    """When that was said."""
    reason: str | None = None
    """Why, in the standard's words; None where neither fits."""
    corrective_event_ids: tuple[str, ...] | None = None
    """Events that stand in its place."""


class Event(Part, frozen=True):
    """What all events have."""

    event_time: str
    """When it happened."""
    event_time_zone_offset: str
    """The offset of the clock where it happened."""
    record_time: str
    """When the book took it."""
    event_id: str = ""
    """Its identifier."""
    error_declaration: ErrorDeclaration | None = None
    """That it was told wrongly; None of one in force."""
    biz_step: str | None = None
    """What was being done, in the words of CBV 2.0."""
    disposition: str | None = None
    """Where the goods stand after it, in the words of CBV 2.0."""
    read_point: Spot | None = None
    """Where it happened."""
    biz_location: Spot | None = None
    """Where the goods are after it; None where they left."""
    entry: int | None = None
    """Own term: number of the entry that first told it."""
    document: str | None = None
    """Own term: delivery note, invoice or stall sheet; the book knows not which."""
    time_known: str | None = None
    """Own term: how exactly its time is known; none: to the minute."""


class ObjectEvent(Event, frozen=True, tag_field="type", tag="ObjectEvent", kw_only=True):
    """Something happened to goods that stayed what they were."""

    action: Literal["ADD", "OBSERVE", "DELETE"]
    """Whether they came into being, were seen, or are no more."""
    quantity_list: tuple[Amount, ...]
    """The goods."""
    source_list: tuple[Source, ...] | None = None
    """Whence they came."""
    destination_list: tuple[Destination, ...] | None = None
    """Whither they went."""


class TransformationEvent(
    Event, frozen=True, tag_field="type", tag="TransformationEvent", kw_only=True
):
    """Goods were used up, and others came of them."""

    input_quantity_list: tuple[Amount, ...]
    """What went in."""
    output_quantity_list: tuple[Amount, ...]
    """What came out."""


class AggregationEvent(Event, frozen=True, tag_field="type", tag="AggregationEvent", kw_only=True):
    """Goods were put together into something that is moved as one."""

    parent_id: str
    """What they were put into: a case."""
    action: Literal["ADD"]
    """That they were put into it."""
    child_quantity_list: tuple[Amount, ...]
    """The goods."""


AnyEvent = ObjectEvent | TransformationEvent | AggregationEvent
"""Any of them."""


class Attribute(Part, frozen=True):
    """Something that is known of what an identifier stands for."""

    id: str
    """What."""
    attribute: str
    """The value."""


class Element(Part, frozen=True):
    """An identifier, and what is known of what it stands for."""

    id: str
    """The identifier."""
    attributes: tuple[Attribute, ...]
    """What is known."""


class Vocabulary(Part, frozen=True):
    """Identifiers of a kind."""

    type: str
    """Which kind."""
    vocabulary_element_list: tuple[Element, ...]
    """They."""


class MasterData(Part, frozen=True):
    """What identifiers stand for."""

    vocabulary_list: tuple[Vocabulary, ...]
    """By kind."""


class Header(Part, frozen=True):
    """What stands before the events."""

    epcis_master_data: MasterData
    """What their identifiers stand for."""


class Body(Part, frozen=True):
    """The events."""

    event_list: tuple[AnyEvent, ...]
    """They, by when they happened."""


class Document(Part, frozen=True, tag_field="type", tag="EPCISDocument"):
    """A whole document."""

    context: tuple[str | dict[str, str], ...]
    """What its names mean: the standard's, and the house's own."""
    schema_version: str
    """Version of the standard."""
    creation_date: str
    """When it was written."""
    epcis_header: Header
    """What stands before the events."""
    epcis_body: Body
    """The events."""
