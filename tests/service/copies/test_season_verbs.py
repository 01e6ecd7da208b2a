"""The list of verbs: every name leads to a verb, which takes its words by name."""

import inspect

import pytest

from ledger.service.copies.season_verbs import VERBS
from tests.kept.golden import GOLDEN


@pytest.mark.parametrize("name", VERBS)
def test_every_name_leads_to_a_verb_of_the_book(name: str) -> None:
    book, how, *words = inspect.signature(VERBS[name]).parameters.values()
    assert (book.name, how.name) == ("book", "how")
    needed = [word for word in words if word.default is inspect.Parameter.empty]
    assert {word.kind for word in needed} <= {inspect.Parameter.KEYWORD_ONLY}


def test_what_is_no_verb_is_not_found() -> None:
    assert "desk" not in VERBS
    with pytest.raises(KeyError):
        VERBS["desk"]


def test_the_verbs_are_those_of_which_it_is_kept_what_they_say_of_wrong_words() -> None:
    kept = (GOLDEN / "wrong_words/empty.txt").read_text(encoding="utf-8").splitlines()
    assert [line for line in kept if not line.startswith(" ")] == sorted(VERBS)
