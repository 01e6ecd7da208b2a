"""The list of verbs: every name leads to a verb, which takes its words by name."""

import inspect

import pytest

from ledger.service.copies.season_verbs import VERBS


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
