"""Lists of codes for a spreadsheet."""

from reports.words.copies import code_list
from tests.said import check_said


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(code_list)
