"""The identifier of an event, which follows from what it says.

Guarantees: whoever has the event can reckon the same identifier; the time at which it was recorded
and a declaration that it was wrong change nothing of it.

References:
    GS1 CBV 2.0, 8.9 (EPCIS Event Hash ID): order of fields, canonical values, and the ni scheme of
    RFC 6920.
"""

import hashlib
from collections.abc import Iterator, Mapping
from datetime import UTC, datetime
from decimal import Decimal
from typing import Any

from msgspec import to_builtins

from reports.epcis.events import OWN, AnyEvent

_WEB = "https://ref.gs1.org/cbv/"
_WORDS = {"bizStep": "BizStep-", "disposition": "Disp-"}
"""What stands before a word of the vocabulary, by the field that it is in."""
_PARTY = "SDT-"
_ORDER = (
    *("eventTime", "eventTimeZoneOffset", "parentID", "quantityList", "childQuantityList"),
    *("inputQuantityList", "outputQuantityList", "action", "bizStep", "disposition"),
    *("readPoint", "bizLocation", "sourceList", "destinationList"),
)
"""Fields in the order of the standard, of those that events here have."""


def event_id(event: AnyEvent, terms: str) -> str:
    """Return the identifier of an event.

    Args:
        event: The event; what identifier it has already does not matter.
        terms: The address that the house's own terms begin with.
    """
    text = pre_hash(event, terms)
    return f"ni:///sha-256;{hashlib.sha256(text.encode()).hexdigest()}?ver=CBV2.0"


def pre_hash(event: AnyEvent, terms: str) -> str:
    """Return the text that is hashed; the arguments are those of `event_id`."""
    plain = to_builtins(event)
    fields = (_field(name, plain[name]) for name in _ORDER if name in plain)
    own = sorted(
        f"{{{terms}}}{name.removeprefix(f'{OWN}:')}={value}"
        for name, value in plain.items()
        if name.startswith(f"{OWN}:")
    )
    return "".join((f"eventType={plain['type']}", *fields, *own))


def _field(name: str, value: object) -> str:
    if isinstance(value, tuple):
        return name + "".join(sorted("".join(_part(each)) for each in value))
    if isinstance(value, dict):
        return f"{name}id={value['id']}"
    if name == "eventTime":
        at = datetime.fromisoformat(str(value)).astimezone(UTC)
        return f"{name}={at:%Y-%m-%dT%H:%M:%S}.{at.microsecond // 1000:03}Z"
    return f"{name}={_WEB + _WORDS[name] if name in _WORDS else ''}{value}"


def _part(value: Mapping[str, Any]) -> Iterator[str]:
    """Yield the fields of a part of a list; of a party its type comes last."""
    if "epcClass" in value:
        yield "quantityElement"
    for name, told in value.items():
        if name == "type":
            yield f"type={_WEB}{_PARTY}{told}"
        else:
            yield f"{name}={_figure(told) if name == 'quantity' else told}"


def _figure(number: float) -> str:
    """Return a number without an exponent and without idle zeros.

    >>> _figure(30.5), _figure(6), _figure(0.000001)
    ('30.5', '6', '0.000001')
    """
    return f"{Decimal(repr(number)):f}"
