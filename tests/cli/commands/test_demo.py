"""The demonstration: one command makes a book, its papers and the trace of a cloudy bottle."""

import csv
import json
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from unittest.mock import Mock

import pytest

from cli.kit.call import Call
from cli.screens.copies import demo as looked_at
from cli.screens.copies import demo as screen
from cli.screens.copies.demo import season_folder
from ledger.errors import InputError
from ledger.service.causes.suspects import suspects
from ledger.service.copies import season
from ledger.service.desk.book import Book, open_book, wall_clock
from ledger.service.desk.clock import now_at_home
from tests.cli.asked import check_asked
from tests.cli.schemas import faults, verb_of
from tests.cli.shell import Answer, Shell
from tests.demonstration import demonstration
from tests.kept.golden import check_golden
from tests.kept.said import check_constants

LEAD = "A lead, not yet evidence: "
END = "2026-10-06"
"""The day on which the season's files end."""
KEYS = {
    *("ledger", "labels", "record", "code", "common_codes", "shown_codes", "trace", "verify"),
}


@dataclass(frozen=True, slots=True)
class Played:
    """A demonstration that was played, and what it said."""

    folder: Path
    answer: Answer

    @property
    def out(self) -> str:
        return self.answer.out


@pytest.fixture(scope="module")
def played(tmp_path_factory: pytest.TempPathFactory) -> Played:
    """It was played in its folder, on the last day of its files; places are told from there."""
    folder = tmp_path_factory.mktemp("demo")
    (said,) = demonstration(tmp_path_factory, folder).said
    return Played(folder, said.answer)


def test_it_makes_a_book_and_two_papers_and_says_where(played: Played) -> None:
    made = {path.name for path in played.folder.iterdir()}
    assert made >= {"pottle.db", "labels.pdf", "record.pdf"}
    for paper in ("labels.pdf", "record.pdf"):
        assert (played.folder / paper).read_bytes().startswith(b"%PDF-")
        assert f" at {paper}" in played.out
    assert (played.answer.exit_code, played.answer.err) == (0, "")
    assert "is an invented maker" in played.out


def test_it_tells_a_lead_then_the_trial_and_only_then_the_cause(played: Played) -> None:
    book = Shell(played.folder / "pottle.db")
    house = tomllib.loads((season_folder() / "house.toml").read_text(encoding="utf-8"))
    with (season_folder() / "receive.csv").open(encoding="utf-8", newline="") as file:
        bought = {row["as"]: row for row in csv.DictReader(file)}
    culprit = bought[house["story"]["culprit"]]
    told = next(line for line in played.out.splitlines() if line.startswith(LEAD))
    code = told.removeprefix(LEAD).split()[0]
    oil = book.run("lot", code, "--json").json
    assert (oil["material"], oil["name"]) == ("orange-oil", "Sweet orange oil")
    assert (
        "was in 2 of the 2 batches of essence that failed and in 0 of the 3 that stayed clear"
        in told
    )
    assert "Two batches of essence cannot decide this; a trial can." in told
    shown = f"Cause shown: orange-oil {code} Sweet orange oil, against"
    in_order = [
        LEAD,
        f'as the book proposed: pottle trial plan "Orange syrup" --try {code}',
        "looked at blind:",
        shown,
        f"Everyone who holds something made of {code}:",
    ]
    places = [played.out.index(words) for words in in_order]
    assert places == sorted(places)
    assert oil["status"] == "rejected"
    assert f"their lot {culprit['supplier_lot']}" in oil["journal"][0]["says"]


def test_its_book_verifies_and_goes_on(played: Played) -> None:
    book = Shell(played.folder / "pottle.db")
    found = book.run("verify", "--json").json
    assert (found["ok"], found["findings"]) == (True, [])
    assert f"{found['entries']} entries, verified" in played.out
    assert played.out.splitlines()[-1] == "Next: pottle --ledger pottle.db stock"


