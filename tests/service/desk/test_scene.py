"""The scene around a draft: read in the transaction that will append it."""

from datetime import datetime, timedelta
from typing import Any

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import (
    Add,
    Bottle,
    Check,
    Draft,
    Entry,
    Facts,
    Formula,
    Judge,
    Labels,
    MakeUp,
    Material,
    Move,
    Note,
    Opened,
    Party,
    Receipt,
    Rinse,
    Strike,
    When,
)
from ledger.domain.entries.choices import LotType, MaterialKind, Verdict
from ledger.domain.entries.masters import Constituent, FormulaLine
from ledger.domain.lots.scene import Scene
from ledger.domain.masters.substances import NO_CONCERNS, Concerns
from ledger.service.desk.scene import build_scene, source_codes
from tests.domain.builders import grams, make, ml
from tests.keeper import Keeper
from tests.path import Lots


def told(keeper: Keeper, facts: Add | Note | Strike, lot: str, **more: object) -> Draft:
    cells = {"facts": facts, "lot": lot, "happened": When(keeper.clock.now, 0), "by": "AB", **more}
    return Draft(**cells)  # type: ignore[arg-type]


def test_an_addition_has_its_lot_and_its_source_and_whether_that_is_made_of_the_lot(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    draft = told(keeper, make(Add, source=lots.packed), lots.essence)
    with keeper.reading() as connection:
        found = build_scene(connection, draft, keeper.clock.now)
    assert source_codes(draft) == (lots.packed,)
    assert found.lot is not None
    assert (found.lot.code, [state.code for state in found.sources]) == (
        lots.essence,
        [lots.packed],
    )
    assert found.made_from_lot == {lots.packed}
    assert found.has_house
    assert found.people == {"AB"}


def test_a_strike_knows_what_it_strikes_and_what_stands_on_the_lot_it_opened(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    opener = next(entry for entry in keeper.entries() if _opens(entry, lots.packed))
    draft = told(keeper, Strike(), lots.packed, corrects=opener.seq)
    with keeper.reading() as connection:
        found = build_scene(connection, draft, keeper.clock.now)
    assert found.corrected == opener
    assert found.corrected_is_in_force
    assert found.uses_of_opened == 3


def test_an_entry_that_was_corrected_is_not_in_force(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    draft = told(keeper, make(Note), lots.essence, corrects=16)
    with keeper.reading() as connection:
        assert not build_scene(connection, draft, keeper.clock.now).corrected_is_in_force


def _opens(entry: Entry, code: str) -> bool:
    return entry.draft.opens is not None and entry.draft.opens.code == code


def scene_of(keeper: Keeper, facts: Facts, lot: str | None = None, **more: Any) -> Scene:
    at: datetime = more.pop("at", keeper.clock.now)
    draft = Draft(facts=facts, lot=lot, happened=When(at, 0), by="AB", **more)
    with keeper.reading() as connection:
        return build_scene(connection, draft, keeper.clock.now)


def test_a_name_that_a_draft_brings_is_told_with_those_it_may_have_been_meant_for(
    walked: tuple[Keeper, Lots],
) -> None:
    """Neither a name that is there nor a word for nobody brings one."""
    keeper, lots = walked
    struck = keeper.do("send", lot=lots.packed, amount="1", party="Quay Bar")
    keeper.do("strike", entry=str(struck.seq), because="another lot")
    told = [
        scene_of(keeper, facts, lots.packed)
        for facts in (
            make(Move, party="Bridge Street Stll"),
            make(Move, party="Bridge Street Stall"),
            make(Move, party="Quay Bar"),
            make(Move, party="market"),
            make(Move, party=None),
            Party("Harbor Oils"),
        )
    ]
    assert [(scene.brings_name, scene.near_names) for scene in told] == [
        (True, ("Bridge Street Stall",)),
        (False, ()),
        (True, ()),
        (False, ()),
        (False, ()),
        (True, ("Harbour Oils",)),
    ]


def test_what_a_draft_names_of_materials_formulas_and_entries_is_told_as_the_book_has_it(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    lines = (FormulaLine(ml(1), material="sugar"), FormulaLine(ml(1), material="none"))
    keeper.record(make(Formula, code="orange", version=3))
    of_formula = scene_of(keeper, make(Formula, code="orange", lines=lines))
    assert of_formula.materials == {"sugar"}
    assert of_formula.formulas == {("orange", 3)}
    assert scene_of(keeper, make(Receipt, material="none")).materials == frozenset()
    corrected = next(e.draft.corrects for e in keeper.entries() if e.draft.corrects)
    checked = [scene_of(keeper, Check(about=about)) for about in (20, corrected, 999, None)]
    assert [(s.checked.seq if s.checked else None, s.checked_is_in_force) for s in checked] == [
        (20, True),
        (corrected, False),
        (None, True),
        (None, True),
    ]
    plain = scene_of(keeper, make(Note), lots.essence)
    assert (plain.corrected, plain.corrected_is_in_force, plain.uses_of_opened) == (None, True, 0)
    assert (len(plain.materials), len(plain.formulas), len(plain.made_from_lot)) == (0, 0, 0)
    assert plain.last_recorded == keeper.entries()[-1].recorded_at


def test_a_lot_is_told_as_it_was_then_and_one_that_the_draft_opens_is_none(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    now = scene_of(keeper, make(Note), lots.packed).lot
    then = scene_of(keeper, make(Note), lots.packed, at=keeper.clock.now - timedelta(days=6)).lot
    assert now is not None
    assert then is not None
    assert (now.on_hand_then, then.on_hand) == (9_000_000, 9_000_000)
    assert then.on_hand_then == 0
    opened = Opened(lots.packed, LotType.PACKED, Measure.UEACH)
    assert scene_of(keeper, make(Bottle, source=lots.syrup), lots.packed, opens=opened).lot is None
    assert scene_of(keeper, make(Note)).lot is None
    # What it is made of is walked to for those alone whose rules ask whether it may leave.
    behind = [
        len(state.made_from)
        for facts in (make(Note), make(Judge), make(Labels), make(Move))
        if (state := scene_of(keeper, facts, lots.packed).lot)
    ]
    assert behind == [1, 9, 9, 9]


def test_a_source_is_told_with_what_it_weighs_where_volume_and_weight_meet(
    walked: tuple[Keeper, Lots],
) -> None:
    """Of what is made up, rinsed with or filled; papers and bottles are counted."""
    keeper, lots = walked
    weighed = keeper.opens("receive", material="orange-oil", amount="100g")
    told = [
        scene_of(keeper, facts, lots.essence).sources[-1].reckoned_mg_per_l
        for facts in (
            make(Add, source=lots.oil, amount=grams(2)),
            make(Add, source=lots.oil, amount=ml(2)),
            make(Add, source=weighed, amount=grams(2)),
            make(Add, source=weighed, amount=ml(2)),
            make(Rinse, source=lots.oil),
            make(Rinse, source=weighed),
            make(MakeUp, source=weighed),
            make(Bottle, source=weighed),
            make(Bottle, source=lots.syrup, bottles=weighed),
        )
    ]
    assert told == [845_000, None, None, 845_000, None, *(845_000,) * 3, None]


def test_what_is_to_be_said_of_goods_of_a_material_and_of_bottles_that_are_released_is_told(
    walked: tuple[Keeper, Lots],
) -> None:
    """Of constituents that a material had already it was said before."""
    keeper, lots = walked
    oil = Material(
        "orange-oil",
        "Sweet orange oil",
        MaterialKind.OIL,
        constituents=(
            Constituent("limonene", 900_000),
            Constituent("limonin", 1_000),
            Constituent("safrrole", 1_000),
            Constituent("safrole", 1_000),
        ),
    )
    told = scene_of(keeper, oil).concerns
    assert told == Concerns(unlimited={"limonin": None, "safrrole": "safrole"})
    keeper.do("material", code="birch", name="Sweet birch oil", kind="oil", density="1.18")
    birch = scene_of(keeper, make(Receipt, material="birch")).concerns
    assert birch.neat.startswith("Sweet birch oil neat: ")
    assert scene_of(keeper, make(Receipt, material="sugar")).concerns == NO_CONCERNS
    assert scene_of(keeper, make(Receipt, material="none")).concerns == NO_CONCERNS
    named = replace(oil, code="birch", name="Sweet birch oil", constituents=())
    assert scene_of(keeper, named).concerns.usual == ("methyl salicylate",)
    again = replace(named, constituents=(Constituent("limonin", 1_000),))
    keeper.do("material", code="birch", change=True, constituents="limonin 90%")
    assert scene_of(keeper, again).concerns.unlimited == {}
    release, hold = Judge(Verdict.RELEASE), Judge(Verdict.HOLD)
    keeper.do("material", code="pips", name="Pips", kind="other")
    pips = keeper.opens("receive", material="pips", amount="100g")
    keeper.do("add", lot=lots.syrup, source=pips, amount="1g", because="to see")
    more = keeper.opens("bottle", source=lots.syrup, pack="1 x 20mL", because="to see")
    undeclared = [
        len(scene_of(keeper, facts, lot).concerns.undeclared)
        for facts, lot in ((release, more), (hold, more), (release, lots.syrup))
    ]
    assert undeclared == [2, 0, 0]
