"""A seal is read as it is printed, and after what printers, mails and typists do to it."""

import re
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.evidence.seals import (
    LEAST_CUT,
    MOST_ENTRIES,
    MOST_IN_SYMBOL,
    Seal,
    in_symbol,
    read_seal,
    same_house,
)
from ledger.errors import InputError

ROOT = "0cb2d4b0b5bb48016365d660aeccb395752329e0557bbdcda7425181be1122b3"
WREN = Seal("Wren & Co", 57, ROOT)
LINES = "\n".join(WREN.lines)
COPY = (
    "Copy the three lines again as they stand on the paper: House ..., Entries ..., Root and 64 "
    "characters of 0-9 and a-f."
)
LETTERS = st.characters(exclude_categories=["C", "Z"]) | st.just(" ")
HOUSES = st.text(LETTERS, min_size=1).map(lambda text: " ".join(text.split())).filter(bool)


@pytest.mark.parametrize(
    "text",
    [
        LINES,
        LINES.replace("\n", "\r\n"),
        LINES.replace("\n", " "),
        LINES.replace("\n", ""),
        LINES.upper(),
        LINES.lower(),
        f"  {LINES}\n\n",
        LINES.replace(ROOT, f"{ROOT[:32]}\n    {ROOT[32:]}"),
        LINES.replace(ROOT, " ".join(re.findall("....", ROOT))),
        LINES.replace(" ", "   "),
        LINES.replace(" ", ""),
        f"Batch record of a warehouse\nPage 1 of 2\n{LINES}\nBatch record",
        f"the seal, house and all:\n{LINES}\nRoots and entries end here",
    ],
)
def test_a_seal_is_read_in_whatever_way_it_was_copied(text: str) -> None:
    found = read_seal(text)
    assert (found.entries, found.root) == (WREN.entries, WREN.root)
    assert same_house(found.house, WREN.house)


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("", '"" is not a seal: it needs a house, a number of entries and a root.'),
        (
            "Wren & Co, 57",
            '"Wren & Co, 57" is not a seal: it needs a house, a number of entries and a root.',
        ),
        (
            "x" * 60,
            f'"{"x" * 60}" is not a seal: it needs a house, a number of entries and a root.',
        ),
        (
            "x" * 61 + "\x1b",
            f'"{"x" * 60} ..." is not a seal: it needs a house, a number of entries and a root.',
        ),
        (
            f"House Wren Root {ROOT}",
            f'"House Wren Root {ROOT[:44]} ..." is not a seal: it needs a house, a number of '
            "entries and a root.",
        ),
        (
            f"Entries 57 Root {ROOT}",
            f'"Entries 57 Root {ROOT[:44]} ..." is not a seal: it needs a house, a number of '
            "entries and a root.",
        ),
        (LINES[:-1], "The seal's root has 63 characters of 0-9 and a-f, not 64."),
        (LINES + "0", "The seal's root has 65 characters of 0-9 and a-f, not 64."),
        (LINES.replace("0cb2", "Ocb2"), "The seal's root has 0 characters of 0-9 and a-f, not 64."),
        (LINES.replace("57", "5?7"), 'The seal\'s number of entries is written as "5?7".'),
        (
            LINES.replace("57", "٥٧"),
            'The seal\'s number of entries is written as "\\u0665\\u0667".',
        ),
        (
            LINES.replace("57", "9" * 17),
            f'The seal\'s number of entries is written as "{"9" * 17}".',
        ),
        (LINES.replace("57", "0"), "No book has 0 entries, as the seal says."),
        (
            LINES.replace("57", str(MOST_ENTRIES + 1)),
            f"No book has {MOST_ENTRIES + 1} entries, as the seal says.",
        ),
    ],
)
def test_a_damaged_seal_is_refused_in_words(text: str, what: str) -> None:
    with pytest.raises(InputError) as raised:
        read_seal(text)
    assert raised.value.problems == ((what, COPY),)


