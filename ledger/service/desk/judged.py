"""Judging drafts by every rule: one, or several side by side before any of them is appended.

Guarantees: the rules see the book as it is in the transaction that will append the draft; nothing
is written here. Refuses: what the rules find impossible, and, without a reason, what should not
have happened.
"""

from collections.abc import Iterable
from datetime import datetime
from functools import partial
from typing import Generic

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.entries import Draft, FactsT
from ledger.domain.entries.spine import FactsOf
from ledger.domain.lots.scene import Scene
from ledger.domain.rules import Finding, findings
from ledger.errors import LedgerError
from ledger.service.desk.scene import build_scene
from ledger.service.desk.stops import stop
from ledger.store.engine.abreast import abreast
from ledger.store.engine.connections import Connection
from ledger.store.read.people import spoken


class Judged(Struct, Generic[FactsOf], frozen=True):
    """A draft that may be appended."""

    draft: Draft[FactsOf]
    """The draft."""
    scene: Scene
    """What the rules saw."""
    findings: tuple[Finding, ...]
    """What they found."""


def judged(
    connection: Connection, draft: Draft[FactsT], now: datetime, *, insists: bool = False
) -> Judged[FactsT]:
    """Return a draft as it may be appended.

    Args:
        connection: The writing transaction.
        draft: The draft.
        now: The book's clock.
        insists: As `Desk.record` has it.

    Raises:
        LedgerError: It may not be.
    """
    draft = replace(draft, facts=spoken(connection, draft.facts))
    scene = build_scene(connection, draft, now)
    told = findings(draft, scene)
    stop(told, draft.reason, insists=insists)
    return Judged(draft, scene, told)


def side_by_side(
    connection: Connection, drafts: Iterable[Draft[FactsT]], now: datetime
) -> list[Judged[FactsT] | LedgerError]:
    """Return drafts of which none concerns another, or what stands in the way of each."""
    return abreast(connection, *(partial(_or_error, connection, draft, now) for draft in drafts))


def all_judged(
    connection: Connection, drafts: Iterable[Draft[FactsT]], now: datetime
) -> list[Judged[FactsT]]:
    """Return drafts of which none concerns another as they may be appended.

    Raises:
        LedgerError: The first that may not be.
    """
    return abreast(connection, *(partial(judged, connection, draft, now) for draft in drafts))


def _or_error(
    connection: Connection, draft: Draft[FactsT], now: datetime
) -> Judged[FactsT] | LedgerError:
    try:
        return judged(connection, draft, now)
    except LedgerError as error:
        return error
