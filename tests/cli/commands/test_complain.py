"""A complaint at the prompt: asks nothing back, says what is still open and what comes next."""

import tracemalloc
from hashlib import sha256
from os import mkfifo
from pathlib import Path

import pytest

from cli.screens.goods import complain as module
from cli.screens.goods.complain import hash_of
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants

PACKED = "BOS-001-S"


def test_a_photo_is_kept_by_its_name_and_its_hash(shell: Shell, tmp_path: Path) -> None:
    (tmp_path / "haze.jpg").write_bytes(b"a picture")
    answer = shell.run("complain", PACKED, "cloudy", "--photo", "haze.jpg", "--json")
    assert answer.json["triage"]["still_open"] == ["opened", "stored", "mixed"]
    entry = str(answer.json["entry"])
    said = shell.run("journal", "--entry", entry).out
    assert sha256(b"a picture").hexdigest()[:12] in said
    assert "haze.jpg" in said


@pytest.mark.parametrize(
    ("photo", "what", "todo"),
    [
        ("none.jpg", "There is no photo none.jpg.", "Give the name of a file that is there"),
        ("shots", "The photo shots is a folder.", "Give the name of a file in it"),
        ("pipe", "The photo pipe is no file.", "Give the name of a photo's file"),
        (
            "loop.jpg",
            "The photo loop.jpg could not be read: Too many levels of symbolic links.",
            "Give the name of a file that you may read",
        ),
    ],
)
def test_a_photo_that_cannot_be_read_records_nothing(
    shell: Shell, tmp_path: Path, photo: str, what: str, todo: str
) -> None:
    (tmp_path / "shots").mkdir()
    mkfifo(tmp_path / "pipe")
    (tmp_path / "loop.jpg").symlink_to("loop.jpg")
    before = shell.entries()
    answer = shell.run("complain", PACKED, "cloudy", "--photo", photo)
    assert (answer.exit_code, shell.entries()) == (5, before)
    assert answer.complaints == [what, f"  {todo}, or leave --photo out; nothing was recorded."]


def test_the_answer_shows_the_last_look_and_the_next_step(shell: Shell) -> None:
    lines = shell.run("complain", PACKED, "ring", "--from", "Quay Bar", "--opened", "Monday").lines
    assert lines[2].startswith("Still to ask: where it was stored, how it was mixed, a photo. ")
    assert lines[3].startswith("Last look at what it was filled from, ")
    assert lines[3].endswith(": cloudy, neat. No bottle was kept back.")
    assert lines[4].startswith(f"1 other complaint of {PACKED}: ")
    assert lines[5] == "No other lot made of the same inputs is complained of."
    assert lines[-1] == f'Next: pottle hold {PACKED} --because "WHY"'


def test_json_says_what_it_points_to(shell: Shell) -> None:
    found = shell.run("complain", PACKED, "ring", "--json").json
    look = found["triage"]["look"]
    assert (look["grade"], look["of_the_lot"], look["since_complaint"]) == ("cloudy", False, True)
    assert [other["says"] for other in found["triage"]["others"]] == [
        "cloudy, from Bridge Street Stall, to be answered in 7 d"
    ]
    assert found["next"] == f'pottle hold {PACKED} --because "WHY"'


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("complain")


def test_a_photo_of_any_size_is_hashed_in_little_memory(tmp_path: Path) -> None:
    size = 32 * 2**20
    with (tmp_path / "large.jpg").open("wb") as file:
        file.truncate(size)
    tracemalloc.start()
    try:
        found = hash_of(tmp_path / "large.jpg")
        _, most = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert found == sha256(bytes(size)).hexdigest()
    assert most < 2 * 2**20


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("complain", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
