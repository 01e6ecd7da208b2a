"""A recall in words: what is held, where all of it is, whom to call, how far it is.

Guarantees: the same words on screen and paper; nobody is left out for want of a name or a number.
Refuses: to claim that any law is met.
"""

from collections.abc import Iterator

from ledger.domain.amounts.quantity import Measure, show
from ledger.domain.entries import Contact, Entry
from ledger.domain.lots.lot import Status
from ledger.domain.masters.parties import is_named
from ledger.service.recall.calls import ToCall
from ledger.service.recall.standing import Recall
from reports.kit.format import clock, closed, initials, plural
from reports.words.entries.goods import outcome
from reports.words.entries.parts import joined
from reports.words.lots.there import there_words
from reports.words.lots.trace import holder_words

NOBODY = "not named"
"""Said of goods that were sent without a name."""
NO_NUMBER = "no telephone number in the book"
"""Said of somebody of whom no telephone number is known."""
AUTHORITY = (
    "Can anybody be harmed: an allergen that is not on the label, something sharp, gas under "
    "pressure, too much of a limited substance, the wrong thing in the bottle? Then do not wait: "
    "ask your food authority today, before you collect anything.",
    "Local law says when it must be told and how the public is warned. What stands here is what "
    "the book knows; it does not decide that, and it claims no legal compliance.",
)
"""When to ask the authority, in the usual words (common practice; local law decides)."""
AIM = "Aim for everything within 2 hours and 95 % or more accounted for (common practice)."
"""What a drill is measured by (common practice, no source)."""
BALANCE_HEADS = {
    "made": "made",
    "on_hand": "here",
    "used": "used",
    "kept_back": "kept",
    "sent": "sent",
    "samples": "samples",
    "unnamed": "not named",
    "broken": "broken",
    "destroyed": "destroyed",
    "wasted": "waste",
    "unexplained": "unexplained",
}
"""Heads of the table of where all is, by the parts of a balance, in the order they are shown."""
SELDOM = frozenset({"used", "unnamed", "broken", "wasted"})
"""Parts that have a column only where there is any of them."""


def lots_made(recall: Recall) -> str:
    """Return the lot with how many were made of it, in one line."""
    return f"{recall.lot.code}, {what_was_made(recall)}"


def what_was_made(recall: Recall) -> str:
    """Return what the lot is and how many were made of it, without its code."""
    return f"{recall.lot.name}: {how_many_made(recall)}"


def how_many_made(recall: Recall) -> str:
    """Return how many lots were made of it, without what it is."""
    others = len(recall.lots) - 1
    packed = plural(len(recall.packed), "lot of bottles", "lots of bottles")
    made = f"{plural(others, 'lot')} made of it" if others > 0 else "nothing was made of it"
    return f"{made}, {packed} in all."


def course(recall: Recall, *, drill: bool) -> Iterator[str]:
    """Yield how far the recall is."""
    if drill:
        yield "DRILL: nothing was held and nothing was recorded."
    elif recall.begun:
        begun = recall.begun
        reason = f": {closed(begun.draft.reason)}" if begun.draft.reason else "."
        yield f"Recalled {clock(begun.draft.happened)} by {initials(begun)}{reason}"
    if recall.begun and recall.not_held:
        yield f"Not recalled: {', '.join(recall.not_held)}."
    if recall.begun:
        reached = sum(call.is_reached for call in recall.to_call)
        back = _back_since(recall)
        yield (
            f"Spoken to {reached} of {plural(len(recall.to_call), 'holder')}; "
            f"{show(back, recall.measure)} came back since it began."
        )
    if recall.closed:
        cause = closed(recall.closed.facts.cause)
        yield f"Closed {clock(recall.closed.draft.happened)}. Cause: {cause}"
        if recall.closed.draft.reason:
            yield f"Closed with something open: {closed(recall.closed.draft.reason)}"
        holding = (call for call in _waiting(recall) if call.volume_ul or call.pieces)
        if names := ", ".join(call.name or NOBODY for call in holding):
            yield f"Closed before everybody was spoken to; still to call: {names}."


def _waiting(recall: Recall) -> list[ToCall]:
    return [call for call in recall.to_call if not call.is_reached]


def _back_since(recall: Recall) -> int:
    begun = recall.begun
    items = (item for item in recall.holders if item.measure is recall.measure)
    back = (item for item in items if begun and item.position > begun.position)
    return sum(-item.amount for item in back if item.amount < 0)


def lot_rows(recall: Recall) -> list[list[str]]:
    """Return the lots: code, what, what is here, status."""
    return [
        [
            item.brief.code,
            item.brief.name,
            there_words(item.brief),
            str(item.brief.status),
        ]
        for item in recall.lots
    ]


