"""Lots proposed for a batch: first expired first out, among those that may be used."""

import pytest

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import ProductKind
from ledger.domain.entries.masters import FormulaLine, Keeping
from ledger.service.bench.draws import lacking, propose, propose_for
from ledger.service.masters.formula import versions
from reports.words.bench.draws import commands, rows, shortages
from tests.keeper import Keeper
from tests.service.engines import ON_EACH_ENGINE

SUGAR = FormulaLine(parse_quantity("1kg"), material="sugar")
SPIRIT = FormulaLine(parse_quantity("500mL"), material="spirit")


def formula(keeper: Keeper, code: str, *lines: FormulaLine, **more: object) -> str:
    """Write down a formula for 1 L and return its code."""
    basis = parse_quantity("1L")
    keeper.record(
        Formula(code, 1, code.capitalize(), ProductKind.BLEND, basis, lines=lines, **more)  # type: ignore[arg-type]
    )
    return code


def sugar(keeper: Keeper, amount: str, **words: str) -> str:
    return keeper.opens("receive", material="sugar", amount=amount, **words)


def proposed(keeper: Keeper, followed: str, target: str = "1L") -> list[tuple[str, ...]]:
    """Begin a batch; return material, what is called for, lot, what to take, its date."""
    code = keeper.opens("start", formula=followed, target=target)
    return rows(propose(keeper.book, code))


@ON_EACH_ENGINE
def test_what_expires_first_is_drawn_first_and_what_never_does_last(keeper: Keeper) -> None:
    never = sugar(keeper, "5kg")
    late = sugar(keeper, "300g", best_before="2026-12-31")
    early = sugar(keeper, "200g", best_before="2026-06-30")
    assert proposed(keeper, formula(keeper, "fudge", SUGAR)) == [
        ("sugar", "1 kg", early, "200 g", "2026-06-30"),
        ("", "", late, "300 g", "2026-12-31"),
        ("", "", never, "500 g", ""),
    ]


def test_of_two_with_the_same_date_the_one_that_came_first_is_drawn_first(keeper: Keeper) -> None:
    first = sugar(keeper, "600g", best_before="2026-06-30")
    second = sugar(keeper, "600g", best_before="2026-06-30")
    assert [row[2:4] for row in proposed(keeper, formula(keeper, "fudge", SUGAR))] == [
        (first, "600 g"),
        (second, "400 g"),
    ]


def test_a_target_and_an_overage_scale_what_is_called_for(keeper: Keeper) -> None:
    lot = sugar(keeper, "5kg")
    line = FormulaLine(parse_quantity("1kg"), material="sugar", overage_mpct=2000)
    assert proposed(keeper, formula(keeper, "fudge", line), "2.5L") == [
        ("sugar", "2.55 kg", lot, "2.55 kg", "")
    ]


@pytest.mark.parametrize("verdict", ["hold", "reject"])
def test_a_lot_that_is_held_or_rejected_is_left_out(verdict: str, keeper: Keeper) -> None:
    barred = sugar(keeper, "5kg", best_before="2026-06-30")
    good = sugar(keeper, "5kg")
    keeper.do("judge", lot=barred, verdict=verdict, because="it clumps")
    assert [row[2] for row in proposed(keeper, formula(keeper, "fudge", SUGAR))] == [good]


def test_a_lot_that_came_on_hold_is_drawn_on_once_it_is_released(keeper: Keeper) -> None:
    lot = sugar(keeper, "5kg", hold="yes", because="no papers yet")
    followed = formula(keeper, "fudge", SUGAR)
    assert [row[2] for row in proposed(keeper, followed)] == ["none"]
    keeper.do("judge", lot=lot, verdict="release", because="the papers came")
    assert [row[2] for row in proposed(keeper, followed)] == [lot]


def test_a_lot_is_drawn_on_up_to_the_last_day_of_its_date_and_not_after(keeper: Keeper) -> None:
    lot = sugar(keeper, "5kg", best_before="2026-03-03")
    followed = formula(keeper, "fudge", SUGAR)
    keeper.clock.forward(days=1)
    assert [row[2] for row in proposed(keeper, followed)] == [lot]
    keeper.clock.forward(days=1)
    assert [row[2] for row in proposed(keeper, followed)] == ["none"]


