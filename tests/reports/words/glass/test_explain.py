"""How the figures of a card were reckoned is told."""

from ledger.service.glass.serving import serving
from reports.words.glass.explain import explained
from tests.keeper import Keeper
from tests.reports.words.glass.preserved import preserved


def test_the_factor_is_told_where_figures_are_explained(sqlite_keeper: Keeper) -> None:
    code = preserved(sqlite_keeper, constituents="sodium benzoate 100%")
    told = explained(serving(sqlite_keeper.book, code))
    assert (
        "Glass (as it is): 42 mg of sodium benzoate count as 35.6 mg of benzoic acid: 122.12 g of "
        "it in 144.10 g, a factor of 0.8475 (molar masses by IUPAC's atomic weights, from memory)."
    ) in told
