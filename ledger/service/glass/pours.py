"""Ways to pour a lot, and what each brings into a glass.

Guarantees: a syrup is poured as it is, an essence is dosed into a syrup first. Refuses: to read the
book; what a glass is held against is handed to it.
"""

from collections.abc import Mapping

from msgspec import Struct

from ledger.domain.entries import Limit, Material
from ledger.science.contents.against import Compared, compared, daily, markers
from ledger.science.contents.composition import Contents, Part
from ledger.science.contents.louche import forecast, forecast_together
from ledger.science.contents.serving import Concern, Glass, concerns, dosed, poured
from ledger.service.account.shipped import beside, counts, solubilities
from ledger.service.glass.card import ConcernServed, OilServed, Pouring
from ledger.service.glass.doses import Dose


class HeldAgainst(Struct, frozen=True):
    """What the contents of a glass are held against."""

    materials: Mapping[str, Material]
    """The materials in the lot, by code."""
    limits: tuple[Limit, ...]
    """The limits in force."""
    bodies: tuple[tuple[str, int], ...]
    """Whom the daily ceilings are told for, with body weights in kg."""


def pourings(
    lot: Contents, doses: list[tuple[str, Contents]], glass_ul: int, soda: int, known: HeldAgainst
) -> tuple[Pouring, ...]:
    """Return what each way to pour a lot brings.

    Args:
        lot: The lot's contents.
        doses: The syrups poured, as `ways` returns them.
        glass_ul: Size of the glass in µL.
        soda: Parts of soda water to one of syrup.
        known: What they are held against.
    """
    return tuple(
        _pouring(said, syrup, poured(syrup, glass_ul, soda), lot, known) for said, syrup in doses
    )


def ways(contents: Contents, dose: Dose | None, factor: float = 1.0) -> list[tuple[str, Contents]]:
    """Return the syrups that a lot is poured as, each with its words.

    Args:
        contents: The lot's contents.
        dose: How much of an essence goes into which syrups; None: it is a syrup itself.
        factor: By what the dose is multiplied, where it is measured a little off.
    """
    if dose is None:
        return [("as it is", contents)]
    return [
        (f"{dose.said} in {said}", dosed(contents, dose.dose_ul * factor, base_ul))
        for said, base_ul in dose.into
    ]


def _pouring(
    said: str, syrup: Contents, glass: Glass, lot: Contents, known: HeldAgainst
) -> Pouring:
    in_glass = concerns(glass, lot, known.materials)
    limits = _counting(known.limits, in_glass)
    return Pouring(
        said=said,
        glass=glass,
        syrup_abv=syrup.abv,
        oils=_oils(glass, known.materials),
        together=forecast_together(
            [
                (_mg_per_litre(part, glass), known.materials.get(code))
                for code, part in glass.syrup.oils().items()
            ],
            solubilities(),
        ),
        concerns=tuple(
            ConcernServed(
                concern,
                daily(concern, limits, known.bodies),
                _beside(concern, limits, glass, lot, known),
            )
            for concern in in_glass
        ),
        markers=markers(syrup, glass, known.limits),
    )


def _beside(
    concern: Concern, limits: tuple[Limit, ...], glass: Glass, lot: Contents, known: HeldAgainst
) -> tuple[Compared, ...]:
    """Return the limits of a substance, each with what counts for it of the materials there."""
    found: list[Compared] = []
    for limit in limits:
        if limit.substance != concern.substance:
            continue
        counting = {
            code: material for code, material in known.materials.items() if counts(limit, material)
        }
        whole = len(counting) == len(known.materials)
        of = (concern,) if whole else concerns(glass, lot, counting)
        found += [item for one in of for item in compared(one, [limit])]
    return tuple(found)


def _counting(limits: tuple[Limit, ...], in_glass: tuple[Concern, ...]) -> tuple[Limit, ...]:
    """Return the limits but for those of a substance beside another that is not there."""
    # None, since most limits stand beside no other substance.
    there = {None, *(concern.substance for concern in in_glass)}
    return tuple(limit for limit in limits if beside(limit.code) in there)


def _oils(glass: Glass, materials: Mapping[str, Material]) -> tuple[OilServed, ...]:
    oils = (
        OilServed(
            material=code,
            name=materials[code].name if code in materials else code,
            mg_per_glass=part.mass_mg,
            mg_per_litre=_mg_per_litre(part, glass),
            forecast=forecast(_mg_per_litre(part, glass), materials.get(code), solubilities()),
        )
        for code, part in glass.syrup.oils().items()
    )
    return tuple(sorted(oils, key=lambda oil: -oil.mg_per_glass))


def _mg_per_litre(part: Part, glass: Glass) -> float:
    return 1_000_000 * part.mass_mg / glass.volume_ul
