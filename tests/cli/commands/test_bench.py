"""An evening's work in short lines: each is a command, and what is recorded stands."""

import os
import sqlite3
import subprocess
import sys
from contextlib import closing
from datetime import timedelta
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from cli.kit.call import Call
from cli.screens.bench import customs as module
from cli.screens.bench.customs import ENDED, lasts_for
from cli.screens.bench.evening import Evening
from cli.screens.bench.parts import Act
from cli.screens.bench.piped import play
from ledger.service.desk.book import open_book
from tests.cli.asked import check_asked
from tests.cli.schemas import faults
from tests.cli.shell import Answer, Shell
from tests.kept.golden import check_golden
from tests.kept.said import check_constants

START = 'start --product "Orange essence" --kind essence --target 240mL'
EVENING = (
    START,
    "oil 15",
    "carb 7.5",
    "spirit 225",
    "rest 48h",
    "filter 212 paper 20-25 40kPa",
    "filter 178 same",
    "hazy 9.4",
    "rinse 10 8",
    "makeup 240",
    "finish 238",
)
SAID = [
    "started OE-002-3: Orange essence (essence), target 240 mL.",
    "added OE-002-3: 15 mL of Sweet orange oil (expressed), SOO-001-3.",
    "added OE-002-3: 7.5 g of Light magnesium carbonate, LMC-001-F.",
    "added OE-002-3: 225 mL of Neutral spirit 96 %, NS-001-J.",
    "rest OE-002-3: to macerate, begun.",
    "rest OE-002-3: to macerate, ended after 0 min.",
    "filtered OE-002-3: pass 1 through paper, 20–25 µm, 240 mL in, 212 mL out, vacuum 40 kPa "
    "below atmosphere.",
    "filtered OE-002-3: pass 2 through paper, 20–25 µm, 212 mL in, 178 mL out, same cake, vacuum "
    "40 kPa below atmosphere.",
    "looked at OE-002-3: hazy, neat, 9.4 NTU.",
    "cake rinsed OE-002-3: with 10 mL of Neutral spirit 96 %, NS-001-J, 8 mL ran through, into "
    "the batch.",
    "made up OE-002-3: to 240 mL with 54 mL of Neutral spirit 96 %, NS-001-J.",
    "finished OE-002-3: 238 mL came out.",
]


def recorded(answer: Answer) -> list[str]:
    """Return what an answer says was recorded, without the numbers."""
    lines = (line for line in answer.lines if line.startswith("Recorded "))
    return [line.partition(", ")[2] for line in lines]


def test_ten_steps_of_an_essence_are_a_word_or_a_number_each(shell: Shell) -> None:
    answer = shell.bench(*EVENING)
    assert (answer.exit_code, answer.err) == (0, "")
    assert recorded(answer) == SAID
    assert f"Note: {ENDED}" in answer.lines
    assert "Note: Filtered as the pass before: paper, 20-25 µm, 40 kPa." in answer.lines
    assert (
        "Note: orange-oil was taken from SOO-001-3, best before 2099-06-30, the one lot on hand."
        in answer.lines
    )
    assert shell.run("verify").exit_code == 0


def test_a_line_records_what_its_command_does(shell: Shell, tmp_path: Path) -> None:
    shell.bench(START, "oil 15 19C", "hazy 9.4 ring")
    other = Shell(shell.book, codes=shell.codes)
    other.line(START)
    other.line("add OE-005-Y orange-oil 15mL --temp 19")
    other.line("look OE-005-Y hazy --ntu 9.4 --flag ring")
    assert bodies(shell.book, "OE-002-3") == bodies(shell.book, "OE-005-Y")


def bodies(book: Path, lot: str) -> list[str]:
    """Return the facts of a lot's entries, as they are kept."""
    query = (
        "SELECT json_extract(e.body, '$.facts') FROM entry e JOIN lot ON lot.id = e.lot "
        "WHERE lot.code = ? ORDER BY e.seq"
    )
    with closing(sqlite3.connect(book)) as connection:
        return [facts for (facts,) in connection.execute(query, (lot,))]


