"""`pottle chart` lists what there is, and shows, tells and prints one."""

from pathlib import Path

import pytest

from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.keeper import Keeper
from tests.path import receive_all
from tests.service.bench.makings import essence, oil_lots


@pytest.fixture
def jars(sqlite_keeper: Keeper) -> Shell:
    lots = receive_all(sqlite_keeper)
    for oil in oil_lots(sqlite_keeper, 2):
        essence(sqlite_keeper, lots, oil, "clear")
    return Shell(Path(sqlite_keeper.book.where))


def test_without_a_name_what_can_be_charted_is_listed(jars: Shell) -> None:
    assert jars.line("chart").lines == [
        "product         kind     batches",
        "Orange essence  essence        2",
        'Next: pottle chart "Orange essence"',
    ]
    assert jars.line("chart --json").json == [
        {"product": "Orange essence", "product_kind": "essence", "batches": 2}
    ]


def test_two_batches_are_told_to_be_too_few(jars: Shell, tmp_path: Path) -> None:
    assert jars.line("chart orange essence").lines == [
        "Orange essence: 2 batches made for sale.",
        "0 of 2 that were looked at or sent looked worse than wanted or came back; of such batches "
        "0 to 84 % do (exact, 95 %).",
        "",
        "Yield, % of the liquids put in",
        "2 of the 10 figures that limits take.",
        "",
        "Time until haze",
        "0 batches turned at a look after the making; the time until haze takes 5.",
        "",
        "Next: pottle chart essence",
    ]
    out = tmp_path / "chart.pdf"
    assert jars.line(f"chart essence --out {out}").lines == [
        f"The chart of Orange essence is in {out}."
    ]
    assert out.read_bytes().startswith(b"%PDF-")
    again = jars.line(f"chart essence --out {out}")
    assert (again.exit_code, again.complaints) == (
        5,
        [
            f"There is a file {out} already; it was left as it is.",
            "  Give another name with --out, or --force to write over it.",
        ],
    )


def test_a_paper_of_nothing_is_refused(jars: Shell, tmp_path: Path) -> None:
    answer = jars.line(f"chart --out {tmp_path / 'chart.pdf'}")
    assert (answer.exit_code, answer.complaints) == (
        2,
        ["Nothing is named to chart.", "  Name a product, or a kind such as essence or syrup."],
    )


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("chart")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("chart", still)
