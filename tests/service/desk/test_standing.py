"""A correction or strike tells what stood on it: later acts, releases, labels, goods sent."""

import pytest

from ledger.domain.entries import Add, Facts, Judge, Labels, Move, Note
from ledger.domain.entries.choices import MoveAs, Verdict
from ledger.science.contents.composition import Contents, Part, PartKey
from ledger.service.desk.standing import Standing, _affected, _differ, _gone, shaken
from tests.domain.builders import entry, make
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


@pytest.mark.parametrize(
    ("told", "what"),
    [
        ((), ""),
        ((Judge(Verdict.RELEASE),), "was released by entry 1"),
        ((Judge(Verdict.RELEASE), Judge(Verdict.HOLD)), ""),
        ((Judge(Verdict.HOLD), Judge(Verdict.RELEASE)), "was released by entry 2"),
        ((make(Labels, printed=20), make(Labels, printed=5)), "had 25 labels printed"),
        ((make(Move),), "was sent out 1 time"),
        ((make(Move), make(Move, moved_as=MoveAs.SAMPLE)), "was sent out 2 times"),
        ((make(Move, moved_as=MoveAs.RETURNED), make(Move, moved_as=MoveAs.BREAKAGE)), ""),
        (
            (Judge(Verdict.RELEASE), make(Labels, printed=1), make(Move), make(Note)),
            "was released by entry 1, had 1 labels printed, was sent out 1 time",
        ),
    ],
)
def test_what_a_pen_cannot_undo_is_a_release_labels_and_goods_that_went_to_people(
    told: tuple[Facts, ...], what: str
) -> None:
    said = [entry(facts, number, lot="B-1") for number, facts in enumerate(told, 1)]
    assert _gone("B-1", said) == what
    assert _gone("B-2", said) == ""


OIL = PartKey("oil", "orange-oil")


def mixture(
    ethanol: float = 500.0, sucrose: float = 500.0, oil: float = 10.0, volume: float = 2_000.0
) -> Contents:
    return Contents(volume, ethanol_mg=ethanol, sucrose_mg=sucrose, parts={OIL: Part(oil, 2 * oil)})


@pytest.mark.parametrize(
    ("other", "is_another"),
    [
        (mixture(), False),
        (mixture(ethanol=502.0), False),
        (mixture(ethanol=504.0), True),
        (mixture(ethanol=496.0), True),
        (mixture(sucrose=504.0), True),
        (mixture(oil=10.04), False),
        (mixture(oil=10.06), True),
        # Twice as much of the same is the same.
        (mixture(1_000.0, 1_000.0, 20.0, 4_000.0), False),
        (Contents(2_000.0, ethanol_mg=500.0, sucrose_mg=500.0), True),
        (Contents(), True),
    ],
)
def test_a_lot_is_another_by_half_a_hundredth_of_its_strength_its_sugar_or_a_part(
    other: Contents, is_another: bool
) -> None:
    assert (_differ(mixture(), other), _differ(other, mixture())) == (is_another, is_another)


def test_nothing_is_no_other_than_nothing() -> None:
    assert not _differ(Contents(), Contents())


def stood(amiss: dict[tuple[int, str], str], sugar: dict[str, float], **more: bool) -> Standing:
    contents = {code: mixture(sucrose=mg) for code, mg in sugar.items()}
    return Standing(amiss, contents, dict.fromkeys(contents, "was released by entry 7"), **more)


def test_what_was_amiss_before_is_not_told_again_and_three_lots_are_told_one_by_one() -> None:
    before = stood(
        {(5, "finish"): "Too much."}, {"NS-001-J": 500, "OE-001-5": 500, "SOO-001-3": 500}
    )
    after = stood(
        {(5, "finish"): "Too much.", (6, "finish"): "Too much.", (5, "decant"): "Too little."},
        {"NS-001-J": 500, "OE-001-5": 600, "SOO-001-3": 600, "LMC-001-F": 600},
    )
    told = [
        ("Entry 6 fits no longer: Too much.", MEND),
        ("Entry 5 fits no longer: Too little.", MEND),
    ]
    each = [
        (
            f"What is in {code} is another by the book now, and it was released by entry 7.",
            f"Decide about it anew: pottle hold {code}, or pottle release {code}",
        )
        for code in ("OE-001-5", "SOO-001-3", "LMC-001-F")
    ]
    assert list(shaken(before, after)) == [*told, *each]
    many = stood(
        {}, {"NS-001-J": 600, "OE-001-5": 600, "SOO-001-3": 600, "BPS-001-3": 600}, is_cut=True
    )
    assert list(shaken(before, many)) == [
        (
            "What is in 4 lots is another by the book now, and each was released, labelled or sent "
            "out: NS-001-J, OE-001-5, SOO-001-3, BPS-001-3.",
            "Decide about each anew, as with: pottle hold NS-001-J",
        ),
        (
            "More stands on this than was looked through.",
            "See what: pottle trace, and pottle journal of the lots made of it.",
        ),
    ]


def test_of_a_bought_lot_one_draw_concerns_no_other_and_its_own_facts_concern_all(
    sqlite_keeper: Keeper,
) -> None:
    keeper = sqlite_keeper
    spirit = keeper.do("receive", material="spirit", amount="5L")
    first, second = (
        keeper.do("start", product="Blend", kind="blend", target="1L") for _ in range(2)
    )
    draws = [
        keeper.do("add", lot=batch.code, source=spirit.code, amount="500mL")
        for batch in (first, second)
    ]
    codes = (str(spirit.code), str(first.code), "NONE-1")
    with keeper.reading() as connection:
        told = [_affected(connection, made.entry, codes) for made in (draws[0], spirit)]
    assert told == [[first.seq], [first.seq, second.seq]]
