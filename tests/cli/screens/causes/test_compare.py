"""A trial compared, on the screen: its lines, its factors' tables, its plots, the best batch."""

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
from tests.golden import check_golden

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
