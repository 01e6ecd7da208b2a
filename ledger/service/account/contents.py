"""What a lot of the book contains, as it was really made.

Guarantees: reckoned from the entries in force each time it is asked for; what was assumed is told,
and every fact that is missing is named with how to record it. Refuses: to keep a sum.
"""

from collections.abc import Iterable, Mapping

from msgspec import Struct

from ledger.science.contents.composition import Contents
from ledger.science.contents.received import ReceivedLot, missing_of
from ledger.science.contents.replay import Happening
from ledger.science.ranges import significant
from ledger.service.account.codes import known_lot
from ledger.service.account.replay import Replayed, replayed
from ledger.store.engine.connections import Connection

BASIS = (
    "Volumes are taken as read at 20 °C.",
    "Ethanol and water by OIML R 22, sugar by ICUMSA SPS-4, oils by their density.",
)
"""What every answer assumes."""
NOT_KNOWN = "Look at its entries with pottle journal, and correct the amount that is wrong."
"""What to do about a liquid of which nothing is known."""


class LotContents(Struct, frozen=True):
    """What a lot contains, and how that is known."""

    code: str
    """The lot's code."""
    contents: Contents
    """What it contains."""
    happenings: tuple[Happening, ...]
    """Its steps, in order; none for a received lot."""
    received: Mapping[str, ReceivedLot]
    """The received lots it is made of, by code."""
    missing: tuple[tuple[str, str], ...]
    """Facts that are missing: what, and how to record it."""

    @property
    def assumed(self) -> tuple[str, ...]:
        """What was assumed, a sentence each."""
        return (*BASIS, *sorted(self.contents.notes))


def contents_on(connection: Connection, code: str) -> LotContents:
    """Return what a lot contains, by its whole code, in an open transaction."""
    return _lot_contents(code, replayed(connection, [known_lot(connection, code).seq]))


def base_syrups(connection: Connection, lots: Iterable[int]) -> dict[str, int]:
    """Return the strength of the base syrup that is reckoned to be in lots.

    Args:
        connection: A connection in a transaction.
        lots: Numbers of lots, each with those of all lots it is made of.

    Returns:
        Thousandths of a °Brix, by code; lots without any sugar are left out.
    """
    told = replayed(connection, sorted(lots))
    by_code = {code: told.replay.contents(code) for code in told.steps.steps}
    return {
        code: round(1000 * contents.base_syrup_percent_mass)
        for code, contents in by_code.items()
        if contents.sucrose_mg
    }


def _lot_contents(code: str, told: Replayed) -> LotContents:
    known, replay = told.received, told.replay
    contents = replay.contents(code)
    # Itself, where it was bought, and what it is made of.
    unknown = [known[lot] for lot in (code, *contents.unknown_ul) if lot in known]
    return LotContents(
        code=code,
        contents=contents,
        happenings=() if code in known else replay.happenings(code),
        received=known,
        missing=(
            *(
                _missing(lot, told.rows[lot.code].entry)
                for lot in sorted(unknown, key=lambda lot: lot.code)
                if missing_of(lot)
            ),
            *(
                (
                    f"What was in {lot} is not known, by {significant(volume / 1000, 4)} mL.",
                    NOT_KNOWN,
                )
                for lot, volume in sorted(contents.unknown_ul.items())
                if lot not in known
            ),
        ),
    )


def _missing(lot: ReceivedLot, entry: int) -> tuple[str, str]:
    fact = missing_of(lot) or ""
    setting = "abv=FIGURE%" if fact == "strength" else "density=FIGURE"
    return (
        f"The {fact} of {lot.code}, {lot.name}, is not in the book; what it brings is not known.",
        f'Record it: pottle correct {entry} --set {setting} --because "from its papers"',
    )
