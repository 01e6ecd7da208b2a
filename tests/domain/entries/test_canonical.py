"""Canonical entries: the `rfc8785` package as the outside reference, and what is refused."""

from collections import OrderedDict
from decimal import Decimal
from enum import StrEnum
from types import MappingProxyType
from typing import Any

import pytest
import rfc8785
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from ledger.domain.entries.canonical import (
    MAX_DEPTH,
    MAX_INTEGER,
    canonical_text,
    read_canonical,
)
from ledger.errors import RefusedError

AGAIN = " Correct what is named here and enter it again; nothing was recorded."
COPY = " Read the entry from a copy of the book that has not been altered."

# The first draw of text builds a table of all characters, which on a busy machine is slow.
LAW = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])

NAMES = st.text(st.characters(max_codepoint=127), max_size=8)
WHOLE = st.integers(-MAX_INTEGER, MAX_INTEGER)
PLAIN = st.recursive(
    st.text(max_size=12) | st.booleans() | WHOLE,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(NAMES, inner, max_size=4),
    max_leaves=12,
)
ENTRIES = st.dictionaries(NAMES, PLAIN, max_size=8)
HALF = st.text(st.characters(), max_size=4).map(lambda text: text + "\ud800")
BAD = (
    st.none()
    | st.floats()
    | HALF
    | st.binary(max_size=3)
    | st.decimals(allow_nan=False)
    | st.integers(min_value=MAX_INTEGER + 1)
    | st.integers(max_value=-MAX_INTEGER - 1)
    | st.sets(st.integers(), max_size=2)
    | st.dictionaries(
        st.integers() | st.text(st.characters(min_codepoint=128), min_size=1), WHOLE
    ).filter(bool)
)


class Colour(StrEnum):
    AMBER = "amber"


def nested(levels: int) -> dict[str, object]:
    value: object = 1
    for _ in range(levels):
        value = [value]
    return {"a": value}


@LAW
@given(ENTRIES)
@example({"a": '\u2028\u2029\x7f\x80/\\"\b\f\n\r\t\x1f\x00😂'})
@example({"least": -MAX_INTEGER, "most": MAX_INTEGER, "nought": 0})
def test_the_bytes_are_those_of_the_reference_package(entry: dict[str, Any]) -> None:
    assert canonical_text(entry).encode() == rfc8785.dumps(entry)


@LAW
@given(ENTRIES)
def test_what_was_written_reads_back_as_it_was(entry: dict[str, Any]) -> None:
    assert read_canonical(canonical_text(entry)) == entry


@LAW
@given(ENTRIES)
def test_the_order_in_which_names_were_given_does_not_matter(entry: dict[str, Any]) -> None:
    backwards = dict(reversed(entry.items()))
    assert canonical_text(backwards) == canonical_text(entry)


@LAW
@given(ENTRIES, NAMES, BAD, st.sampled_from(["value", "in a list", "in an object"]))
def test_one_bad_value_anywhere_refuses_the_whole_entry(
    entry: dict[str, Any], name: str, bad: object, place: str
) -> None:
    entry[name] = {"value": bad, "in a list": ["x", (bad,)], "in an object": {"b": bad}}[place]
    with pytest.raises(RefusedError, match=r"^The entry cannot be written in the book: .+\. C"):
        canonical_text(entry)


@LAW
@given(st.text())
@example('{"a":1,"a":1}')
def test_a_text_that_is_accepted_is_its_own_canonical_form(text: str) -> None:
    try:
        value = read_canonical(text)
    except RefusedError:
        return
    assert rfc8785.dumps(value).decode() == text  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "entry",
    [
        pytest.param(MappingProxyType({"b": 1, "a": 2}), id="a read-only view"),
        pytest.param(OrderedDict(b=1, a=2), id="an ordered dict"),
    ],
)
def test_any_mapping_may_be_given_as_the_entry_itself(entry: Any) -> None:
    assert canonical_text(entry) == '{"a":2,"b":1}'


def test_a_tuple_is_written_as_a_list() -> None:
    assert canonical_text({"a": (1, ("x", True))}) == '{"a":[1,["x",true]]}'


def test_lists_may_be_nested_up_to_the_limit_and_no_deeper() -> None:
    assert canonical_text(nested(MAX_DEPTH)) == '{"a":' + "[" * 16 + "1" + "]" * 16 + "}"
    with pytest.raises(RefusedError) as raised:
        canonical_text(nested(MAX_DEPTH + 1))
    assert raised.value.problems == (
        (
            f"The entry cannot be written in the book: `a{'[0]' * 16}` stands inside more than 16 "
            "lists or objects.",
            "Correct what is named here and enter it again; nothing was recorded.",
        ),
    )


def test_an_entry_that_contains_itself_is_refused() -> None:
    entry: dict[str, object] = {}
    entry["a"] = entry
    with pytest.raises(RefusedError) as refusal:
        canonical_text(entry)
    path = ".".join("a" * (MAX_DEPTH + 1))
    assert str(refusal.value) == (
        f"The entry cannot be written in the book: `{path}` stands inside more than 16 lists or "
        "objects." + AGAIN
    )


