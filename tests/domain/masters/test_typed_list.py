"""A typed list of ingredients is found in every language of labels, and nothing else is."""

import pytest

from ledger.domain.masters.typed_list import HEADS, parted
from reports.words.goods.label_words import languages


@pytest.mark.parametrize(
    ("text", "rest", "typed"),
    [
        ("Store upright.", "Store upright.", ""),
        ("Fine ingredients: only the best.", "Fine ingredients: only the best.", ""),
        ("Zutaten: Zucker, Wasser\nKühl lagern.", "Kühl lagern.", "Zutaten: Zucker, Wasser"),
        ("INGREDIENTS: sugar, oil approx. 1 %", "", "INGREDIENTS: sugar, oil approx. 1 %"),
        (
            "Shake. Ingredients: sugar, acid (E 330). May hold traces of nuts.",
            "Shake. May hold traces of nuts.",
            "Ingredients: sugar, acid (E 330).",
        ),
    ],
)
def test_a_list_ends_with_its_sentence(text: str, rest: str, typed: str) -> None:
    found = parted(text)
    assert (found.rest, found.typed) == (rest, typed)


def test_the_word_before_a_list_is_known_in_every_language_of_labels() -> None:
    assert {words.ingredients for words in languages().values()} <= {*HEADS}
