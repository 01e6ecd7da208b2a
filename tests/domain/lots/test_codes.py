"""Lot codes, their stems and their check character."""

import csv
from pathlib import Path
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from stdnum.iso7064 import mod_37_36

from ledger.domain.lots.codes import (
    LONGEST_CODE,
    check_character,
    check_code,
    clean_code,
    is_clear,
    make_code,
    nearest,
    next_code,
    spans,
    stem_for,
)
from ledger.errors import InputError, LedgerError, RefusedError

REFERENCE = Path(__file__).parents[2] / "reference" / "check_characters.csv"
ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"
STEMS = st.text(ALPHABET, min_size=1, max_size=8)
CODES = st.builds(make_code, STEMS, st.integers(1, 1200) | st.integers(1, 10**9 - 1))


def reference_rows() -> list[dict[str, str]]:
    with REFERENCE.open(newline="", encoding="utf-8") as file:
        rows = [row for row in csv.DictReader(file) if row["system"] == "MOD 37,36"]
    assert rows
    return rows


@pytest.mark.parametrize("row", reference_rows(), ids=lambda row: row["payload"])
def test_check_characters_are_the_published_ones(row: dict[str, str]) -> None:
    """Source: column "source" of check_characters.csv, rows MOD 37,36."""
    assert check_character(row["payload"]) == row["check"]


@given(st.text(ALPHABET, max_size=40))
def test_check_characters_are_those_of_stdnum(characters: str) -> None:
    assert check_character(characters) == mod_37_36.calc_check_digit(characters)


@given(CODES)
def test_a_code_made_is_the_books_and_fits_by_stdnum(code: str) -> None:
    assert len(code) <= LONGEST_CODE
    assert mod_37_36.is_valid(code.replace("-", ""))
    assert check_code(code) is None
    assert clean_code(code.lower()) == code


@given(STEMS, st.integers(1, 10**9 - 1), st.integers(1, 10**9 - 1))
def test_two_ordinals_of_a_stem_have_two_codes(stem: str, one: int, other: int) -> None:
    assert (make_code(stem, one) == make_code(stem, other)) == (one == other)


@pytest.mark.parametrize(
    ("stem", "ordinal", "start"),
    [
        ("OIL", 7, "OIL-007-"),
        ("OIL", 999, "OIL-999-"),
        ("OIL", 1000, "OIL-1000-"),
        ("A", 1, "A-001-"),
        ("ABCDEFG8", 999_999_999, "ABCDEFG8-999999999-"),
    ],
)
def test_a_code_is_stem_number_and_check_character(stem: str, ordinal: int, start: str) -> None:
    code = make_code(stem, ordinal)
    assert code == start + mod_37_36.calc_check_digit(start.replace("-", ""))


@pytest.mark.parametrize("stem", ["", "oil", "OIL ", "OI-L", "ABCDEFGHI", "ÖL"])
def test_a_stem_of_another_form_is_refused(stem: str) -> None:
    with pytest.raises(InputError) as caught:
        make_code(stem, 7)
    assert str(caught.value) == (
        f'The stem of a lot code must be 1 to 8 characters of A-Z and 0-9, and "{stem}" is not. '
        "Choose a short stem such as OIL."
    )


@pytest.mark.parametrize("ordinal", [0, -7])
def test_a_number_below_one_is_refused(ordinal: int) -> None:
    with pytest.raises(RefusedError) as caught:
        make_code("OIL", ordinal)
    assert str(caught.value) == (
        f"The number of a lot code must be at least 1, and {ordinal} is not. "
        "Number lots from 1 upwards."
    )


def test_a_code_that_would_be_too_long_is_refused() -> None:
    check = mod_37_36.calc_check_digit("ABCDEFGH1000000000")
    with pytest.raises(RefusedError) as caught:
        make_code("ABCDEFGH", 10**9)
    assert str(caught.value) == (
        f"The lot code ABCDEFGH-1000000000-{check} would have 21 characters, "
        "and a lot code has at most 20. Choose a shorter stem."
    )


@pytest.mark.parametrize(
    "code",
    [
        "L240517",
        "BATCH-7",
        "OIL-07-Q",
        "OIL-007",
        "OIL-AB7-Q",
        "SYRUP-24-05-1",
        "oil-007-q",
        "-",
        "",
    ],
)
def test_a_makers_own_code_is_not_judged(code: str) -> None:
    assert check_code(code) is None


@pytest.mark.parametrize(
    ("words", "stem"),
    [
        ("Sweet orange oil", "SOO"),
        ("Orange essence", "OE"),
        ("Essence of orange", "EO"),
        ("Lemon", "LMN"),
        ("Vanilla", "VNL"),
        ("Gum", "GUM"),
        ("rose", "ROSE"),
        ("Aioli", "AIO"),
        ("Crème de vanille", "CDV"),
        ("Äpfel", "APF"),
        ("Øl og smørrebrød", "OOS"),
        ("Ginger, lime & clove syrup no 5", "GLCS"),
        ("Maker's tonic", "MT"),
        ("of the", "OT"),
        ("X", "LOT"),
        ("96 %", "LOT"),
        ("лимон", "LOT"),
        ("", "LOT"),
    ],
)
def test_a_stem_is_taken_from_the_words(words: str, stem: str) -> None:
    assert stem_for(words) == stem


@given(st.text(max_size=60))
def test_any_words_give_a_stem_that_makes_a_code(words: str) -> None:
    stem = stem_for(words)
    assert 2 <= len(stem) <= 4
    assert check_code(make_code(stem, 1)) is None


