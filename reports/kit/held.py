"""Figures and their units, which no line's end may part.

Guarantees: a text says the same; only the spaces between are others.
"""

import re

NO_BREAK = "\N{NO-BREAK SPACE}"
"""Holds two words together."""

_BEFORE_UNIT = re.compile(
    r"(?<=\d) (?=(?:[munµ]?L|[kmµ]?g|[cmµ]?m|cm²|m²|°C|°Brix|%(?: vol)?|NTU|kPa|mbar|kJ|kcal|"
    r"fl oz|oz|lb|gal|US gal|pt|g/L|mg/L|d|h|min|s)(?!\w))|(?<=\.\d\d) (?=[A-Z]{3}(?!\w))"
)
"""The space between a figure and its unit, a length of time or a currency."""


def held(text: str) -> str:
    """Hold each figure and its unit together.

    >>> held("at most 6 °C") == "at most 6\N{NO-BREAK SPACE}°C", held("pass 2 then")
    (True, 'pass 2 then')
    """
    return _BEFORE_UNIT.sub(NO_BREAK, text).replace("% vol", f"%{NO_BREAK}vol")
