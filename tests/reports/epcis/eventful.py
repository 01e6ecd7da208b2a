"""A book in which goods went every way, and another reader of what is exported of it."""

import json
import re
import warnings
from datetime import datetime
from typing import Any

import jsonschema

from ledger.service.lots.sales import Period
from ledger.service.recall.story import story_of
from reports.epcis.document import Exported, export_of
from tests.keeper import Keeper
from tests.path import Lots

GTIN = "Orange syrup, 250 mL=9521234543213"
"""What an invented article is, with the number of an example of GS1."""
EVERYTHING = Period()

Plain = dict[str, Any]

FORMATS = jsonschema.FormatChecker(())
"""Formats that the schema names and jsonschema knows only with packages of their own."""


@FORMATS.checks("uri")
def is_uri(text: object) -> bool:
    """Return whether a text begins as an address does (RFC 3986, 3.1), without a blank in it."""
    return re.fullmatch(r"[A-Za-z][A-Za-z0-9+.-]*:[^\s<>\"{}|\\^`]+", str(text)) is not None


@FORMATS.checks("date-time", raises=ValueError)
def is_moment(text: object) -> bool:
    """Return whether a text is a moment with its offset (RFC 3339, 5.6)."""
    return datetime.fromisoformat(str(text)).tzinfo is not None


def make_eventful(keeper: Keeper, lots: Lots) -> None:
    """Give the house its address, and send goods every way there is."""
    keeper.do("house", web="https://example.com/lots", address="3 Pretend Lane", country="IE")
    keeper.do("cases", lot=lots.packed, pack="2 x 3")
    ways = ("sample", "tasting", "on-return", "breakage", "retained", "destroyed")
    for way in ways:
        words = {"party": "A Bar & Café"} if way in ("sample", "on-return") else {}
        keeper.do("send", lot=lots.packed, amount="1", moved_as=way, because="seen to", **words)
    keeper.do("send", lot=lots.packed, amount="1", moved_as="returned", party="A Bar & Café")
    keeper.do("count", lot=lots.water, amount="96L", because="the tap dripped", at="2026-03-07")
    for verdict in ("hold", "rework", "reject"):
        keeper.do("judge", lot=lots.essence, verdict=verdict, because="it clouds")
    keeper.do("recall", lot=lots.packed, because="came back cloudy")
    sold = next(entry for entry in keeper.entries() if entry.kind == "move")
    keeper.do("correct", entry=str(sold.seq), changes="amount=5", because="one stayed")


def number(keeper: Keeper) -> None:
    """Give the house numbers of GS1, and put bottles into cases under its prefix."""
    keeper.do("house", gtin=GTIN, gln="9521234000006", company_prefix="9521234")
    keeper.do("party", name="A Bar & Café", gln="9521234000013")
    keeper.do("cases", lot="BOS-001-S", pack="1 x 2", because="as it was seen")


def export(keeper: Keeper) -> Exported:
    """Return all that happened in a book as a document."""
    return export_of(story_of(keeper.book), EVERYTHING, keeper.clock())


def document(keeper: Keeper) -> Plain:
    """Return the same as anybody reads it."""
    read: Plain = json.loads(export(keeper).content)
    return read


def events(read: Plain) -> list[Plain]:
    """Return the events of a document."""
    found: list[Plain] = read["epcisBody"]["eventList"]
    return found


def is_valid(read: Plain, schema: Plain) -> bool:
    """Return whether a document satisfies a schema, as jsonschema reads both."""
    return jsonschema.Draft7Validator(schema, format_checker=FORMATS).is_valid(read)


def hashes(read: Plain) -> list[str]:
    """Return the identifiers of a document's events as the reference implementation has them."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # it reads its files as old Pythons did
        from epcis_event_hash_generator.hash_generator import epcis_hashes_from_events
        from epcis_event_hash_generator.json_to_py import event_list_from_epcis_document_json

        copy = json.loads(json.dumps(read))
        found: list[str] = epcis_hashes_from_events(event_list_from_epcis_document_json(copy))
    return found


def expanded(read: Plain) -> Plain:
    """Return a document with every name that its context explains written out; others are gone."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from epcis_event_hash_generator import jsonld

        found: list[Plain] = jsonld.expand(read)
    return found[0]
