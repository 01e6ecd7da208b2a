"""The doubt of a figure from the doubts of what it was reckoned of, to first order.

Guarantees: the law of propagation of the GUM (JCGM 100:2008, 5.1.2), each contribution taken as
half the difference that the input makes at one standard doubt to either side (5.1.3, note 2);
degrees of freedom by Welch and Satterthwaite (G.4.1). Inputs are taken as independent of each
other: what errs together is one input. Results are floats and not rounded. Refuses: a doubt below
nothing.
Clauses of the GUM are from memory; its example H.1 is held by a test.
"""

from collections.abc import Callable, Mapping
from math import hypot, inf
from typing import TypeVar

from msgspec import Struct

KeyT = TypeVar("KeyT")
"""What tells the figures of a model apart."""
COVERAGE = 2.0
"""Coverage factor of the half widths told to people: some 95 % (JCGM 100:2008, 6.3.3)."""


class Input(Struct, frozen=True):
    """An input quantity: its value, and its standard doubt in the same unit."""

    value: float
    """The best estimate."""
    standard: float = 0.0
    """Standard uncertainty u, not below nothing."""
    freedom: float = inf
    """Degrees of freedom of u; infinite where the doubt was judged and not counted."""


class Doubted(Struct, frozen=True):
    """A figure with its doubt."""

    value: float
    """The figure, in its unit."""
    standard: float
    """Combined standard uncertainty, in the same unit."""
    freedom: float
    """Effective degrees of freedom."""
    shares: Mapping[str, float]
    """What each input adds to the standard uncertainty, in the same unit, by its name."""

    @property
    def half_width(self) -> float:
        """Half the width of the interval that holds the truth in some 95 of 100 cases."""
        return COVERAGE * self.standard

    @property
    def greatest(self) -> str | None:
        """The input that adds most to the doubt; None where nothing is in doubt."""
        return max(self.shares, key=self.shares.__getitem__) if self.standard else None


def propagated(
    model: Callable[[Mapping[str, float]], float], inputs: Mapping[str, Input]
) -> Doubted:
    """Return what a model makes of its inputs, with the doubt that theirs bring.

    Args:
        model: Reckons the figure from values by name.
        inputs: The inputs by name.

    Raises:
        ValueError: A standard doubt is below nothing.

    >>> area = propagated(lambda of: of["a"] * of["b"], {"a": Input(2, 0.1), "b": Input(5, 0.1)})
    >>> area.value, round(area.standard, 4), area.greatest
    (10, 0.5385, 'a')
    """
    return propagated_all(lambda values: {None: model(values)}, inputs)[None]


def propagated_all(
    model: Callable[[Mapping[str, float]], Mapping[KeyT, float]], inputs: Mapping[str, Input]
) -> dict[KeyT, Doubted]:
    """Return several figures of one model, each with the doubt that the inputs bring.

    Args:
        model: Reckons the figures, by their keys, from values by name; the same keys each time.
        inputs: The inputs by name.

    Raises:
        ValueError: A standard doubt is below nothing.
    """
    if any(item.standard < 0 for item in inputs.values()):
        raise ValueError("A standard uncertainty is never below nothing.")
    at = {name: item.value for name, item in inputs.items()}
    figures = model(at)
    sides = {
        name: (
            model({**at, name: item.value + item.standard}),
            model({**at, name: item.value - item.standard}),
        )
        for name, item in inputs.items()
        if item.standard
    }
    return {key: _doubted(value, key, sides, inputs) for key, value in figures.items()}


def _doubted(
    value: float,
    key: KeyT,
    sides: Mapping[str, tuple[Mapping[KeyT, float], Mapping[KeyT, float]]],
    inputs: Mapping[str, Input],
) -> Doubted:
    shares = {name: abs(more[key] - less[key]) / 2 for name, (more, less) in sides.items()}
    standard = hypot(*shares.values())
    return Doubted(value, standard, _freedom(standard, shares, inputs), shares)


def _freedom(standard: float, shares: Mapping[str, float], inputs: Mapping[str, Input]) -> float:
    counted = sum(share**4 / inputs[name].freedom for name, share in shares.items())
    return standard**4 / counted if counted else inf
