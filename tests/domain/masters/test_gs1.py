"""Numbers of GS1, beside the published examples and python-stdnum.

Checked against: the vectors of the GS1 Barcode Syntax Engine (tests/reference/gs1/vectors.json,
Apache-2.0), and python-stdnum's reckoning of an EAN.
"""

import json
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from stdnum import ean

from ledger.domain.masters.gs1 import (
    check_digit,
    lot_link,
    party_link,
    place_link,
    read_gln,
    read_gtin,
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
