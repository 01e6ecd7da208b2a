"""A book that lies where several machines are kept alike is told of on standard error."""

import pytest

from cli.kit import place as module
from cli.kit.place import place_note, tell_place
from tests.kept.said import check_constants


def test_the_place_of_a_book_is_told_where_it_is_kept_alike_and_else_nothing_is(
    capsys: pytest.CaptureFixture[str],
) -> None:
    tell_place("/kitchen/Cloud Drive/pottle.db")
    told = capsys.readouterr()
    assert (told.out, " ".join(told.err.split())) == (
        "",
        "Note: The book lies in Cloud Drive, which by its name is kept alike on several machines: "
        "written on two at once, or taken up half way, it is damaged. Keep it elsewhere, and put "
        "copies there: pottle backup DIR",
    )
    tell_place("/kitchen/books/pottle.db")
    assert capsys.readouterr() == ("", "")


@pytest.mark.parametrize(
    ("folder", "is_told"),
    [
        *((name, True) for name in ("MyCloud", "Sync", "X-Drive (work)", "Invented box")),
        *((name, False) for name in ("boxes", "kitchen")),
    ],
)
def test_the_words_in_the_names_of_such_folders_are_known(folder: str, is_told: bool) -> None:
    assert bool(place_note(f"/kitchen/{folder}/2026/pottle.db")) is is_told


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
