"""What is said of what was recorded; `slips.py` beside holds a command's call to its verb."""

from cli.kit import record as looked_at
from tests.kept.said import check_constants


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(looked_at)
