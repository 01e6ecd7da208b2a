"""The document, read by others: GS1's own schema, and a reader of JSON-LD.

Checked against: the JSON schema of EPCIS 2.0 by GS1 (tests/reference/gs1/epcis.json says whence)
by jsonschema; the JSON-LD context of EPCIS 2.0 by GS1, which the package
epcis-event-hash-generator carries, by PyLD.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from reports.epcis import document as module
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots
from tests.reports.epcis.eventful import (
    Plain,
    document,
    events,
    expanded,
    export,
    is_valid,
    make_eventful,
    number,
)

SCHEMA = json.loads(Path("tests/reference/gs1/epcis.json").read_text(encoding="utf-8"))["schema"]
EPCIS = "https://ref.gs1.org/epcis/"
CBV = "https://ref.gs1.org/cbv/"
TERMS = "https://example.com/lots/terms/"


@pytest.fixture
def read(walked: tuple[Keeper, Lots]) -> Plain:
    make_eventful(*walked)
    number(walked[0])
    return document(walked[0])


def test_the_document_satisfies_the_schema_of_gs1(read: Plain) -> None:
    assert is_valid(read, SCHEMA)


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("bizStep", "selling"),
        ("action", "SEEN"),
        ("disposition", "gone"),
        ("quantityList", []),
        ("eventTime", "2026-03-02T09:00:00"),
        ("seller", "A Bar"),
    ],
)
def test_the_schema_would_find_a_word_that_is_not_in_it(read: Plain, name: str, value: Any) -> None:
    next(event for event in events(read) if event["type"] == "ObjectEvent")[name] = value
    assert not is_valid(read, SCHEMA)


def test_every_name_in_an_event_is_one_of_the_standard_or_explained(read: Plain) -> None:
    body = expanded(read)[f"{EPCIS}epcisBody"][0]
    found = body[f"{EPCIS}eventList"]
    for event, whole in zip(events(read), found, strict=True):
        # What a context does not explain is left out by the reader; `type` and the identifier
        # of the event become words of JSON-LD itself.
        assert len(whole) == len(event), event
        words = {event["bizStep"], event.get("disposition")} - {None}
        told = json.dumps(whole)
        assert all(f"{CBV}BizStep-{word}" in told or f"{CBV}Disp-{word}" in told for word in words)
        assert f"{TERMS}entry" in whole


def test_times_are_exact_instants_with_the_offset_of_the_clock(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    make_eventful(keeper, lots)
    keeper.clock.forward(days=60)  # into summer time
    keeper.do("count", lot=lots.water, amount="95L", because="the tap dripped")
    last = events(document(keeper))[-1]
    assert (last["eventTime"][-6:], last["eventTimeZoneOffset"]) == ("+01:00", "+01:00")
    assert last["recordTime"].endswith("Z")


def test_what_the_identifiers_stand_for_stands_before_the_events(read: Plain) -> None:
    kinds = {
        vocabulary["type"].rpartition(":")[2]: {
            element["id"]: {one["id"]: one["attribute"] for one in element["attributes"]}
            for element in vocabulary["vocabularyElementList"]
        }
        for vocabulary in read["epcisHeader"]["epcisMasterData"]["vocabularyList"]
    }
    assert kinds["EPCClass"]["https://id.gs1.org/01/09521234543213/10/BOS-001-S"] == {
        "cbvmda:descriptionShort": "Orange syrup, 250 mL",
        "cbvmda:lotNumber": "BOS-001-S",
    }
    assert kinds["EPCClass"]["https://example.com/lots/SOO-001-3/"] == {
        "cbvmda:descriptionShort": "Sweet orange oil",
        "cbvmda:lotNumber": "C7731",
        "cbvmda:bestBeforeDate": "2027-06-30",
    }
    assert kinds["Party"]["https://id.gs1.org/417/9521234000013"] == {"cbvmda:name": "A Bar & Café"}
    assert kinds["Location"]["https://id.gs1.org/414/9521234000006"] == {
        "cbvmda:name": "Quayside Essences",
        "cbvmda:streetAddressOne": "3 Pretend Lane",
        "cbvmda:countryCode": "IE",
    }
    named = {
        amount["epcClass"]
        for event in events(read)
        for key in ("quantityList", "inputQuantityList", "outputQuantityList", "childQuantityList")
        for amount in event.get(key, ())
    }
    assert named == set(kinds["EPCClass"])


def test_what_is_said_beside_it_is_what_is_in_it(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    make_eventful(keeper, lots)
    number(keeper)
    made = export(keeper)
    found = events(json.loads(made.content))
    assert made.objects == sum(event["type"] == "ObjectEvent" for event in found)
    assert made.cases == sum(event["type"] == "AggregationEvent" for event in found) == 3
    assert made.transformations == len(found) - made.objects - made.cases
    assert made.mistaken == sum("errorDeclaration" in event for event in found) == 2
    assert made.rough == sum("pottle:timeKnown" in event for event in found) == 1
    assert (made.articles, made.web) == (("Orange syrup, 250 mL",), "https://example.com/lots")
    assert export(keeper).content == made.content


def test_an_empty_period_is_a_document_without_events(sqlite_keeper: Keeper) -> None:
    sqlite_keeper.do("house", web="https://example.com/lots")
    read = document(sqlite_keeper)
    assert events(read) == []
    assert is_valid(read, SCHEMA)


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
