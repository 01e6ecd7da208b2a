"""A forecast in words: will the spirit carry the oil, how will it look, and on what that rests.

Guarantees: a strength is told as one that is clear by, never as one below which it clouds; every
gap is told with how to close it. Refuses: to call anything safe inside the band.
"""

from ledger.domain.entries.forecasts import Carried
from ledger.science.haze.drops import CLEAR_NTU, Range
from ledger.science.haze.strength import Band
from ledger.science.ranges import figure, significant
from ledger.service.glass.haze import Haze
from ledger.service.glass.scores import GRADES, Score
from reports.kit.figures import abv_words
from reports.kit.format import poured
from reports.words.entries.forecasts import ntu_words

PLACES = ("neat", "in syrup", "in the glass")
"""What is looked at, in the order of a forecast's bands."""
LONG = 80
"""Longer than this, a source stands on a line of its own."""


def head(haze: Haze) -> list[str]:
    """Return what is foretold of the spirit, in lines."""
    of = ", ".join(f"{kind} oil" for kind in haze.kinds) or "no oil of a kind that is known"
    lines = [f"{haze.name} ({haze.code}): {of}."]
    if haze.is_syrup:
        return [*lines, "It is a syrup: whether spirit carries the oil is asked of its essence."]
    if haze.spirit_abv is not None and 0 < haze.oil_share < 1:
        parts = f"1 part of oil in {significant(1 / haze.oil_share - 1)} of spirit"
        lines.append(f"{parts} of {abv_words(haze.spirit_abv)}.")
    if haze.clear_by is None:
        return [*lines, "By which strength it is clear cannot be foretold."]
    lines.append(f"Clear by {band_words(haze.clear_by)}.")
    if haze.carried and haze.spirit_abv is not None:
        lines.append(carried_words(haze.carried, haze.spirit_abv))
    return lines


def band_words(band: Band) -> str:
    """Return the least strength in words.

    >>> band_words(Band(74.41, 84.8, 95.12))
    '74.4 to 95.1 % vol, most likely 84.8'
    """
    low, likely, high = (figure(end, 1) for end in band)
    return f"{low} to {high} % vol, most likely {likely}"


def carried_words(carried: Carried, abv: float) -> str:
    """Return whether spirit carries the oil, a sentence."""
    spirit = f"Spirit of {abv_words(abv)}"
    return {
        Carried.YES: f"{spirit} carries it.",
        Carried.EDGE: f"{spirit} stands on the edge: try a jar first, or take it stronger.",
        Carried.NO: f"{spirit} cannot carry it: the oil parts. Take it stronger.",
    }[carried]


def bands(haze: Haze) -> list[tuple[str, str, str]]:
    """Return the rows of a table: what is looked at, its NTU, and how it looks."""
    return [
        (place, ntu_words(band), looks(band))
        for place, band in zip(PLACES, haze.shown, strict=True)
        if band
    ]


def looks(band: Range) -> str:
    """Return the grades that a band of turbidity comes to.

    >>> looks(Range(0.0, 3.0)), looks(Range(5.8, 450)), str(looks(Range(40, 50)))
    ('bright to clear', 'hazy to milky', 'milky')
    """
    grades = [grade for grade, (low, high) in GRADES.items() if band.low < high and low < band.high]
    return grades[0] if len(grades) == 1 else f"{grades[0]} to {grades[-1]}"


def notes(haze: Haze) -> list[str]:
    """Return what is to be said of syrup, dose and readings, a line each."""
    lines = []
    if haze.glass_against_syrup and haze.glass and haze.glass.high > CLEAR_NTU:
        low, high = (significant(end, 2) for end in haze.glass_against_syrup)
        lines.append(
            f"The same drops show {low} to {high} times more in the glass than in the syrup: "
            "a look in heavy syrup proves little."
        )
    if haze.dose_ml_per_litre:
        low, high = (significant(end, 2) for end in haze.dose_ml_per_litre)
        what = "its essence" if haze.is_syrup else "it"
        lines.append(
            f"A glass of {poured(haze.soda_parts)} stays bright up to {low} mL of {what} in a "
            f"litre of syrup, at the best {high} mL."
        )
    if haze.narrowed:
        share = haze.narrowed.chance
        lines.append(
            f"Narrowed by {haze.narrowed.readings} readings of this house: the next lies inside "
            f"{share.numerator} times of {share.denominator}."
        )
    return lines


def rests(haze: Haze) -> list[str]:
    """Return on what it rests and what is missing, a line each."""
    return [
        *(told for line in haze.rests_on for told in _rest(line)),
        *(f"Missing: {what} {todo}" for what, todo in haze.gaps),
    ]


def _rest(line: str) -> list[str]:
    """Return on what it rests; of a long line the source below.

    >>> told = _rest("Lemon: typical, not this lot's certificate (Lemon Oil, Ph. Eur., page 9).")
    >>> told[0], told[1]
    ("Rests on: Lemon: typical, not this lot's certificate:", '  Lemon Oil, Ph. Eur., page 9.')
    """
    told = f"Rests on: {line}"
    what, opened, source = told.partition(" (")
    if len(told) <= LONG or not opened or not source.endswith(")."):
        return [told]
    return [f"{what}:", f"  {source.removesuffix(').')}."]


def score_words(scores: tuple[Score, ...]) -> list[str]:
    """Return how often forecasts were right, a line each."""
    if not scores[0].looks:
        return ["No look was taken yet of a lot that was foretold before."]
    return [
        f"{'All' if score.oils is None else score.oils.capitalize()}: inside {score.inside} of "
        f"{score.looks}."
        for score in scores
    ]