def test_it_stops_at_the_first_line_that_is_refused_and_says_what_stands(shell: Shell) -> None:
    before = shell.entries()
    answer = shell.bench(START, "spirit 100", "filter 9000", "cloudy")
    assert answer.exit_code == 3
    assert answer.complaints[-3:] == [
        "Line 3 was not done, and none after it was read: filter 9000",
        f"Recorded {before + 1} to {before + 2}.",
        "  pottle journal --last 2 shows them.",
    ]
    assert shell.entries() == before + 2


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("filtr 20", 2),
        ("spirit 500L", 4),
        ("release", 1),
        ("9", 2),
        ("stock --of", 2),
        ("bench", 2),
        ("ZZ-009-N", 3),
    ],
)
def test_it_ends_with_the_exit_code_of_the_line_and_says_why(
    shell: Shell, line: str, code: int
) -> None:
    answer = shell.bench(START, line)
    assert answer.exit_code == code
    check_golden(f"cli/ends/{line.split()[0]}.txt", answer.err)


def test_the_same_line_twice_is_asked_about(shell: Shell) -> None:
    lines = (START, "spirit 100", "decant 90 10", "decant 90 10")
    answer = shell.bench(*lines)
    assert answer.exit_code == 4
    assert answer.complaints[:2] == [
        f"The line before said the same, and it is entry {shell.entries()}.",
        "  If it was done twice, write again behind it; if not, leave it out.",
    ]
    assert shell.bench("cloudy", "clear", "cloudy", "cloudy again").exit_code == 0


def test_the_same_addition_is_asked_about_by_the_book_and_again_answers(shell: Shell) -> None:
    assert shell.bench(START, "oil 15", "oil 15").exit_code == 4
    answer = shell.bench("oil 15 again")
    assert answer.exit_code == 0
    assert shell.run("journal", "--last", "1").out.count("The same went in again.") == 1


def test_undo_strikes_the_last_act_and_then_the_one_before(shell: Shell) -> None:
    answer = shell.bench(START, "spirit 100", "cloudy", "undo", "undo")
    assert answer.exit_code == 0
    number = shell.entries()
    assert f"Recorded {number}: entry {number - 3} of OE-002-3 is struck out." in answer.lines
    assert shell.run("journal", "--last", "2").out.count("A slip at the bench.") == 2


def test_a_lot_that_is_named_waits_for_its_amount(shell: Shell) -> None:
    answer = shell.bench(START, "SOO-001-3", "15", "spirit", "100")
    assert recorded(answer)[1:] == [
        "added OE-002-3: 15 mL of Sweet orange oil (expressed), SOO-001-3.",
        "added OE-002-3: 100 mL of Neutral spirit 96 %, NS-001-J.",
    ]


def test_a_step_that_is_offered_is_done_by_its_number(shell: Shell) -> None:
    answer = shell.bench(START, "spirit 100", "1", "1", "1 90")
    assert recorded(answer)[2:] == [
        "rest OE-002-3: to macerate, begun.",
        "rest OE-002-3: to macerate, ended after 0 min.",
        "filtered OE-002-3: pass 1 through paper, 20 µm, 100 mL in, 90 mL out.",
    ]


def test_the_lot_in_hand_is_that_of_the_person_at_the_device(shell: Shell) -> None:
    shell.run("person", "add", "CD", "Cleo Dunn")
    shell.bench(START, "spirit 100")
    other = Shell(shell.book, by="CD", codes=shell.codes)
    assert other.bench("cloudy", on="essence").exit_code == 0
    assert recorded(shell.bench("hazy")) == ["looked at OE-002-3: hazy, neat."]
    assert recorded(other.bench("hazy")) == ["looked at OE-001-5: hazy, neat."]


def test_other_commands_are_done_as_they_are_typed(shell: Shell) -> None:
    answer = shell.bench(START, "stock --of spirit", "pottle trace . --forward")
    assert answer.exit_code == 0
    assert "lot       what            on hand  status    best before  look" in answer.lines


def test_for_machines_all_that_stands_is_one_answer(shell: Shell) -> None:
    told = "spirit 100\nfilter 9000\n"
    shell.bench(START)
    answer = shell.run("bench", "--json", given=told)
    assert answer.exit_code == 3
    assert [item["kind"] for item in answer.json] == ["add"]
    assert faults(answer.json, ("bench",)) == []
    assert answer.err.startswith("{")


def test_a_sheet_and_its_origin_hold_for_every_line(shell: Shell) -> None:
    answer = shell.run("bench", "OE-001-5", "--sheet", "17", given="cloudy\nhazy\n")
    assert answer.exit_code == 0
    assert shell.run("journal", "--last", "2").out.count("sheet 17") == 2


