"""The view of the pack of a recall: call list with its script, balance, lots, calls made.

Guarantees: everybody who was sent any has a place in it, with what is not known said so. Refuses:
prices, recipes and claims of legal compliance.
"""

from collections.abc import Sequence
from datetime import datetime

from ledger.service.recall.calls import ToCall
from ledger.service.recall.standing import Recall
from reports.kit.format import clock, initials
from reports.kit.frame import frame_of
from reports.views.recall import CallView, RecallView
from reports.words.lots.trace import holder_words
from reports.words.recall.standing import (
    AUTHORITY,
    NOBODY,
    accounted_line,
    balance_line,
    balance_rows,
    called,
    came_to,
    course,
    how_many_made,
    lot_rows,
    may_have,
    reach,
)

TICKS = ("spoken to", "set aside", "none left", "collected", "call again")
"""What is ticked at each call."""


def recall_view(
    recall: Recall, missing: Sequence[str], written_at: datetime | None, *, drill: bool
) -> RecallView:
    """Return the pack of a recall.

    Args:
        recall: The recall.
        missing: What the files beside it lack, a sentence each.
        written_at: When the newest entry of the book was written.
        drill: Whether it is a drill.
    """
    heads, rows = balance_rows(recall)
    house = recall.house.name if recall.house else ""
    return RecallView(
        frame=frame_of(recall.house, recall.seal, written_at),
        kind="Recall drill" if drill else "Recall",
        is_drill=drill,
        headline="Recall drill: nothing was held" if drill else "Recall",
        lot=recall.lot.code,
        product=recall.lot.name,
        title=how_many_made(recall),
        course=tuple(course(recall, drill=drill)),
        authority=AUTHORITY,
        script=_script(recall, house),
        ticks=TICKS,
        calls=tuple(_call(place, call) for place, call in enumerate(recall.to_call, start=1)),
        balance_heads=heads,
        balance=tuple(map(tuple, rows)),
        balance_sums=(balance_line(recall), accounted_line(recall)),
        lots=tuple((row[0], row[1], row[2], row[3]) for row in lot_rows(recall)),
        contacts=_contacts(recall),
        missing=tuple(missing),
    )


def _script(recall: Recall, house: str) -> tuple[str, ...]:
    codes = [recalled.brief.code for recalled in recall.packed] or [recall.lot.code]
    phone = recall.house.phone if recall.house else None
    back = f"Ring us back on {phone}." if phone else "Leave the number to ring back: ____________"
    return (
        f"“This is __________ of {house}. We are taking back some of our bottles.",
        f"The code is on the label after “Lot”. Please look for: {', '.join(codes)}.",
        "Stop pouring from them and do not sell them. How many do you have, opened and unopened?",
        "Have you passed any on, and to whom?",
        "Set them aside, marked “do not use”, until we collect them; you get them replaced.",
        f"Has anybody felt unwell or complained? {back}”",
    )


def _call(place: int, call: ToCall) -> CallView:
    known = call.known
    phone = (known.phone or "") if known else ""
    address = known.address if known else None
    # Without a number the words say what to do instead.
    others = (known.email, known.words) if known and phone else (reach(call),)
    return CallView(
        place=str(place),
        name=call.name or NOBODY,
        phone=phone,
        reach=tuple(words for words in (*others, address) if words),
        may_have=may_have(call),
        sent=tuple(
            f"{delivery.lot}: {holder_words(delivery, with_party=False)}"
            for delivery in call.deliveries
        ),
        called=tuple(map(called, call.contacts)),
    )


def _contacts(recall: Recall) -> tuple[tuple[str, str, str, str], ...]:
    return tuple(
        (
            clock(entry.draft.happened),
            initials(entry),
            entry.facts.party,
            came_to(entry),
        )
        for entry in recall.contacts
    )
