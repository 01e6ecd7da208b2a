"""A dilution, for machines."""

from ledger.domain.amounts.quantity import parse_quantity
from ledger.science.liquids.dilution import dilute
from reports.json.glass.dilute import dilution_plain


def test_volumes_and_weights_are_text_and_a_temperature_only_where_one_was_asked() -> None:
    litre = parse_quantity("1L")
    told, warm = (dilution_plain(dilute(96.3, 80, litre, temp_c)) for temp_c in (None, 25))
    assert (told["stock_ml"], told["water_ml"], told["final_ml"]) == ("830.7", "189.9", "1000")
    assert (told["stock_abv"], told["target_us_proof"]) == ("96.3", "159.9")
    assert told["at_temperature"] is None
    assert warm["at_temperature"]["temp_c"] == "25"
    assert warm["stock_g"] == told["stock_g"]
