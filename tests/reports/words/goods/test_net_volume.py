"""The net volume of a bottle, in both units where the house is in the United States."""

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import House
from reports.words.goods import net_volume as module
from reports.words.goods.net_volume import (
    US_PANEL,
    figures_mm,
    is_canadian,
    net_volume,
    panel_sq_in,
)
from tests.domain.builders import make
from tests.kept.said import check_constants, check_said
from tests.science.published import rows


def test_a_house_in_the_united_states_says_both_units_and_never_more_than_is_there() -> None:
    """21 CFR 101.7 (from memory): 250 mL are 8.45 US fluid ounces, told as 8.4."""
    house = make(House, country="US")
    assert net_volume(parse_quantity("250mL"), house) == "8.4 fl oz (250 mL)"
    assert net_volume(parse_quantity("30mL"), house) == "1 fl oz (30 mL)"
    assert net_volume(parse_quantity("250mL"), make(House, country="IE")) == "250 mL"


def test_the_figures_grow_at_the_bounds_of_the_directive() -> None:
    """Directive 76/211/EEC, Annex I, 3.1 (label_law.csv): at 5, 20 and 100 cL, each still below."""
    found = [row for row in rows("label_law.csv") if row["quantity"] == "net quantity figures"]
    law = [float(row["value"]) for row in found]
    bounds = [figures_mm(ul) for ul in (1_000_001, 1_000_000, 200_001, 200_000, 50_001, 50_000)]
    assert law == [bounds[0], bounds[1], bounds[3], bounds[5]]
    assert bounds[2] == bounds[1]
    assert bounds[4] == bounds[3]


def test_the_panel_of_a_round_bottle_is_two_fifths_of_its_side() -> None:
    """21 CFR 101.1(b) (label_law.csv): a bottle of 50 mL with a side of 79.5 cm² has 4.9 in²."""
    (row,) = [row for row in rows("label_law.csv") if row["quantity"].endswith("panel, cylinder")]
    assert float(row["value"]) == 100 * US_PANEL
    assert round(panel_sq_in(50_000), 1) == round(0.4 * 79.5 / 2.54**2, 1)


def test_a_house_in_canada_has_its_own_least_letters() -> None:
    assert [is_canadian(make(House, country=code)) for code in ("ca", "US", None)] == [
        True,
        False,
        False,
    ]
    assert not is_canadian(None)


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
