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


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("ruler=3", '"ruler=3" is not an instrument with its doubt.'),
        ("scale", '"scale" is not an instrument with its doubt.'),
        ("scale=1; scale=2", "scale is told more than once."),
        ("scale=100", "A doubt of 100 % of amounts by weight leaves nothing."),
        (" ", "No instrument is told."),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(text: str, sentence: str) -> None:
    with pytest.raises(LedgerError) as refused:
        read_doubts(text)
    assert refused.value.problems[0][0] == sentence
