"""`pottle due`: what waits, when and what to do."""

from pathlib import Path

import pytest
from icalendar import Calendar

from tests.cli.asked import check_asked
from tests.cli.cases import Answers, check_answers
from tests.cli.formulas import write_formulas
from tests.cli.shell import Shell

ANSWERS: dict[str, Answers] = {
    "nothing is due": ("due", "Nothing is due.\nNext: pottle stock\n"),
}


def answered(shell: Shell) -> Shell:
    """A book whose one complaint is answered."""
    (waiting,) = shell.run("complaints", "--json").json
    shell.run("answer", str(waiting["entry"]), "explained", "--told", "today")
    return shell


@pytest.mark.parametrize("answers", ANSWERS.values(), ids=list(ANSWERS))
def test_a_command_answers(answers: Answers, shell: Shell) -> None:
    check_answers(answers, answered(shell))


def test_what_is_due_says_when_and_what_to_do(shell: Shell) -> None:
    write_formulas()
    answered(shell)
    shell.run("formula", "load", "second.toml")
    shell.run("start", "orange", "480mL", "--at", "-4h")
    shell.run("rest", "OE-002-3", "--for", "macerate", "--at", "-3h")
    shell.run("hold", "SOO-001-3", "--because", "smells of pine")
    rest, held = shell.run("due", "--json").json
    assert (rest["waits"], rest["code"]) == ("rest", "OE-002-3")
    assert rest["minutes"] in range(44 * 60, 45 * 60 + 1)
    assert held == {
        "waits": "hold",
        "code": "SOO-001-3",
        "name": "Sweet orange oil",
        "says": "on hold: smells of pine",
        "due": None,
        "minutes": None,
        "next": "pottle lot SOO-001-3",
    }
    heads, first, last, step = shell.run("due").lines
    assert heads.split() == ["due", "when", "lot", "what", "to", "do"]
    assert first.startswith("in 1 d 2")
    assert "OE-002-3   Orange essence    rest to macerate, 3 h" in first
    assert last.split(maxsplit=2) == [
        "–",
        "SOO-001-3",
        "Sweet orange oil  on hold: smells of pine",
    ]
    assert step == "Next: pottle rest OE-002-3 --end"


def test_what_is_due_is_written_for_a_calendar(shell: Shell) -> None:
    shell.run("start", "--product", "Peel", "--kind", "macerate", "--target", "1L")
    said = shell.run("due", "--ics", "due.ics")
    text = Path("due.ics").read_bytes().decode()
    assert said.lines == [
        "1 event in due.ics: hand it to your calendar; written again, it renews them."
    ]
    (complaint,) = Calendar.from_ical(text).walk("VEVENT")
    assert str(complaint["SUMMARY"]).startswith("BOS-001-S, Orange syrup, 250 mL: answer")
    again = shell.run("due", "--ics", "due.ics")
    assert (again.exit_code, again.complaints[1]) == (
        5,
        "  Give another name with --ics, or --force to write over it.",
    )


def test_what_is_long_past_is_one_line_until_all_is_asked_for(shell: Shell) -> None:
    answered(shell)
    shell.line("receive cap 10 --best-before 2024-01-31")
    shell.line("receive cap 10 --best-before 2024-02-29")
    assert shell.run("due").lines == [
        "Nothing else is due.",
        "Long past, 30 days or more: 2 dates; pottle due --all lists them.",
        'Next: pottle reject CAP-002-9 --because "past its date"',
    ]
    everything = shell.run("due", "--all").lines
    assert sum("past its date: reject it" in line for line in everything) == 2
    assert len(shell.run("due", "--json").json) == 2


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("due")
