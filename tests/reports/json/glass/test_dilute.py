"""A dilution, for machines."""

from ledger.domain.amounts.quantity import parse_quantity
from ledger.science.liquids.dilution import dilute
from reports.json.glass.dilute import dilute_answer
from tests.reports.json.kept import check


def test_volumes_and_weights_are_text_and_a_temperature_only_where_one_was_asked() -> None:
    litre = parse_quantity("1L")
    told, warm = (dilute_answer(dilute(96.3, 80, litre, temp_c)) for temp_c in (None, 25))
    assert (told.stock_ml, told.water_ml, told.final_ml) == ("830.7", "189.9", "1000")
    assert (told.stock_abv, told.target_us_proof) == ("96.3", "159.9")
    assert told.at_temperature is None
    assert warm.at_temperature is not None
    assert warm.at_temperature.temp_c == "25"
    assert warm.stock_g == told.stock_g


def test_every_figure_of_a_dilution_is_the_kept_one() -> None:
    asked = (
        (96.3, 80.0, "1L", None),
        (63.2174, 40.5, "1.2345kg", 27.50625),
        (60.0, 40.0, "1L", 5.125),
    )
    check(
        "dilute",
        *(
            dilute_answer(dilute(have, wanted, parse_quantity(amount), temp_c))
            for have, wanted, amount, temp_c in asked
        ),
    )