def test_without_a_book_it_says_so(tmp_path: Path) -> None:
    answer = Shell(tmp_path / "none.db").bench("oil 15")
    assert answer.exit_code == 5
    assert answer.complaints == [
        f"There is no book at {tmp_path / 'none.db'}.",
        '  Make one with: pottle init --house "NAME" --currency EUR',
    ]


def test_who_can_be_asked_whether_it_was_done_twice_is_asked(
    shell: Shell, capsys: pytest.CaptureFixture[str]
) -> None:
    asked: list[str] = []
    with open_book(str(shell.book)) as book:
        evening = Evening(Call(ledger=str(shell.book), by="AB"), book)
        evening.begin(shell.codes["essence"])

        def meant(question: str) -> bool:
            asked.append(question)
            return len(asked) < 2

        evening.is_same_meant = meant
        assert [evening.do("cloudy") for _ in range(3)] == [0, 0, 3]
        assert evening.prompt() == "OE-001-5 Orange essence, 418 mL > "
        assert Evening(Call(ledger=str(shell.book), by="AB"), book).prompt() == "no lot in hand > "
    told = f"The line before said the same, and it is entry {shell.entries()}."
    assert capsys.readouterr().err.splitlines() == [
        f"{told} It was not done twice, so nothing was recorded."
    ]
    number = shell.entries()
    assert asked == [
        f"The line before said the same, and it is entry {entry}. Was it done twice?"
        for entry in (number - 1, number)
    ]


def test_a_standard_input_that_is_closed_is_one_without_lines(shell: Shell) -> None:
    done = subprocess.run(
        ["sh", "-c", f'"{sys.executable}" -m cli.program bench OE-001-5 <&-'],
        cwd=Path(__file__).parents[3],
        env={"POTTLE_LEDGER": str(shell.book), "POTTLE_BY": "AB", "PATH": os.environ["PATH"]},
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")


def test_what_was_bought_needs_a_batch_in_hand_to_go_into(
    shell: Shell, capsys: pytest.CaptureFixture[str]
) -> None:
    with open_book(str(shell.book)) as book:
        assert Evening(Call(ledger=str(shell.book), by="AB"), book).do("NS-001-J") == 3
    assert capsys.readouterr().err.splitlines() == [
        "There is no batch in hand to put NS-001-J into.",
        "  Write the code of one, or: start FORMULA VOLUME",
    ]


@pytest.mark.parametrize(
    ("lasts", "minutes"),
    [("", None), ("48h", 2880), ("2 d", 2880), ("1 h 30 min", 90), ("0min", 0)],
)
def test_a_rest_lasts_as_long_as_its_line_says(lasts: str, minutes: int | None) -> None:
    told = lasts_for(Act(("rest", "A-1"), lasts=lasts))
    assert told == (None if minutes is None else timedelta(minutes=minutes))


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("bench")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


@pytest.mark.parametrize(
    ("lines", "recorded", "code", "done", "complaints"),
    [
        ((), [], 0, [], []),
        (("a\n", "done", "b"), [7], 0, ["a", "done"], []),
        (
            ("a", " 3 \n", "b"),
            [],
            3,
            ["a", " 3 "],
            [
                "Line 2 was not done, and none after it was read: 3",
                "Nothing was recorded.",
            ],
        ),
        (
            ("4",),
            [7],
            4,
            ["4"],
            [
                "Line 1 was not done, and none after it was read: 4",
                "Recorded 7.",
                "  pottle journal --entry 7 shows it.",
            ],
        ),
    ],
)
def test_lines_are_done_until_one_is_not_or_leaves(
    capsys: pytest.CaptureFixture[str],
    lines: tuple[str, ...],
    recorded: list[int],
    code: int,
    done: list[str],
    complaints: list[str],
) -> None:
    said: list[str] = []
    call, book = SimpleNamespace(json=False), SimpleNamespace(recorded=recorded)
    evening: Any = SimpleNamespace(call=call, book=book, is_over=False)

    def do(line: str) -> int:
        said.append(line)
        evening.is_over = line == "done"
        return int(line) if line.strip().isdigit() else 0

    evening.do = do
    assert play(evening, lines) == code
    assert said == done
    assert capsys.readouterr().err.splitlines() == complaints
