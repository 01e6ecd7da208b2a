"""The balance of a batch adds up and names what nobody explains."""

from pathlib import Path

from ledger.domain.amounts.quantity import Measure, parse_quantity
from ledger.domain.entries import Filter
from ledger.domain.lots.yields import Yield
from ledger.service.lots.dossier import dossier
from ledger.service.lots.trace import Carried
from reports.words.lots import balance as module
from reports.words.lots.balance import _filtration, _reconciled, balance
from reports.words.lots.ladder import ladder
from tests.keeper import Keeper
from tests.kept.filled import bare
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.path import receive_all
from tests.service.orange import start_orange


def test_the_balance_adds_up_and_names_what_nobody_explains(orange: tuple[Keeper, str]) -> None:
    """480 mL of liquids went in; 430 mL came out and 3 mL were spilt: 47 mL are left over."""
    keeper, code = orange
    found = dossier(keeper.book, code)
    lines = dict(balance(found.state, found.inputs, found.formula))
    assert lines["Share of target"] == "89.6 %"
    assert lines["Share expected by the formula"] == "85 % to 102 %"
    assert lines["Left in filter, pass 1"] == "30 mL, 6.4 %"
    assert lines["Spilt or thrown away"] == "3 mL"
    assert lines["Unexplained, filters included"] == "47 mL, 9.8 %"


def test_what_is_left_over_is_told_and_so_is_what_came_out_beyond_what_went_in() -> None:
    liquid, solid = (
        Carried("A-1", "B-1", amount, measure)
        for amount, measure in ((100_000, Measure.UL), (600_000, Measure.MG))
    )

    def told(came_out: int, *inputs: Carried, went_in: int = 100_000) -> list[tuple[str, str]]:
        became = Yield(went_in, came_out, 0, 0, 0, 0, 0, 0)
        return list(_reconciled(became, inputs, holds_unmeasured=came_out == 80_000))

    assert told(80_000, liquid) == [
        ("Share of liquids put in", "80.0 %"),
        ("Unexplained, filters included", "20 mL, 20.0 %"),
    ]
    assert told(90_000, liquid)[-1] == ("Unexplained", "10 mL, 10.0 %")
    assert told(100_000, liquid)[-1] == ("Unexplained", "0 mL, 0.0 %")
    assert told(105_000, liquid)[-1] == ("More than went in by the book", "5 mL")
    assert told(150_000, liquid, solid) == [
        ("More than the liquids: solids dissolved", "50 mL"),
    ]
    assert told(5_000, liquid, went_in=0) == []


def test_the_balance_tells_of_samples_and_of_what_went_in_after_the_finish(
    orange: tuple[Keeper, str],
) -> None:
    """10 mL kept back of 430 mL that came out; 20 mL more of spirit are no part of the loss."""
    keeper, code = orange
    keeper.do("send", lot=code, moved_as="retained", amount="10mL")
    keeper.do("add", lot=code, source="NS-001-J", amount="20mL", because="it was weak")
    found = dossier(keeper.book, code)
    lines = dict(balance(found.state, found.inputs, found.formula))
    assert lines["Of what came out, kept back as samples"] == "10 mL"
    assert lines["Put in after the finish"] == "20 mL"
    assert lines["Unexplained, filters included"] == "47 mL, 9.8 %"


def test_balance_and_ladder_of_all_that_may_be_left_behind_are_the_kept_ones(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """A cake measured, rinses to the batch, apart and to waste, a heel, a sample, spilt spirit."""
    keeper = sqlite_keeper
    code = start_orange(keeper, tmp_path)
    spirit = keeper.opens("receive", material="spirit", amount="2L")
    for verb, words in (
        ("add", {"source": "SOO-001-3", "amount": "30mL"}),
        ("add", {"source": spirit, "amount": "450mL"}),
        ("send", {"moved_as": "sample", "party": "Bridge Street Stall", "amount": "5mL"}),
        ("filter", {"medium": "paper", "volume_in": "470mL", "volume_out": "440mL",
                    "in_cake": "18mL"}),
        *(
            ("rinse", {"source": spirit, "volume_in": "20mL", "volume_out": out, "went_to": to})
            for to, out in (("batch", "15mL"), ("apart", "14mL"), ("waste", "13mL"))
        ),
        ("decant", {"drawn": "430mL", "heel": "10mL"}),
        ("makeup", {"volume": "440mL", "source": spirit}),
        ("finish", {"volume": "430mL", "waste": "3mL"}),
        ("send", {"moved_as": "retained", "amount": "10mL"}),
    ):  # fmt: skip
        keeper.do(verb, lot=code, because="it was so", **words)
    found = dossier(keeper.book, code)
    told = [f"{label}: {words}" for label, words in balance(found.state, found.inputs)]
    rungs = ladder(found.state, found.inputs, found.formula, found.draws)
    told += [f"{row.sign} {row.what}: {row.amount} {row.share}".strip() for row in rungs]
    check_golden("left_behind.txt", "".join(f"{line}\n" for line in told))


def test_the_balance_names_the_lots_that_drew_of_a_batch_before_its_finish(
    sqlite_keeper: Keeper,
) -> None:
    """480 mL went in; a syrup drew 30 mL of it before the 450 mL were measured, 20 mL after."""
    keeper = sqlite_keeper
    lots = receive_all(keeper)
    essence = keeper.opens("start", product="Orange essence", kind="essence", target="480mL")
    keeper.do("add", lot=essence, source=lots.spirit, amount="480mL")
    syrup = keeper.opens("start", product="Orange syrup", kind="syrup", target="3.8L")
    keeper.do("add", lot=syrup, source=essence, amount="30mL", because="could not wait")
    keeper.do("finish", lot=essence, volume="450mL")
    keeper.do("add", lot=syrup, source=essence, amount="20mL")
    lines = _told(keeper, essence)
    assert lines[f"Drawn to {syrup} before the finish"] == "30 mL"
    assert lines["Unexplained"] == "0 mL, 0.0 %"


def _told(keeper: Keeper, code: str) -> dict[str, str]:
    found = dossier(keeper.book, code)
    return dict(balance(found.state, found.inputs, found.formula, found.draws))


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_a_pass_that_left_nothing_in_the_filter_has_no_share_of_it() -> None:
    litre, less = parse_quantity("1L"), parse_quantity("900mL")
    for put_in, came_out, told in (
        (litre, litre, "0 mL"),
        (litre, less, "100 mL, 10.0 %"),
    ):
        facts = bare(Filter, pass_no=1, volume_in=put_in, volume_out=came_out)
        assert _filtration(facts) == [("Left in filter, pass 1", told)]


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
