"""Words of a list and free words: what is read, what is refused and in which words."""

import pytest

from ledger.domain.entries.choices import Grade, ProductKind
from ledger.domain.entries.texts import LONGEST_TEXT, read_text, read_word
from ledger.errors import InputError


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("washed essence", ProductKind.WASHED_ESSENCE),
        ("Washed_Essence", ProductKind.WASHED_ESSENCE),
        (" syrup ", ProductKind.SYRUP),
    ],
)
def test_a_word_of_a_list_is_read_however_it_is_joined(text: str, word: ProductKind) -> None:
    assert read_word(text, ProductKind, "kind of product") is word


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("murky", '"murky" is not a grade of clarity.'),
        ("", "The grade of clarity is missing."),
    ],
)
def test_a_word_outside_its_list_is_refused_with_the_list(text: str, what: str) -> None:
    with pytest.raises(InputError) as raised:
        read_word(text, Grade, "grade of clarity")
    assert raised.value.problems == (
        (what, "Choose one of: bright, clear, hazy, opalescent, cloudy, milky."),
    )


def test_free_text_is_kept_on_one_line() -> None:
    assert read_text("  a little\n hazy,\tlike tea ", "note") == "a little hazy, like tea"
    assert read_text("x" * LONGEST_TEXT, "note") == "x" * LONGEST_TEXT


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        (" \n", ("The note is missing.", "Give the note in words.")),
        (
            "x" * (LONGEST_TEXT + 1),
            (
                "The note has 2001 characters; at most 2000 are kept.",
                "Say it in fewer words, or in several notes.",
            ),
        ),
        (
            "left\u202eright",
            ("The note holds the invisible character U+202E.", "Type it again without it."),
        ),
        (
            "nul\x00",
            ("The note holds the invisible character U+0000.", "Type it again without it."),
        ),
    ],
    ids=["nothing", "long", "turned about", "nul"],
)
def test_text_that_cannot_be_kept_is_refused(text: str, problem: tuple[str, str]) -> None:
    with pytest.raises(InputError) as raised:
        read_text(text, "note")
    assert raised.value.problems == (problem,)


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("", ("The words are missing.", "Say them.")),
        (
            "x" * (LONGEST_TEXT + 1),
            (
                "The words have 2001 characters; at most 2000 are kept.",
                "Say it in fewer words, or in several notes.",
            ),
        ),
        (
            "left\u202eright",
            ("The words hold the invisible character U+202E.", "Type it again without it."),
        ),
    ],
)
def test_of_many_words_it_is_told_as_of_many(text: str, problem: tuple[str, str]) -> None:
    with pytest.raises(InputError) as raised:
        read_text(text, "words")
    assert raised.value.problems == (problem,)
