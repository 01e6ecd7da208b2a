"""How much of an oil parts from a liquid that is mostly water, and the most that stays in it.

Guarantees: constituents share what water holds by Raoult's law; what a little ethanol adds is
counted by the calibrated cosolvency; of what is not known of an oil the best and the worst are
taken. Refuses: sugar and cold, which bring the point nearer by an amount that nobody has published
for these oils: both part more than is said here.

References:
    Raoult's law for an ideal mixture of oils over water (textbooks, from memory): constituents of
    c mg/L that dissolve to S mg/L alone leave N mg/L apart where the c/(N + S) add up to one.
"""

from collections.abc import Sequence

from ledger.science.contents.louche import Solubility
from ledger.science.haze.drops import Drops, Range
from ledger.science.haze.strength import Calibration, Oil
from ledger.science.roots import solve


def parted(oil: Oil, mg_per_l: float, abv: float, calibration: Calibration) -> Range:
    """Return how many mg/L of an oil part from a drink or a syrup, at the least and at the most.

    Args:
        oil: The oil.
        mg_per_l: How much of it there is.
        abv: The liquid's strength in % vol, a few per cent at most.
        calibration: What a little ethanol adds.
    """
    best = [(mg_per_l * share, held) for share, held in _held(oil, abv, calibration, is_best=True)]
    worst = [(mg_per_l * share, held) for share, held in _held(oil, abv, calibration)]
    return Range(_apart(best), _apart(worst))


def most_held(oil: Oil, abv: float, calibration: Calibration) -> Range:
    """Return how many mg/L of an oil a liquid holds clear: at the worst, and at the best."""
    worst, best = _held(oil, abv, calibration), _held(oil, abv, calibration, is_best=True)
    return Range(*(1 / sum(share / held for share, held in parts) for parts in (worst, best)))


def drops_of(oil: Oil) -> Drops:
    """Return what drops of an oil are, by its known constituents."""
    known = sum(share.middle for share in oil.shares)
    return Drops(
        sum(share.middle * share.solute.density_g_per_ml for share in oil.shares) / known,
        sum(share.middle * share.solute.refractive_index for share in oil.shares) / known,
    )


def _held(
    oil: Oil, abv: float, calibration: Calibration, *, is_best: bool = False
) -> list[tuple[float, float]]:
    """Return the shares of an oil with what the liquid holds of each alone, in mg/L."""
    known = sum(share.middle for share in oil.shares)
    scale = max(1.0, known)
    parts = [(share.middle / scale, share.solute) for share in oil.shares]
    if known < 1:
        parts.append((1 - known, oil.best if is_best else oil.worst))
    return [(share, _holds(solute, abv, calibration, is_best=is_best)) for share, solute in parts]


def _holds(solute: Solubility, abv: float, calibration: Calibration, *, is_best: bool) -> float:
    water = solute.high_mg_per_l if is_best else solute.low_mg_per_l
    gained = calibration.slope * solute.log_kow + calibration.constant
    return float(water * 10 ** (gained * abv / 100))


def _apart(parts: Sequence[tuple[float, float]]) -> float:
    """Return what parts, in mg/L; nought where all of it is held."""
    if sum(amount / held for amount, held in parts) <= 1:
        return 0.0
    whole = sum(amount for amount, _ in parts)
    return solve(lambda n: sum(amount / (n + held) for amount, held in parts), 1.0, 0.0, whole)
