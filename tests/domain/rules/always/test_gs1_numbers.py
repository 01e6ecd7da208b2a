"""A number of GS1 comes into the book whole, with its check digit, and is of one article."""

import pytest

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import House, Party
from ledger.domain.entries.house import Article
from ledger.domain.rules.always import gs1_numbers
from tests.domain.builders import draft, make
from tests.domain.rules.cases import NO, Case, find, said

SMALL = Article("Syrup", "09521234543213", parse_quantity("250 mL"))
LARGE = Article("Syrup", "09521234543213", parse_quantity("1 L"))
AGAIN = "Copy the number again."


@pytest.mark.parametrize(
    "case",
    [
        Case("right ones", draft(make(House, gln="9521234000006", company_prefix="9521234",
             articles=(SMALL,)))),
        Case("none", draft(make(House))),
        Case("a party", draft(make(Party, gln="9521234000006"))),
        Case("a wrong place", draft(make(House, gln="9521234000007")), found=said(
             NO, "number", "9521234000007 ends in 7, and its check digit is 6.", AGAIN)),
        Case("a wrong party", draft(make(Party, gln="12")), found=said(
             NO, "number", "12 is no number of a place.", "Give its 13 digits (GLN).")),
        Case("a short prefix", draft(make(House, company_prefix="952")), found=said(
             NO, "number", "952 is no GS1 Company Prefix.",
             "Give the 4 to 12 digits of your licence from GS1, without a check digit.")),
        Case("a short number", draft(make(House, articles=(Article("Syrup", "9521234543213"),))),
             found=said(NO, "number", "9521234543213 is written 09521234543213 in full.",
             "Write it so.")),
        Case("one number twice", draft(make(House, articles=(SMALL, LARGE))), found=said(
             NO, "number", "09521234543213 is given for Syrup, 250 mL and for Syrup, 1 L.",
             "Each article has a number of its own.")),
    ],
    ids=str,
)  # fmt: skip
def test_numbers(case: Case) -> None:
    assert find(gs1_numbers.RULES, case) == list(case.found)
