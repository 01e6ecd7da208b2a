"""What happened to goods, in all the versions that the book ever told."""

from ledger.domain.entries import Bottle, Cases, Finish, Move, Receipt
from ledger.domain.lots.lot import Lot
from ledger.service.recall.story import End, Happened, Story, story_of
from tests.keeper import Keeper
from tests.path import Lots


def of(story: Story, code: str, kind: type) -> tuple[Happened, ...]:
    return next(
        act
        for act in story.acts
        if act[-1].lot.code == code and isinstance(act[-1].entry.facts, kind)
    )


def inputs(told: Happened) -> dict[str, int | None]:
    return {each.lot.code: each.amount for each in told.inputs}


def test_a_batch_is_made_when_it_is_finished_of_all_that_went_in(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    story = story_of(keeper.book)
    (made,) = of(story, lots.syrup, Finish)
    assert (made.amount, inputs(made)) == (
        3_800_000,
        {lots.sugar: 2_400_000, lots.water: 2_400_000, lots.essence: 30_000},
    )
    (filled,) = of(story, lots.packed, Bottle)
    assert (filled.amount, inputs(filled)) == (
        15_000_000,
        {lots.syrup: 3_750_000, lots.bottles: 15_000_000},
    )
    assert of(story, lots.oil, Receipt)[0].amount == 500_000


def test_an_addition_that_is_put_right_makes_the_batch_another(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked  # its path corrects 25 g of oil to 26 g
    before, after = of(story_of(keeper.book), lots.essence, Finish)
    grams = [inputs(told)[lots.oil] for told in (before, after)]
    assert grams == [29_586, 30_769]  # at 0.845 g/mL
    assert before.ended is not None
    assert (before.ended.how, after.ended) == (End.CORRECTED, None)


def test_a_batch_that_is_opened_again_is_told_as_it_ended(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("add", lot=lots.syrup, source=lots.water, amount="100mL", because="too thick")
    assert len(of(story_of(keeper.book), lots.syrup, Finish)) == 1  # nothing came out yet
    keeper.do("finish", lot=lots.syrup, volume="140mL")
    before, after = of(story_of(keeper.book), lots.syrup, Finish)
    assert before.ended is not None
    assert (before.ended.how, after.amount) == (End.GREW, 140_000)


def test_a_struck_act_never_happened_and_a_struck_finish_made_nothing(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    sent = next(entry for entry in keeper.entries() if isinstance(entry.facts, Move))
    keeper.do("strike", entry=str(sent.seq), because="the wrong lot")
    (told,) = of(story_of(keeper.book), lots.packed, Move)
    assert told.ended is not None
    assert told.ended.how is End.STRUCK
    trial = keeper.opens("start", product="Trial", kind="essence", target="1L")
    keeper.do("add", lot=trial, source=lots.spirit, amount="200mL")
    done = keeper.do("finish", lot=trial, volume="200mL")
    keeper.do("strike", entry=str(done.seq), because="it goes on")
    (made,) = of(story_of(keeper.book), trial, Finish)
    assert made.ended is not None
    assert made.ended.how is End.STRUCK


def test_what_was_not_all_measured_has_no_amount(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    trial = keeper.opens("start", product="Trial", kind="essence", target="1L")
    keeper.do("add", lot=trial, source=lots.spirit, amount="200mL")
    liquor = keeper.opens(
        "rinse", lot=trial, source=lots.spirit, volume_in="20mL", volume_out="15mL", went_to="apart"
    )
    (rinsed,) = next(a for a in story_of(keeper.book).acts if a[-1].lot.code == liquor)
    assert (rinsed.amount, inputs(rinsed)) == (15_000, {lots.spirit: 20_000, trial: None})
    assert isinstance(rinsed.lot, Lot)


def test_a_case_that_a_correction_takes_away_is_struck_whenever_that_was(
    walked: tuple[Keeper, Lots],
) -> None:
    """Of four cases first three are left, then two."""
    keeper, lots = walked
    told = keeper.do("cases", lot=lots.packed, pack="4 x 1").seq
    for count in (3, 2):
        told = keeper.do(
            "correct", entry=str(told), changes=f"count={count}", because="counted again"
        ).seq
    ends = {
        act[0].case: [each.ended and each.ended.how for each in act]
        for act in story_of(keeper.book).acts
        if isinstance(act[0].entry.facts, Cases)
    }
    assert ends == {
        1: [End.CORRECTED, End.CORRECTED, None],
        2: [End.CORRECTED, End.CORRECTED, None],
        3: [End.CORRECTED, End.STRUCK],
        4: [End.STRUCK],
    }