def test_what_is_short_is_said(keeper: Keeper) -> None:
    lot = sugar(keeper, "700g")
    code = keeper.opens("start", formula=formula(keeper, "fudge", SUGAR, SPIRIT), target="1L")
    found = propose(keeper.book, code)
    assert [line.name for line in found] == ["Sugar", "Neutral spirit"]
    assert rows(found) == [
        ("sugar", "1 kg", lot, "700 g", ""),
        ("spirit", "500 mL", "none", "", ""),
    ]
    assert shortages(found) == [
        "Short of sugar: 300 g of 1 kg are in no lot that may be used.",
        "Short of spirit: 500 mL of 500 mL are in no lot that may be used.",
    ]
    assert commands(code, found) == [f"pottle add {code} {lot} 700g"]


def test_the_proposed_commands_put_in_what_is_called_for(keeper: Keeper) -> None:
    first, second = sugar(keeper, "400g", best_before="2026-06-30"), sugar(keeper, "5kg")
    code = keeper.opens("start", formula=formula(keeper, "fudge", SUGAR), target="1L")
    for command in commands(code, propose(keeper.book, code)):
        _, _, lot, source, amount = command.split()
        keeper.do("add", lot=lot, source=source, amount=amount)
    assert (keeper.held(first), keeper.held(second)) == (0, 4_400_000)
    again = keeper.opens("start", formula="fudge", target="1L")
    assert [row[2] for row in rows(propose(keeper.book, again))] == [second]


def test_all_that_is_left_of_a_lot_is_proposed_to_the_last_digit(keeper: Keeper) -> None:
    """1000.6 g are 1.001 kg in three decimals, which is more than is there."""
    first = sugar(keeper, "1000.6g", best_before="2026-06-30")
    sugar(keeper, "5kg")
    code = keeper.opens("start", formula=formula(keeper, "fudge", SUGAR), target="2L")
    found = propose(keeper.book, code)
    assert [row[3] for row in rows(found)] == ["1000.6 g", "999 g"]
    for command in commands(code, found):
        _, _, lot, source, amount = command.split()
        keeper.do("add", lot=lot, source=source, amount=amount)
    assert keeper.held(first) == 0


def test_a_lot_that_one_line_draws_on_has_less_for_the_next(keeper: Keeper) -> None:
    first, second = sugar(keeper, "1200g", best_before="2026-06-30"), sugar(keeper, "5kg")
    assert proposed(keeper, formula(keeper, "fudge", SUGAR, SUGAR)) == [
        ("sugar", "1 kg", first, "1 kg", "2026-06-30"),
        ("sugar", "1 kg", first, "200 g", "2026-06-30"),
        ("", "", second, "800 g", ""),
    ]


def test_a_weight_is_drawn_from_a_volume_by_its_density_never_more_than_is_there(
    keeper: Keeper,
) -> None:
    """100 mL at 0.845 g/mL weigh 84.5 g."""
    oil = keeper.opens("receive", material="orange-oil", amount="100mL")
    line = FormulaLine(parse_quantity("100g"), material="orange-oil")
    code = keeper.opens("start", formula=formula(keeper, "oily", line), target="1L")
    (found,) = propose(keeper.book, code)
    (drawn,) = found.drawn
    assert drawn.lot == oil
    assert 84_499 <= drawn.amount <= 84_500
    assert drawn.amount + found.short == 100_000


@pytest.mark.parametrize(
    ("there", "taken"), [("5kg", ["667 g"]), ("100.123g", ["100.123 g", "567 g"])]
)
def test_what_is_taken_can_be_weighed_and_all_that_is_left_of_a_lot_is_taken(
    there: str, taken: list[str], keeper: Keeper
) -> None:
    """1 kg for 1 L makes 666.667 g for two thirds of it."""
    sugar(keeper, there, best_before="2026-06-30")
    sugar(keeper, "5kg")
    found = proposed(keeper, formula(keeper, "fudge", SUGAR), "666.667mL")
    assert (found[0][1], [row[3] for row in found]) == ("667 g", taken)


@pytest.mark.parametrize("tolerance_mpct", [10, 100, 2000])
def test_what_is_taken_is_never_outside_the_limits(tolerance_mpct: int, keeper: Keeper) -> None:
    sugar(keeper, "100.123g", best_before="2026-06-30")
    sugar(keeper, "5kg")
    line = FormulaLine(parse_quantity("1kg"), material="sugar", tolerance_mpct=tolerance_mpct)
    code = keeper.opens("start", formula=formula(keeper, "fudge", line), target="666.667mL")
    (found,) = propose(keeper.book, code)
    least, most = found.wanted.least, found.wanted.most
    assert least is not None
    assert most is not None
    assert least <= sum(item.amount for item in found.drawn) <= most
    for command in commands(code, (found,)):
        _, _, lot, source, amount = command.split()
        keeper.do("add", lot=lot, source=source, amount=amount)


