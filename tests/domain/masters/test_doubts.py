"""Doubts of instruments are read as a maker writes them and kept in one way."""

import pytest

from ledger.domain.masters.doubts import USUAL, doubts, read_doubts
from ledger.errors import LedgerError
from tests.science.published import rows


def test_what_is_told_takes_the_place_of_what_is_usual() -> None:
    told = doubts(read_doubts("SCALE: 0.1 %\nlabel strength = 0,5"))
    assert (told["scale"], told["label-strength"], told["cylinder"]) == (0.1, 0.5, 1.0)
    assert list(told) == list(USUAL)


def test_the_label_of_a_spirit_is_off_by_what_the_law_lets_it_be() -> None:
    """27 CFR 19.356(c): 0.3 % vol."""
    told = {row["quantity"]: row["value"] for row in rows("proof_gallons.csv")}
    assert USUAL["label-strength"].half_width == float(told["strength tolerance, bottled spirits"])


def test_every_usual_doubt_names_where_it_stands() -> None:
    assert all(usual.what and usual.source for usual in USUAL.values())


HOW = (
    "Write each as NAME=FIGURE, with ; between them: cylinder, scale, lot-volume, label-strength, "
    "alcoholmeter, refractometer, hydrometer, density, certificate."
)
RULER = ('"ruler=3" is not an instrument with its doubt.', HOW)
TWICE = ("scale is told more than once.", "Write it once.")
LEAVES_NOTHING = (
    "A doubt of 100 % of amounts by weight leaves nothing.",
    "Write half the width of what it may be off by, below 100.",
)


@pytest.mark.parametrize(
    ("text", "problems"),
    [
        ("ruler=3", (RULER,)),
        ("scale", (('"scale" is not an instrument with its doubt.', HOW),)),
        ("scale=1; scale=2", (TWICE,)),
        ("scale=100", (LEAVES_NOTHING,)),
        (" ", (("No instrument is told.", HOW),)),
        ("ruler=3; scale=1; scale=100; scale=2", (RULER, LEAVES_NOTHING, TWICE)),
        (
            "label-strength=250",
            (
                (
                    "A doubt of 250 % vol of the strength of bought spirit leaves nothing.",
                    LEAVES_NOTHING[1],
                ),
            ),
        ),
        (
            "scale=0.0001",
            (('"0.0001" is a finer doubt than the book keeps.', "Round it and write it again."),),
        ),
    ],
)
def test_what_cannot_be_is_refused_with_what_to_do_and_all_at_once(
    text: str, problems: tuple[tuple[str, str], ...]
) -> None:
    with pytest.raises(LedgerError) as refused:
        read_doubts(text)
    assert refused.value.problems == problems


def test_a_doubt_is_kept_to_a_thousandth_in_the_order_of_the_list() -> None:
    text = "certificate: 99.999; scale=0,125 %; lot volume = 1.50;cylinder=10\nrefractometer 1=2"
    with pytest.raises(LedgerError):
        read_doubts(text)
    assert read_doubts(text.replace(" 1=", "=")) == (
        "cylinder=10; scale=0.125; lot-volume=1.5; refractometer=2; certificate=99.999"
    )
