"""A forecast, for machines: figures are decimal strings, null where nothing can be foretold."""

from ledger.domain.entries.forecasts import Carried
from ledger.science.haze.drops import Range
from ledger.science.ranges import significant
from ledger.service.glass.haze import Haze
from ledger.service.glass.scores import Score
from reports.json.kit.answer import Answer, Figure, Told, told


class StrengthTold(Answer, frozen=True):
    """The least strength of spirit at which the oil is clear, in % vol."""

    low: Figure
    """The least that it may be."""
    likely: Figure
    """What it is, most likely."""
    high: Figure
    """The most; above it the oil is clear."""


class RangeTold(Answer, frozen=True):
    """A figure that lies between two."""

    low: Figure
    """The least."""
    high: Figure
    """The most."""


class HazeTold(Answer, frozen=True):
    """Turbidity in NTU, in order of magnitude."""

    neat: RangeTold | None
    """As it is."""
    syrup: RangeTold | None
    """In syrup."""
    glass: RangeTold | None
    """As poured."""


class NarrowedTold(Answer, frozen=True):
    """How the maker's own readings narrowed the bands."""

    readings: int
    """How many readings."""
    inside: int
    """So many times the next reading lies in the band"""
    of: int
    """of so many."""


class ForetellAnswer(Answer, frozen=True):
    """What is foretold of a lot or a formula."""

    code: str
    """The lot, or the formula with its version."""
    name: str
    """What it is."""
    recorded: int | None
    """Number of the entry that keeps it; null for a formula."""
    oils: tuple[str, ...]
    """The kinds of oil in it."""
    spirit_abv: Figure | None
    """Strength of its spirit without the oil, in % vol; null for a syrup."""
    clear_by_abv: StrengthTold | None
    """The least strength of spirit at which the oil is clear."""
    dissolved_at_made_strength: Carried | None
    """Whether its own spirit carries the oil."""
    glass_against_syrup: RangeTold | None
    """How many times more the same drops scatter in the glass than in the syrup."""
    ntu: HazeTold
    """Turbidity neat, in syrup and in the glass."""
    pour_parts: int
    """Parts of soda water to one of syrup."""
    greatest_dose_ml_per_litre: Figure | None
    """The most of an essence in a litre of syrup that leaves the glass bright, at the worst."""
    own_readings: NarrowedTold | None
    """How own readings narrowed the bands; null while they are too few."""
    rests_on: tuple[str, ...]
    """What it rests on, a sentence each."""
    missing: tuple[Told, ...]
    """What is missing, and how to record it."""


class ScoreTold(Answer, frozen=True):
    """How many looks fell inside what was foretold."""

    oils: str | None
    """Of which kind of oil; null: of all."""
    inside: int
    """How many did."""
    looks: int
    """Of how many."""


def foretell_answer(haze: Haze, recorded: int | None) -> ForetellAnswer:
    """Return a forecast."""
    band, dose, own = haze.clear_by, haze.dose_ml_per_litre, haze.narrowed
    return ForetellAnswer(
        code=haze.code,
        name=haze.name,
        recorded=recorded,
        oils=haze.kinds,
        spirit_abv=None if haze.spirit_abv is None else f"{haze.spirit_abv:.1f}",
        clear_by_abv=StrengthTold(*(f"{end:.1f}" for end in band)) if band else None,
        dissolved_at_made_strength=haze.carried,
        glass_against_syrup=_range(haze.glass_against_syrup),
        ntu=HazeTold(*map(_range, haze.shown)),
        pour_parts=haze.soda_parts,
        greatest_dose_ml_per_litre=significant(dose.low) if dose else None,
        own_readings=NarrowedTold(own.readings, own.chance.numerator, own.chance.denominator)
        if own
        else None,
        rests_on=haze.rests_on,
        missing=told(haze.gaps),
    )


def score_answer(scores: tuple[Score, ...]) -> list[ScoreTold]:
    """Return how often forecasts were right, of all first."""
    return [ScoreTold(score.oils, score.inside, score.looks) for score in scores]


def _range(found: Range | None) -> RangeTold | None:
    return RangeTold(*map(significant, found)) if found else None
