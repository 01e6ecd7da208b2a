"""`pottle init`: a new book, or none."""

import io
from dataclasses import replace
from pathlib import Path

import pytest
import tzlocal

from cli.screens.masters import init as module
from cli.screens.masters.init import Beginning, read_person
from cli.screens.masters.init import asked as asked_for
from tests.cli.asked import check_asked
from tests.cli.cases import check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.cli.terminal import Seat
from tests.kept.golden import check_golden
from tests.kept.said import check_constants


def test_a_telephone_number_nobody_can_read_makes_no_book(shell: Shell) -> None:
    answer = shell.run(
        *("init", "--house", "A", "--currency", "EUR", "--ledger", "new.db", "--phone", "01\u202e5")
    )
    assert (answer.exit_code, answer.complaints) == (
        2,
        [
            "The telephone number holds the invisible character U+202E.",
            "  Type it again without it.",
        ],
    )
    assert not Path("new.db").exists()


def test_a_currency_that_is_none_makes_no_book(shell: Shell) -> None:
    problem = (
        '"money" is not a currency code.',
        "Write three letters, such as EUR.",
    )
    check_refused(("init --house A --currency money --ledger new.db", 2, problem), shell)


def test_a_new_book_has_its_house_as_the_first_entry(shell: Shell) -> None:
    told = ("--house", "Wren & Co", "--currency", "GBP", "--time-zone", "Europe/London")
    answer = shell.run("init", *told, "--ledger", "new.db")
    assert (answer.exit_code, answer.err) == (0, "")
    assert answer.lines[-1] == 'Next: pottle person add INITIALS "NAME"'
    assert shell.run("house", "--ledger", "new.db").lines == [
        "name: Wren & Co",
        "currency: GBP",
        "time zone: Europe/London",
        "fluid ounce: US",
    ]


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
    assert shown == [
        "2025-10-26T00:30:00+01:00",
        "2025-10-26T01:30:00+01:00",
        "2025-10-26T01:30:00+00:00",
    ]
    lines = empty.run("journal").lines
    assert any("2025-10-26 01:30+00:00" in line for line in lines)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("init")


ANSWERS = (
    ("Notreal Fountain Works", "Country, two letters such as IE:"),
    ("IE", "Money that costs are in, such as EUR:"),
    ("EUR", "Time zone [UTC]:"),
    ("Europe/Dublin", "Your initials and name, such as AB Ada Brook:"),
    ("AB Ada Brook", "Which of them: all, or numbers such as 1 9-12; Enter for none:"),
    ("1 9 10 14", "Starter formulas of these (orange-essence), to change later: y or n [y]:"),
)
DELIVERIES = (
    'pottle receive orange-oil 500mL --from "Pretend Orchard Oils" --cost 48',
    "pottle receive spirit 5L --cost 190",
    "pottle receive carbonate 500g --cost 9.50",
    "pottle receive bottle-30 100 --cost 31",
)
BATCH = (
    *("start orange-essence 240", "1", "1", "1", "rest", "filter 212 paper 20", "clear"),
    *("finish 208", "release", "bottle 6x30 --bottles bottle-30", "label --out l.pdf"),
)
"""The lines of a half batch at the bench, from its start to its label."""
MOST_COMMANDS, MOST_KEYS_OF_BATCH = 25, 200


def keys(lines: tuple[str, ...]) -> int:
    """Return how many keys lines take, with Enter."""
    return sum(len(line) + 1 for line in lines)


@pytest.fixture
def asked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """A book that was made by its questions."""
    monkeypatch.chdir(tmp_path)
    book = tmp_path / "pottle.db"
    with Seat(["init"], 100, POTTLE_LEDGER=str(book), TZ="UTC") as seat:
        assert seat.wait("Your house:") == [
            "A new book. Enter takes what stands in brackets; Ctrl-D ends, with no book made.",
            "Your house:",
        ]
        for answer, question in ANSWERS:
            seat.type(f"{answer}\r", question)
        assert seat.leave("\r") == 0
        shown = [line for line in seat.lines if not line.endswith("pottle.db.")]
        check_golden("cli/init_asked.txt", "".join(f"{line}\n" for line in shown))
        assert seat.lines[-3:] == [
            "Densities and cautions are the usual ones; the papers of a delivery say better.",
            "Formulas: orange-essence. See one: pottle formula show orange-essence",
            "Next: pottle receive",
        ]
    return Shell(book)


