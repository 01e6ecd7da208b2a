"""Foretelling a lot, which is kept, and a formula, which is not; gaps are named."""

from pathlib import Path

import pytest

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Foretold, Formula, Look
from ledger.domain.entries.choices import LookedAt, ProductKind
from ledger.domain.entries.forecasts import Carried
from ledger.domain.entries.masters import FormulaLine
from ledger.errors import RefusedError
from ledger.service.account.state import lot_state
from ledger.service.desk.book import How
from ledger.service.glass.foretell import facts_of, foretell_formula, foretell_lot, record_lot
from ledger.service.glass.recipe import essence_by_formula, essence_in, recipe
from ledger.service.glass.scores import own_ratios, scores
from tests.keeper import Keeper
from tests.path import receive_all
from tests.service.wrong_words import check_wrong_words

FORMULA = """
code = "house-orange"
version = 1
product = "Orange essence"
kind = "essence"
basis = "480 mL"
prepared-by = "AB"

[[line]]
material = "orange-oil"
amount = "30 mL"

[[line]]
material = "spirit"
amount = "450 mL"
"""


def essence(keeper: Keeper, **oil: str) -> str:
    lots = receive_all(keeper)
    code = keeper.opens("start", product="Orange essence", kind="essence", target="480mL")
    keeper.do("add", lot=code, source=lots.oil, amount=oil.get("amount", "30mL"))
    keeper.do("add", lot=code, source=lots.spirit, amount="450mL")
    return code


def test_of_a_lot_what_is_foretold_is_kept_before_the_look(sqlite_keeper: Keeper) -> None:
    code = essence(sqlite_keeper)
    sqlite_keeper.clock.now = sqlite_keeper.clock.now.replace(hour=18)
    haze, number = record_lot(sqlite_keeper.book, How("AB"), code)
    entry = next(entry for entry in sqlite_keeper.entries() if entry.seq == number)
    assert entry.facts == facts_of(haze)
    assert isinstance(entry.facts, Foretold)
    assert (entry.draft.lot, entry.facts.oils, haze.carried) == (code, "orange", Carried.YES)
    assert haze.glass
    assert haze.glass.low > 3


