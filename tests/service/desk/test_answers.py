"""What every room of the service answers of a book with all kinds of entries, on each engine."""

import pytest

from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.service.answers import ROOMS, told_in


@pytest.mark.parametrize("room", ROOMS)
def test_all_that_a_room_answers_is_kept_field_by_field(room: str, full: Keeper) -> None:
    """Renew with ``POTTLE_GOLDEN=write`` and read the difference."""
    told = told_in(room, full.book)
    check_golden(f"service/{room}.txt", "".join(f"{line}\n" for line in told))
