"""A correction or strike tells what stood on it: later acts, releases, labels, goods sent."""

from ledger.domain.entries import Add
from tests.keeper import Keeper
from tests.path import walk_main_path

MEND = "If that entry is wrong too, correct it; else this one may be: pottle journal shows both."


def batch_of(keeper: Keeper, *amounts: tuple[str, str]) -> tuple[str, list[int]]:
    batch = keeper.opens("start", product="Blend", kind="blend", target="1L")
    lots = [keeper.opens("receive", material=material, amount="5L") for material, _ in amounts]
    added = [
        keeper.do("add", lot=batch, source=lot, amount=amount).seq
        for lot, (_, amount) in zip(lots, amounts, strict=True)
    ]
    return batch, added


def test_a_finish_that_is_more_than_is_left_in_it_fits_no_longer(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    batch, (spirit, _) = batch_of(keeper, ("spirit", "400mL"), ("orange-oil", "30mL"))
    finish = keeper.do("finish", lot=batch, volume="420mL").seq
    done = keeper.do("strike", entry=str(spirit), because="another jar")
    assert done.remarks == (
        (
            f"Entry {finish} fits no longer: 420mL came out, but {batch} held less: "
            "the book says 30 mL.",
            MEND,
        ),
    )


def test_striking_the_only_oil_of_what_was_sold_says_so(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    lots = walk_main_path(keeper)
    *_, oiled = (
        entry.seq
        for entry in keeper.entries()
        if isinstance(entry.facts, Add) and entry.facts.source == lots.oil
    )
    told = dict(keeper.do("strike", entry=str(oiled), because="it was another oil").remarks)
    shaken = [what for what in told if what.startswith("What is in")]
    assert any(what.startswith(f"What is in {lots.packed} is another") for what in shaken)
    assert any("was released by entry" in what and "was sent out" in what for what in shaken)
    assert told[shaken[0]].startswith("Decide about it anew: pottle hold ")


def test_a_correction_that_changes_nothing_that_stands_on_it_says_nothing(
    sqlite_keeper: Keeper,
) -> None:
    keeper = sqlite_keeper
    lots = walk_main_path(keeper)
    (receipt,) = (
        entry.seq
        for entry in keeper.entries()
        if entry.draft.opens and entry.draft.opens.code == lots.oil
    )
    done = keeper.do("correct", entry=str(receipt), changes="cost=50.00", because="misread")
    assert done.remarks == ()


def test_many_lots_that_are_others_now_are_told_as_one(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    spirit = keeper.do("receive", material="spirit", amount="5L", abv="96")
    lots = [keeper.opens("start", product="Blend", kind="blend", target="1L") for _ in range(4)]
    for lot in lots:
        keeper.do("add", lot=lot, source=spirit.code, amount="500mL")
        keeper.do("send", lot=lot, amount="10mL", moved_as="sample", because="to taste")
    strength = {"changes": "abv=70", "because": "misread"}
    done = keeper.do("correct", entry=str(spirit.seq), **strength)
    assert done.remarks == (
        (
            "What is in 4 lots is another by the book now, and each was released, labelled or "
            f"sent out: {lots[0]} to {lots[-1]}.",
            f"Decide about each anew, as with: pottle hold {lots[0]}",
        ),
    )
