"""A forecast that was recorded, in words.

Guarantees: what was foretold then, as it was told. Refuses: what would be foretold now.
"""

from ledger.domain.entries.forecasts import Foretold
from ledger.science.haze.drops import Range
from ledger.science.ranges import significant
from reports.words.entries.parts import Parts


def ntu_words(band: Range) -> str:
    """Return a band of turbidity to two figures.

    >>> ntu_words(Range(5.77, 446.6)), ntu_words(Range(0.0, 3.0))
    ('5.8 to 450', '0 to 3')
    """
    return f"{significant(band.low, 2)} to {significant(band.high, 2)}"


def foretold(facts: Foretold) -> Parts:
    """Return what is told of a forecast that was recorded."""
    return (
        facts.oils,
        _strengths(facts),
        facts.carried and f"carried: {facts.carried}",
        None if facts.spirit_mpct is None else f"spirit of {facts.spirit_mpct / 1000:.1f} % vol",
        *(
            f"{place} {ntu_words(Range(low / 1000, high / 1000))} NTU"
            for place, low, high in (
                ("neat", facts.neat_low_milli, facts.neat_high_milli),
                ("in syrup", facts.syrup_low_milli, facts.syrup_high_milli),
                ("as poured", facts.glass_low_milli, facts.glass_high_milli),
            )
            if low is not None and high is not None
        ),
        f"bright up to {significant(facts.dose_ul / 1000, 2)} mL a litre of syrup"
        if facts.dose_ul is not None
        else None,
        _own(facts),
    )


def _strengths(facts: Foretold) -> str | None:
    low, likely, high = (
        None if end is None else f"{end / 1000:.1f}"
        for end in (facts.clear_low_mpct, facts.clear_likely_mpct, facts.clear_high_mpct)
    )
    if low is None or high is None:
        return None
    return f"clear by {low} to {high} % vol{f', most likely {likely}' if likely else ''}"


def _own(facts: Foretold) -> str | None:
    if not facts.own_readings:
        return None
    least, most = (
        None if end is None else significant(end / 1e6, 2)
        for end in (facts.own_least_micro, facts.own_most_micro)
    )
    told = f", {least or '?'} to {most or '?'} of the middle"
    return f"narrowed by {facts.own_readings} readings{told if least or most else ''}"
