"""The tables of a formula's file: figures that no sum could use are told."""

from pathlib import Path

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.masters.formula_files import load

CHECK = "Check the number."


TOO_MUCH = f"""\
code = "orange-essence"
version = 0x{"f" * 5000}
product = "Orange essence"
kind = "essence"
basis = "480mL"
best-before-days = 36501

[[keeping]]
storage = "cool"
days = 36500
opened-days = 9999999999
"""


def test_figures_that_no_sum_could_use_are_told(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    """A date so many days away would be in no calendar, so no lot of it could be shown."""
    with pytest.raises(InputError) as raised:
        load(sqlite_keeper, tmp_path, TOO_MUCH)
    assert raised.value.problems == (
        ('orange.toml line 2: "version" is too long a number.', CHECK),
        ('orange.toml line 6: "best-before-days" is more than a hundred years.', CHECK),
        ('orange.toml line 11: "opened-days" is more than a hundred years.', CHECK),
    )
