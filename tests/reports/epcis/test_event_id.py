"""The identifier of an event, beside the reference implementation.

Checked against: epcis-event-hash-generator 1.9.3 (MIT), the reference implementation of the EPCIS
Event Hash ID of GS1 CBV 2.0, 8.9. Where an event has a list of sources and one of destinations it
puts the destinations first, against the order that its own description and the standard give; so
such an event is compared once without the one and once without the other.
"""

import msgspec

from reports.epcis import event_id as module
from reports.epcis.event_id import event_id, pre_hash
from reports.epcis.events import AnyEvent
from tests.keeper import Keeper
from tests.kept.said import check_constants
from tests.path import Lots
from tests.reports.epcis.eventful import Plain, document, events, hashes, make_eventful, number

TERMS = "https://example.com/lots/terms/"
BOTH = ("sourceList", "destinationList")


def ours(event: Plain) -> str:
    return event_id(msgspec.convert(event, type=AnyEvent), TERMS)


def test_identifiers_are_those_of_the_reference_implementation(
    walked: tuple[Keeper, Lots],
) -> None:
    make_eventful(*walked)
    number(walked[0])
    read = document(walked[0])
    whole = events(read)
    assert [event["eventID"] for event in whole] == [ours(event) for event in whole]
    each = [
        {name: value for name, value in event.items() if name != left_out}
        for event in whole
        for left_out in (BOTH if all(name in event for name in BOTH) else ("",))
    ]
    read["epcisBody"]["eventList"] = each
    assert len(each) > len(whole)
    assert hashes(read) == [ours(event) for event in each]


def test_sources_stand_before_destinations_and_a_type_after_its_value(
    walked: tuple[Keeper, Lots],
) -> None:
    make_eventful(*walked)
    sold = next(e for e in events(document(walked[0])) if e["bizStep"] == "shipping")
    text = pre_hash(msgspec.convert(sold, type=AnyEvent), TERMS)
    house = "https://example.com/lots/party/Quayside%20Essences"
    party = "https://example.com/lots/party/Bridge%20Street%20Stall"
    kinds = [f"type=https://ref.gs1.org/cbv/SDT-{kind}_party" for kind in ("owning", "possessing")]
    assert (
        f"sourceListsource={house}{kinds[0]}source={house}{kinds[1]}"
        f"destinationListdestination={party}{kinds[0]}destination={party}{kinds[1]}" in text
    )


def test_an_identifier_names_one_event(walked: tuple[Keeper, Lots]) -> None:
    make_eventful(*walked)
    ids = [event["eventID"] for event in events(document(walked[0]))]
    assert len(set(ids)) == len(ids)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
