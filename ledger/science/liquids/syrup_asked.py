"""Answering what is asked of a syrup: by its parts, or by one measure of its strength.

Guarantees: parts are told to be by weight or by volume; a hydrometer's reading is corrected for
its temperature; all that is wrong is told at once. Refuses: parts that do not say by what, and a
bare number, which could be any measure.
"""

import re
from collections.abc import Callable

from msgspec import Struct

from ledger.errors import InputError, LedgerError, attempt, together
from ledger.science.liquids.strengths import parse_temperature, quoted, split_number
from ledger.science.liquids.sucrose import (
    brix_from_grams_per_litre,
    brix_from_specific_gravity,
    check_brix,
    check_temperature,
    density,
    grams_per_litre_from_brix,
    specific_gravity_from_brix,
    true_from_indicated,
)
from ledger.science.liquids.syrups import (
    BULK_GRANULATED_G_PER_ML,
    Basis,
    SimpleSyrup,
    by_volume,
    by_weight,
    solubility_warning,
)

BASES = {"weight": Basis.WEIGHT, "volume": Basis.VOLUME}
"""The words after --by."""
_PARTS = re.compile(r"([0-9]{1,6}(?:[.,][0-9]{1,6})?) ?: ?([0-9]{1,6}(?:[.,][0-9]{1,6})?)")
_MEASURES: dict[str, Callable[[float], float]] = {
    "bx|°bx|brix|°brix": check_brix,
    "g/l": brix_from_grams_per_litre,
    "sg": brix_from_specific_gravity,
}
_BY_UNIT = {unit: reader for units, reader in _MEASURES.items() for unit in units.split("|")}


class SyrupAnswer(Struct, frozen=True):
    """A syrup of sugar and water in every measure of its strength, not rounded."""

    brix: float
    """Its strength in °Bx."""
    density_g_per_l: float
    """Its density at 20 °C."""
    sugar_g_per_l: float
    """Sugar in a litre at 20 °C."""
    specific_gravity: float
    """Its specific gravity, 20/20 °C."""
    kept_at_c: float
    """Temperature at which it is to stay clear."""
    warning: str | None
    """A sentence when it will throw crystals there, or may."""
    made: SimpleSyrup | None = None
    """How it is made, when it was asked for by parts."""
    bulk_g_per_ml: float | None = None
    """Bulk density taken for the sugar, when its parts are by volume."""
    read_at_c: float | None = None
    """Temperature of the hydrometer's reading that was corrected."""


def syrup_asked(
    asked: str,
    by: str | None = None,
    bulk: str | None = None,
    read_at: str | None = None,
    kept_at: str | None = None,
) -> SyrupAnswer:
    """Return the syrup that some texts ask for.

    Args:
        asked: Parts of sugar to water, "3:2"; or a strength, "65 Bx", "850 g/L" or "1.33 SG".
        by: Whether parts are by weight or by volume.
        bulk: Bulk density of the sugar in g/mL, for parts by volume; 0.85 when not told.
        read_at: Temperature at which a glass hydrometer showed the °Bx.
        kept_at: Temperature at which it is kept; 20 °C when not told.

    Raises:
        InputError: One or more cannot be read.
        RefusedError: One or more cannot be true.

    >>> round(syrup_asked("850 g/L").brix, 2), syrup_asked("3:2", "weight").brix
    (64.66, 60.0)
    """
    errors: list[LedgerError] = []
    parts = _PARTS.fullmatch(" ".join(asked.split()))
    read_c = attempt(errors, lambda: _temperature(read_at), None)
    kept_c = attempt(errors, lambda: _temperature(kept_at), None)
    basis = attempt(errors, lambda: _basis(bool(parts), by), None)
    bulk_g_per_ml = attempt(errors, lambda: _bulk(bulk, basis), None)
    told = attempt(errors, lambda: 0.0 if parts else _strength(asked, read_at, read_c), 0.0)
    if parts and read_at:
        errors.append(InputError("Parts are not read with a hydrometer.", "Leave --read-at away."))
    if errors:
        raise together(errors)
    made = _made(parts, bulk_g_per_ml) if parts else None
    brix = made.brix_mbx / 1000 if made else told
    kept = 20.0 if kept_c is None else kept_c
    return SyrupAnswer(
        brix,
        density(brix),
        grams_per_litre_from_brix(brix),
        specific_gravity_from_brix(brix),
        kept,
        solubility_warning(brix, kept),
        made,
        bulk_g_per_ml,
        read_c,
    )


def _made(parts: re.Match[str], bulk_g_per_ml: float | None) -> SimpleSyrup:
    sugar, water = (float(part.replace(",", ".")) for part in parts.groups())
    if bulk_g_per_ml is None:
        return by_weight(sugar, water)
    return by_volume(sugar, water, bulk_g_per_ml)


def _temperature(text: str | None) -> float | None:
    return check_temperature(parse_temperature(text)) if text else None


def _basis(is_parts: bool, by: str | None) -> Basis | None:
    if not is_parts:
        if by:
            raise InputError("Only parts are by weight or by volume.", "Leave --by away.")
        return None
    if by not in BASES:
        raise InputError(
            f"Parts are by weight or by volume, and {quoted(by) if by else 'neither'} was said.",
            "Write --by weight or --by volume: 1:1 is 50 °Bx by weight, about 46 by volume.",
        )
    return BASES[by]


def _bulk(text: str | None, basis: Basis | None) -> float | None:
    if basis is not Basis.VOLUME:
        if text:
            raise InputError(
                "A bulk density counts for parts by volume only.",
                "Leave --bulk away, or write --by volume.",
            )
        return None
    if text is None:
        return BULK_GRANULATED_G_PER_ML
    number, unit = split_number(text)
    if number is None or unit not in ("", "g/ml"):
        raise InputError(
            f"{quoted(text)} is not a bulk density.", "Write it in g/mL, such as 0.85."
        )
    return number


def _strength(text: str, read_at: str | None, read_c: float | None) -> float:
    number, unit = split_number(text)
    reader = _BY_UNIT.get(unit)
    if number is None or reader is None:
        raise InputError(
            f"{quoted(text)} is neither parts nor a strength of syrup.",
            'Write parts of sugar to water, 3:2; or 65 Bx, "850 g/L" or "1.33 SG".',
        )
    if read_at and reader is not check_brix:
        raise InputError(
            "Only a reading in °Bx is corrected for its temperature.",
            "Leave --read-at away, or write the reading as 65 Bx.",
        )
    return reader(number) if read_c is None else true_from_indicated(number, read_c)
