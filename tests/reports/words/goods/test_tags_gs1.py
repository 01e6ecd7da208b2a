"""Every GS1 text that is printed, read back by biip and held to the rows of GS1's dictionary.

Checked against: the GS1 Barcode Syntax Dictionary (tests/reference/gs1/ai-subset.json), the tests
of the GS1 Barcode Syntax Engine (tests/reference/gs1/vectors.json), and biip 5, which reads GS1.
"""

import json
import re
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import biip
import pytest
from biip.gs1_messages import GS1Message

from ledger.domain.masters.gs1 import check_digit
from ledger.errors import InputError, RefusedError
from ledger.service.lots.dossier import dossier
from reports.words.goods.label import label_sheet_view
from reports.words.goods.tags import FNC1, case_views, tag_view
from tests.keeper import Keeper
from tests.path import Lots
from tests.reports.words.bottles import pack

FOLDER = Path("tests/reference/gs1")
VECTORS = json.loads((FOLDER / "vectors.json").read_text(encoding="utf-8"))
ROWS = {
    row["ai"]: row
    for row in json.loads((FOLDER / "ai-subset.json").read_text(encoding="utf-8"))["ais"]
}
SEPARATOR = "\x1d"
GTIN = "9521234543213"

Elements = list[tuple[str, str]]


def scanned(printed: str) -> str:
    """Return what a scanner types of a printed Code 128: ]C1 for the mark, then separators."""
    return "]C1" + printed.removeprefix(FNC1).replace(FNC1, SEPARATOR)


def read(text: str) -> Elements:
    """Return the elements of a scan or a Digital Link, as biip reads them."""
    found: Any = biip.parse(text)
    holder = found.gs1_digital_link_uri or found.gs1_message
    assert holder is not None, text
    errors = [one.gtin_error or one.gln_error for one in holder.element_strings]
    assert not any(errors), (text, errors)
    return [(one.ai.ai, one.value) for one in holder.element_strings]


def faults(text: str, elements: Elements) -> Iterator[str]:
    """Yield what in a text departs from the dictionary."""
    there = {ai for ai, _ in elements}
    for place, (ai, value) in enumerate(elements):
        row = ROWS[ai]
        if not re.fullmatch(form(row["format"]), value):
            yield f"({ai}) {value} is not {row['format']}"
        if row.get("check_digit") and int(value[-1]) != check_digit(value[:-1]):
            yield f"({ai}) {value} has a wrong check digit"
        if "requires" in row and not there & set(re.split(r"[|+]", row["requires"])):
            yield f"({ai}) lacks {row['requires']}"
        if there & set(row.get("excludes", ())):
            yield f"({ai}) stands beside {row['excludes']}"
        is_last = place == len(elements) - 1
        if "://" not in text and row["fnc1"] and not is_last and f"{value}{FNC1}" not in text:
            yield f"({ai}) has no separator after it"


def form(told: str) -> str:
    """Return the pattern of a value: N6 six digits, X..20 up to twenty characters of set 82."""
    kind, open_end, most = re.findall(r"\+([NX])(\.\.)?(\d+)", told)[0]
    letters = r"\d" if kind == "N" else r"[!\"%&'()*+,\-./0-9:;<=>?A-Z_a-z]"
    return f"{letters}{{{'1,' if open_end else ''}{most}}}"


@pytest.mark.parametrize(
    ("text", "elements"),
    [
        *VECTORS["digital_link_to_element_string"],
        *VECTORS["bracketed_to_element_string"],
    ],
)
def test_the_other_reader_reads_the_published_texts(text: str, elements: str) -> None:
    if text.startswith("("):
        found = [(one.ai.ai, one.value) for one in GS1Message.parse_hri(text).element_strings]
    else:
        found = read(text)
    assert "".join(ai + value for ai, value in found) == elements.replace("^", "")


@pytest.mark.parametrize(
    ("printed", "elements"),
    [(text, string) for text, _, string in VECTORS["symbols_read_back_here"]["cases"]],
)
def test_bars_with_and_without_a_separator_are_read_as_published(
    printed: str, elements: str
) -> None:
    text = printed.replace("\\xf1", FNC1)
    found = read(scanned(text))
    assert "".join(f"({ai}){value}" for ai, value in found) == elements
    assert list(faults(text, found)) == []


