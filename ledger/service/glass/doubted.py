"""The figures of a card with their doubts, each reckoned anew with every input a little off.

Guarantees: the same sums as the card's own, so that no figure is reckoned in two ways; what errs
together is one input: all of one material in a lot was measured with one instrument. How it is
poured is as it is said, and has no doubt. Refuses: to doubt the limit itself.
"""

from collections.abc import Callable, Iterator, Mapping
from math import hypot
from typing import NamedTuple, TypeVar

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MaterialKind
from ledger.science.contents.against import Compared, Daily
from ledger.science.contents.composition import Contents, Part
from ledger.science.contents.received import ReceivedLot
from ledger.science.doubt.propagation import COVERAGE, Doubted, Input, propagated_all
from ledger.service.glass.card import ConcernServed, Pouring

ItemT = TypeVar("ItemT", Compared, Daily)
"""A figure beside a limit, or beside a daily ceiling."""
VOLUME, ETHANOL, SUGAR, DOSE = "the volume of the lot", "its alcohol", "its sugar", "the dose"
"""Inputs that a lot may be in doubt by, in words."""


class Key(NamedTuple):
    """Which figure of a card."""

    way: int
    """Number of the way to pour."""
    limit: str
    """Code of the limit."""
    substance: str
    """What is limited."""
    who: str
    """For whom a daily ceiling is told; empty for others."""


class Off(NamedTuple):
    """A card's inputs, each times a factor near 1."""

    lot: Contents
    """What the lot contains."""
    dose: float
    """By what the dose of an essence is multiplied."""


def inputs_of(
    lot: Contents, received: Mapping[str, ReceivedLot], half_widths: Mapping[str, float]
) -> dict[str, Input]:
    """Return the inputs that a lot's figures are in doubt by, as factors near 1.

    Args:
        lot: What the lot contains.
        received: The received lots it is made of, by code.
        half_widths: What the instruments may be off by, by name, as `doubts` returns them.
    """
    cylinder, scale = half_widths["cylinder"] / 100, half_widths["scale"] / 100
    spirits = [item.abv for item in received.values() if item.abv]
    # Of several strengths the weakest, whose label is off by the greatest share.
    strength = half_widths["label-strength"] / min(spirits) if spirits else 0.0
    found = {
        VOLUME: half_widths["lot-volume"] / 100,
        ETHANOL: hypot(cylinder, strength),
        SUGAR: scale,
        DOSE: cylinder,
    }
    weighed = {item.material for item in received.values() if item.measure is Measure.MG}
    oils = {item.material for item in received.values() if item.sort is MaterialKind.OIL}
    for key in lot.parts:
        by_volume = hypot(cylinder, half_widths["density"] / 100)
        measure = scale if key.material in weighed else by_volume
        certificate = half_widths["certificate"] / 100 if key.material in oils else 0.0
        found[key.material] = hypot(measure, certificate)
    return {name: Input(1.0, width / COVERAGE) for name, width in found.items()}


def with_doubts(
    pourings: tuple[Pouring, ...],
    lot: Contents,
    inputs: Mapping[str, Input],
    again: Callable[[Off], tuple[Pouring, ...]],
) -> tuple[Pouring, ...]:
    """Return ways to pour with the doubt of every figure beside a limit.

    Args:
        pourings: The ways to pour as they were reckoned.
        lot: What the lot contains.
        inputs: What the figures are in doubt by.
        again: Reckons the ways to pour anew.
    """

    def model(factors: Mapping[str, float]) -> dict[Key, float]:
        return dict(_figures(again(Off(_off(lot, factors), factors[DOSE]))))

    found = propagated_all(model, inputs)
    return tuple(_doubted(way, number, found) for number, way in enumerate(pourings))


def _off(lot: Contents, factors: Mapping[str, float]) -> Contents:
    return replace(
        lot,
        volume_ul=lot.volume_ul * factors[VOLUME],
        ethanol_mg=lot.ethanol_mg * factors[ETHANOL],
        sucrose_mg=lot.sucrose_mg * factors[SUGAR],
        parts={
            key: Part(*(value * factors[key.material] for value in part))
            for key, part in lot.parts.items()
        },
    )


def _figures(pourings: tuple[Pouring, ...]) -> Iterator[tuple[Key, float]]:
    for number, way in enumerate(pourings):
        for item in _compared(way):
            yield _key(number, item), item.figure
        for served in way.concerns:
            for daily in served.daily:
                yield _key(number, daily), daily.taken_mg


def _compared(way: Pouring) -> Iterator[Compared]:
    yield from way.markers
    for served in way.concerns:
        yield from served.limits


def _key(way: int, item: Compared | Daily) -> Key:
    who = item.who if isinstance(item, Daily) else ""
    return Key(way, item.limit.code, item.limit.substance, who)


def _doubted(way: Pouring, number: int, found: Mapping[Key, Doubted]) -> Pouring:
    def of(item: ItemT) -> ItemT:
        told = found[_key(number, item)]
        return replace(item, doubt=told.half_width, by=told.greatest)

    return replace(
        way,
        markers=tuple(map(of, way.markers)),
        concerns=tuple(
            ConcernServed(
                served.concern, tuple(map(of, served.daily)), tuple(map(of, served.limits))
            )
            for served in way.concerns
        ),
    )
