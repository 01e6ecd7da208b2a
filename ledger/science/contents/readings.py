"""What an instrument reads in a lot beside what the book reckons of it, both with their doubt.

Guarantees: a reading is compared with all that its instrument may rightly show in such a liquid,
since oil, sugar and alcohol falsify each other's readings. What an instrument may be off by, the
house says (`ledger.domain.masters.doubts`). Doubts are half widths with a coverage factor of 2, put
together by the square root of the sum of their squares (GUM, first order); two figures differ when
they are further apart than that, which is the E_n number above 1 (ISO/IEC 17043, from memory).
Refuses: to compare where something in the lot is not known.
"""

from collections.abc import Mapping
from contextlib import suppress
from math import hypot

from ledger.domain.entries import Measurement
from ledger.domain.entries.choices import Measured
from ledger.domain.lots.readings import Reckoned
from ledger.errors import RefusedError
from ledger.science.contents.composition import OIL, Contents, reckoned_volume_ul
from ledger.science.liquids.alcohol import abv_from_mass_percent, mass_percent_from_density
from ledger.science.liquids.alcoholmeter import true_from_indicated

UNWARMED_ABV = 3.0
"""Doubt in % vol of a strength read at an unknown temperature: a liquid of 90 % reads 2.7 too much
11 °C above the table's 60 °F (Encyclopedia of Practical Receipts, Alcoholmetry)."""
UNWARMED_BRIX = 1.0
"""Doubt in °Bx of a reading at an unknown temperature: 0.08 °Bx a degree over 10 °C and the
instrument's own (ICUMSA SPS-3, from memory)."""
BRIX_PER_C = 0.08
"""What a warm syrup reads too little in °Bx a degree from 20 °C, where the instrument does not
mend it itself (ICUMSA SPS-3, from memory)."""
BRIX_PER_ETHANOL = 0.5
"""By how much 1 % of the mass that is ethanol moves a reading of sugar at the most, in °Bx: up in
a refractometer, down with a hydrometer (common practice, no source)."""
SWELLS_KG_PER_M3_PER_C = 0.9
"""By how much a density changes a degree, at most: that of strong spirit (OIML R 22)."""
UNWARMED_C = 10.0
"""How far from 20 °C a liquid of unknown temperature may be (common practice, no source)."""
AMOUNTS = 0.02
"""Share by which amounts may be off for warmth and reading (common practice, no source)."""
STEAM = 0.03
"""Share by which the sugar may stand higher for what steamed off in heating it (common practice,
no source)."""
SOLID_KG_PER_M3 = 1500.0
"""Density taken for dissolved things whose own is not known, where they are said to fill nothing
(common practice, no source)."""
WATER_KG_PER_M3 = 1000.0


def beside(
    reading: Measurement, contents: Contents, off_by: Mapping[str, float]
) -> Reckoned | None:
    """Return what a lot's contents lead one to read, beside a reading of it.

    Args:
        reading: The reading.
        contents: What the lot contains by the book.
        off_by: What the maker's instruments may be off by, as `doubts` returns it.

    Returns:
        None where something in the lot is not known, nothing is there, or nothing of the kind is
        reckoned of it.
    """
    if contents.unknown_ul or contents.volume_ul <= 0 or contents.mass_mg <= 0:
        return None
    match reading.what:
        case Measured.ABV:
            return _strength(reading, contents, off_by)
        case Measured.BRIX:
            return _sugar(reading, contents, off_by)
        case Measured.DENSITY:
            return _density(reading, contents, off_by)
        case _:
            return None


def _strength(reading: Measurement, contents: Contents, off_by: Mapping[str, float]) -> Reckoned:
    shown, doubt = reading.reading_micro / 1e6, UNWARMED_ABV
    temp_c = _temp_c(reading)
    if temp_c is not None:
        with suppress(RefusedError):  # outside the table it counts as it was read
            shown, doubt = true_from_indicated(shown, temp_c), off_by["alcoholmeter"]
    floats_like = _seeming_abv(contents)
    return Reckoned(
        measured=shown,
        measured_doubt=doubt,
        low=min(contents.abv, floats_like),
        high=max(contents.abv, floats_like),
        reckoned=contents.abv,
        reckoned_doubt=hypot(off_by["label-strength"], AMOUNTS * contents.abv),
    )


def _seeming_abv(contents: Contents) -> float:
    """Return the strength that an alcoholmeter shows in a liquid with oil and sugar in it."""
    try:
        share = mass_percent_from_density(_kg_per_m3(contents)[1])
    except RefusedError:
        return 0.0 if contents.sucrose_mg else contents.abv
    return abv_from_mass_percent(share)


def _sugar(reading: Measurement, contents: Contents, off_by: Mapping[str, float]) -> Reckoned:
    temp_c = _temp_c(reading)
    warmth = 0.0 if temp_c is None else BRIX_PER_C * abs(temp_c - 20)
    sugar = contents.sugar_percent_mass
    dissolved = sum(part.mass_mg for key, part in contents.parts.items() if key.sort != OIL)
    rest = 100 * dissolved / contents.mass_mg
    spirit = BRIX_PER_ETHANOL * 100 * contents.ethanol_mg / contents.mass_mg
    return Reckoned(
        measured=reading.reading_micro / 1e6,
        measured_doubt=UNWARMED_BRIX if temp_c is None else hypot(off_by["refractometer"], warmth),
        low=max(0.0, sugar - spirit),
        high=sugar + rest + spirit,
        reckoned=sugar,
        reckoned_doubt=STEAM * sugar,
    )


def _density(reading: Measurement, contents: Contents, off_by: Mapping[str, float]) -> Reckoned:
    temp_c = _temp_c(reading)
    away_c = UNWARMED_C if temp_c is None else abs(temp_c - 20)
    low, high = _kg_per_m3(contents)
    floats = off_by["hydrometer"] / 100 * reading.reading_micro / 1000
    doubt = hypot(floats, AMOUNTS * (high - WATER_KG_PER_M3))
    return Reckoned(
        measured=reading.reading_micro / 1e6,
        measured_doubt=hypot(floats, SWELLS_KG_PER_M3_PER_C * away_c) / 1000,
        low=low / 1000,
        high=high / 1000,
        reckoned=high / 1000,
        reckoned_doubt=doubt / 1000,
    )


def _kg_per_m3(contents: Contents) -> tuple[float, float]:
    """Return the density of a liquid at 20 °C, at the least and at the most."""
    volume_ul = reckoned_volume_ul(contents)
    solids_mg = sum(part.mass_mg for part in contents.parts.values() if not part.volume_ul)
    fullest_ul = volume_ul + 1000 * solids_mg / SOLID_KG_PER_M3
    return 1000 * contents.mass_mg / fullest_ul, 1000 * contents.mass_mg / volume_ul


def _temp_c(reading: Measurement) -> float | None:
    return None if reading.temp_mdegc is None else reading.temp_mdegc / 1000
