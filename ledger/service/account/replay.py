"""The replay of lots of the book: the one account that every figure of a lot comes from.

Guarantees: of the entries in force, in one transaction; a fixed number of statements for a chunk
of lots. Refuses: to keep anything for the next time.
"""

from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.entries.choices import MaterialKind
from ledger.domain.lots.steps import Act, Step
from ledger.errors import RefusedError
from ledger.science.contents.composition import AT_C
from ledger.science.contents.received import ReceivedLot
from ledger.science.contents.replay import Happening, Replay
from ledger.science.liquids.alcohol import abv_from_mass_percent, mass_percent_from_density
from ledger.science.liquids.alcoholmeter import true_from_indicated
from ledger.store.ahead.traced import foresee_replayed
from ledger.store.engine.acts import foresee
from ledger.store.engine.connections import Connection
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.statements import chunks
from ledger.store.read import walk
from ledger.store.read.received import ReceivedRow, received
from ledger.store.read.steps import Steps, steps_of


class Replayed(Struct, frozen=True):
    """Lots with all they are made of, replayed."""

    replay: Replay
    """Their replay."""
    steps: Steps
    """Their steps."""
    rows: Mapping[str, ReceivedRow]
    """What the book knows of the received lots among them, by code."""
    received: Mapping[str, ReceivedLot]
    """The same with the strength and density that count."""

    def happened(self) -> Mapping[str, Sequence[Happening]]:
        """Return what happened to each lot made here, each after those it is made of."""
        return {code: self.replay.happenings(code) for code in self.replay.order}


def replayed(connection: Connection, lots: Sequence[int], skip: int = 0) -> Replayed:
    """Return lots, by their numbers, and all they are made of, replayed.

    Args:
        connection: A connection in a transaction.
        lots: The numbers of the lots.
        skip: A chain of corrections to leave out, by the number of its first entry.
    """
    foresee(connection, lambda foreseen: foresee_replayed(foreseen, lots))
    behind = walk.back(connection, lots[0]) if len(lots) == 1 else walk.all_behind(connection, lots)
    foresee(connection, lambda foreseen: _ahead(foreseen, behind))
    steps = steps_of(connection, behind)
    if skip:
        steps = replace(
            steps, steps={lot: _without(skip, told) for lot, told in steps.steps.items()}
        )
    rows = received(connection, behind)
    known = {code: received_lot(row) for code, row in rows.items()}
    replay = Replay(steps.steps, known)
    replay.play(list(steps.steps))
    return Replayed(replay, steps, rows, known)


def _ahead(foreseen: Foreseen, lots: Sequence[int]) -> None:
    """Foretell what is asked of lots that are replayed."""
    for part in chunks(lots):
        foreseen.asks(steps_of, part)
        foreseen.asks(received, part)


def _without(skip: int, steps: Sequence[Step]) -> tuple[Step, ...]:
    """Return steps with those of a chain doing nothing, each in its place."""
    return tuple(
        replace(step, act=Act.WORK, amount=0, source=None) if step.stands_for == skip else step
        for step in steps
    )


def received_lot(row: ReceivedRow) -> ReceivedLot:
    """Return a received lot with the best known strength and density."""
    abv, abv_from = _strength(row)
    density, density_from, temp_c = _density(row)
    if abv is None and density is not None and row.sort is MaterialKind.ETHANOL:
        abv, abv_from = _strength_by(density, temp_c), f"by its density, {density_from}"
    return ReceivedLot(
        code=row.code,
        material=row.material,
        name=row.name,
        sort=row.sort,
        measure=row.measure,
        abv=abv,
        abv_from=abv_from,
        density_kg_per_m3=density,
        density_from=density_from,
    )


def _strength(row: ReceivedRow) -> tuple[float | None, str]:
    if row.read_abv_micro is not None:
        shown = row.read_abv_micro / 1_000_000
        if row.read_abv_temp_mdegc is None:
            return shown, "as read, its temperature not recorded"
        temp_c = row.read_abv_temp_mdegc / 1000
        try:
            return true_from_indicated(shown, temp_c), f"read {shown:g} at {temp_c:g} °C"
        except RefusedError:
            return shown, f"as read; {temp_c:g} °C is outside the table"
    for value, words in ((row.abv_mpct, "its papers"), (row.material_abv_mpct, "its material")):
        if value is not None:
            return value / 1000, f"by {words}"
    return None, ""


def _density(row: ReceivedRow) -> tuple[float | None, str, float]:
    """Return a density with where it is from and the temperature it is of, 20 °C if none."""
    for value, words, temp_mdegc in (
        (row.read_density_mg_per_l, "as read", row.read_density_temp_mdegc),
        (row.density_mg_per_l, "by its papers", None),
        (
            row.material_density_mg_per_l,
            "by its material",
            row.material_density_temp_mdegc,
        ),
    ):
        if value:
            return value / 1000, words, AT_C if temp_mdegc is None else temp_mdegc / 1000
    return None, "", AT_C


def _strength_by(density_kg_per_m3: float, temp_c: float) -> float | None:
    """Return the strength of spirit of a density by OIML R 22; None where no spirit has it."""
    try:
        return abv_from_mass_percent(mass_percent_from_density(density_kg_per_m3, temp_c))
    except RefusedError:
        return None
