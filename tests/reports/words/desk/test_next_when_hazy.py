"""What comes next when a batch that is to be clear was seen not to be."""

from typing import Any

import pytest

from ledger.domain.entries import Facts, Filter, Look, Rest
from ledger.domain.entries.choices import Cake, Grade, RestFor
from reports.words.desk import next_when_hazy as module
from reports.words.desk.next_when_hazy import clearing, pass_of
from tests.domain.builders import lot, make
from tests.kept.said import check_constants, check_said

HAZY, BRIGHT = make(Look, grade=Grade.HAZY), make(Look)
CHILL = make(Rest, purpose=RestFor.CHILL)


def a_pass(pore_um: int | None, **more: Any) -> Filter:
    return make(Filter, pore_high_nm=pore_um and 1000 * pore_um, **more)


AGAIN = a_pass(20, cake=Cake.SAME)


@pytest.mark.parametrize(
    ("acts", "step"),
    [
        ((), None),
        ((a_pass(20), BRIGHT), None),
        ((HAZY,), "filter E-1 --medium paper --pore 20 --out VOLUME"),
        ((a_pass(25), HAZY), "filter E-1 --medium paper --pore 25 --out VOLUME --cake same"),
        ((a_pass(None), HAZY), "filter E-1 --medium paper --pore 20 --out VOLUME --cake same"),
        ((a_pass(20), AGAIN, HAZY), "filter E-1 --medium paper --pore 11 --out VOLUME"),
        ((AGAIN, a_pass(11, cake=Cake.SAME), HAZY), "rest E-1 --for chill --temp DEGREES"),
        ((a_pass(1, cake=Cake.SAME), HAZY), "rest E-1 --for chill --temp DEGREES"),
        ((AGAIN, CHILL, HAZY), "filter E-1 --medium paper --pore 20 --out VOLUME"),
    ],
    ids=str,
)
def test_the_cake_again_then_a_finer_pore_then_the_cold(
    acts: tuple[Facts, ...], step: str | None
) -> None:
    assert clearing(lot("E-1", *acts)) == (step and f"pottle {step}")


def test_what_is_as_clear_as_wanted_is_left_alone() -> None:
    assert clearing(lot("E-1", a_pass(20), HAZY), Grade.HAZY) is None
    assert clearing(lot("E-1", a_pass(20), make(Look, grade=Grade.CLEAR)), Grade.BRIGHT)


def test_a_pass_is_proposed_as_the_last_one_was() -> None:
    frit = make(Filter, medium="frit", pore_low_nm=16_000, pore_high_nm=40_000)
    assert pass_of(lot("E-1", frit)) == "pottle filter E-1 --medium frit --pore 40 --out VOLUME"


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
