"""What happened to goods, in the words of EPCIS and of the Core Business Vocabulary."""

import json
from datetime import date
from types import SimpleNamespace
from typing import Any

import pytest

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MoveAs, Verdict
from ledger.domain.masters.gs1 import case_link, case_number
from ledger.service.lots.sales import Period
from ledger.service.recall.story import story_of
from reports.epcis import mapping as module
from reports.epcis.document import export_of
from reports.epcis.events import Amount
from reports.epcis.mapping import JUDGED, MOVED, _amount
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots
from tests.reports.epcis.eventful import Plain, document, events, make_eventful, number

HERE = {"id": "https://example.com/lots/house"}
HOUSE = "https://example.com/lots/party/Quayside%20Essences"
BAR = "https://example.com/lots/party/A%20Bar%20%26%20Caf%C3%A9"


def eventful(walked: tuple[Keeper, Lots]) -> list[Plain]:
    make_eventful(*walked)
    return events(document(walked[0]))


def about(found: list[Plain], code: str, step: str) -> list[Plain]:
    address = f"https://example.com/lots/{code}/"
    return [
        event
        for event in found
        if event["bizStep"] == step
        and address
        in {a["epcClass"] for k in ("quantityList", "outputQuantityList") for a in event.get(k, ())}
    ]


def test_every_way_of_goods_and_every_verdict_has_its_words() -> None:
    assert set(MOVED) == set(MoveAs)
    assert set(JUDGED) == set(Verdict)


def test_a_delivery_is_received_from_its_supplier(walked: tuple[Keeper, Lots]) -> None:
    (event,) = about(eventful(walked), walked[1].oil, "receiving")
    assert (event["action"], event["disposition"]) == ("OBSERVE", "in_progress")
    assert event["quantityList"] == [
        {
            "epcClass": f"https://example.com/lots/{walked[1].oil}/",
            "quantity": 500,
            "uom": "MLT",
        }
    ]
    assert {one["source"] for one in event["sourceList"]} == {
        "https://example.com/lots/party/Harbour%20Oils"
    }
    assert {one["destination"] for one in event["destinationList"]} == {HOUSE}
    assert event["readPoint"] == event["bizLocation"] == HERE


def test_a_supplier_who_is_not_known_is_left_out(walked: tuple[Keeper, Lots]) -> None:
    (event,) = about(eventful(walked), walked[1].spirit, "receiving")
    assert "sourceList" not in event


def test_a_batch_is_made_of_its_inputs_and_bottles_of_bulk_and_glass(
    walked: tuple[Keeper, Lots],
) -> None:
    lots, found = walked[1], eventful(walked)
    (made,) = about(found, lots.syrup, "creating_class_instance")
    assert made["type"] == "TransformationEvent"
    amounts = {a["epcClass"][25:-1]: (a["quantity"], a["uom"]) for a in made["inputQuantityList"]}
    assert amounts == {
        lots.sugar: (2400, "GRM"),
        lots.water: (2400, "MLT"),
        lots.essence: (30, "MLT"),
    }
    (filled,) = about(found, lots.packed, "creating_class_instance")
    assert filled["outputQuantityList"] == [
        {"epcClass": f"https://example.com/lots/{lots.packed}/", "quantity": 15}
    ]
    assert {a["epcClass"][25:-1] for a in filled["inputQuantityList"]} == {
        lots.syrup,
        lots.bottles,
    }


def test_what_is_sold_changes_owner_and_what_may_come_back_only_hands(
    walked: tuple[Keeper, Lots],
) -> None:
    shipped = about(eventful(walked), walked[1].packed, "shipping")
    kinds = [
        {one["type"] for one in event["destinationList"] if one["destination"] == BAR}
        for event in shipped
        if event["destinationList"][0]["destination"] == BAR
    ]
    assert kinds == [{"owning_party", "possessing_party"}, {"possessing_party"}]
    assert all("bizLocation" not in event for event in shipped)


def test_what_came_back_is_received_from_who_had_it(walked: tuple[Keeper, Lots]) -> None:
    (event,) = about(eventful(walked), walked[1].packed, "receiving")
    assert (event["disposition"], event["bizLocation"]) == ("returned", HERE)
    assert event["sourceList"] == [{"source": BAR, "type": "possessing_party"}]
    assert event["destinationList"] == [{"destination": HOUSE, "type": "possessing_party"}]


def test_what_is_poured_out_or_broken_is_no_more(walked: tuple[Keeper, Lots]) -> None:
    found = [event for event in eventful(walked) if event.get("action") == "DELETE"]
    assert [(event["bizStep"], event["disposition"]) for event in found] == [
        ("dispensing", "dispensed"),
        ("destroying", "destroyed"),
        ("destroying", "destroyed"),
    ]


def test_a_verdict_is_an_inspection_and_tells_no_amount(walked: tuple[Keeper, Lots]) -> None:
    found = about(eventful(walked), walked[1].essence, "inspecting")
    assert [event["disposition"] for event in found] == [
        "sellable_not_accessible",
        "non_sellable_other",
        "non_conformant",
    ]
    assert all("quantity" not in event["quantityList"][0] for event in found)


def test_what_is_known_by_its_day_alone_says_so(walked: tuple[Keeper, Lots]) -> None:
    (event,) = about(eventful(walked), walked[1].water, "cycle_counting")
    assert event["eventTime"] == "2026-03-07T12:00:00+00:00"
    assert event["pottle:timeKnown"] == "day"


