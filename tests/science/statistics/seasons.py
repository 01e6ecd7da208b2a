"""Invented seasons in which lots fail by chance or by a planted cause."""

from collections.abc import Callable
from random import Random

from ledger.science.statistics.suspects import Observed

Fails = Callable[[Observed, Random], bool]
"""Tells whether a lot fails."""
MAKERS = ("NM", "TP")


def season(seed: int, fails: Fails, lots: int = 24) -> list[Observed]:
    """Return a season of syrups: oil lots into essences into syrups, settings drawn at random."""
    random = Random(seed)
    essences = [_essence(number, random) for number in range(max(3, lots // 3))]
    made = (_syrup(number, lots, essences, random) for number in range(lots))
    return [_failing(item, fails(item, random)) for item in made]


def by_chance(share: float) -> Fails:
    """Fail a share of the lots, whatever is in them."""
    return lambda _, random: random.random() < share


def by_cause(name: str, share: float = 1.0) -> Fails:
    """Fail a share of the lots that have a lot in them, and no other."""
    return lambda item, random: name in item.inputs and random.random() < share


def _essence(number: int, random: Random) -> tuple[frozenset[str], dict[str, str]]:
    inputs = {
        f"ESSENCE-{number}",
        f"OIL-{random.randrange(4)}",
        f"SPIRIT-{random.randrange(3)}",
        f"CARBONATE-{random.randrange(2)}",
    }
    settings = {
        "contact time": random.choice(("up to 24 h", "above 24 h")),
        "pore size": random.choice(("11 µm", "20 µm")),
        "filter temperature": random.choice(("up to 8 °C", "above 8 °C", "not recorded")),
        "essence made by": random.choice(MAKERS),
    }
    return frozenset(inputs), settings


def _syrup(
    number: int,
    lots: int,
    essences: list[tuple[frozenset[str], dict[str, str]]],
    random: Random,
) -> Observed:
    inputs, settings = random.choice(essences)
    maker = random.choice(MAKERS)
    bought = {f"SUGAR-{4 * number // lots}", f"BOTTLES-{random.randrange(3)}", "WATER"}
    product = random.choice(("Orange syrup", "Lemon syrup"))
    return Observed(
        f"SYRUP-{number}", False, inputs | bought, settings | {"made by": maker}, product, maker
    )


def _failing(item: Observed, is_failed: bool) -> Observed:
    return Observed(item.lot, is_failed, item.inputs, item.settings, item.product, item.maker)