def balance_rows(recall: Recall) -> tuple[tuple[str, ...], list[list[str]]]:
    """Return where all of each lot of bottles is, with heads; of the lot itself if none is."""
    items = recall.packed or [item for item in recall.lots if item.brief == recall.lot]
    told = [(item.brief.code, item.balance.parts(), item.brief.measure) for item in items]
    told.append(("in all", recall.balance.parts(), recall.measure))
    shown = [
        name
        for name in BALANCE_HEADS
        if name not in SELDOM or any(parts[name] for _, parts, _ in told)
    ]
    rows = [
        [code, *(show(parts[name], measure) for name in shown)] for code, parts, measure in told
    ]
    return ("lot", *(BALANCE_HEADS[name] for name in shown)), rows


def balance_line(recall: Recall) -> str:
    """Return the balance as a sum."""
    found, measure = recall.balance, recall.measure
    parts = (
        (found.on_hand, "here"),
        (found.used, "used in other lots"),
        (found.kept_back, "kept back"),
        (found.sent, "sent"),
        (found.samples, "given as samples"),
        (found.unnamed, "to nobody who can be named"),
        (found.broken, "broken"),
        (found.destroyed, "destroyed"),
        (found.wasted, "poured away"),
    )
    told = " + ".join(f"{show(amount, measure)} {word}" for amount, word in parts if amount)
    what = "bottles made" if measure is Measure.UEACH else "made"
    back = f" ({show(found.returned, measure)} came back)" if found.returned else ""
    unexplained = show(found.unexplained, measure)
    made = show(found.made, measure)
    return f"{made} {what} = {told or '0'} + {unexplained} unexplained{back}."


def accounted_line(recall: Recall) -> str:
    """Return the share accounted for, and what is astray of lots that this share leaves out."""
    counted = {item.brief.code for item in recall.packed} or {recall.lot.code}
    astray = [
        f"{show(abs(item.balance.unexplained), item.brief.measure)} "
        f"{'missing' if item.balance.unexplained > 0 else 'too much'} of {item.brief.code}"
        for item in recall.lots
        if item.brief.code not in counted and item.balance.unexplained
    ]
    share = f"Accounted for: {recall.balance.accounted_percent} %"
    of = "the bottles" if recall.packed else recall.lot.code
    return f"{share} of {of}; besides, {' and '.join(astray)}." if astray else f"{share}."


def may_have(call: ToCall) -> str:
    """Return what somebody may have still, in words."""
    if not call.volume_ul and not call.pieces:
        return "nothing left, as they say" if call.says_none_left else "nothing left by the book"
    volume = show(call.volume_ul, Measure.UL)
    if not call.pieces:
        return f"at most {volume}"
    number = show(call.pieces, Measure.UEACH)
    return f"at most {number} {'bottle' if number == '1' else 'bottles'} ({volume})"


def reach(call: ToCall) -> str:
    """Return how to reach somebody, in words."""
    if not is_named(call.name):
        return "ask who was there, and put up a notice"
    known = call.known
    if known is None:
        return NO_NUMBER
    parts = (known.phone or NO_NUMBER, known.email, known.words)
    return ", ".join(part for part in parts if part)


def call_lines(recall: Recall) -> Iterator[str]:
    """Yield whom to call, in order, with what they were sent and the calls made."""
    for place, call in enumerate(recall.to_call, start=1):
        yield f"{place}. {call.name or NOBODY}: {reach(call)}; {may_have(call)}"
        for item in call.deliveries:
            yield f"     {item.lot}: {holder_words(item, with_party=False)}"
        for entry in call.contacts:
            yield f"     {called(entry)}"


def called(entry: Entry[Contact]) -> str:
    """Return a call in one line, without who was called."""
    return f"called {clock(entry.draft.happened)}: {came_to(entry)}"


def came_to(entry: Entry[Contact]) -> str:
    """Return what a call came to, without who was called."""
    return joined(outcome(entry.facts))


def next_line(recall: Recall, *, drill: bool) -> str:
    """Return the command that comes next."""
    code = recall.lot.code
    if recall.begun is None:
        return f'pottle recall {code} --because "WHY"'
    if recall.closed:
        return f"pottle lot {code}"
    if recall.not_held and not drill:
        return f'pottle recall {code} --because "WHY"'
    if name := next((call.name for call in _waiting(recall) if is_named(call.name)), None):
        return f'pottle contact {code} "{name}" --reached spoken --still COUNT'
    here = (lot.brief for lot in recall.lots if lot.brief.status is Status.RECALLED)
    if standing := next((lot.code for lot in here if lot.on_hand > 0), None):
        return f"pottle send {standing} AMOUNT --as destroyed"
    return f'pottle recall {code} --close "CAUSE"'
