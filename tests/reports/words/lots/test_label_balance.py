"""What became of labels, in words."""

from reports.words.lots import label_balance
from tests.kept.said import check_said


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(label_balance)
