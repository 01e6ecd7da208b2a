"""Years of syrups, typed in verb by verb, are judged as the years themselves are."""

from datetime import timedelta

import pytest

from ledger.science.statistics.exact import Table
from ledger.science.statistics.judge import judge
from ledger.science.statistics.suspects import Judgement, Observed
from ledger.service.causes.suspects import suspects
from tests.benchmarks.worlds import BAD, Batch, Syrup, World, play
from tests.keeper import Keeper

WORLDS = {
    "a bad oil lot": (World(18, rate=0.05, oils=3, is_bad=True), 11),
    "nothing but luck, with rework": (World(16, rate=0.3, oils=3, rework=0.5), 3),
    "luck of their own": (World(14, rate=0.3, shared=0.0, oils=3), 2),
    "a drift, one oil after the other": (
        World(14, rate=0.3, drift="step", dealt="one after the other"),
        4,
    ),
}
"""A year of each, with its seed."""
MATERIALS = {"OIL": "orange-oil", "SPIRIT": "spirit", "CARBONATE": "carb", "SUGAR": "sugar"}
AMOUNTS = {"OIL": "6mL", "SPIRIT": "90mL", "CARBONATE": "4g", "SUGAR": "600g"}
DELIVERED = {"OIL": "500mL", "SPIRIT": "5L", "CARBONATE": "500g", "SUGAR": "25kg"}


def sort_of(lot: str) -> str:
    return lot.partition("-")[0]


class Typist:
    """Types a year into a book, one act after the other."""

    def __init__(self, keeper: Keeper) -> None:
        self.keeper = keeper
        self.codes: dict[str, str] = {}
        self.bought: dict[int, frozenset[str]] = {}

    def delivered(self, lot: str) -> str:
        if lot not in self.codes:
            sort = sort_of(lot)
            self.codes[lot] = self.keeper.opens(
                "receive", material=MATERIALS[sort], amount=DELIVERED[sort]
            )
        return self.codes[lot]

    def essence(self, batch: Batch) -> str:
        name = f"E-{batch.number}"
        if name in self.codes:
            return self.codes[name]
        self.keeper.by = batch.settings["essence made by"]
        before = max(batch.made_of - {batch.number}, default=None)
        own = batch.bought - (self.bought[before] if before is not None else frozenset())
        self.bought[batch.number] = batch.bought
        code = self.keeper.opens("start", product="Essence", kind="essence", target="90mL")
        self.codes[name] = code
        for lot in sorted(own):
            self.add(code, self.delivered(lot), AMOUNTS[sort_of(lot)])
        if before is not None:
            self.add(code, self.codes[f"E-{before}"], "5mL", added_as="rework")
        self.keeper.do("finish", lot=code, volume="85mL" if len(own) > 1 else "4mL")
        return code

    def syrup(self, one: Syrup) -> None:
        essence = self.essence(one.batch)
        self.keeper.by = one.maker
        code = self.keeper.opens("start", product=one.product, kind="syrup", target="1L")
        self.codes[f"S-{one.number}"] = code
        for lot in sorted(one.bought):
            if sort_of(lot) in MATERIALS:
                self.add(code, self.delivered(lot), AMOUNTS[sort_of(lot)])
        self.add(code, essence, "1mL")
        self.keeper.do("look", lot=code, grade="cloudy" if one.is_failed else "clear")

    def add(self, lot: str, source: str, amount: str, **words: str) -> None:
        self.keeper.do("add", lot=lot, source=source, amount=amount, because="typed", **words)


def observed(syrups: list[Syrup], codes: dict[str, str]) -> list[Observed]:
    """Return what the year tells without a book, by the codes that the book gave."""
    return [
        Observed(
            lot=codes[f"S-{one.number}"],
            is_failed=one.is_failed,
            inputs=frozenset(
                codes[name]
                for name in (
                    *one.bought,
                    *one.batch.bought,
                    *(f"E-{number}" for number in one.batch.made_of),
                )
                if name in codes
            ),
            settings={"made by": one.maker},
            product=one.product,
            maker=one.maker,
            batch=" ".join(codes[f"E-{number}"] for number in sorted(one.batch.made_of)),
            begun=one.at.isoformat(),
        )
        for one in syrups
    ]


def tables(judgement: Judgement, codes: set[str]) -> dict[str, tuple[Table, float]]:
    return {
        cause.name: (suspect.units, float(suspect.p))
        for suspect in judgement.suspects
        for cause in suspect.causes
        if cause.name in codes
    }


@pytest.mark.parametrize(("world", "seed"), WORLDS.values(), ids=list(WORLDS))
def test_a_year_typed_in_is_judged_as_the_year_itself(
    sqlite_keeper: Keeper, world: World, seed: int
) -> None:
    for initials in ("NM", "TP"):
        sqlite_keeper.do("person", initials=initials, name=f"Madeup {initials}")
    typist, syrups = Typist(sqlite_keeper), play(world, seed)
    sqlite_keeper.minutes_apart = 1
    begun = sqlite_keeper.clock.now
    for one in syrups:
        sqlite_keeper.clock.now = max(
            sqlite_keeper.clock.now, begun + timedelta(hours=30) * one.number
        )
        typist.syrup(one)
    by_book = suspects(sqlite_keeper.book).judgement
    by_year = judge(observed(syrups, typist.codes))
    lots = {code for name, code in typist.codes.items() if not name.startswith("S-")}
    assert tables(by_book, lots) == tables(by_year, lots)
    named = {suspect.cause.name for suspect in by_book.named}
    assert named == {suspect.cause.name for suspect in by_year.named}
    assert named == ({typist.codes[BAD]} if world.is_bad else set())
