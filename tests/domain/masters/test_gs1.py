"""Numbers of GS1, beside the published examples and python-stdnum.

Checked against: the vectors of the GS1 Barcode Syntax Engine (tests/reference/gs1/vectors.json,
Apache-2.0), and python-stdnum's reckoning of an EAN.
"""

import json
from datetime import date
from pathlib import Path

import pytest
from biip.sscc import Sscc
from hypothesis import given
from hypothesis import strategies as st
from stdnum import ean

from ledger.domain.masters.gs1 import (
    case_link,
    case_number,
    check_digit,
    filled_case_link,
    lot_link,
    lot_path,
    party_link,
    place_link,
    read_gln,
    read_gtin,
    read_prefix,
)
from ledger.errors import InputError

VECTORS = json.loads(Path("tests/reference/gs1/vectors.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize(("digits", "check"), VECTORS["check_digit"])
def test_check_digits_are_those_published(digits: str, check: int) -> None:
    assert check_digit(digits) == check


@given(st.text("0123456789", min_size=12, max_size=13))
def test_check_digits_are_those_of_another_reckoning(digits: str) -> None:
    assert str(check_digit(digits)) == ean.calc_check_digit(digits)


def test_the_link_of_a_lot_is_that_published() -> None:
    links = [link for _, link in VECTORS["epc_urn_to_digital_link"]]
    assert lot_link(read_gtin("4012345111118"), "4444") in links
    assert lot_link(read_gtin("614141777778"), "987") in links
    assert place_link(read_gln("4012345000016")) in links
    assert party_link("4012345000016") == "https://id.gs1.org/417/4012345000016"


def test_a_date_stands_after_the_lot_as_in_a_published_link() -> None:
    published = next(link for link, _ in VECTORS["digital_link_to_element_string"] if "?17" in link)
    link = lot_link("09520123456788", "ABC1", date(2018, 4, 26))
    assert link == published.replace("/21/12345?17", "?15")


DIGITS = "Give its 8, 12, 13 or 14 digits (GTIN)."


@pytest.mark.parametrize(
    ("text", "what", "todo"),
    [
        ("12", "12 is no number of an article.", DIGITS),
        ("95212345432١3", "95212345432١3 is no number of an article.", DIGITS),
        (
            "9521234543214",
            "9521234543214 ends in 4, and its check digit is 3.",
            "Copy the number again.",
        ),
    ],
)
def test_a_wrong_number_is_told(text: str, what: str, todo: str) -> None:
    with pytest.raises(InputError) as raised:
        read_gtin(text)
    assert raised.value.problems == ((what, todo),)


def test_the_number_of_a_case_is_that_published() -> None:
    links = [link for _, link in VECTORS["epc_urn_to_digital_link"]]
    assert case_link(case_number("4012345", 111)) in links


@given(st.text("0123456789", min_size=4, max_size=12), st.integers(1, 99_999))
def test_another_reader_takes_the_number_of_a_case(prefix: str, number: int) -> None:
    told = case_number(prefix, number)
    found = Sscc.parse(told)
    assert (found.value, found.payload[1 : 1 + len(prefix)]) == (told, prefix)


def test_more_cases_than_a_prefix_has_digits_for_are_refused() -> None:
    assert case_number("952123456789", 99_999)[0] == "9"
    with pytest.raises(InputError) as raised:
        case_number("952123456789", 100_000)
    assert raised.value.problems == (
        (
            "The prefix 952123456789 leaves 5 digits for a case, and 100000 has 6.",
            "Ask GS1 for a further prefix.",
        ),
    )


@pytest.mark.parametrize("text", ["952", "9521234567890", "95 21", "٩٥٢١"])
def test_what_is_no_prefix_is_told(text: str) -> None:
    with pytest.raises(InputError) as raised:
        read_prefix(text)
    assert raised.value.problems == (
        (
            f"{text} is no GS1 Company Prefix.",
            "Give the 4 to 12 digits of your licence from GS1, without a check digit.",
        ),
    )


def test_a_link_may_stand_at_an_address_of_ones_own() -> None:
    """As in the published example of a symbol, at example.com."""
    published = VECTORS["symbols_read_back_here"]["qr"][0]
    link = lot_link("09521234543213", "ABC123", date(2026, 12, 31), at="https://example.com")
    assert link == published


def test_the_link_of_a_filled_case_tells_of_what_how_many_and_which_lot() -> None:
    link = filled_case_link("952012345678912345", "09520123456788", 25, "ABC123")
    assert link == f"{case_link('952012345678912345')}?02=09520123456788&37=25&10=ABC123"
    assert lot_link("09520123456788", "ABC123").endswith(lot_path("09520123456788", "ABC123"))


@pytest.mark.parametrize(
    "text", ["401234500001", "40123450000166", "4012345oooo16", "٤012345000016"]
)
def test_what_is_no_number_of_a_place_is_told(text: str) -> None:
    with pytest.raises(InputError) as raised:
        read_gln(text)
    assert raised.value.problems == (
        (f"{text} is no number of a place.", "Give its 13 digits (GLN)."),
    )


def test_numbers_are_read_with_blanks_around_them_and_with_all_lengths_there_are() -> None:
    assert read_gln(" 4012345000016 ") == "4012345000016"
    assert [read_gtin(text) for text in ("96385074", "614141007349", " 04012345111118 ")] == [
        *("00000096385074", "00614141007349", "04012345111118"),
    ]
    assert [read_prefix(text) for text in ("9521", " 952123456789 ")] == ["9521", "952123456789"]
    with pytest.raises(InputError, match="ends in 5, and its check digit is 6"):
        read_gln("4012345000015")
