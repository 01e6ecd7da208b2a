"""How runs were made, gathered from a book at any depth."""

from fractions import Fraction

from ledger.domain.entries import FACTS, Formula
from ledger.domain.lots.process import Figures
from ledger.service.causes import makings
from ledger.service.causes.makings import _making, gather
from ledger.store.read.runs import runs
from tests.domain.builders import make
from tests.keeper import Keeper
from tests.path import Lots
from tests.service.causes.brief_runs import run


def test_a_run_has_all_that_went_into_it_at_any_depth(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        made = runs(connection)
        syrup = next(run for run in made if run.code == lots.syrup)
        found = gather(connection, made, [syrup], [], {}, {}, is_by_kind=False)
    (observed,) = found.observed
    assert (observed.lot, observed.is_failed, observed.maker) == (lots.syrup, True, "AB")
    assert (observed.product, observed.batch) == ("Orange syrup", lots.essence)
    assert observed.inputs == {
        lots.sugar, lots.water, lots.essence, lots.oil, lots.spirit, lots.carb,
    }  # fmt: skip
    assert (observed.bases, observed.begun) == ("", made[-1].began_at)
    assert found.lots[lots.oil].name == "Sweet orange oil"


def test_products_that_are_compared_with_each_other_have_theirs_as_a_setting(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        made = runs(connection)
        found = gather(connection, made, [], made, {}, {}, is_by_kind=True)
    told = {item.lot: (item.product, item.settings["product"]) for item in found.observed}
    assert told == {
        lots.essence: ("essence", "Orange essence"),
        lots.syrup: ("syrup", "Orange syrup"),
    }
    assert not any(item.is_failed for item in found.observed)


def figures(*, oiled: bool = False, filtered: bool = False) -> Figures:
    none = Fraction(0)
    return Figures(oiled, filtered, None, none, None, none, None, None, None, None)


def test_batches_behind_a_run_met_oil_or_a_filter_and_all_else_made_here_are_bases() -> None:
    """Lots in the order of their numbers; a syrup is a base though it was filtered."""
    by_lot = {
        1: run(1, "Oil essence", "essence", maker="CD", formula=("oily", 1)),
        2: run(2, "Tea", "essence", maker="EF", formula=("tea", 1)),
        3: run(3, "Plain", "base-syrup", maker="GH", formula=("plain", 1)),
        4: run(4, "Infusion", "essence", maker="IJ"),
        5: run(5, "Orange syrup", "syrup", maker="AB", formula=("orange", 2)),
        6: run(6, "Other", "essence", maker="ZZ"),
        9: run(9, "Unseen", "essence", maker="YY"),
    }
    known = {
        1: figures(oiled=True),
        2: figures(),
        3: figures(filtered=True),
        4: figures(filtered=True),
        5: figures(oiled=True),
        8: figures(oiled=True),
    }
    versions = {
        (code, number): make(Formula, code=code, version=number)
        for code, number in (("oily", 1), ("tea", 1), ("plain", 2), ("orange", 2))
    }
    inputs = frozenset({9, 8, 5, 4, 3, 2, 1})
    made = _making(by_lot[5], inputs, by_lot, known, versions)
    assert made.figures == (known[1], known[3], known[4], known[5])
    assert [formula.code for formula in made.formulas] == ["oily", "orange"]
    assert (made.code, made.maker, made.essence_makers) == ("L-5", "AB", ("CD",))
    assert (made.batches, made.bases) == (("L-1", "L-4"), ("L-2", "L-3", "L-9"))


def test_a_run_has_what_went_into_the_lots_that_were_filled_from_it_too(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        made = runs(connection)
        ids = {run.code: run.lot for run in made}
        packed = next(e.seq for e in keeper.entries() if e.kind == "bottle")
        found = gather(
            connection, made, made[1:], made[:1], {ids[lots.syrup]: [packed]}, {}, is_by_kind=False
        )
    filled, essence = found.observed
    assert (filled.is_failed, essence.is_failed) == (True, False)
    assert lots.bottles in filled.inputs
    assert not {lots.packed, lots.syrup} & filled.inputs
    assert essence.inputs == {lots.oil, lots.spirit, lots.carb}
    assert (essence.batch, essence.product) == ("", "Orange essence")
    assert "product" not in essence.settings


def test_what_is_read_of_runs_is_of_kinds_that_entries_have() -> None:
    assert set(makings.STEPS) <= set(FACTS)
