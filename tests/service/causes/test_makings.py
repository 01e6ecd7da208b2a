"""How runs were made, gathered from a book at any depth."""

from ledger.service.causes.makings import gather
from ledger.store.read.runs import runs
from tests.keeper import Keeper
from tests.path import Lots


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
