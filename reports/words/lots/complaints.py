"""Complaints in words, with what became of each.

Guarantees: a complaint of nobody in particular is "not named", one without an outcome open.
Refuses: to judge a complaint.
"""

from ledger.service.lots.complaints import Complained

HEADS = ("complaint", "day", "lot", "from", "what", "became")


def complaint_cells(item: Complained) -> list[str]:
    """Return a row of cells of a complaint."""
    facts = item.entry.facts
    return [
        str(item.number),
        f"{item.entry.draft.happened.local():%Y-%m-%d}",
        item.lot.code,
        facts.party or "not named",
        facts.symptom,
        became(item),
    ]


def became(item: Complained) -> str:
    """Return what became of a complaint, in a few words."""
    if item.answer is None:
        by = item.answer_by
        return f"open, answer by {by}" if by else "open"
    facts = item.answer.facts
    outcome = str(facts.outcome).replace("-", " ")
    if facts.told_by:
        return f"{outcome}, told {facts.told_on} by {facts.told_by}"
    return f"{outcome}, {'nobody told yet' if item.is_open else 'closed, nobody told'}"
