"""The page of a lot, in the letters that a browser is given."""

from reports.web.goods import page as module
from tests.kept.said import check_said


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
