"""The glass that a lot is poured into, as it is asked for or as is usual."""

import pytest
from msgspec.structs import replace

from ledger.domain.entries import House, Start
from ledger.errors import InputError
from ledger.service.glass.sizes import GLASS_UL, SODA_PARTS, ounce_of, read_glass, soda_parts
from tests.domain.builders import make


def test_what_is_told_of_the_soda_comes_before_the_batch_and_that_before_the_usual() -> None:
    batch = replace(make(Start), pour_parts=5)
    assert [soda_parts(9, batch), soda_parts(None, batch)] == [9, 5]
    assert soda_parts(None, make(Start)) == soda_parts(None, None) == SODA_PARTS


def test_a_glass_is_a_volume_in_any_unit() -> None:
    assert read_glass("12 US fl oz") == 354_882
    assert read_glass(None) == read_glass("") == GLASS_UL


def test_a_weight_is_the_size_of_no_glass() -> None:
    with pytest.raises(InputError) as raised:
        read_glass("240g")
    assert raised.value.problems == (
        ('"240g" is not the size of a glass.', "Write a volume, such as 240mL."),
    )


def test_an_ounce_is_that_of_the_house_and_of_the_united_states_before_there_is_one() -> None:
    assert [
        ounce_of(None),
        ounce_of(make(House)),
        ounce_of(make(House, fluid_ounce="imperial")),
    ] == [
        *("US", "US", "imperial"),
    ]
    assert [read_glass("12 fl oz", ounce) for ounce in ("US", "imperial")] == [354_882, 340_957]
    assert read_glass("12 fl oz") == 354_882