STRANGE = "A lot code holds only A-Z, 0-9 and -, and this one holds"
AGAIN = "Read the code again and write it so."


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "No lot code was given. Write the code of a lot, such as OIL-001-D."),
        (" -- ", "No lot code was given. Write the code of a lot, such as OIL-001-D."),
        ("OIL 007", f'{STRANGE} " ". {AGAIN}'),
        ("OIL/007_1", f'{STRANGE} "/", "_". {AGAIN}'),
        ("a!b?c*d+e=f#g", f'{STRANGE} "!", "?", "*", "+", "=". {AGAIN}'),
        ("straße", f'{STRANGE} "ß". {AGAIN}'),
        ("OIL\x00", f'{STRANGE} "U+0000". {AGAIN}'),
        ("A" * 21, f"A lot code has at most 20 characters, and this one has 21. {AGAIN}"),
        (
            "é" + "A" * 20,
            f'{STRANGE} "é". A lot code has at most 20 characters, and this one has 21. {AGAIN}',
        ),
    ],
    ids=["empty", "dashes", "space", "two signs", "six signs", "sharp s", "null", "long", "both"],
)
def test_text_that_is_no_code_is_refused_with_all_that_is_wrong(text: str, sentence: str) -> None:
    with pytest.raises(InputError) as caught:
        clean_code(text)
    assert str(caught.value) == sentence


def test_a_code_has_twenty_characters_at_most() -> None:
    assert clean_code("a" * LONGEST_CODE) == "A" * LONGEST_CODE


def cleaned(text: str) -> str | LedgerError:
    try:
        return clean_code(text)
    except LedgerError as error:
        return error


@given(st.text(max_size=30) | st.text(ALPHABET.lower() + "- ", max_size=24))
def test_any_text_is_a_clean_code_or_an_error_in_words(text: str) -> None:
    code = cleaned(text)
    if isinstance(code, LedgerError):
        assert code.what.endswith(".")
        assert code.todo.endswith(".")
    else:
        assert set(code) <= set(ALPHABET + "-")
        assert 1 <= len(code) <= LONGEST_CODE
        assert clean_code(code) == code


@given(st.integers(1, 400), st.sets(st.integers(1, 60)))
def test_a_code_that_the_book_makes_is_free_and_ends_in_nothing_taken_for_another(
    begin: int, taken_places: set[int]
) -> None:
    taken = {make_code("OS", begin + place) for place in taken_places}
    code = next_code("OS", begin, taken.__contains__)
    assert code not in taken
    assert check_code(code) is None
    assert code[-1] not in "1IL0OQ"


def test_codes_made_one_after_another_rise_without_a_gap_but_for_those_passed_over() -> None:
    made = set[str]()
    for _ in range(200):
        made.add(next_code("OS", len(made) + 1, made.__contains__))
    last = max(int(code.split("-")[1]) for code in made)
    assert made == {
        code for n in range(1, last + 1) if (code := make_code("OS", n))[-1] not in "1IL0OQ"
    }


def test_the_nearest_codes_come_likest_first_and_ties_by_name() -> None:
    known = ["OIL-017-Q", "OIL-008-1", "OIL-007-1", "SYR-112-X", "OIL-008-1"]
    assert nearest("OIL-007-I", known) == ("OIL-007-1", "OIL-008-1", "OIL-017-Q")
    assert nearest("OIL-007-I", known, most=1) == ("OIL-007-1",)
    assert nearest("ZZZZ", known) == ()
    assert nearest("OIL-007-I", []) == ()
    assert nearest("ABC-123", ["321-CBA"]) == ()


def test_a_code_is_near_from_six_tenths_of_its_characters_in_order_on() -> None:
    """Twice the three that fit over ten, and twice the eleven over 37."""
    assert nearest("ABCDE", ["ABCXY", "ABXYZ"]) == ("ABCXY",)
    assert nearest("ABCDEFGHIJK" + 7 * "Z", ["ABCDEFGHIJK" + 8 * "Y"]) == ()


@given(CODES, st.lists(CODES, max_size=8), st.randoms(use_true_random=False))
def test_a_known_code_is_its_own_nearest_in_any_order(
    code: str, others: list[str], random: Random
) -> None:
    known = [*others, code]
    found = nearest(code, known)
    random.shuffle(known)
    assert found[0] == code
    assert nearest(code, known) == found


def test_codes_in_a_row_are_told_by_the_first_and_the_last_whichever_were_passed_over() -> None:
    every = [make_code("OIL", number) for number in range(1, 13)]
    clear = [code for code in every if is_clear(code)]
    assert len(clear) < len(every)
    for row in (every, clear):
        assert spans(row) == [f"{row[0]} to {row[-1]}"]
        assert spans(row[:3]) == [f"{row[0]} to {row[2]}"]
        assert spans(row[:2]) == row[:2]
        assert spans(row[:2] + row[3:]) == [*row[:2], f"{row[3]} to {row[-1]}"]
        assert spans(row[::2]) == row[::2]
        assert spans(row[::-1]) == row[::-1]


def test_codes_of_two_stems_and_a_maker_s_own_stand_in_no_row_together() -> None:
    mixed = [make_code("OIL", 1), make_code("SYR", 2), make_code("OIL", 3), "OIL-AB7-Q"]
    assert spans([*mixed, make_code("OIL", 8)]) == [*mixed, make_code("OIL", 8)]