def test_of_a_formula_the_same_is_foretold_and_nothing_kept(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    code = essence(sqlite_keeper)
    file = tmp_path / "orange.toml"
    file.write_text(FORMULA, encoding="utf-8")
    sqlite_keeper.do("formula", file=str(file))
    before = len(sqlite_keeper.entries())
    of_formula = foretell_formula(sqlite_keeper.book, "house-orange")
    of_lot = foretell_lot(sqlite_keeper.book, code, "AB")
    assert of_formula
    assert of_formula.clear_by == pytest.approx(of_lot.clear_by)
    assert of_formula.glass == pytest.approx(of_lot.glass)
    assert of_formula.soda_parts == 7
    assert foretell_formula(sqlite_keeper.book, "no-such") is None
    assert len(sqlite_keeper.entries()) == before


def test_a_formula_is_foretold_as_it_is_poured_unless_another_pour_is_asked(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    receive_all(sqlite_keeper)
    file = tmp_path / "orange.toml"
    file.write_text(FORMULA.replace("[[line]]", 'pour = "1:5"\n\n[[line]]', 1), encoding="utf-8")
    sqlite_keeper.do("formula", file=str(file))
    told = [foretell_formula(sqlite_keeper.book, "house-orange", pour) for pour in (None, "1:9")]
    assert [found and found.soda_parts for found in told] == [5, 9]


def test_what_is_not_known_is_named_and_the_rest_still_told(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    keeper = sqlite_keeper
    keeper.do("material", code="bay", name="Bay oil", kind="oil", density="0.95")
    bay = keeper.opens("receive", material="bay", amount="100mL")
    code = keeper.opens("start", product="Bay essence", kind="essence", target="100mL")
    keeper.do("add", lot=code, source=bay, amount="5mL")
    bare = foretell_lot(keeper.book, code, "AB")
    unknown = (
        "What Bay oil is made of is not recorded, and nothing published is kept of such an oil: it "
        "cannot be foretold.",
        'Record it: pottle material change bay --constituents "NAME SHARE%"',
    )
    lacking = ("There is no spirit in it.", "Add it first, or record its strength.")
    assert bare.gaps == (unknown, lacking)
    keeper.do("add", lot=code, source=lots.oil, amount="5mL")
    keeper.do("add", lot=code, source=lots.spirit, amount="80mL")
    half = foretell_lot(keeper.book, code, "AB")
    assert half.kinds == ("orange",)
    assert half.gaps == (unknown,)
    assert half.glass
    assert half.clear_by is None
    kept = facts_of(half)
    assert (kept.clear_low_mpct, kept.clear_likely_mpct, kept.clear_high_mpct) == (None,) * 3
    with pytest.raises(RefusedError) as raised:
        foretell_lot(keeper.book, bay, "AB")
    assert raised.value.problems == (
        (
            f"{bay} is a received lot, which nobody pours as it is.",
            "Name a lot that was made, or a formula.",
        ),
    )


def test_looks_are_held_against_the_forecast_before_them(sqlite_keeper: Keeper) -> None:
    keeper, code = sqlite_keeper, essence(sqlite_keeper)
    keeper.do("look", lot=code, grade="milky")
    keeper.do("foretell", lot=code)
    keeper.do("look", lot=code, grade="clear")
    keeper.do("look", lot=code, grade="milky")
    keeper.do("look", lot=code, grade="clear", ntu="2.9")
    found = scores(keeper.book)
    assert [(score.oils, score.inside, score.looks) for score in found] == [
        (None, 2, 3),
        ("orange", 2, 3),
    ]


def test_ten_readings_of_the_house_narrow_the_band(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    code = essence(keeper)
    keeper.do("foretell", lot=code)
    wide = foretell_lot(keeper.book, code, "AB")
    for ntu in range(20, 30):
        keeper.do("look", lot=code, grade="milky", of="as-poured", dilution="1:7", ntu=str(ntu))
    with keeper.reading() as connection:
        assert len(own_ratios(connection)) == 10
    told = foretell_lot(keeper.book, code, "AB")
    assert told.narrowed
    assert told.shown[2] == pytest.approx((20, 29), rel=1e-3)
    assert told.glass == wide.glass
    kept = facts_of(told)
    assert kept.band(LookedAt.AS_POURED) == pytest.approx((20, 29), rel=1e-3)
    assert kept.own_readings == 10
    assert sum(isinstance(entry.facts, Look) for entry in keeper.entries()) == 10


def test_what_a_formula_names_and_the_book_lacks_is_told_with_what_to_do(
    sqlite_keeper: Keeper,
) -> None:
    keeper = sqlite_keeper
    keeper.do("material", code="weak", name="Weak spirit", kind="ethanol")
    keeper.do("material", code="gum", name="Gum", kind="gum")
    litre = parse_quantity("1L")
    lines = (
        FormulaLine(parse_quantity("10mL"), material="weak"),
        FormulaLine(parse_quantity("10mL"), material="gum"),
        FormulaLine(parse_quantity("10mL"), material="neroli"),
        FormulaLine(parse_quantity("10mL"), formula="rose"),
    )
    made = Formula("mixed", 1, "Mixed", ProductKind.ESSENCE, litre, prepared_by="AB", lines=lines)
    with keeper.reading() as connection:
        found, gaps = recipe(connection, made)
    told = "is not in the book; what it brings is not known."
    assert gaps == (
        (
            f"The strength of Weak spirit {told}",
            "Record it: pottle material change weak --abv FIGURE",
        ),
        (f"The density of Gum {told}", "Record it: pottle material change gum --density FIGURE"),
        ("neroli is not in the book.", "Add the material."),
        (f"The formula rose {told}", "Load it: pottle formula load FILE"),
    )
    assert (found.ethanol_mg, found.water_mg, found.parts) == (0, 0, {})


def test_what_a_formula_calls_for_of_an_essence_is_told_by_the_newest_version_of_each(
    sqlite_keeper: Keeper,
) -> None:
    """Syrups and what is bought are none, nor is what goes in by weight."""
    litre = parse_quantity("1L")
    for code, version, kind in (
        ("lime", 1, ProductKind.SYRUP),
        ("lime", 2, ProductKind.ESSENCE),
        ("plain", 1, ProductKind.ESSENCE),
        ("plain", 2, ProductKind.BASE_SYRUP),
    ):
        sqlite_keeper.record(Formula(code, version, code.capitalize(), kind, litre))
    lines = (
        FormulaLine(parse_quantity("30mL"), formula="lime"),
        FormulaLine(parse_quantity("4mL"), formula="lime"),
        FormulaLine(parse_quantity("20g"), formula="lime"),
        FormulaLine(parse_quantity("500mL"), formula="plain"),
        FormulaLine(parse_quantity("7mL"), formula="none"),
        FormulaLine(parse_quantity("300mL"), material="spirit"),
    )
    drink = Formula("drink", 1, "Drink", ProductKind.SYRUP, litre, lines=lines)
    with sqlite_keeper.reading() as connection:
        assert essence_by_formula(connection, drink) == 34_000
        # A formula of nothing brings nothing.
        made, gaps = recipe(connection, drink)
    assert made.volume_ul == pytest.approx(300_000)
    assert made.abv == pytest.approx(96)
    assert gaps == (
        (
            "The formula none is not in the book; what it brings is not known.",
            "Load it: pottle formula load FILE",
        ),
    )


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "foretell")


def test_what_went_into_a_lot_of_an_essence_is_counted_and_of_a_syrup_or_what_was_bought_is_not(
    sqlite_keeper: Keeper,
) -> None:
    keeper = sqlite_keeper
    lots = receive_all(keeper)
    made = {}
    for kind in ("essence", "base-syrup", "blend"):
        made[kind] = keeper.opens("start", product=kind.title(), kind=kind, target="1L")
        keeper.do("add", lot=made[kind], source=lots.spirit, amount="500mL")
    syrup = keeper.opens("start", product="Syrup", kind="syrup", target="1L")
    for source, amount in (
        (made["essence"], "30mL"),
        (made["base-syrup"], "300mL"),
        (made["blend"], "7mL"),
        (lots.water, "200mL"),
        (made["essence"], "4mL"),
    ):
        keeper.do("add", lot=syrup, source=source, amount=amount, because="to see")
    with keeper.reading() as connection:
        assert essence_in(connection, lot_state(connection, syrup)) == 41_000