def test_a_lot_of_unknown_density_is_not_drawn_on_by_weight(keeper: Keeper) -> None:
    keeper.do("material", code="grenadine", kind="other")
    keeper.opens("receive", material="grenadine", amount="5L")
    line = FormulaLine(parse_quantity("100g"), material="grenadine")
    assert proposed(keeper, formula(keeper, "strong", line)) == [
        ("grenadine", "100 g", "none", "", "")
    ]


def test_spirit_is_drawn_on_by_weight_as_its_strength_tells_its_density(keeper: Keeper) -> None:
    """OIML R 22: 96 % vol is 807.4 kg/m³."""
    keeper.opens("receive", material="spirit", amount="5L")
    line = FormulaLine(parse_quantity("100g"), material="spirit")
    assert proposed(keeper, formula(keeper, "strong", line)) == [
        ("spirit", "100 g", "NS-001-J", "100 g", "")
    ]


@ON_EACH_ENGINE
def test_what_another_formula_makes_is_drawn_on_when_it_is_released_and_in_date(
    keeper: Keeper,
) -> None:
    keeper.opens("receive", material="spirit", amount="5L")
    formula(keeper, "essence", SPIRIT, keeping=(Keeping("cool and dark", 30),))
    followed = formula(keeper, "syrup", FormulaLine(parse_quantity("30mL"), formula="essence"))
    essence = keeper.opens("start", formula="essence", target="1L")
    keeper.do("add", lot=essence, source="NS-001-J", amount="500mL")
    assert [row[2] for row in proposed(keeper, followed)] == ["none"]
    keeper.do("finish", lot=essence, volume="500mL")
    keeper.do("look", lot=essence, grade="bright")
    batch = keeper.opens("start", formula=followed, target="1L")
    (line,) = propose(keeper.book, batch)
    assert (line.name, line.drawn, line.short) == ("Essence", (), 30_000)
    keeper.do("judge", lot=essence, verdict="release")
    assert proposed(keeper, followed) == [("essence", "30 mL", essence, "30 mL", "2026-04-01")]
    keeper.clock.forward(days=31)
    assert [row[2] for row in proposed(keeper, followed)] == ["none"]


def test_what_was_made_without_the_formula_is_drawn_on_by_its_name(keeper: Keeper) -> None:
    keeper.opens("receive", material="spirit", amount="5L")
    formula(keeper, "essence", SPIRIT)
    followed = formula(keeper, "syrup", FormulaLine(parse_quantity("30mL"), formula="essence"))
    name = versions(keeper.book, "essence")[0].product
    by_hand = keeper.opens("start", product=name.upper(), kind="essence", target="1L")
    keeper.do("add", lot=by_hand, source="NS-001-J", amount="500mL")
    keeper.do("finish", lot=by_hand, volume="500mL")
    keeper.do("look", lot=by_hand, grade="bright")
    keeper.do("judge", lot=by_hand, verdict="release")
    assert [row[2:4] for row in proposed(keeper, followed)] == [(by_hand, "30 mL")]
    batch = keeper.opens("start", formula=followed, target="1L")
    assert keeper.do("add", lot=batch, source=by_hand, amount="30mL").deviations == ()


def test_a_formula_that_is_struck_out_makes_nothing_by_its_name(keeper: Keeper) -> None:
    """One was loaded under a wrong code, struck out, and loaded again for the same product."""
    keeper.opens("receive", material="spirit", amount="5L")
    basis = parse_quantity("1L")
    for code in ("a-slip", "essence"):
        facts = Formula(code, 1, "Essence", ProductKind.BLEND, basis, lines=(SPIRIT,))
        done = keeper.record(facts)
        if code == "a-slip":
            keeper.do("strike", entry=str(done.seq), because="wrong code")
    followed = formula(keeper, "syrup", FormulaLine(parse_quantity("30mL"), formula="essence"))
    by_hand = keeper.opens("start", product="Essence", kind="essence", target="1L")
    keeper.do("add", lot=by_hand, source="NS-001-J", amount="500mL")
    keeper.do("finish", lot=by_hand, volume="500mL")
    keeper.do("look", lot=by_hand, grade="bright")
    keeper.do("judge", lot=by_hand, verdict="release")
    assert [row[2] for row in proposed(keeper, followed)] == [by_hand]
    syrup = keeper.opens("start", formula=followed, target="1L")
    assert keeper.do("add", lot=syrup, source=by_hand, amount="30mL").deviations == ()