def test_a_second_run_leaves_the_first_as_it_is(played: Played) -> None:
    before = {path.name: path.read_bytes() for path in played.folder.glob("*.pdf")}
    again = Shell(played.folder / "pottle.db").run("demo", str(played.folder), "--today", END)
    assert (again.exit_code, again.out) == (5, "")
    assert again.complaints == [
        f"There is a file {played.folder / 'labels.pdf'} already; it was left as it is.",
        "  Give another folder: pottle demo FOLDER",
    ]
    assert {path.name: path.read_bytes() for path in played.folder.glob("*.pdf")} == before


def test_it_answers_as_json(
    played: Played, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The book that was played already is asked: playing it again takes half a minute."""
    cloudy = played.out.split("The trace of ")[1].split(",")[0]
    codes = {"p-orange-5": cloudy, "p-lemon-5": cloudy, "e-orange-3": "OE-005-Y"}

    def played_already(
        call: Call, told: season.Season, _where: Path
    ) -> tuple[Book, season.Played, screen.Lead]:
        book = call.at_end.enter_context(open_book(str(played.folder / "pottle.db")))
        # Without a day it is played as if its last entry were of this week.
        assert 0 <= (wall_clock().date() - told.rows[-1].typed.date()).days < 7
        lead = screen.Lead(now_at_home(book).date(), suspects(book, complaints=True))
        return book, season.Played(codes), lead

    monkeypatch.setattr(screen, "play_into", played_already)
    done = Shell(tmp_path / "none.db").run("demo", str(tmp_path / "made"), "--json")
    assert (done.exit_code, done.err) == (0, "")
    found = done.json
    assert set(found) == KEYS
    assert faults(found, ("demo",)) == []
    assert found["verify"]["ok"] is True
    assert found["trace"]["code"] == found["code"]
    assert found["common_codes"] == found["shown_codes"]
    assert set(found["shown_codes"]) <= {node["code"] for node in found["trace"]["nodes"]}


@pytest.mark.parametrize(("today", "ends"), [(END, END), ("2028-03-05", "2028-02-29")])
def test_it_ends_in_the_week_before_the_day_that_is_named(
    today: str, ends: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def played_until(_call: Call, told: season.Season, _where: Path) -> None:
        raise InputError(f"It ends on {told.rows[-1].typed.date()}.", "Look there.")

    monkeypatch.setattr(screen, "play_into", played_until)
    done = Shell(tmp_path / "none.db").run("demo", str(tmp_path / "made"), "--today", today)
    assert done.complaints == [f"It ends on {ends}.", "  Look there."]


ASKED: tuple[str, ...] = (
    *("house", "person list", "material list", "party list", "formula list", "limits", "due"),
    *("stock --all", "stock --value", "stock --by-date", "stock --low 1L", "stock --spirit"),
    *("journal --last 0", "seal", "verify", "suspects", "suspects --complaints --explain"),
    *("compare orange rest", "compare cloudy orange", "trial prove cloudy orange"),
    *("formula show orange-essence", "formula scale orange-syrup 5L"),
    *("lot {lot}", "trace {lot}", "recall {lot} --drill", "serving {lot} --explain"),
    *("cost {lot} --hour 20 --margin 60", "sheet {batch}"),
)
"""What is asked of the book of the demonstration."""


def test_every_answer_of_its_book_fits_its_schema(played: Played) -> None:
    """Of a lot everything is asked once for each kind of lot and status there is.

    Nobody pours bottles or sugar, so there is no card for some; that is told as an error.
    """
    book = Shell(played.folder / "pottle.db")
    lots = {
        (lot["lot_type"], lot["status"]): lot["code"]
        for lot in book.run("stock", "--all", "--json").json
    }
    batch = next(code for (sort, _), code in lots.items() if sort == "made")
    assert len(lots) > 6
    commands = dict.fromkeys(
        command.format(lot=code, batch=batch) for command in ASKED for code in lots.values()
    )
    answered = set()
    for command in commands:
        answer = book.line(f"{command} --json")
        if answer.exit_code:
            assert json.loads(answer.err)["code"] == "refused", command
        else:
            assert faults(answer.json, verb_of(command)) == [], command
            answered.add(verb_of(command))
    assert answered == {verb_of(command) for command in ASKED}


def test_suspects_leads_to_the_oil_lot_and_names_nothing_with_figures_that_add_up(
    played: Played,
) -> None:
    book = Shell(played.folder / "pottle.db")
    found = book.run("suspects", "--complaints", "--json").json
    oil = found["suspects"][0]["lot"]
    assert f"{LEAD}{oil} " in played.out
    assert (found["verdict"], found["named"]) == ("lead", [])
    assert found["trial"] == {"question": "Orange syrup", "factors": [oil]}
    assert found["tried_in"] == "cloudy orange"
    assert not any(item["is_named"] for item in found["suspects"])
    for item in found["suspects"]:
        assert item["failed_with"] + item["failed_without"] == len(found["failed_codes"])
        assert item["clear_with"] + item["clear_without"] == len(found["comparable_codes"])
    for lot in found["failed_codes"]:
        behind = {node["code"] for node in book.run("trace", lot, "--back", "--json").json["nodes"]}
        assert oil in behind
    for lot in found["comparable_codes"]:
        behind = {node["code"] for node in book.run("trace", lot, "--back", "--json").json["nodes"]}
        assert oil not in behind


def test_suspects_reads_as_the_kept_text(played: Played) -> None:
    answer = Shell(played.folder / "pottle.db").run("suspects", "--complaints", "--explain")
    assert (answer.exit_code, answer.err) == (0, "")
    check_golden("cli/suspects.txt", answer.out)


def test_its_trial_reads_as_the_kept_text(played: Played) -> None:
    answer = Shell(played.folder / "pottle.db").run("compare", "orange rest")
    assert (answer.exit_code, answer.err) == (0, "")
    check_golden("cli/compare.txt", answer.out)


def test_a_trial_answers_as_json_and_as_paper(played: Played, tmp_path: Path) -> None:
    book = Shell(played.folder / "pottle.db")
    found = book.run("compare", "orange", "rest", "--json").json
    assert [item["code"] for item in found["batches"] if item["is_front"]] == found["front_codes"]
    assert [(item["factor"], item["confounded_with"]) for item in found["factors"]] == [
        ("rest", [])
    ]
    assert [level["n"] for level in found["factors"][0]["levels"]] == [2, 2]
    paper = tmp_path / "trial.pdf"
    answer = book.run("compare", "orange rest", "--out", str(paper))
    assert answer.lines == [f"The comparison of orange rest is in {paper}."]
    assert paper.read_bytes().startswith(b"%PDF-")
    again = book.run("compare", "orange rest", "--out", str(paper))
    assert (again.exit_code, again.complaints) == (
        5,
        [
            f"There is a file {paper} already; it was left as it is.",
            "  Give another name with --out, or --force to write over it.",
        ],
    )


def test_an_installed_program_carries_its_season_inside(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(screen, "files", lambda _: tmp_path / "cli")
    beside, inside = (place / "sample_data" / "season" for place in (tmp_path, tmp_path / "cli"))
    assert screen.season_folder() == beside
    inside.mkdir(parents=True)
    assert screen.season_folder() == inside


def test_it_prints_as_it_goes_and_not_a_screen_at_a_time(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    demonstrate, paged = Mock(), Mock()
    monkeypatch.setattr("cli.screens.copies.demo.demonstrate", demonstrate)
    monkeypatch.setattr("cli.kit.pager.paged", paged)
    assert Shell(tmp_path / "none.db").run("demo", str(tmp_path / "made")).exit_code == 0
    assert (demonstrate.call_count, paged.call_count) == (1, 0)


def test_whoever_holds_what_is_made_of_the_same_is_told_lot_by_lot(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(screen, "traced", lambda _book, code, back: (code, back))
    monkeypatch.setattr(screen, "print_trace", lambda *told, **how: print(told, how))
    book: Any = None
    screen._show_sisters(book, ["A-1", "B-1"])
    assert capsys.readouterr().out.splitlines() == [
        line
        for code in ("A-1", "B-1")
        for line in (
            "",
            f"Everyone who holds something made of {code}:",
            f"(('{code}', False),) {{'back': False, 'forward': True}}",
        )
    ]


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("demo")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(looked_at)
