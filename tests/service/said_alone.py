"""A word of a verb that is said alone beside the needed ones, in tests of every room."""

from collections.abc import Mapping
from typing import Any

from ledger.domain.entries.plain import facts_to_plain
from ledger.service.copies.intake.together import Within, together
from ledger.service.copies.season_verbs import VERBS
from ledger.service.desk.book import How
from tests.keeper import Keeper

Plain = dict[str, Any]
Alone = tuple[dict[str, str], dict[str, tuple[str, Plain]]]
"""The words that a verb needs; others, each with what it says and the fields that this changes."""
UNITS = (" g/mL", " %", " °C", " NTU", " µm", " g")
"""Units that may be written behind a figure of their field, or left out."""


def facts(keeper: Keeper, verb: str, words: Mapping[str, str]) -> Plain:
    """Return what a verb would record; nothing stays."""
    told: list[Plain] = []

    def act(within: Within) -> None:
        how = How("AB", because="to see")
        told.append(facts_to_plain(VERBS[verb](within, how, **words).entry.facts))

    together(keeper.book, act)
    return told[0]


def check_said_alone(keeper: Keeper, verb: str, said: Alone) -> None:
    """Say each word alone, in a transaction that leaves nothing; its own field alone changes."""
    needed, words = said
    bare = facts(keeper, verb, needed)
    for word, (value, changed) in words.items():
        told = facts(keeper, verb, {**needed, word: value})
        if value.endswith(UNITS):
            assert facts(keeper, verb, {**needed, word: value.rsplit(" ")[0]}) == told
        assert {**bare, **changed} == told, word
        assert all(bare.get(name) != fact for name, fact in changed.items()), word
