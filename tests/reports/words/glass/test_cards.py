"""What a card of a glass or of its cost gathers for a paper."""

from reports.words.glass import cards as module
from tests.kept.said import check_said


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
