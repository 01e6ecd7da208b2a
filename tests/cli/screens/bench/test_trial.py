"""Six jars with two looks in nine lines, side by side."""

import re

from cli.screens.bench import trial as module
from cli.screens.bench.trial import table_of
from ledger.service.bench.grid import trial_jars
from ledger.service.desk.book import open_book
from tests.cli.shell import Shell
from tests.kept.golden import check_golden
from tests.kept.said import check_constants

SIX_JARS = (
    "factor rest 24h 24h 24h 48h 48h -",
    'jars 6 --product "Orange essence" --kind essence --target 50mL',
    "oil 3",
    "carb 1.5 1.5 1.5 1.4 1.5 -",
    "spirit 45",
    "rest",
    "filter 40 41 40 39 40 42 / paper 20",
    "clear clear hazy clear bright clear",
    "clear cloudy hazy hazy bright -",
)
MOST_LINES = 12


def trial(shell: Shell, *lines: str) -> tuple[int, list[str], list[str]]:
    """Hand rows to the jars of a trial."""
    given = "".join(f"{line}\n" for line in lines)
    answer = shell.run("bench", "--trial", "rests", given=given)
    return answer.exit_code, answer.lines, answer.complaints


def test_six_jars_with_two_looks_are_nine_lines(shell: Shell) -> None:
    assert len(SIX_JARS) <= MOST_LINES
    code, lines, _ = trial(shell, *SIX_JARS)
    assert code == 0
    # A slow machine takes a minute for what takes none.
    told = re.sub(r"after \d+ min", "after 0 min", "".join(f"{line}\n" for line in lines))
    check_golden("cli/trial_rows.txt", told)
    with open_book(str(shell.book)) as book:
        heads, rows = table_of(trial_jars(book, "Rests"))
    codes = ["OE-002-3", "OE-005-Y", "OE-006-W", "OE-007-U", "OE-008-S", "OE-010-3"]
    assert heads == ["jar", "1", "2", "3", "4", "5", "6"]
    assert rows == [
        ["lot", *codes],
        ["rest", "24h", "24h", "24h", "48h", "48h", ""],
        ["there", "40 mL", "41 mL", "40 mL", "39 mL", "40 mL", "42 mL"],
        ["look", "clear", "cloudy", "hazy", "hazy", "bright", "clear"],
    ]
    assert trial(shell, "jars 2 orange 50")[2][:2] == [
        'The trial "rests" has 6 jars already.',
        "  Write a row for them; another trial has another name.",
    ]
    assert shell.run("compare", "rests").exit_code == 0
    assert shell.run("verify").exit_code == 0


def test_it_stops_at_the_first_jar_that_is_refused(shell: Shell) -> None:
    before = shell.entries()
    code, _, complaints = trial(shell, *SIX_JARS[:3], "filter 2 9000 2 2 2 2")
    assert code == 3
    assert complaints == [
        "9000mL came through the filter, but OE-005-Y held less: the book says 3 mL.",
        "  Record what else went in first: pottle add ...",
        "9000mL of filtrate is more than the 3 mL that went onto the filter.",
        "  Read both volumes again; note a rinse apart: pottle rinse ...",
        "Line 4 was not done, and none after it was read: filter 2 9000 2 2 2 2",
        f"Recorded {before + 1} to {before + 13}.",
        "  pottle journal --last 13 shows them.",
    ]


def test_jars_that_are_not_begun_have_no_row(shell: Shell) -> None:
    code, _, complaints = trial(shell, "cloudy")
    assert (code, complaints[:2]) == (
        2,
        [
            'No jar of the trial "rests" is begun.',
            "  Begin them: jars 6 orange-essence 50",
        ],
    )


def test_the_jars_of_a_plan_are_begun_as_it_drew_them(shell: Shell) -> None:
    shell.line('trial plan rests --try chill=none/4C --product "Orange essence"')
    code, lines, _ = trial(shell, "start --from-plan rests", "oil 3", "help")
    assert code == 0
    assert sum(" added " in line for line in lines) > 3


def test_every_jar_of_a_row_answers_machines(shell: Shell) -> None:
    given = "\n".join((*SIX_JARS[:3], "", "# a remark"))
    answers = shell.run("bench", "--trial", "rests", "--json", given=given).json
    assert [answer["kind"] for answer in answers] == ["start"] * 6 + ["add"] * 6


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
