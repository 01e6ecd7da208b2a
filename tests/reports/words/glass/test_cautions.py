"""Cautions of a lot: what it is, what a glass of it holds, and what decides."""

from types import SimpleNamespace
from typing import Any

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Limit
from ledger.domain.entries.choices import Bound, KnownBy, LimitBasis, LimitUnit
from ledger.science.contents.against import Daily
from ledger.science.liquids.flammable import flammable
from ledger.service.glass.card import ServingCard
from ledger.service.glass.serving import serving
from reports.words.glass import cautions as module
from reports.words.glass.cautions import (
    BENZENE_OF,
    DEFER,
    _alcohol,
    _poison,
    cautions_of,
    flammable_lines,
    label_cautions,
)
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots
from tests.reports.words.glass.preserved import preserved


def test_strong_spirit_is_flammable_and_a_glass_of_it_holds_alcohol(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    told = cautions_of(serving(keeper.book, lots.essence))
    assert told == (
        "At 89.7 % vol it is highly flammable, and its vapour catches fire from a flame or spark "
        "some way off: air the room, keep from flames and children.",
        "Flash point about 15 °C, reckoned for ethanol and water, closed cup; it may lie 2.1 °C "
        "lower: H225 (Danger, category 2 of GHS and CLP), from which food for the eater may be "
        "exempt.",
        "Its carriage is that of UN 1197, EXTRACTS, LIQUID, for flavouring, class 3, packing group "
        "II; as limited quantity in bottles up to 5 L by ADR and 1 L in the United States. The "
        "carrier and local law decide; ask them before a bottle is sent.",
        "A glass holds alcohol (0.33 % vol at most): say so where somebody must or would avoid it.",
        DEFER,
    )


def test_a_label_says_the_gravest_in_short_and_a_syrup_burns_nobody(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    assert label_cautions(serving(keeper.book, lots.essence), ()) == (
        "Flavouring in strong alcohol: highly flammable, keep from flames and from children, "
        "dilute before use.",
    )
    assert not any("flammable" in line for line in cautions_of(serving(keeper.book, lots.packed)))


def test_what_is_too_weak_for_the_rules_of_carriage_is_told_its_class_alone(
    walked: tuple[Keeper, Lots],
) -> None:
    """20 % vol: 16.2 % mass, of which the table has 36 °C; a syrup is told none."""
    keeper, lots = walked
    essence, syrup = serving(keeper.book, lots.essence), serving(keeper.book, lots.packed)
    weak = replace(essence, flammable=flammable(0.162, 20.0))
    (told,) = flammable_lines(weak)
    assert told.endswith(
        "H226 (Warning, category 3 of GHS and CLP), from which food for the eater may be exempt."
    )
    assert flammable_lines(syrup) == []


CEILING = Limit(
    "eu-safrole", "safrole", Bound.AT_MOST, 2_000_000, LimitUnit.MG_PER_KG_BODY,
    LimitBasis.PER_DAY, "EU", "invented", KnownBy.RECALLED,
)  # fmt: skip


def pouring(
    said: str, *, abv: float = 0.0, percent: float | None = None, doubt: float = 0.0
) -> Any:
    """Return a way to pour in which a glass is so strong and takes so much of a ceiling."""
    daily = Daily(CEILING, "adult", 60, 120.0, percent, 1.2 * (percent or 0.0), doubt)
    served = SimpleNamespace(concern=SimpleNamespace(substance="safrole"), daily=(daily,))
    return SimpleNamespace(said=said, glass=SimpleNamespace(abv=abv), concerns=(served,))


@pytest.fixture
def card(walked: tuple[Keeper, Lots]) -> ServingCard:
    keeper, lots = walked
    return serving(keeper.book, lots.essence)


def as_strong(card: ServingCard, abv: float) -> ServingCard:
    """Return the card of a lot so strong of which nothing else is to be told."""
    made = SimpleNamespace(contents=SimpleNamespace(abv=abv))
    return replace(card, made=made, flammable=None, pourings=(pouring("neat", percent=0.0),))


def test_from_24_percent_on_it_is_flammable_and_just_below_it_is_not(card: ServingCard) -> None:
    told = cautions_of(as_strong(card, 24.0))
    assert told == (
        "At 24.0 % vol it is highly flammable, and its vapour catches fire from a flame or spark "
        "some way off: air the room, keep from flames and children.",
        DEFER,
    )
    assert len(label_cautions(as_strong(card, 24.0), ())) == 1
    for weaker in (23.9, 23.999):
        assert cautions_of(as_strong(card, weaker)) == (DEFER,)
        assert label_cautions(as_strong(card, weaker), ()) == ()


def test_a_ceiling_is_told_when_it_is_just_passed_and_not_when_it_is_just_kept(
    card: ServingCard,
) -> None:
    weak = as_strong(card, 0.0)
    kept = replace(weak, pourings=(pouring("by the litre", percent=100.0),))
    assert cautions_of(kept) == (DEFER,)
    ways = (pouring("by the litre", percent=100.1), pouring("by the gallon", percent=99.9))
    passed = replace(weak, pourings=ways)
    assert cautions_of(passed) == (
        "One glass passes the daily ceiling of safrole for an adult of 60 kg (by the litre).",
        DEFER,
    )
    both = replace(passed, pourings=(ways[0], pouring("by the gallon", percent=None)))
    assert cautions_of(both)[0] == (
        "One glass passes the daily ceiling of safrole for an adult of 60 kg (by the litre, by the "
        "gallon)."
    )
    assert cautions_of(replace(passed, is_essence=False))[0] == (
        "One glass passes the daily ceiling of safrole for an adult of 60 kg."
    )


def test_a_ceiling_that_is_too_close_to_tell_may_be_passed(card: ServingCard) -> None:
    """From either side: 99 and 101 % of it, with a doubt of 2 %."""
    for percent in (99.0, 101.0):
        way = pouring("by the litre", percent=percent, doubt=2.4)
        assert cautions_of(replace(as_strong(card, 0.0), pourings=(way,)))[0] == (
            "One glass may pass the daily ceiling of safrole for an adult of 60 kg (by the litre)."
        )


@pytest.mark.parametrize(("acid", "is_told"), [("antioxidant E 300", True), ("acid E 330", False)])
def test_a_benzoate_beside_ascorbic_acid_may_form_benzene(
    acid: str, is_told: bool, sqlite_keeper: Keeper
) -> None:
    code = preserved(sqlite_keeper, additive="preservative E 211", allergens="none")
    sqlite_keeper.do("material", code="sour", kind="acid", additive=acid, allergens="none")
    sour = sqlite_keeper.opens("receive", material="sour", amount="50g")
    sqlite_keeper.do("add", lot=code, source=sour, amount="2g")
    told = [line for line in cautions_of(serving(sqlite_keeper.book, code)) if "benzene" in line]
    wanted = (
        "Holds a benzoate and ascorbic acid, which may form benzene in the bottle, the more "
        "in heat and light. Leave one of them out, or ask a laboratory; for soft drinks the "
        "United States hold 5 µg/L of drinking water as a yardstick, and the European Union 1 µg/L."
    )
    assert told == ([wanted] if is_told else [])


@pytest.mark.parametrize(
    ("sort", "named", "unnamed"),
    [
        (0, "benzoic acid|Sodium benzoate|E 210|E 211|E 212|E 213", "E 209|E 214|E 2110"),
        (
            1,
            "ascorbic acid|sodium ascorbate|ascorbyl palmitate|Vitamin C|E 300|E 301|E 302|E 303"
            "|E 304|E 315|E 316",
            "E 305|E 314|E 317|E 3000|vitamin can",
        ),
    ],
)
def test_a_benzoate_and_an_ascorbate_are_known_by_all_their_names(
    sort: int, named: str, unnamed: str
) -> None:
    """E numbers: Regulation (EC) No 1333/2008, Annex II, part B (from memory)."""
    assert [name for name in named.split("|") if not BENZENE_OF[sort].search(name)] == []
    assert [name for name in unnamed.split("|") if BENZENE_OF[sort].search(name)] == []


def test_the_strongest_glass_is_the_one_whose_alcohol_is_told(card: ServingCard) -> None:
    ways = tuple(pouring("a way", abv=abv, percent=0.0) for abv in (0.09, 0.33, 0.2))
    told = cautions_of(replace(as_strong(card, 0.0), pourings=ways))
    assert told == (
        "A glass holds alcohol (0.33 % vol at most): say so where somebody must or would avoid it.",
        DEFER,
    )
    faint = tuple(pouring("a way", abv=abv, percent=0.0) for abv in (0.01, 0.049))
    assert cautions_of(replace(as_strong(card, 0.0), pourings=faint)) == (DEFER,)


def test_the_mass_of_methyl_salicylate_in_a_teaspoon_is_told(card: ServingCard) -> None:
    wintergreen = SimpleNamespace(
        said="neat",
        glass=SimpleNamespace(abv=0.0),
        concerns=(
            SimpleNamespace(concern=SimpleNamespace(substance="methyl salicylate"), daily=()),
        ),
    )
    poison = replace(as_strong(card, 0.0), pourings=(wintergreen,))
    warned = (
        "Holds methyl salicylate: not for people allergic to aspirin or taking blood thinners, nor "
        "for children without advice."
    )
    assert cautions_of(poison) == (warned, DEFER)
    teaspoon = replace(poison, swig_mg={"methyl salicylate": 347.0})
    assert cautions_of(teaspoon) == (
        "A teaspoon (5 mL) of this essence holds 347 mg of methyl salicylate. Keep it locked away "
        "from children; if somebody drank it, call a poison centre at once.",
        warned,
        DEFER,
    )
    assert label_cautions(teaspoon, ()) == cautions_of(teaspoon)[:2]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


@pytest.mark.parametrize(("abv", "is_told"), [(0.049, False), (0.05, True)])
def test_alcohol_in_a_glass_is_told_from_a_twentieth_of_a_percent_on(
    abv: float, is_told: bool
) -> None:
    card: Any = SimpleNamespace(pourings=(SimpleNamespace(glass=SimpleNamespace(abv=abv)),))
    assert bool(_alcohol(card)) is is_told


@pytest.mark.parametrize(("mg", "count"), [(0.0, 1), (0.4, 2)])
def test_a_teaspoon_with_the_least_of_methyl_salicylate_calls_for_a_poison_centre(
    mg: float, count: int
) -> None:
    served = SimpleNamespace(concern=SimpleNamespace(substance="methyl salicylate"))
    card: Any = SimpleNamespace(
        pourings=(SimpleNamespace(concerns=(served,)),), swig_mg={"methyl salicylate": mg}
    )
    told = _poison(card)
    assert len(told) == count
    assert ("teaspoon" in told[0]) is (mg > 0)
