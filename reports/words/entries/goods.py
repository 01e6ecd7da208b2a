"""Bottled goods in words: filled, labelled, sent, judged and complained of.

Guarantees: all that was recorded is told, in the order in which a maker would say it.
"""

import re

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries.choices import MoveAs, Reached
from ledger.domain.entries.goods import Answer, Bottle, Cases, Complaint, Labels, Move
from ledger.domain.entries.recall import Contact
from ledger.domain.entries.verdicts import Judge
from reports.kit.format import duration, plural, scaled, tidy
from reports.words.entries.parts import Parts, before

GONE = {
    MoveAs.SALE: ("sold", "to"),
    MoveAs.SAMPLE: ("given as samples", "to"),
    MoveAs.TASTING: ("poured at a tasting", "with"),
    MoveAs.ON_RETURN: ("sent on sale or return", "to"),
    MoveAs.RETURNED: ("came back", "from"),
    MoveAs.BREAKAGE: ("broken", "at"),
    MoveAs.RETAINED: ("kept back as samples", "by"),
    MoveAs.DESTROYED: ("destroyed", "by"),
}
"""What became of goods, and the word before the name that goes with it."""
VERDICTS = {
    "hold": "put on hold",
    "release": "released",
    "reject": "rejected",
    "rework": "to be reworked",
    "recall": "recalled",
}
"""What a verdict made of a lot."""


def gone(moved_as: MoveAs, party: str | None) -> str:
    """Return what became of goods, with who has them.

    >>> gone(MoveAs.SALE, "a café"), gone(MoveAs.BREAKAGE, None)
    ('sold to a café', 'broken')
    """
    told = became(moved_as, is_named=bool(party))
    return f"{told} {party}" if party else told


def became(moved_as: MoveAs, *, is_named: bool) -> str:
    """Return what became of goods; when somebody is named, with the word before the name.

    >>> became(MoveAs.SALE, is_named=True), became(MoveAs.SALE, is_named=False)
    ('sold to', 'sold')
    """
    told, word = GONE[moved_as]
    return f"{told} {word}" if is_named else told


def bottle(facts: Bottle) -> Parts:
    """Return what is told of a filling."""
    return (
        f"{facts.count} x {tidy(facts.size.written)} from {facts.source}",
        f"{tidy(facts.drawn.written)} drawn",
        before("bottles", facts.bottles),
        before("caps", facts.caps),
        before("numbered", _span(facts.first_bottle, facts.last_bottle)),
        f"a fill weighed {scaled(facts.fill_check_mg, 1000, 'g')}" if facts.fill_check_mg else None,
        before("best before", facts.best_before),
        f"{duration(facts.labour_minutes)} of work" if facts.labour_minutes else None,
    )


def _span(first: int | None, last: int | None) -> str | None:
    ends = [str(end) for end in (first, last) if end is not None]
    return " to ".join(ends) or None


def cases(facts: Cases) -> Parts:
    """Return what is told of bottles in cases."""
    last = facts.first_case + facts.count - 1
    return (
        f"{plural(facts.count, 'case')} of {facts.holds}",
        f"numbered {facts.first_case} to {last}" if facts.count > 1 else f"number {last}",
        before("GS1 Company Prefix", facts.company_prefix),
    )


def labels(facts: Labels) -> Parts:
    """Return what is told of labels printed and used."""
    return (
        f"{facts.printed} printed" if facts.printed else None,
        f"with {facts.across} across" if facts.across else None,
        before("on", facts.stock),
        f"{facts.used} used" if facts.used is not None else None,
        f"{facts.spoiled} spoiled" if facts.spoiled is not None else None,
    )


def move(facts: Move) -> Parts:
    """Return what is told of goods that moved."""
    return (
        f"{tidy(facts.amount.written)} {gone(facts.moved_as, facts.party)}",
        facts.document,
        before("witness", facts.witness),
    )


def judge(facts: Judge) -> Parts:
    """Return what is told of a verdict."""
    return (VERDICTS[facts.verdict],)


def complaint(facts: Complaint) -> Parts:
    """Return what is told of a complaint."""
    return (
        facts.symptom,
        before("from", facts.party),
        _unless_said("opened", facts.opened),
        before("stored", facts.stored),
        _unless_said("mixed", facts.mixed),
        facts.words,
        before("photo", facts.photo),
        facts.photo_sha256 and f"its hash {facts.photo_sha256[:12]}…",
        f"to be answered in {facts.answer_days} d" if facts.answer_days is not None else None,
    )


def _unless_said(word: str, told: str | None) -> str | None:
    """Return what was told with the word before it, unless it says the word itself.

    >>> _unless_said("opened", "2026-06-01"), _unless_said("opened", "not opened, seen at once")
    ('opened 2026-06-01', 'not opened, seen at once')
    """
    return told if told and word in re.findall(r"\w+", told.casefold()) else before(word, told)


def answer(facts: Answer) -> Parts:
    """Return what is told of an answer to a complaint."""
    return (
        f"complaint {facts.complaint}",
        str(facts.outcome).replace("-", " "),
        before("told by", facts.told_by) or "nobody told yet",
        before("told on", facts.told_on),
        "closed" if facts.is_closed else None,
        facts.words,
    )


CALLS = {
    Reached.SPOKEN: "spoken to",
    Reached.LEFT_WORD: "word left",
    Reached.NO_ANSWER: "no answer",
}
"""How a call ended, in words."""


def contact(facts: Contact) -> Parts:
    """Return what is told of a call."""
    return (facts.party, *outcome(facts))


def outcome(facts: Contact) -> Parts:
    """Return what a call came to."""
    return (
        CALLS[facts.reached],
        _still_there(facts.still_there) if facts.still_there else None,
        facts.words,
    )


def _still_there(amount: Quantity) -> str:
    return f"{tidy(amount.written)} still there" if amount.amount else "nothing left"