def test_all_that_is_printed_says_what_it_should_and_keeps_the_dictionary(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    found = dossier(keeper.book, packed)
    best = found.state.best_before
    assert best == date(2027, 6, 30)
    case = tag_view("case", found, None, GTIN)
    symbol = label_sheet_view(found, gtin=GTIN).label.symbol
    article, dated, lot = ("01", f"0{GTIN}"), ("15", "270630"), ("10", packed)
    assert read(scanned(case.bars)) == [article, dated, lot]
    assert case.under == f"(01)0{GTIN}(15)270630(10){packed}"
    assert [(one.ai.ai, one.value) for one in GS1Message.parse_hri(case.under).element_strings] == [
        article,
        dated,
        lot,
    ]
    assert read(symbol) == [article, lot, dated]
    for text, elements in ((case.bars, [article, dated, lot]), (symbol, [article, lot, dated])):
        assert list(faults(text, elements)) == []


@pytest.mark.parametrize(
    ("text", "elements", "fault"),
    [
        (
            f"{FNC1}010952123454321310AB-1215261231",
            [("01", "09521234543213"), ("10", "AB-12"), ("15", "261231")],
            "(10) has no separator after it",
        ),
        (
            f"{FNC1}0109521234543214",
            [("01", "09521234543214")],
            "(01) 09521234543214 has a wrong check digit",
        ),
        (f"{FNC1}10AB-12", [("10", "AB-12")], "(10) lacks 01|02|03|8006|8026"),
        (
            f"{FNC1}010952123454321310" + "A" * 21,
            [("01", "09521234543213"), ("10", "A" * 21)],
            f"(10) {'A' * 21} is not N2+X..20 (CSET 82)",
        ),
    ],
)
def test_a_text_that_departs_from_it_would_be_found(
    text: str, elements: Elements, fault: str
) -> None:
    assert list(faults(text, elements)) == [fault]


def test_a_symbol_says_one_address(made: tuple[Keeper, Lots, str]) -> None:
    keeper, lots, essence = made
    found = dossier(keeper.book, pack(keeper, lots, essence))
    with pytest.raises(InputError) as raised:
        label_sheet_view(found, link="https://example.com/{lot}", gtin=GTIN)
    assert raised.value.problems == (
        ("A symbol says one address, and two were given.", "Leave --link or --gtin out."),
    )


def test_a_case_says_its_number_in_bars_and_what_stands_in_it_in_its_symbol(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    keeper.do("house", company_prefix="9521234")
    keeper.do("cases", lot=packed, pack="2 x 6")
    bare = case_views(dossier(keeper.book, packed))
    keeper.do("house", gtin=f"Orange syrup, 250 mL={GTIN}")
    first, second = case_views(dossier(keeper.book, packed))
    assert [read(scanned(case.bars)) for case in (first, second)] == [
        [("00", "095212340000000013")],
        [("00", "095212340000000020")],
    ]
    assert (first.under, first.blanks) == ("(00)095212340000000013", ())
    assert first.rows[:2] == (("Case", "1"), ("Holds", "6"))
    filled = [("00", "095212340000000013"), ("02", f"0{GTIN}"), ("37", "6"), ("10", packed)]
    assert sorted(read(first.symbol)) == sorted(filled)
    assert read(bare[0].symbol) == [("00", "095212340000000013")]
    for text, elements in ((first.bars, filled[:1]), (first.symbol, filled)):
        assert list(faults(text, elements)) == []


def test_a_case_of_a_house_without_a_prefix_has_its_address(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    assert case_views(dossier(keeper.book, packed)) == ()
    keeper.do("cases", lot=packed, pack="2 x 6")
    assert [case.symbol for case in case_views(dossier(keeper.book, packed))] == [packed] * 2
    keeper.do("house", web="https://example.com/l")
    found = dossier(keeper.book, packed)
    assert [(case.symbol, case.bars) for case in case_views(found, [2])] == [
        ("https://example.com/l/case/2", packed)
    ]
    with pytest.raises(RefusedError) as raised:
        case_views(found, [3, 1])
    assert raised.value.problems == (
        (
            f"The book knows of no case 3 of {packed}.",
            f"pottle journal {packed} tells which there are.",
        ),
    )


def test_a_bottle_has_the_link_of_its_article_below_the_house_where_the_book_has_its_number(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    keeper.do("house", gtin=f"Orange syrup, 0.25 L={GTIN}")
    elements = [("01", f"0{GTIN}"), ("10", packed), ("15", "270630")]
    symbol = label_sheet_view(dossier(keeper.book, packed)).label.symbol
    assert symbol == label_sheet_view(dossier(keeper.book, packed), gtin=GTIN).label.symbol
    keeper.do("house", web="https://example.com/l")
    found = dossier(keeper.book, packed)
    symbol = label_sheet_view(found).label.symbol
    assert symbol == f"https://example.com/l/01/0{GTIN}/10/{packed}?15=270630"
    assert read(symbol) == elements
    own = label_sheet_view(found, link="https://example.com/{lot}").label.symbol
    assert own == f"https://example.com/{packed}"
