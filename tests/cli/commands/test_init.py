"""A new book: the clock of its house, and an hour that the clock showed twice."""

from pathlib import Path

import pytest
import tzlocal

from tests.cli.shell import Shell


@pytest.fixture
def empty(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    monkeypatch.chdir(tmp_path)
    return Shell(tmp_path / "pottle.db")


MADE = ("init", "--house", "Wren & Co", "--currency", "EUR")


def test_a_house_that_names_no_zone_has_that_of_the_machine_and_is_told_so(
    empty: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tzlocal, "get_localzone_name", lambda: "Europe/Dublin")
    assert empty.run(*MADE).lines[1] == (
        "Times without a zone are read on the clock of Europe/Dublin, which is this machine's; for "
        "another: pottle house --time-zone ZONE"
    )
    assert empty.run("house", "--json").json["time_zone"] == "Europe/Dublin"


def test_a_machine_without_a_zone_that_has_a_name_is_taken_for_utc(
    empty: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tzlocal, "get_localzone_name", lambda: "local")
    assert empty.run(*MADE, "--json").json["time_zone"] == "UTC"


def test_a_zone_that_is_named_is_taken_and_needs_no_telling(empty: Shell) -> None:
    lines = empty.run(*MADE, "--time-zone", "Europe/Dublin").lines
    assert not any("clock" in line for line in lines)


def test_an_hour_that_the_clock_showed_twice_is_shown_with_its_offset(empty: Shell) -> None:
    empty.run(*MADE, "--time-zone", "Europe/Dublin")
    empty.run("person", "add", "AB", "Ada Brook", "--by", "AB")
    # Summer time ended in Ireland on 26 October 2025 at 1:00 UTC.
    for at in ("2025-10-26 00:30", "2025-10-26 01:30", "2025-10-26T01:30+00:00"):
        empty.run("note", "-", "Read the cellar.", "--at", at, "--by", "AB")
    shown = [entry["happened"] for entry in empty.run("journal", "--json").json[-3:]]
    assert shown == ["2025-10-26 00:30", "2025-10-26 01:30+01:00", "2025-10-26 01:30+00:00"]
    lines = empty.run("journal").lines
    assert any("2025-10-26 01:30+00:00" in line for line in lines)
