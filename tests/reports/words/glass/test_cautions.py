"""Cautions of a lot: what it is, what a glass of it holds, and what decides."""

from ledger.service.glass.serving import serving
from reports.words.glass.cautions import DEFER, cautions_of, label_cautions
from tests.keeper import Keeper
from tests.path import Lots


def test_strong_spirit_is_flammable_and_a_glass_of_it_holds_alcohol(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    told = cautions_of(serving(keeper.book, lots.essence))
    assert told == (
        "At 89.7 % vol it is highly flammable, and its vapour catches fire from a flame or spark "
        "some way off: air the room, keep from flames and children.",
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
