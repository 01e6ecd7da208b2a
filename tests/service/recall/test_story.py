"""What happened to goods, in all the versions that the book ever told."""

from ledger.domain.entries import Add, Bottle, Cases, Finish, Move, Receipt
from ledger.domain.lots.lot import Lot
from ledger.service.recall.story import End, Ended, Happened, Story, story_of
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


def test_acts_come_by_when_they_happened_with_the_house_and_the_numbers_of_its_parties(
    walked: tuple[Keeper, Lots],
) -> None:
    """A verdict has no amount; a count of nothing, a look and what was struck out tell no act."""
    keeper, lots = walked
    keeper.do("party", name="Quay Bar", gln="9521234000006")
    keeper.do("party", name="The Inn", phone="01 555 0101")
    keeper.do("house", country="IE")
    late = keeper.do(
        "receive", material="water", amount="3L", at="2026-03-01 08:00", because="late"
    )
    keeper.do("count", lot=lots.oil, amount="0", because="spilt")
    counted = keeper.do("count", lot=lots.sugar, amount="9kg", because="spilt")
    keeper.do("strike", entry=str(counted.seq), because="it was flour")
    keeper.do("count", lot=lots.carb, amount="480g", because="spilt")
    keeper.do("look", lot=lots.packed, grade="clear")
    keeper.do(
        "rinse", lot=lots.essence, source=lots.spirit, volume_in="20mL", volume_out="15mL",
        went_to="waste", because="to see",
    )  # fmt: skip
    story = story_of(keeper.book)
    assert story.house is not None
    assert (story.house.country, story.numbers) == ("IE", {"Quay Bar": "9521234000006"})
    told = [(act[-1].entry.kind, act[-1].lot.code, act[-1].amount) for act in story.acts]
    assert told[0] == ("receipt", late.code, 3_000_000)
    assert told[-2:] == [
        ("count", lots.sugar, 9_000_000),
        ("count", lots.carb, 480_000),
    ]
    assert [amount for kind, _, amount in told if kind == "judge"] == [None, None]
    assert ("move", lots.packed, 6_000_000) in told
    assert {kind for kind, *_ in told} == {
        *("receipt", "finish", "judge", "bottle", "move", "count"),
    }
    ended = {act[-1].lot.code: act[-1].ended for act in story.acts if act[-1].entry.kind == "count"}
    struck = next(e.recorded_at for e in keeper.entries() if e.draft.corrects == counted.seq)
    assert ended == {lots.carb: None, lots.sugar: Ended(struck, End.STRUCK)}


def test_a_batch_is_told_anew_only_by_what_changes_what_went_in_or_came_out(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    added = next(
        entry for entry in keeper.entries()
        if isinstance(entry.facts, Add) and entry.draft.lot == lots.syrup
    )  # fmt: skip
    done = next(
        entry for entry in keeper.entries()
        if isinstance(entry.facts, Finish) and entry.draft.lot == lots.syrup
    )  # fmt: skip
    keeper.do("correct", entry=str(added.seq), changes="temp=18", because="noted late")
    assert len(of(story_of(keeper.book), lots.syrup, Finish)) == 1
    again = keeper.do("correct", entry=str(done.seq), changes="volume=3.79L", because="misread")
    before, after = of(story_of(keeper.book), lots.syrup, Finish)
    assert before.ended == Ended(again.entry.recorded_at, End.CORRECTED)
    assert (before.amount, after.amount, after.ended) == (3_800_000, 3_790_000, None)
    assert before.inputs == after.inputs