def test_a_batch_without_a_formula_has_nothing_proposed(keeper: Keeper) -> None:
    sugar(keeper, "5kg")
    code = keeper.opens("start", product="Fudge", kind="blend", target="1L")
    assert propose(keeper.book, code) == ()


def test_a_proposal_records_nothing(keeper: Keeper) -> None:
    lot = sugar(keeper, "5kg")
    code = keeper.opens("start", formula=formula(keeper, "fudge", SUGAR), target="1L")
    before = keeper.bodies()
    propose(keeper.book, code)
    assert (keeper.bodies(), keeper.held(lot)) == (before, 5_000_000)


def still_lacking(keeper: Keeper, code: str) -> list[str]:
    """Return the commands that put in what is still lacking in a batch."""
    return commands(code, lacking(keeper.book, code))


def test_what_is_put_in_is_lacking_no_more(keeper: Keeper) -> None:
    sweet, strong = sugar(keeper, "5kg"), keeper.opens("receive", material="spirit", amount="5L")
    code = keeper.opens("start", formula=formula(keeper, "fudge", SUGAR, SPIRIT), target="1L")
    assert still_lacking(keeper, code) == [
        f"pottle add {code} {sweet} 1kg",
        f"pottle add {code} {strong} 500mL",
    ]
    keeper.do("add", lot=code, source=sweet, amount="1kg")
    assert still_lacking(keeper, code) == [f"pottle add {code} {strong} 500mL"]
    added = keeper.do("add", lot=code, source=strong, amount="500mL")
    assert still_lacking(keeper, code) == []
    keeper.do("strike", entry=str(added.seq), because="the wrong batch")
    assert still_lacking(keeper, code) == [f"pottle add {code} {strong} 500mL"]


@pytest.mark.parametrize(("put_in", "left"), [("960g", None), ("949g", "51g"), ("300.4g", "700g")])
@ON_EACH_ENGINE
def test_too_little_of_a_line_is_topped_up_within_its_limits(
    put_in: str, left: str | None, keeper: Keeper
) -> None:
    lot = sugar(keeper, "5kg")
    line = FormulaLine(parse_quantity("1kg"), material="sugar", tolerance_mpct=5000)
    code = keeper.opens("start", formula=formula(keeper, "fudge", line), target="1L")
    keeper.do("add", lot=code, source=lot, amount=put_in)
    assert still_lacking(keeper, code) == ([f"pottle add {code} {lot} {left}"] if left else [])


def test_a_line_given_by_weight_of_a_lot_counted_by_volume_is_in_by_its_density(
    keeper: Keeper,
) -> None:
    """100 mL at 0.845 g/mL weigh 84.5 g."""
    oil = keeper.opens("receive", material="orange-oil", amount="500mL")
    line = FormulaLine(parse_quantity("84.5g"), material="orange-oil", tolerance_mpct=1000)
    code = keeper.opens("start", formula=formula(keeper, "oily", line), target="1L")
    assert still_lacking(keeper, code) == [f"pottle add {code} {oil} 84.5g"]
    keeper.do("add", lot=code, source=oil, amount="84.5g")
    assert still_lacking(keeper, code) == []


def test_nothing_is_lacking_in_a_batch_without_a_formula(keeper: Keeper) -> None:
    code = keeper.opens("start", product="Fudge", kind="blend", target="1L")
    assert lacking(keeper.book, code) == ()


def test_of_a_line_without_a_tolerance_any_of_it_is_enough_and_its_least_is(
    keeper: Keeper,
) -> None:
    lot = sugar(keeper, "50kg")
    close = FormulaLine(parse_quantity("1kg"), material="sugar", tolerance_mpct=5000)
    formula(keeper, "fudge", SUGAR)
    formula(keeper, "toffee", close)

    def left(followed: str, put_in: str) -> list[str]:
        code = keeper.opens("start", formula=followed, target="1L")
        keeper.do("add", lot=code, source=lot, amount=put_in)
        return still_lacking(keeper, code)

    assert left("fudge", "0.001g") == left("toffee", "950g") == []
    assert len(left("toffee", "949.999g")) == 1


def test_what_to_draw_is_proposed_for_a_formula_before_a_batch_is_begun(keeper: Keeper) -> None:
    lot = sugar(keeper, "5kg")
    formula(keeper, "fudge", SUGAR)
    (known,) = versions(keeper.book, "fudge")
    found = propose_for(keeper.book, known, 2_000_000)
    assert [row[2:4] for row in rows(found)] == [(lot, "2 kg")]