REFUSED: list[tuple[str, Any, str]] = [
    (
        "a fraction",
        {"amount": 1.5},
        "`amount` is 1.5, but a whole number of a smallest unit was expected",
    ),
    (
        "a whole float",
        {"lines": [{"amount": 2.0}]},
        "`lines[0].amount` is 2.0, but a whole number of a smallest unit was expected",
    ),
    (
        "a fraction in a tuple",
        {"lines": ("x", (2.0,))},
        "`lines[1][0]` is 2.0, but a whole number of a smallest unit was expected",
    ),
    (
        "a fraction between the largest numbers",
        {"least": -(2**53) + 1, "amount": 1.5, "most": 2**53 - 1},
        "`amount` is 1.5, but a whole number of a smallest unit was expected",
    ),
    ("null", {"note": None}, "`note` is null, but what is absent is left out"),
    ("null in a list", {"a": ["x", None]}, "`a[1]` is null, but what is absent is left out"),
    (
        "too large",
        {"a": 2**53},
        "`a` needs 54 bits, but no number above 9007199254740991 is kept",
    ),
    (
        "too small",
        {"a": -(2**53)},
        "`a` needs 54 bits, but no number above 9007199254740991 is kept",
    ),
    ("half a character", {"a": "x\udc00"}, "`a` holds half a character (a lone surrogate)"),
    (
        "a name outside ASCII",
        {"crème": 1},
        "the name 'cr\\xe8me' was given, but names are text in ASCII",
    ),
    ("a name that is no text", {1: "x"}, "the name 1 was given, but names are text in ASCII"),
    (
        "a decimal",
        {"a": Decimal(1)},
        "`a` is of type Decimal, but text, a whole number, true or false, a list or an object was "
        "expected",
    ),
    (
        "an enumeration",
        {"a": Colour.AMBER},
        "`a` is of type Colour, but text, a whole number, true or false, a list or an object was "
        "expected",
    ),
    (
        "a subclass of dict",
        {"a": OrderedDict(b=1)},
        "`a` is of type OrderedDict, but text, a whole number, true or false, a list or an object "
        "was expected",
    ),
    (
        "several faults at once",
        {"a": None, "ok": 1, "é": {"b": 0.5}},
        "`a` is null, but what is absent is left out; the name '\\xe9' was given, but names are "
        "text in ASCII; `\\xe9.b` is 0.5, but a whole number of a smallest unit was expected",
    ),
]


@pytest.mark.parametrize(("entry", "found"), [pytest.param(*row[1:], id=row[0]) for row in REFUSED])
def test_what_has_no_place_in_the_book_is_refused_in_words(entry: Any, found: str) -> None:
    with pytest.raises(RefusedError) as refusal:
        canonical_text(entry).encode()
    assert str(refusal.value) == f"The entry cannot be written in the book: {found}." + AGAIN


def test_an_entry_must_be_a_mapping() -> None:
    with pytest.raises(RefusedError) as refusal:
        canonical_text(["a"])  # type: ignore[arg-type]
    assert str(refusal.value) == (
        "An entry is written as names with values, but a list was given." + AGAIN
    )


ALTERED: list[tuple[str, str, str]] = [
    ("nothing", "", "The text is not JSON: Expecting value at character 1."),
    ("cut short", '{"a":1', "The text is not JSON: Expecting ',' delimiter at character 7."),
    (
        "a byte order mark",
        "\ufeff{}",
        "The text is not JSON: Unexpected UTF-8 BOM (decode using utf-8-sig) at character 1.",
    ),
    (
        "a name given twice",
        '{"a":1,"a":1}',
        "The text gives `a` more than once, but each name may be given once only.",
    ),
    (
        "names given twice at two depths",
        '{"b":{"c":1,"c":2},"b":1,"d":{"e":1}}',
        "The text gives `c`, `b` more than once, but each name may be given once only.",
    ),
    (
        "a space",
        '{"a": 1}',
        "The text is not in its canonical form: at character 6, '1' was expected, but ' ' was got.",
    ),
    (
        "a line end after it",
        '{"a":1}\n',
        "The text is not in its canonical form: at character 8, the end was expected, but '\\n' "
        "was got.",
    ),
    (
        "names out of order",
        '{"b":1,"a":2}',
        "The text is not in its canonical form: at character 3, 'a' was expected, but 'b' was got.",
    ),
    (
        "a needless escape",
        '{"a":"\\u00e9"}',
        "The text is not in its canonical form: at character 7, '\\xe9' was expected, but '\\\\' "
        "was got.",
    ),
    (
        "nought with a sign",
        '{"a":-0}',
        "The text is not in its canonical form: at character 6, '0' was expected, but '-' was got.",
    ),
    (
        "a number past all reading",
        '{"a":' + "9" * 5000 + "}",
        "The text holds a number too long, or lists nested too deeply, for any entry.",
    ),
    (
        "lists past all reading",
        '{"a":' + "[" * 200_000,
        "The text holds a number too long, or lists nested too deeply, for any entry.",
    ),
]


@pytest.mark.parametrize(("text", "what"), [pytest.param(*row[1:], id=row[0]) for row in ALTERED])
def test_a_text_other_than_the_canonical_one_is_refused_in_words(text: str, what: str) -> None:
    with pytest.raises(RefusedError) as refusal:
        read_canonical(text)
    assert str(refusal.value) == what + COPY


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ('{"a":1.0}', "`a` is 1.0, but a whole number of a smallest unit was expected"),
        ('{"a":1e2}', "`a` is 100.0, but a whole number of a smallest unit was expected"),
        ('{"a":NaN}', "`a` is nan, but a whole number of a smallest unit was expected"),
        ('{"a":null}', "`a` is null, but what is absent is left out"),
        ('{"a":"\\ud800"}', "`a` holds half a character (a lone surrogate)"),
    ],
)
def test_a_text_that_no_entry_could_have_written_is_refused_alike(text: str, found: str) -> None:
    with pytest.raises(RefusedError) as refusal:
        read_canonical(text)
    assert str(refusal.value) == f"The entry cannot be written in the book: {found}." + COPY
