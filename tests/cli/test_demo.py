"""The demonstration: one command makes a book, its papers and the trace of a cloudy bottle."""

import csv
import json
import os
import subprocess
import sys
import tomllib
from dataclasses import dataclass
from pathlib import Path

import pytest

from cli.demonstrating import season_folder
from tests.cli.shell import Shell

ROOT = Path(__file__).parents[2]


@dataclass(frozen=True, slots=True)
class Played:
    """A demonstration that was played, and what it said."""

    folder: Path
    out: str
    err: str


def demo(folder: Path, *options: str) -> subprocess.CompletedProcess[str]:
    env = {name: value for name, value in os.environ.items() if not name.startswith("POTTLE")}
    return subprocess.run(
        [sys.executable, "-m", "cli.main", "demo", str(folder), *options],
        cwd=ROOT,
        env=env,
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.fixture(scope="module")
def played(tmp_path_factory: pytest.TempPathFactory) -> Played:
    folder = tmp_path_factory.mktemp("demo") / "made"
    done = demo(folder)
    assert done.returncode == 0, done.stderr
    return Played(folder, done.stdout, done.stderr)


def test_it_makes_a_book_and_two_papers_and_says_where(played: Played) -> None:
    made = {path.name for path in played.folder.iterdir()}
    assert made >= {"pottle.db", "labels.pdf", "record.pdf"}
    for paper in ("labels.pdf", "record.pdf"):
        assert (played.folder / paper).read_bytes().startswith(b"%PDF-")
        assert str(played.folder / paper) in played.out
    assert played.err == ""
    assert "is an invented maker" in played.out


def test_it_names_the_oil_lot_that_only_cloudy_bottles_share(played: Played) -> None:
    book = Shell(played.folder / "pottle.db")
    house = tomllib.loads((season_folder() / "house.toml").read_text(encoding="utf-8"))
    with (season_folder() / "receive.csv").open(encoding="utf-8", newline="") as file:
        bought = {row["as"]: row for row in csv.DictReader(file)}
    culprit = bought[house["story"]["culprit"]]
    only = next(line for line in played.out.splitlines() if line.startswith("Of these, "))
    code, _, name = only.removesuffix(".").rpartition(": ")[2].partition(" ")
    oil = book.run("lot", code, "--json").json
    assert (oil["material"], oil["name"]) == ("orange-oil", name)
    assert oil["status"] == "on hold"
    assert f"their lot {culprit['supplier_lot']}" in oil["entries"][0]["says"]


def test_its_book_verifies_and_goes_on(played: Played) -> None:
    book = Shell(played.folder / "pottle.db")
    found = book.run("verify", "--json").json
    assert (found["ok"], found["findings"]) == (True, [])
    assert f"{found['entries']} entries, verified" in played.out
    assert played.out.splitlines()[-1] == f"Next: pottle --ledger {book.book} stock"


def test_a_second_run_leaves_the_first_as_it_is(played: Played) -> None:
    before = {path.name: path.read_bytes() for path in played.folder.glob("*.pdf")}
    again = demo(played.folder)
    assert (again.returncode, again.stdout) == (5, "")
    assert again.stderr.splitlines() == [
        f"There is a file {played.folder / 'labels.pdf'} already; it was left as it is.",
        "  Give another folder: pottle demo FOLDER",
    ]
    assert {path.name: path.read_bytes() for path in played.folder.glob("*.pdf")} == before


def test_it_answers_as_json(tmp_path: Path) -> None:
    done = demo(tmp_path / "made", "--json")
    assert (done.returncode, done.stderr) == (0, "")
    found = json.loads(done.stdout)
    assert set(found) == {"ledger", "labels", "record", "cloudy", "common", "trace", "verify"}
    assert found["verify"]["ok"] is True
    assert found["trace"]["lot"] == found["cloudy"]
    assert set(found["common"]) <= {node["code"] for node in found["trace"]["nodes"]}
