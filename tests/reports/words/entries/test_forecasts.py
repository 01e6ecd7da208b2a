"""A forecast that was recorded, in words."""

from reports.words.entries import forecasts
from tests.kept.said import check_said


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(forecasts)
