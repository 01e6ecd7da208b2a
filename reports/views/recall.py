"""What the papers of a recall show, as plain frozen data.

Guarantees: every text is ready to print, every list in the order it is shown. Refuses: quantities
and times that are not words yet.
"""

from msgspec import Struct

from reports.kit.frame import Frame


class CallView(Struct, frozen=True):
    """Somebody to call."""

    place: str
    """Their place in the order."""
    name: str
    """Who."""
    phone: str
    """Their telephone number; empty where the book has none."""
    reach: tuple[str, ...]
    """How to reach them besides, a line each."""
    may_have: str
    """What they may have still."""
    sent: tuple[str, ...]
    """What they were sent and what came back, a line each."""
    called: tuple[str, ...]
    """Calls made to them, a line each."""


class RecallView(Struct, frozen=True):
    """The pack of a recall."""

    frame: Frame
    """Its house, seal and date."""
    kind: str
    """Recall, or recall drill."""
    is_drill: bool
    """Whether it is a drill."""
    headline: str
    """The same as it stands above the paper."""
    lot: str
    """Code of the lot recalled."""
    product: str
    """What it is, with the size of its bottles."""
    title: str
    """What it is, and how many lots are made of it."""
    course: tuple[str, ...]
    """How far it is, a sentence each."""
    authority: tuple[str, ...]
    """When to ask the authority."""
    script: tuple[str, ...]
    """What to say on the telephone, a sentence each."""
    ticks: tuple[str, ...]
    """What is ticked at each call."""
    calls: tuple[CallView, ...]
    """Whom to call, in order."""
    balance_heads: tuple[str, ...]
    """Heads of the balance."""
    balance: tuple[tuple[str, ...], ...]
    """Where all of each lot is."""
    balance_sums: tuple[str, ...]
    """The balance as a sum and the share accounted for."""
    lots: tuple[tuple[str, str, str, str], ...]
    """The lots: code, what, what is here, status."""
    contacts: tuple[tuple[str, str, str, str], ...]
    """The calls made: when, by, who, what was said."""
    missing: tuple[str, ...]
    """What the files beside it lack, a sentence each."""
