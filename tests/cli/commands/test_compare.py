"""`pottle compare`: what a trial of one batch and of two say."""

import pytest
from msgspec.structs import replace

from cli.screens.causes import compare
from reports.kit.frame import Frame
from reports.views.causes import (
    BatchRow,
    ComparisonView,
    FactorView,
    LevelRow,
    PlotRow,
    PlotView,
)
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.golden import check_golden

REFUSALS: dict[str, tuple[str, int, str, str]] = {
    "an unknown trial": (
        "compare rests",
        3,
        'There is no trial "rests" in the book. It has no trial yet.',
        'Begin a batch of one: pottle start ... --trial "rests" --factor rest=48h',
    ),
}


@pytest.mark.parametrize(("command", "code", "what", "todo"), REFUSALS.values(), ids=list(REFUSALS))
def test_what_cannot_be_asked_is_said_in_words(
    shell: Shell, command: str, code: int, what: str, todo: str
) -> None:
    answer = shell.line(command)
    assert (answer.exit_code, answer.out) == (code, "")
    assert answer.complaints == [what, f"  {todo}"]


def test_a_trial_of_one_batch_compares_with_nothing(shell: Shell) -> None:
    shell.line("start --product Jar --kind essence --target 90mL --trial rests --factor rest=24h")
    answer = shell.line("compare rests")
    assert (answer.exit_code, answer.complaints) == (
        3,
        [
            'The trial "rests" has one batch, and one batch compares with nothing.',
            '  Begin another of it: pottle start ... --trial "rests" --factor rest=48h',
        ],
    )


def test_two_batches_of_one_trial_are_compared(shell: Shell) -> None:
    for hours in (24, 48):
        shell.line(
            f"start --product Jar --kind essence --target 90mL --trial rests --factor rest={hours}h"
        )
    answer = shell.line("compare rests")
    assert (answer.exit_code, answer.err) == (0, "")
    assert answer.lines[0] == (
        "Trial rests: 2 batches, none of them a control. In all of them: no lot."
    )


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("compare")


ROWS = (
    LevelRow("24 h", "2", ("clear to hazy", "hazy"), "4.10", "91.2"),
    LevelRow("48 h", "12", ("bright", "–"), "0.85", "88.0"),
)
VIEW = ComparisonView(
    frame=Frame("Wren & Co", ()),
    group="rests",
    lines=("Trial rests: 2 batches.", "In all of them: SOO-001-3."),
    ages=("1 d", "30 d"),
    factors=(
        FactorView("rest", ROWS, "rest: the longer, the clearer."),
        FactorView("pore", (), "pore cannot be told from rest."),
    ),
    plots=(PlotView("Turbidity by rest", "0 NTU", "10 NTU", (PlotRow("24 h", (0.5,)),)),),
    batches=(
        BatchRow("OE-002-3", "rest 24 h", "hazy", "4.10", "91.2", is_front=False),
        BatchRow("OE-003-B", "rest 48 h", "bright", "0.85", "88.0", is_front=True),
    ),
    front="No other batch beats OE-003-B on clarity and loss together.",
    outcome=("By its plan: 48 h.",),
)


def printed(view: ComparisonView, capsys: pytest.CaptureFixture[str]) -> str:
    compare._print(view)
    return capsys.readouterr().out


def test_a_comparison_is_printed_with_a_table_of_each_factor_and_the_best_batch_as_next_step(
    capsys: pytest.CaptureFixture[str],
) -> None:
    check_golden("cli/compared.txt", printed(VIEW, capsys))


def test_without_a_plan_and_plots_only_batches_are_told_and_the_first_comes_next(
    capsys: pytest.CaptureFixture[str],
) -> None:
    beaten = tuple(replace(row, is_front=False) for row in VIEW.batches)
    view = replace(VIEW, factors=(), plots=(), outcome=(), batches=beaten)
    assert printed(view, capsys).splitlines() == [
        "Trial rests: 2 batches.",
        "In all of them: SOO-001-3.",
        "",
        "No other batch beats OE-003-B on clarity and loss together.",
        "",
        "batch     settings   last look   NTU  yield %",
        "OE-002-3  rest 24 h  hazy       4.10     91.2",
        "OE-003-B  rest 48 h  bright     0.85     88.0",
        "",
        "Next: pottle lot OE-002-3",
    ]


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("compare", still)
