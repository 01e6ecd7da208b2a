"""Rows that tell together of one act: one delivery of what many batches drew of a lot.

Guarantees: the first of the rows tells it, with amounts and costs summed exactly. Refuses: to sum
what has no unit in common.
"""

import re
from collections.abc import Sequence
from decimal import Decimal

from msgspec.structs import replace

from ledger.service.copies.intake.row_acts import Act

SUMS = ("amount", "cost", "duty")
"""Words that are summed where rows of one code are told as one act."""
_SUMMED = re.compile(r"(-?\d+(?:\.\d+)?)\s*(.*)", re.ASCII)


def summed(acts: Sequence[Act]) -> list[Act]:
    """Return acts with those that are done once for all rows of a code told by the first of them.

    What cannot be summed, since its units differ, stays as the rows tell it.
    """
    groups: dict[tuple[str, str], list[Act]] = {}
    for act in acts:
        if act.is_summed and not act.is_broken:
            groups.setdefault((act.verb, act.words.get("code", "").upper()), []).append(act)
    told = {}
    for group in groups.values():
        first = min(group, key=lambda act: act.turn)
        words = {word: _sum([act.words.get(word) for act in group]) for word in SUMS}
        known = {word: text for word, text in words.items() if text}
        told[id(first)] = replace(first, words={**first.words, **known})
    return [told.get(id(act), act) for act in acts]


def _sum(texts: Sequence[str | None]) -> str | None:
    """Return the sum of amounts of one unit, or None.

    >>> _sum(["31.5 mL", None, "62 mL"]), _sum(["1 L", "5 mL"])
    ('93.5 mL', None)
    """
    found = [_SUMMED.fullmatch(text) for text in texts if text]
    units = {each[2] for each in found if each}
    if not found or None in found or len(units) != 1:
        return None
    total = sum(Decimal(each[1]) for each in found if each)
    return f"{total} {units.pop()}".strip()
