"""The ordinary way from oil to bottle asks for no reason; the only hand in it is remarked on."""

from typing import Any

import pytest

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import (
    Add,
    Bottle,
    Filter,
    Finish,
    Judge,
    Look,
    MakeUp,
    Material,
    Move,
    Receipt,
    Rest,
    Start,
)
from ledger.domain.entries.choices import LotType, MaterialKind, ProductKind
from ledger.domain.lots.lot import Status
from ledger.domain.lots.state import last_look, name, status
from tests.domain.bench import Bench
from tests.domain.builders import at, grams, make, ml, pieces

SHELF = (
    ("OIL", "Orange oil", MaterialKind.OIL, ml(100)),
    ("SPIRIT", "Spirit 96 %", MaterialKind.ETHANOL, ml(2000)),
    ("CARB", "Light carbonate", MaterialKind.CLARIFIER, grams(100)),
    ("SUGAR", "Cane sugar", MaterialKind.SUGAR, grams(5000)),
    ("WATER", "Water", MaterialKind.WATER, ml(10_000)),
)


def add(source: str, amount: Any) -> Add:
    return make(Add, source=source, amount=amount)


def essence(bench: Bench) -> None:
    bench.do(make(Start), opens=("E-1", LotType.MADE, Measure.UL))
    bench.do(add("OIL", ml(30)), "E-1")
    bench.do(add("CARB", grams(15)), "E-1")
    bench.do(add("SPIRIT", ml(420)), "E-1")
    bench.do(make(Rest, started_at=bench.now), "E-1")
    began = bench.entries[-1].seq
    bench.do(make(Rest, started_at=bench.now, ended_at=bench.now, began=began), "E-1")
    bench.do(make(Filter, volume_in=ml(445), volume_out=ml(430), first_runnings=ml(20)), "E-1")
    bench.do(make(MakeUp, volume=ml(450), source="SPIRIT", used=ml(20)), "E-1")
    bench.do(make(Look), "E-1")
    bench.do(make(Finish, volume=ml(448)), "E-1")
    bench.do(make(Judge), "E-1")


def syrup(bench: Bench) -> None:
    started = make(Start, product="Orange syrup", product_kind=ProductKind.SYRUP, target=ml(3800))
    bench.do(started, opens=("S-1", LotType.MADE, Measure.UL))
    bench.do(add("SUGAR", grams(2400)), "S-1")
    bench.do(add("WATER", ml(2400)), "S-1")
    bench.do(add("E-1", ml(30)), "S-1")
    bench.do(make(Look), "S-1")
    bench.do(make(Finish, volume=ml(3800)), "S-1")
    filled = make(Bottle, source="S-1", count=15, size=ml(250), drawn=ml(3750))
    bench.do(filled, opens=("P-1", LotType.PACKED, Measure.UEACH))
    bench.do(make(Judge), "P-1")
    bench.do(make(Move, amount=pieces(6)), "P-1")


@pytest.fixture(scope="module")
def bench() -> Bench:
    bench = Bench(at(9))
    for code, words, sort, amount in SHELF:
        material = Material(code.lower(), words, sort)
        bench.receive(code, make(Receipt, material=material.code, amount=amount), material)
    essence(bench)
    syrup(bench)
    return bench


def test_of_the_ordinary_way_only_a_release_by_the_only_hand_is_remarked_on(bench: Bench) -> None:
    kinds = [entry.kind for entry in bench.entries]
    found = [tuple(finding.rule for finding in told) for told in bench.found]
    alone = {"judge": ("self-released",)}
    assert list(zip(kinds, found, strict=True)) == [(kind, alone.get(kind, ())) for kind in kinds]
    assert len(kinds) == 25


def test_what_is_left_is_what_came_less_what_went(bench: Bench) -> None:
    assert {code: state.on_hand for code, state in bench.lots.items()} == {
        "OIL": 70_000,
        "SPIRIT": 1_560_000,
        "CARB": 85_000,
        "SUGAR": 2_600_000,
        "WATER": 7_600_000,
        "E-1": 418_000,
        "S-1": 50_000,
        "P-1": 9_000_000,
    }


def test_the_bottles_are_known_by_what_they_hold(bench: Bench) -> None:
    assert name(bench.lots["P-1"]) == "Orange syrup, 250 mL"
    assert status(bench.lots["P-1"]) is Status.RELEASED
    assert last_look(bench.lots["P-1"]) == make(Look)
