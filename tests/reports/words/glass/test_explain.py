"""How the figures of a card were reckoned is told."""

from types import SimpleNamespace
from typing import Any

from msgspec.structs import replace

from ledger.domain.lots.steps import Act
from ledger.science.contents.composition import OIL, Contents, Part, PartKey
from ledger.service.glass.serving import serving
from reports.words.glass import explain as module
from reports.words.glass.explain import explained
from tests.keeper import Keeper
from tests.kept.said import check_said
from tests.path import Lots
from tests.reports.words.glass.preserved import preserved

LAST = "An input made here is explained by pottle serving with its own code."


def test_every_step_and_figure_of_an_essence_is_told(walked: tuple[Keeper, Lots]) -> None:
    """By hand: 26 g of 0.845 g/mL are 30.77 mL; 420 mL of 96 % vol hold 403.2 mL or 318.2 g.

    448 of 450 of all is left; 30 mL of 89.73 % vol in 1,030 mL are 2.61 % vol, of which 30 mL in
    240 are 0.33; 23.03 g in 418 mL are 1.653 g in 30 mL, 48.2 mg in a glass, 201 mg/L.
    """
    keeper, lots = walked
    assert explained(serving(keeper.book, lots.essence)) == [
        "OE-001-5, entry 36, add: 26 g orange-oil from SOO-001-3; 0 mL before, 30.77 mL after, "
        "reckoned.",
        "OE-001-5, entry 18, add: 318 g ethanol, 20.9 g water from NS-001-J; 30.77 mL before, "
        "450.8 mL after, reckoned.",
        "OE-001-5, entry 21, filter: measured; 14.7 g ethanol, 963 mg water, 1.2 g orange-oil "
        "lost; 450.8 mL before, 430 mL after, as measured.",
        "OE-001-5, entry 22, makeup: 15.2 g ethanol, 995 mg water from NS-001-J; 430 mL before, "
        "450 mL after, reckoned.",
        "OE-001-5, entry 22, makeup: measured; no mass lost; 450 mL before, 450 mL after, as "
        "measured.",
        "OE-001-5, entry 24, finish: measured; 1.42 g ethanol, 93 mg water, 110 mg orange-oil "
        "lost; 450 mL before, 448 mL after, as measured.",
        "Volumes are taken as read at 20 °C.",
        "Ethanol and water by OIML R 22, sugar by ICUMSA SPS-4, oils by their density.",
        "NS-001-J, Neutral spirit: 96.00 % vol, by its material.",
        "SOO-001-3, Sweet orange oil: 0.845 g/mL, by its material.",
        "Strength of OE-001-5: 296 g of ethanol at 0.78924 g/mL fill 375.1 mL of 418 mL: 89.7 % "
        "vol.",
        "orange-oil: 23 g in 418 mL of OE-001-5, 55100 mg/L, 6.52 % by volume.",
        "Glass (30 mL in 1 L): 30 mL of syrup of 2.61 % vol bring 0.7841 mL of pure ethanol into "
        "240 mL: 0.33 % vol.",
        "Glass (30 mL in 1 L): Sweet orange oil 48.2 mg in 240 mL are 201 mg/L.",
        "Glass (30 mL in 1 US gal): 30 mL of syrup of 0.71 % vol bring 0.2117 mL of pure ethanol "
        "into 240 mL: 0.09 % vol.",
        "Glass (30 mL in 1 US gal): Sweet orange oil 13 mg in 240 mL are 54.2 mg/L.",
        LAST,
    ]


def test_the_sugar_of_a_syrup_is_told_and_its_glass_as_it_is(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    told = explained(serving(keeper.book, lots.packed))
    assert told[0] == (
        "BOS-001-S, entry 32, bottle: 20.3 g ethanol, 2290 g water, 2290 g sugar, 1.58 g "
        "orange-oil from OS-002-M; 0 mL before, 3750 mL after, reckoned."
    )
    assert told[-3:-1] == [
        "Glass (as it is): 30 mL of syrup of 0.69 % vol bring 0.2056 mL of pure ethanol into 240 "
        "mL: 0.09 % vol.",
        "Glass (as it is): Sweet orange oil 12.6 mg in 240 mL are 52.6 mg/L.",
    ]


def happening(act: Act, moved: Contents, source: str | None = None) -> Any:
    """Return a step that moved something into or out of 100 mL."""
    return SimpleNamespace(
        step=SimpleNamespace(entry=9, kind="move", act=act, source=source),
        moved=moved,
        before_ul=100_000.0,
        after=Contents(130_000.0),
    )


def test_steps_are_told_by_what_they_moved_and_where_it_came_from(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    card = serving(keeper.book, lots.packed)
    oil = {PartKey(OIL, "orange-oil"): Part(500.0, 600.0)}
    steps = (
        happening(Act.INTO, Contents(5_000.0, 3_000.0, unknown_ul={"X-2": 1.0, "X-1": 2.0})),
        happening(Act.INTO, Contents(1_000.0, parts=oil), "S-1"),
        happening(Act.INTO, Contents(notes=frozenset({"noted"})), "S-2"),
        happening(Act.INTO, Contents(), "S-3"),
        happening(Act.LEVEL, Contents()),
        happening(Act.LEVEL, Contents(0.0, water_mg=2_000.0)),
        happening(Act.OUT, Contents(5_000.0, 3_000.0)),
        happening(Act.WORK, Contents()),
    )
    told = explained(replace(card, made=replace(card.made, happenings=steps)))
    there, lot = "100 mL before, 130 mL after", f"{lots.packed}, entry 9, move:"
    assert told[: -len(explained(replace(card, made=replace(card.made, happenings=()))))] == [
        f"{lot} 3 g ethanol, unknown liquid of X-1, unknown liquid of X-2 from outside; {there}, "
        "reckoned.",
        f"{lot} 500 mg orange-oil from S-1; {there}, reckoned.",
        f"{lot} nothing that stays from S-2; {there}, reckoned.",
        f"{lot} measured; no mass lost; {there}, as measured.",
        f"{lot} measured; 2 g water lost; {there}, as measured.",
    ]


def test_the_factor_is_told_where_figures_are_explained(sqlite_keeper: Keeper) -> None:
    code = preserved(sqlite_keeper, constituents="sodium benzoate 100%")
    told = explained(serving(sqlite_keeper.book, code))
    assert (
        "Glass (as it is): 42 mg of sodium benzoate count as 35.6 mg of benzoic acid: 122.12 g of "
        "it in 144.10 g, a factor of 0.8475 (molar masses by IUPAC's atomic weights, from memory)."
    ) in told


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
