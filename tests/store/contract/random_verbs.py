"""Verbs at random, most of them possible; what the book refuses is left out."""

from collections.abc import Callable
from random import Random

from ledger.errors import InputError, RefusedError
from tests.keeper import Keeper

Step = Callable[[Keeper, Random], object]


def _lot(keeper: Keeper, chance: Random) -> str:
    return chance.choice(keeper.lot_codes())


def _volume(chance: Random) -> str:
    return f"{chance.randint(1, 400)}mL"


def _receive(keeper: Keeper, chance: Random) -> object:
    return keeper.do("receive", material="water", amount=_volume(chance))


def _start(keeper: Keeper, chance: Random) -> object:
    return keeper.do("start", product="Essence", kind="essence", target=_volume(chance))


def _add(keeper: Keeper, chance: Random) -> object:
    return keeper.do(
        "add",
        lot=_lot(keeper, chance),
        source=_lot(keeper, chance),
        amount=chance.choice([_volume(chance), "5g"]),
        at=chance.choice([None, "-20m", "-2h"]),
        because="so it was",
    )


def _level(keeper: Keeper, chance: Random) -> object:
    lot, volume = _lot(keeper, chance), _volume(chance)
    if chance.random() < 0.5:
        return keeper.do(
            "count", lot=lot, amount=volume, at=chance.choice([None, "-1h"]), because="counted"
        )
    return keeper.do("finish", lot=lot, volume=volume, because="so it was")


def _bottle(keeper: Keeper, chance: Random) -> object:
    pack = f"{chance.randint(1, 4)} x 20mL"
    return keeper.do("bottle", source=_lot(keeper, chance), pack=pack, because="so it was")


def _send(keeper: Keeper, chance: Random) -> object:
    way = chance.choice(["sample", "breakage", "returned"])
    amount = chance.choice([_volume(chance), "1"])
    lot = _lot(keeper, chance)
    return keeper.do("send", lot=lot, amount=amount, moved_as=way, because="so it was")


def _correct(keeper: Keeper, chance: Random) -> object:
    entry = str(chance.choice(keeper.bodies())[0])
    field = chance.choice(["amount", "volume"])
    changes = f"{field}={_volume(chance)}"
    return keeper.do("correct", entry=entry, changes=changes, because="misread")


def _strike(keeper: Keeper, chance: Random) -> object:
    entry = str(chance.choice(keeper.bodies())[0])
    return keeper.do("strike", entry=entry, because="not done")


STEPS: tuple[Step, ...] = (
    _receive, _start, _add, _add, _add, _level, _level, _bottle, _send, _correct, _strike,
)  # fmt: skip


def scribble(keeper: Keeper, chance: Random, wanted: int) -> None:
    """Try verbs until so many of them were recorded."""
    recorded = tried = 0
    while recorded < wanted:
        tried += 1
        assert tried < 20 * wanted, "nearly everything is refused"
        try:
            chance.choice(STEPS)(keeper, chance)
        except (RefusedError, InputError):
            continue
        recorded += 1
