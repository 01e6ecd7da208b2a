"""The figures of one batch are folded from its entries alone."""

from fractions import Fraction

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Add, Entry, Facts, Filter, Finish, Look, Start
from ledger.domain.entries.choices import AddedAs, LookedAt
from ledger.service.causes.figures import loss_in_pass, ntu_at_end, share_of_target, yield_of
from tests.domain.builders import lot, make


def said(*facts: Facts) -> tuple[Entry, ...]:
    return lot("E-1", *facts, opening=make(Start, target=parse_quantity("600mL"))).entries


def add(amount: str, way: str = "ingredient") -> Add:
    return make(Add, amount=parse_quantity(amount), added_as=AddedAs(way))


OUT = make(Finish, volume=parse_quantity("540mL"))


def test_a_yield_is_of_liquids_alone() -> None:
    every = said(add("40mL"), add("560mL"), add("25g"), OUT)
    assert [yield_of(every), share_of_target(every)] == [90, 90]
    with_cake = said(add("40mL"), add("560mL"), add("100mL", "old-cake"), OUT)
    assert yield_of(with_cake) == 90


def test_of_what_never_came_out_nothing_is_told() -> None:
    assert yield_of(said(add("40mL"))) is None
    assert share_of_target(said(add("40mL"))) is None
    assert yield_of(said(OUT)) is None


def test_the_reading_is_the_last_one_neat_before_the_end() -> None:
    neat, poured = LookedAt.NEAT, LookedAt.AS_POURED
    looks = [
        make(Look, ntu_milli=4100, looked_at=neat),
        make(Look, ntu_milli=1900, looked_at=neat),
        make(Look, ntu_milli=9000, looked_at=poured),
        OUT,
        make(Look, ntu_milli=21000, looked_at=neat),
    ]
    assert ntu_at_end(said(*looks)) == Fraction(19, 10)
    assert ntu_at_end(said(*looks[:2])) is None


def test_a_loss_is_of_what_was_put_on_that_pass() -> None:
    passes = [
        make(
            Filter,
            pass_no=number,
            volume_in=parse_quantity(into),
            volume_out=parse_quantity(out),
        )
        for number, into, out in ((1, "600mL", "570mL"), (2, "570mL", "570mL"))
    ]
    every = said(*passes)
    assert [loss_in_pass(every, number) for number in (1, 2, 3)] == [5, 0, None]
