"""From nothing to a first label, and a half batch to its label: how many commands, how many keys.

Guarantees: both ways are played as a maker types them, the first one's questions at a terminal, and
their keys counted, a line's Enter with them. What they took before the bench: 71 commands and 3,535
keys; 32 commands and 1,128 keys.
"""

import io
from dataclasses import replace
from pathlib import Path

import pytest

from cli.screens.masters.init import Beginning, read_person
from cli.screens.masters.init import asked as asked_for
from tests.cli.shell import Shell
from tests.cli.terminal import Seat
from tests.golden import check_golden

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
