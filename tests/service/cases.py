"""How tests of verbs are written down: what is said, and what is recorded or refused."""

from typing import Any

import pytest

from ledger.domain.entries.plain import facts_to_plain
from ledger.errors import LedgerError
from tests.keeper import Keeper

UL, MG, EACH = "uL", "mg", "ueach"
Problem = tuple[str, str]
Said = tuple[str, dict[str, str], str | None, dict[str, Any]]
"""A verb, its words, the code of the lot it opens, and the facts it records as plain values."""
Refused = tuple[str, dict[str, str], type[LedgerError], tuple[Problem, ...]]
"""A verb, its words, the class of the error, and all that it says."""


def amount(number: int, measure: str, written: str) -> dict[str, Any]:
    return {"amount": number, "measure": measure, "written": written}


def check_recorded(said: Said, keeper: Keeper) -> None:
    """Say it; the facts and the code are as told, without deviations, and can be read again."""
    verb, words, code, facts = said
    made = keeper.do(verb, **words)
    assert facts_to_plain(made.entry.facts) == facts
    assert (made.code, made.deviations) == (code, ())
    assert keeper.entry(made.seq) == made.entry


def check_refused(refused: Refused, keeper: Keeper) -> None:
    """Say it; it is refused in these words and nothing is recorded."""
    verb, words, error, problems = refused
    before = keeper.bodies()
    with pytest.raises(LedgerError) as raised:
        keeper.do(verb, **words)
    assert raised.value.problems == problems
    assert type(raised.value) is error
    assert keeper.bodies() == before