def test_a_corrected_sale_is_declared_wrong_with_what_stands_in_its_place(
    walked: tuple[Keeper, Lots],
) -> None:
    found = eventful(walked)
    wrong, right = [e for e in about(found, walked[1].packed, "shipping") if "Stall" in str(e)]
    assert [e["quantityList"][0]["quantity"] for e in (wrong, right)] == [6, 5]
    assert wrong["errorDeclaration"]["reason"] == "incorrect_data"
    assert wrong["errorDeclaration"]["correctiveEventIDs"] == [right["eventID"]]
    assert "errorDeclaration" not in right


def test_a_struck_sale_did_not_occur(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("house", web="https://example.com/lots")
    sold = next(entry for entry in keeper.entries() if entry.kind == "move")
    struck = keeper.do("strike", entry=str(sold.seq), because="it was another lot")
    (event,) = about(events(document(keeper)), lots.packed, "shipping")
    assert event["errorDeclaration"] == {
        "declarationTime": f"{struck.entry.recorded_at:%Y-%m-%dT%H:%M:%SZ}",
        "reason": "did_not_occur",
    }


def test_a_correction_of_what_is_not_told_changes_no_event(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("house", web="https://example.com/lots")
    before = events(document(keeper))
    receipt = next(entry for entry in keeper.entries() if entry.kind == "receipt")
    keeper.do("correct", entry=str(receipt.seq), changes="cost=49.00", because="misread")
    after = events(document(keeper))
    assert [event["eventID"] for event in after] == [event["eventID"] for event in before]
    assert all("errorDeclaration" not in event for event in about(after, lots.oil, "receiving"))


def test_a_period_has_what_happened_in_it_and_what_was_found_wrong_in_it(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, _ = walked
    keeper.do("house", web="https://example.com/lots")
    keeper.clock.forward(days=30)
    sold = next(entry for entry in keeper.entries() if entry.kind == "move")
    keeper.do("correct", entry=str(sold.seq), changes="amount=5", because="one stayed")
    april = Period(date(2026, 4, 1), date(2026, 4, 30))
    made = export_of(story_of(keeper.book), april, keeper.clock())
    wrong, right = events(json.loads(made.content))
    assert wrong["errorDeclaration"]["correctiveEventIDs"] == [right["eventID"]]
    assert wrong["eventTime"][:7] == "2026-03"


def cases(found: list[Plain]) -> list[Plain]:
    return [event for event in found if event["type"] == "AggregationEvent"]


def test_each_case_is_packed_by_itself_under_its_own_number(walked: tuple[Keeper, Lots]) -> None:
    """Those of before the house had a prefix of GS1 keep their addresses below its own."""
    make_eventful(*walked)
    number(walked[0])
    told = cases(events(document(walked[0])))
    sscc = case_link(case_number("9521234", 3))
    assert [event["parentID"] for event in told] == [
        "https://example.com/lots/case/1",
        "https://example.com/lots/case/2",
        sscc,
    ]
    assert {(event["action"], event["bizStep"]) for event in told} == {("ADD", "packing")}
    lot = "https://id.gs1.org/01/09521234543213/10/BOS-001-S"
    assert [event["childQuantityList"] for event in told] == [
        [{"epcClass": lot, "quantity": bottles}] for bottles in (3, 3, 2)
    ]


def test_a_case_that_was_corrected_away_did_not_occur_and_another_was_told_wrongly(
    walked: tuple[Keeper, Lots],
) -> None:
    make_eventful(*walked)
    keeper = walked[0]
    told = next(entry for entry in keeper.entries() if entry.kind == "cases")
    keeper.do("correct", entry=str(told.seq), changes="count=1; holds=4", because="seen again")
    wrong, right, away = cases(events(document(keeper)))
    assert (wrong["parentID"], right["parentID"]) == ("https://example.com/lots/case/1",) * 2
    assert right["childQuantityList"][0]["quantity"] == 4
    assert wrong["errorDeclaration"]["reason"] == "incorrect_data"
    assert wrong["errorDeclaration"]["correctiveEventIDs"] == [right["eventID"]]
    assert away["parentID"] == "https://example.com/lots/case/2"
    assert away["errorDeclaration"]["reason"] == "did_not_occur"
    assert "correctiveEventIDs" not in away["errorDeclaration"]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


@pytest.mark.parametrize(
    ("measure", "amount", "told", "unit"),
    [
        (Measure.UL, 500_000, "500", "MLT"),
        (Measure.UL, 999, "0.999", "MLT"),
        (Measure.MG, 7_520, "7.52", "GRM"),
        (Measure.MG, 1_000, "1", "GRM"),
        (Measure.UEACH, 6_000_000, "6", None),
        (Measure.UEACH, 1_500_000, "1.5", None),
        (Measure.UL, 0, "None", None),
        (Measure.UL, None, "None", None),
    ],
)
def test_a_whole_amount_is_written_whole_and_any_other_with_its_part(
    measure: Measure, amount: int | None, told: str, unit: str | None
) -> None:
    """Nothing, and what is not known, have neither amount nor unit."""
    lot: Any = SimpleNamespace(measure=measure)
    names: Any = SimpleNamespace(lot=lambda _: "its name")
    found = _amount(lot, amount, names)
    assert found == Amount("its name", found.quantity, unit)
    assert repr(found.quantity) == told
