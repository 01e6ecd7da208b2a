"""What a trial tries, as a person names it: a lot alone, or a name with two levels.

Guarantees: a lot is named by its whole code in the plan; the lot it is compared with is of the same
material, on hand, and not held. Refuses: one level, two that are the same, and a name given twice;
all that is wrong is said at once.
"""

from collections.abc import Sequence
from functools import partial

from ledger.domain.entries.texts import read_text
from ledger.domain.entries.trials import TwoLevels
from ledger.domain.lots.lot import Lot, Status
from ledger.errors import InputError, LedgerError, RefusedError, attempt, together
from ledger.science.statistics.designs import MOST_FACTORS
from ledger.service.account.codes import resolve_lot
from ledger.service.account.lots import lots_on_hand
from ledger.store.engine.connections import Connection

READY = frozenset({Status.IN_STOCK, Status.RELEASED})
"""Where a lot stands that is taken for harmless."""
HOW = "Name a lot that is suspected, or write it as NAME=USUAL/SUSPECTED, such as chill=4C/none."
NOTHING = TwoLevels("", "", "")


def read_tries(connection: Connection, text: str, by: str | None) -> tuple[TwoLevels, ...]:
    """Return what is tried, from what a person wrote with semicolons between.

    Args:
        connection: A connection in a transaction.
        text: What a person wrote.
        by: Whose lot in hand a dot stands for.

    Raises:
        InputError: It cannot be read, or there is too much or nothing of it.
        RefusedError: A lot is not in the book, or there is none to compare it with.
    """
    errors: list[LedgerError] = []
    parts = [part.strip() for part in text.split(";") if part.strip()]
    found = [attempt(errors, partial(_one, connection, part, by), NOTHING) for part in parts]
    if not parts:
        errors.append(InputError("It is not said what the trial tries.", HOW))
    if len(parts) > MOST_FACTORS:
        told = f"A trial tries {MOST_FACTORS} things at most, and {len(parts)} are named."
        errors.append(InputError(told, "Leave out what is least likely."))
    errors += _twice([item.name for item in found if item.name])
    if errors:
        raise together(errors)
    return tuple(found)


def named_in(text: str) -> list[str]:
    """Return what may be a lot in what a person wrote of what a trial tries.

    >>> named_in("soo-001-3; chill = 4C/none")
    ['soo-001-3', '4C', 'none']
    """
    parts = (part.partition("=") for part in text.split(";"))
    told = [
        level for one, is_pair, pair in parts for level in (pair.split("/") if is_pair else [one])
    ]
    return [level.strip() for level in told if level.strip()]


def _twice(names: Sequence[str]) -> list[LedgerError]:
    return [
        InputError(
            f"Two things that the trial tries are both called {name}.",
            "Write one of them with another name: NAME=USUAL/SUSPECTED",
        )
        for name in dict.fromkeys(names)
        if names.count(name) > 1
    ]


def _one(connection: Connection, text: str, by: str | None) -> TwoLevels:
    name, is_pair, levels = text.partition("=")
    if not is_pair:
        return _lot_alone(connection, resolve_lot(connection, text, by))
    # A level may hold a stroke of its own, as 2 g/mL does; then spaces part the two.
    between = " / " if " / " in levels else "/"
    usual, is_two, suspected = levels.partition(between)
    if not is_two or not usual.strip() or not suspected.strip() or between in suspected:
        raise InputError(f'"{text}" does not name two levels.', HOW)
    read = TwoLevels(
        read_text(name, "name").lower(),
        *(_level(connection, read_text(level, "level"), by) for level in (usual, suspected)),
    )
    if read.usual == read.suspected:
        raise InputError(f'"{text}" names the same level twice.', HOW)
    return read


def _level(connection: Connection, text: str, by: str | None) -> str:
    """Return a level; where it names a lot, its whole code."""
    try:
        return text if text == "." else resolve_lot(connection, text, by)
    except LedgerError:
        return text


def _lot_alone(connection: Connection, code: str) -> TwoLevels:
    lots = lots_on_hand(connection).values()
    own = next((lot for lot in lots if lot.code == code), None)
    if own is None:
        raise RefusedError(
            f"Nothing of {code} is on hand, so no jar can be made with it.",
            "Leave it out, or name what is varied: NAME=USUAL/SUSPECTED",
        )
    what = own.material or own.name
    others = [lot for lot in lots if _is_other(lot, own)]
    if not others:
        raise RefusedError(
            f"There is no other lot of {own.name} on hand to compare {code} with.",
            f"Receive one, or say what goes in instead: {what}=USUAL/{code}",
        )
    # The one opened last: the likeliest to be used from now on.
    return TwoLevels(what, others[-1].code, code)


def _is_other(lot: Lot, own: Lot) -> bool:
    is_alike = (lot.material, lot.name) == (own.material, own.name)
    return is_alike and lot.code != own.code and lot.status in READY