def test_from_nothing_to_the_first_label(asked: Shell) -> None:
    assert asked.entries() == 7
    for line in DELIVERIES:
        assert asked.line(line.removeprefix("pottle ")).exit_code == 0, line
    answer = asked.bench(*BATCH)
    assert (answer.exit_code, answer.err) == (0, "")
    assert Path("l.pdf").read_bytes().startswith(b"%PDF")
    assert asked.run("verify").exit_code == 0
    answers = tuple(answer for answer, _ in ANSWERS)
    first = ("pottle init", "export POTTLE_BY=AB", *DELIVERIES, "pottle bench")
    assert len(first) == 7 <= MOST_COMMANDS
    assert keys((*first, *answers, "", *BATCH, "done")) == 438
    assert keys(BATCH) == 131 <= MOST_KEYS_OF_BATCH


@pytest.mark.parametrize("told", ["AB Ada Brook", "ab Ada Brook", "Ada Brook"])
def test_initials_are_read_before_a_name_or_from_it(told: str) -> None:
    assert read_person(told) == ("AB", "Ada Brook")


@pytest.mark.parametrize(
    ("told", "initials", "name"),
    [
        ("ABCD Ada Brook", "ABCD", "Ada Brook"),
        ("ABCDE Brook", "AB", "ABCDE Brook"),
        ("Ann Bee Cleo Dunn Eel", "ABCD", "Ann Bee Cleo Dunn Eel"),
        ("ann bee", "ANN", "bee"),
    ],
)
def test_up_to_four_letters_are_initials_unless_they_are_written_as_a_name(
    told: str, initials: str, name: str
) -> None:
    assert read_person(told) == (initials, name)


BEGINNINGS = """\
init --house Notreal --currency EUR --time-zone UTC --ledger a.db
init --house Notreal --currency EUR --time-zone UTC --person "AB Ada Brook" --ledger b.db
init --house Notreal --currency EUR --time-zone UTC --person "Ada Brook" --shelf "1 9" --ledger c.db
init --house Notreal --currency EUR --time-zone UTC --person AB --ledger d.db
init --house Notreal --currency EUR --time-zone UTC --shelf 1 --ledger e.db
init --house Notreal --currency EUR --time-zone UTC --person "AB Ada Brook" --shelf all \
--with-formulas --ledger f.db
formula list --ledger f.db
init --house Notreal --currency EUR --time-zone UTC --person "AB Ada Brook" --shelf 1 \
--with-formulas --ledger g.db
formula list --ledger g.db
"""
"""New books with more and more in them; a shelf without a spirit has no formula."""


def test_what_a_new_book_begins_with_is_said_with_what_comes_next(empty: Shell) -> None:
    lines = BEGINNINGS.replace("\\\n", "").splitlines()
    answers = [(line, empty.line(line)) for line in lines]
    told = "".join(f"$ pottle {line}\n{answer.out}{answer.err}" for line, answer in answers)
    check_golden("cli/init_said.txt", told.replace(f"{Path.cwd()}/", ""))


def test_every_step_of_the_batch_is_three_keys_or_a_word_and_a_number() -> None:
    assert [line for line in BATCH if len(line.split()) > 4] == []


AGAIN = (
    *("", "Notreal Works", "Ireland", "IE", "", "money", "EUR", "Dublin", "Europe/Dublin"),
    *("", "AB", "AB Ada Brook", "gold", "1 9 10", "yes"),
)
"""Answers of which those that cannot be are asked for again."""


def test_what_cannot_be_is_asked_for_again(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO("".join(f"{line}\n" for line in AGAIN)))
    # Where nobody sits at a terminal, what is wrong is told apart from the questions.
    begun = asked_for(Beginning())
    told = capsys.readouterr()
    check_golden("cli/init_again.txt", f"{told.out}\n--\n{told.err}")
    assert begun == Beginning(
        house="Notreal Works",
        currency="EUR",
        zone="Europe/Dublin",
        is_zone_told=True,
        country="IE",
        person="AB Ada Brook",
        shelf="1 9 10",
        with_formulas=True,
    )


@pytest.mark.parametrize("answer", ["", "y", "n"])
def test_starter_formulas_are_made_unless_they_are_not_wanted(
    answer: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    told = Beginning(
        house="Notreal Works", currency="EUR", country="IE", person="AB Ada Brook", shelf="1 9"
    )
    monkeypatch.setattr("sys.stdin", io.StringIO(f"\n{answer}\n"))
    assert asked_for(told).with_formulas is (answer != "n")
    # What needs no spirit has no formula, and is not asked for.
    monkeypatch.setattr("sys.stdin", io.StringIO("\n"))
    assert asked_for(replace(told, shelf="1")).with_formulas is False


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("init", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
