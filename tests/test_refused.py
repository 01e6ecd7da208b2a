"""What readers and sums of the ledger refuse is said in kept words, with what to do next."""

from tests.kept.golden import check_golden
from tests.refused import refused


def test_what_is_refused_is_said_whole_with_what_to_do_next() -> None:
    """Renew with ``POTTLE_GOLDEN=write`` and read the difference."""
    told = list(refused())
    assert not [line for line in told if line.startswith("  =")]
    check_golden("refused.txt", "\n".join(told) + "\n")
