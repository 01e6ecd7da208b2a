"""What acts of the service refuse is said in kept words, with what to do next."""

from pathlib import Path

from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.service.desk.refusals import refused


def test_what_acts_refuse_is_said_whole_with_what_to_do_next(
    sqlite_walked: Keeper, tmp_path: Path
) -> None:
    """Renew with ``POTTLE_GOLDEN=write`` and read the difference."""
    told = [line.replace(str(tmp_path), "") for line in refused(sqlite_walked, tmp_path)]
    check_golden("service/refused.txt", "\n".join(told) + "\n")
    assert not [line for line in told if line.startswith("  =")]
