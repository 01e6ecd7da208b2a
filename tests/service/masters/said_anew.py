"""A fact that is said anew alone changes itself and keeps the rest, whatever the master."""

from collections.abc import Mapping, Sequence
from typing import Any

from ledger.domain.entries.plain import facts_to_plain
from tests.keeper import Keeper


def check_each_alone(
    keeper: Keeper,
    verb: str,
    named: Mapping[str, Any],
    first: Mapping[str, str],
    anew: Sequence[tuple[str, str, Mapping[str, Any]]],
) -> None:
    """Say all, then each fact alone: of what stood before only that one is another.

    Args:
        keeper: Keeps the book.
        verb: The verb of the master.
        named: The words by which it is named each time.
        first: All that is said of it at first.
        anew: A word, what it says now, and the fields that this changes.
    """
    before = facts_to_plain(keeper.do(verb, **{**named, **first}).entry.facts)
    assert {word for word, _, _ in anew} == set(first)
    for word, value, changed in anew:
        after = facts_to_plain(keeper.do(verb, **named, **{word: value}).entry.facts)
        assert changed
        assert {**before, **changed} == after, word
        assert all(before.get(name) != fact for name, fact in changed.items()), word
        before = after
