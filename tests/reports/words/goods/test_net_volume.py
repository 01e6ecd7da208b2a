"""The net volume of a bottle, in both units where the house is in the United States."""

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import House
from reports.words.goods.net_volume import is_canadian, net_volume
from tests.domain.builders import make


def test_a_house_in_the_united_states_says_both_units_and_never_more_than_is_there() -> None:
    """21 CFR 101.7 (from memory): 250 mL are 8.45 US fluid ounces, told as 8.4."""
    house = make(House, country="US")
    assert net_volume(parse_quantity("250mL"), house) == "8.4 fl oz (250 mL)"
    assert net_volume(parse_quantity("30mL"), house) == "1 fl oz (30 mL)"
    assert net_volume(parse_quantity("250mL"), make(House, country="IE")) == "250 mL"


def test_a_house_in_canada_has_its_own_least_letters() -> None:
    assert [is_canadian(make(House, country=code)) for code in ("ca", "US", None)] == [
        True,
        False,
        False,
    ]
    assert not is_canadian(None)
