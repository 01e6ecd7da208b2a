"""Facts that a label declares are named by the materials that lack them, and once told no more."""

import pytest

from ledger.errors import FindingError
from ledger.service.account.undeclared import undeclared
from tests.keeper import Keeper
from tests.path import Lots

CITRIC = (
    "The class and number of the additive citric are not recorded. Whether citric carries "
    "allergens is not recorded. A label of {packed}, which has citric in it, declares that."
)
RECORD = (
    'Record what its papers say: pottle material change citric --additive "CLASS AND NUMBER" '
    '--allergens "NONE OR WHICH"'
)


def acid_in_bottles(keeper: Keeper, lots: Lots) -> str:
    """Bottle a syrup with an acid of which the book knows no more than its name."""
    keeper.do("material", code="citric", kind="acid")
    acid = keeper.opens("receive", material="citric", amount="1kg")
    syrup = keeper.opens("start", product="Sour syrup", kind="syrup", target="1L")
    keeper.do("add", lot=syrup, source=lots.water, amount="1L")
    keeper.do("add", lot=syrup, source=lots.carb, amount="1g")
    keeper.do("add", lot=syrup, source=acid, amount="20g")
    keeper.do("look", lot=syrup, grade="clear", of="neat")
    keeper.do("finish", lot=syrup, volume="990mL")
    keeper.do("judge", lot=syrup, verdict="release")
    return keeper.opens("bottle", source=syrup, pack="3 x 250mL", bottles=lots.bottles)


def test_materials_without_a_fact_stop_a_release_of_bottles_until_it_is_told(
    walked: tuple[Keeper, Lots],
) -> None:
    """Neither the carbonate, which is filtered off, nor the bottles, nor the water."""
    keeper, lots = walked
    packed = acid_in_bottles(keeper, lots)
    with pytest.raises(FindingError) as stopped:
        keeper.do("judge", lot=packed, verdict="release")
    assert stopped.value.problems == ((CITRIC.format(packed=packed), RECORD),)
    keeper.do("material", code="citric", change=True, allergens="none", additive="acid E 330")
    with keeper.reading() as connection:
        assert undeclared(connection, packed) == ()
    assert keeper.do("judge", lot=packed, verdict="release").deviations == ()


def test_a_reason_releases_bottles_whose_label_lacks_a_fact_as_a_deviation(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    packed = acid_in_bottles(keeper, lots)
    done = keeper.do("judge", lot=packed, verdict="release", because="for our own table")
    assert [item.facts.text for item in done.deviations] == [CITRIC.format(packed=packed)]
