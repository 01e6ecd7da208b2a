"""The ladder of yield: every rung once, what filters kept explained, the rest last."""

from ledger.service.lots.dossier import dossier
from reports.words.lots.ladder import filling_ladder, ladder
from tests.keeper import Keeper
from tests.path import Lots
from tests.reports.words.bottles import pack


def rungs(keeper: Keeper, code: str) -> list[tuple[str, str, str]]:
    found = dossier(keeper.book, code)
    told = ladder(found.state, found.inputs, found.formula, found.draws)
    return [(row.sign, row.what, row.amount) for row in told]


def test_what_a_filter_kept_is_told_and_only_the_rest_is_not_accounted_for(
    orange: tuple[Keeper, str],
) -> None:
    """480 mL went in; 30 and 6 stayed in the filters, 3 were spilt, 430 came out: 11 are left."""
    assert rungs(*orange) == [
        ("", "Liquids put in", "480 mL"),
        ("\N{MINUS SIGN}", "Kept by the filter, pass 1", "30 mL"),
        ("\N{MINUS SIGN}", "Kept by the filter, pass 2", "6 mL"),
        ("\N{MINUS SIGN}", "Spilt or thrown away", "3 mL"),
        ("=", "Came out", "430 mL"),
        ("", "Not accounted for", "11 mL"),
        ("", "Share of the target of 480 mL, by the formula 85 % to 102 %", ""),
    ]


def test_a_batch_that_is_not_finished_has_no_ladder(sqlite_keeper: Keeper) -> None:
    code = sqlite_keeper.opens("start", product="Free", kind="blend", target="1L")
    assert rungs(sqlite_keeper, code) == []


def test_a_filling_has_its_yield(made: tuple[Keeper, Lots, str]) -> None:
    keeper, lots, essence = made
    found = dossier(keeper.book, pack(keeper, lots, essence))
    drawn, inside, left = filling_ladder(found.state)
    assert (drawn.what, inside.sign, left.what) == ("Drawn from the bulk", "=", "Not accounted for")
