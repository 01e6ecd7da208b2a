"""Striking an entry: it stays readable, and what is refused in which words."""

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import Refused, check_refused

REFUSED: dict[str, Refused] = {
    "a strike of what is no number": (
        "strike",
        {"entry": "the last", "because": "wrong"},
        InputError,
        (
            (
                '"the last" is not the number of an entry.',
                "pottle journal lists the entries with their numbers.",
            ),
        ),
    ),
}


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_a_strike_keeps_what_it_strikes_readable(bench: Keeper) -> None:
    old = bench.entry(19)
    made = bench.do("strike", entry="19", because="another batch")
    assert (made.entry.kind, made.entry.draft.corrects) == ("strike", 19)
    assert bench.entry(19) == old
