"""A recall, for machines: its lots, where all of them are, whom to call and what was done.

In a balance `made = on_hand + used + sent + samples + unnamed + kept_back + broken + destroyed +
wasted + unexplained`; `sent`, `samples` and `unnamed` are without what came back (`returned`),
which is on hand again or went on from there.
"""

from collections.abc import Sequence
from datetime import date

from msgspec.structs import asdict

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Contact, Entry
from ledger.domain.entries.choices import Reached
from ledger.domain.lots.balance import Balance
from ledger.service.recall.answers import left_there
from ledger.service.recall.balance import RecalledLot
from ledger.service.recall.calls import ToCall
from ledger.service.recall.standing import Recall
from reports.json.kit.answer import Amount, Answer, Code, Figure, File, Moment, amount_of, moment
from reports.json.kit.lot import LotBrief, lot_brief
from reports.json.lots.trace import HolderTold, holders_told
from reports.words.recall.standing import next_line


class BalanceTold(Answer, frozen=True):
    """Where a lot is, or several of one measure together."""

    made: Amount
    """What there was of it in all."""
    on_hand: Amount
    """What the book says is here."""
    used: Amount
    """What went into other lots."""
    sent: Amount
    """What was sold or sent on sale or return to somebody, without what came back."""
    returned: Amount
    """What came back; it is on hand, or went on from there."""
    samples: Amount
    """What was given to somebody as samples or poured at tastings, without what came back."""
    unnamed: Amount
    """What went to people whom nobody can name; it is not accounted for."""
    kept_back: Amount
    """What was kept back as samples of the lot."""
    broken: Amount
    """What broke."""
    destroyed: Amount
    """What was destroyed."""
    wasted: Amount
    """What was poured away."""
    unexplained: Amount
    """What was made and stands nowhere; below nothing where more stands than was made."""


class RecalledTold(LotBrief, frozen=True):
    """A lot of a recall."""

    balance: BalanceTold
    """Where all of it is."""


class ContactTold(Answer, frozen=True):
    """A call to somebody who holds goods."""

    entry: int
    """Number of the entry."""
    happened: Moment
    """When."""
    by: str | None
    """Initials of who called."""
    reached: Reached
    """How it ended."""
    still_there: Amount | None
    """How much they say is left; null when they did not say."""
    words: str | None
    """What was said."""


class CallTold(Answer, frozen=True):
    """Somebody to call."""

    party: str | None
    """Who was written as the receiver; null when nobody was named."""
    known: bool
    """Whether the book knows how to reach them."""
    phone: str | None
    """Telephone number."""
    email: str | None
    """Electronic mail address."""
    address: str | None
    """Postal address in one line."""
    words: str | None
    """Whom to ask for, when they are there."""
    may_have: Amount
    """Bottles they may have still."""
    may_have_volume: Amount
    """What they may have still by volume, in all."""
    last_sent: date | None
    """Day of the newest delivery; null when nothing was sent, only sent back."""
    spoken_to: bool
    """Whether somebody was spoken to, or answered with what is left."""
    deliveries: tuple[HolderTold, ...]
    """What they were sent and what came back from them, newest first."""
    contacts: tuple[ContactTold, ...]
    """Calls to them, oldest first."""


class RecallAnswer(Answer, frozen=True):
    """A recall as it stands, or as it would."""

    code: Code
    """Code of the lot recalled."""
    name: str
    """What it is."""
    drill: bool
    """Whether it was only tried."""
    begun: Moment | None
    """When it began; null while nothing is recalled."""
    reason: str | None
    """Why it began."""
    closed: Moment | None
    """When it was closed."""
    cause: str | None
    """What the cause was found to be."""
    closed_although: str | None
    """Why it was closed although something stood open."""
    lots: tuple[RecalledTold, ...]
    """The lot and all made of it, nearest first."""
    not_recalled_codes: tuple[Code, ...]
    """Those that are not recalled."""
    accounted_percent: Figure
    """The share accounted for, never rounded up to all."""
    balance: BalanceTold
    """Where all bottles are; of a lot that was never bottled, where the lot itself is."""
    to_call: tuple[CallTold, ...]
    """Whom to call, in order."""
    took_ms: int
    """How long the answer took, in milliseconds."""
    files: tuple[File, ...]
    """The files that were written."""
    next: str
    """The command that usually comes next."""


def recall_answer(
    recall: Recall, *, drill: bool, took_ms: int, paths: Sequence[str] = ()
) -> RecallAnswer:
    """Return a recall."""
    begun, ended = recall.begun, recall.closed
    return RecallAnswer(
        code=recall.lot.code,
        name=recall.lot.name,
        drill=drill,
        begun=moment(begun.draft.happened) if begun else None,
        reason=begun.draft.reason if begun else None,
        closed=moment(ended.draft.happened) if ended else None,
        cause=ended.facts.cause if ended else None,
        closed_although=ended.draft.reason if ended else None,
        lots=tuple(map(_recalled, recall.lots)),
        not_recalled_codes=recall.not_held,
        accounted_percent=str(recall.balance.accounted_percent),
        balance=_balance(recall.balance, recall.measure),
        to_call=tuple(map(_call, recall.to_call)),
        took_ms=took_ms,
        files=tuple(map(File, paths)),
        next=next_line(recall, drill=drill),
    )


def _recalled(item: RecalledLot) -> RecalledTold:
    balance = _balance(item.balance, item.brief.measure)
    return RecalledTold(**asdict(lot_brief(item.brief)), balance=balance)


def _balance(balance: Balance, measure: Measure) -> BalanceTold:
    parts = balance.parts()
    return BalanceTold(**{name: amount_of(amount, measure) for name, amount in parts.items()})


def _call(call: ToCall) -> CallTold:
    known = call.known
    return CallTold(
        party=call.name,
        known=known is not None,
        phone=known.phone if known else None,
        email=known.email if known else None,
        address=known.address if known else None,
        words=known.words if known else None,
        may_have=amount_of(call.pieces, Measure.UEACH),
        may_have_volume=amount_of(call.volume_ul, Measure.UL),
        last_sent=date.fromisoformat(call.last_sent) if call.last_sent else None,
        spoken_to=call.is_reached,
        deliveries=holders_told(call.deliveries),
        contacts=tuple(map(_contact, call.contacts)),
    )


def _contact(entry: Entry[Contact]) -> ContactTold:
    left = left_there(entry)
    return ContactTold(
        entry=entry.seq,
        happened=moment(entry.draft.happened),
        by=entry.draft.by,
        reached=entry.facts.reached,
        still_there=amount_of(left.amount, left.measure) if left else None,
        words=entry.facts.words,
    )
