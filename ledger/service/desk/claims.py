"""Gathering what asks for the sums: how strong a lot was made, what its label claims, its readings.

Guarantees: nothing is told that is not known.
"""

from collections.abc import Sequence
from datetime import date

from ledger.domain.entries import Formula, Limit
from ledger.domain.entries.plain import instant_text
from ledger.domain.lots.readings import Reading, Taken
from ledger.domain.masters.doubts import doubts
from ledger.domain.masters.limits import counting_on
from ledger.science.contents.composition import Contents
from ledger.science.contents.readings import beside
from ledger.service.account.contents import LotContents, contents_on
from ledger.service.account.shipped import limit_versions
from ledger.store.engine.connections import Connection
from ledger.store.read import queries


def strength_as_made(connection: Connection, lot: str, formula: Formula) -> float | None:
    """Return the strength of a lot in thousandths of a per cent by volume, not rounded.

    None where its formula does not ask for it, or anything of it is missing.
    """
    if (formula.abv_min_mpct, formula.abv_max_mpct, formula.claim) == (None, None, None):
        return None
    made = contents_on(connection, lot)
    return None if made.missing else 1000 * made.contents.abv


def claimed_limit(connection: Connection, formula: Formula, on: date) -> Limit | None:
    """Return the limit whose words the label claims, as it counts on a day, in force or not.

    None where the claim is not the code of a limit.
    """
    said = limit_versions(connection).get(formula.claim or "")
    return counting_on(said, on) if said else None


def readings_beside(connection: Connection, readings: Sequence[Taken]) -> tuple[Reading, ...]:
    """Return readings beside what the book reckons was there when they were taken."""
    house = queries.house(connection)
    off_by = doubts(house.doubts if house else None)
    made = {code: contents_on(connection, code) for code in {item.lot for item in readings}}
    pairs = ((item, beside(item.facts, _then(made[item.lot], item), off_by)) for item in readings)
    return tuple(Reading(item.lot, item.facts.what, found) for item, found in pairs if found)


def _then(made: LotContents, taken: Taken) -> Contents:
    """Return what was in a lot when a reading was taken; of the same second, by their numbers."""
    at, there = instant_text(taken.at), Contents()
    for item in made.happenings:
        is_later = bool(taken.number) and item.step.entry > (taken.number or 0)
        if item.step.at > at or (item.step.at == at and is_later):
            break
        there = item.after
    return there
