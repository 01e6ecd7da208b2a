"""How a syrup is poured: so many parts of soda water to one."""

import pytest

from ledger.domain.amounts.pours import read_pour
from ledger.errors import InputError


@pytest.mark.parametrize(
    ("text", "parts"),
    [("7", 7), ("1:7", 7), (" 1: 9 ", 9), ("1:1000", 1000), ("", None), (None, None)],
)
def test_parts_are_read_with_or_without_the_one(text: str | None, parts: int | None) -> None:
    assert read_pour(text) == parts


@pytest.mark.parametrize("text", ["7:1", "1:0", "1:1001", "half", "1:7.5", "1:\u0667"])
def test_what_is_no_way_to_pour_is_refused(text: str) -> None:
    with pytest.raises(InputError) as raised:
        read_pour(text)
    assert raised.value.problems == (
        (f'"{text}" is not a way to pour.', "Write 1:7 for one part to seven of soda water."),
    )