@given(HOUSES, st.integers(1, MOST_ENTRIES), st.binary(min_size=32, max_size=32))
def test_what_is_printed_is_read(house: str, entries: int, root: bytes) -> None:
    printed = Seal(house, entries, root.hex())
    assert read_seal("\n".join(printed.lines)) == printed


@given(HOUSES, st.integers(1, MOST_ENTRIES), st.binary(min_size=32, max_size=32))
def test_lines_run_together_are_read(house: str, entries: int, root: bytes) -> None:
    printed = Seal(house, entries, root.hex())
    found = read_seal("".join(printed.lines))
    assert (found.entries, found.root) == (entries, root.hex())
    assert same_house(found.house, house)


@given(st.text() | st.text("HouseEntriesRoot 0123abc\n"))
def test_any_text_is_read_or_refused_in_words(text: str) -> None:
    with suppress(InputError):
        found = read_seal(text)
        assert len(bytes.fromhex(found.root)) == 32


PARTS = r"house\s*(?P<house>.*\S)\s*entries\s*(?P<entries>\S{1,60}?)\s*root(?P<root>.*)"
PIECES = (
    "house",
    "House ",
    "entries",
    "Entries ",
    "root",
    "\n",
    " ",
    "Wren",
    "57",
    "٥",
    ROOT,
    "ab",
)


def read_or_told(text: str) -> tuple[Seal | None, str]:
    """Return the seal, or why there is none."""
    try:
        return read_seal(text), ""
    except InputError as error:
        return None, error.what


@given(st.lists(st.sampled_from(PIECES), max_size=12).map("".join))
def test_a_seal_is_found_where_a_slow_pattern_finds_it(text: str) -> None:
    """The pattern tells which words count when some stand twice, but goes back over all of them."""
    found = re.search(rf"^\s*{PARTS}", text, re.S | re.I | re.M) or re.search(
        PARTS, text, re.S | re.I
    )
    seal, told = read_or_told(text)
    assert (found is None) == (" is not a seal: " in told)
    if seal and found:
        assert seal.house == " ".join(found["house"].split())
        assert seal.entries == int(found["entries"])


@pytest.mark.parametrize("piece", ["house a entries ", "house", "\n", "entries", "entries x "])
def test_a_long_text_that_is_no_seal_is_refused_at_once(piece: str) -> None:
    """The time to read a text must not grow with its length squared: these took hours."""
    with pytest.raises(InputError) as raised:
        read_seal(piece * 60_000)
    assert raised.value.what.endswith(
        " is not a seal: it needs a house, a number of entries and a root."
    )


def test_a_book_of_the_most_entries_has_a_seal_and_one_of_a_single_entry() -> None:
    for entries in (1, MOST_ENTRIES):
        assert read_seal(LINES.replace("57", str(entries), 1)).entries == entries


def test_the_name_of_a_house_is_cut_where_a_symbol_would_grow_and_the_rest_stands_whole() -> None:
    """33 by 33 modules hold 114 capitals, figures and marks (ISO/IEC 18004, level L, mode 2)."""
    for name, entries in (("W" * 200, 57), ("W" * 200, 10**9), ("Wren & Co", 57)):
        seal = Seal(name, entries, ROOT)
        told = in_symbol(seal.lines)
        assert told.endswith(f" ENTRIES {entries} ROOT {ROOT.upper()}")
        read = read_seal(told)
        assert (read.entries, read.root) == (entries, ROOT)
        assert same_house(read.house, name)
        assert len(told) == (MOST_IN_SYMBOL if "WW" in name else len(" ".join(seal.lines)) - 2)


def test_a_name_in_a_symbol_is_that_of_its_house_whole_or_cut_late_enough() -> None:
    name = "Wren and Daughters' Cordial Works"
    whole = "WREN AND DAUGHTERS CORDIAL WORKS"
    assert same_house(whole, name)
    assert same_house(name, whole[:LEAST_CUT])
    assert not same_house(name, whole[: LEAST_CUT - 1])
    assert not same_house(name, "WREN AND DAUGHTERS OF ANOTHER")
    assert same_house("薬屋", "-")
