"""`pottle dilute`: what it prints, what it tells machines, and how it refuses."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.cli.asked import check_asked
from tests.cli.shell import Answer, Shell
from tests.cli.shown import check_shown
from tests.kept.golden import check_golden


@pytest.fixture
def dilute(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """Return a shell in an empty folder, without a book."""
    monkeypatch.chdir(tmp_path)
    return Shell(tmp_path / "pottle.db")


def ended(answer: Answer) -> tuple[int, str, list[str]]:
    return answer.exit_code, answer.out, answer.complaints


@pytest.mark.parametrize(
    ("name", "command"),
    [
        ("dilute.txt", "dilute 96.3% 80% 1L"),
        ("dilute_warm.txt", 'dilute "190 proof" 70% "1 US gal" --temp 77F'),
        ("dilute_weak.txt", "dilute 30% 10% 500g"),
        ("dilute.json", "dilute 96.3% 80% 1L --temp 25C --json"),
    ],
)
def test_the_answer_reads_as_it_is_kept(dilute: Shell, name: str, command: str) -> None:
    answer = dilute.line(command)
    assert (answer.exit_code, answer.err) == (0, "")
    check_golden(f"cli/{name}", answer.out)


def test_it_says_the_temperature_the_contraction_and_the_caution(dilute: Shell) -> None:
    out = dilute.line("dilute 96.3% 80% 1L").out
    assert "Strengths and volumes are at 20 °C" in out
    assert "Volumes of spirit and water do not add: together these shrink by" in out
    assert "Caution: ethanol vapour catches fire" in out


def test_machines_get_amounts_as_text_that_add_up(dilute: Shell) -> None:
    told = dilute.line("dilute 96.3% 70% 1L --json").json
    stock, water, contraction, final = (
        round(1000 * float(told[key]))
        for key in ("stock_ml", "water_ml", "contraction_ml", "final_ml")
    )
    assert isinstance(told["stock_ml"], str)
    assert stock + water - contraction == final == 1_000_000
    assert told["at_temperature"] is None


def test_no_book_is_read_or_made(dilute: Shell, tmp_path: Path) -> None:
    assert dilute.line("dilute 96.3% 80% 1L").exit_code == 0
    assert list(tmp_path.iterdir()) == []


def test_nothing_heavy_is_loaded() -> None:
    program = (
        "import sys; sys.argv = ['pottle', 'dilute', '96.3', '80', '1L']\n"
        "from cli.main import app\n"
        "try: app()\n"
        "except SystemExit: pass\n"
        "print(sorted({'sqlalchemy', 'alembic', 'reportlab'} & sys.modules.keys()))"
    )
    done = subprocess.run(
        [sys.executable, "-c", program],
        capture_output=True,
        encoding="utf-8",
        check=True,
        env={"PYTHONPATH": str(Path(__file__).parents[3]), "PYTHONUTF8": "1"},
    )
    assert done.stdout.splitlines()[-1] == "[]"


WAYS = "  Write % vol at 20 °C, such as 96.3%; or % w/w, g/100 mL or proof (US)."


@pytest.mark.parametrize(
    ("command", "code", "complaints"),
    [
        (
            "dilute strong 80% 1L",
            2,
            ['"strong" is not a strength of the spirit.', WAYS],
        ),
        (
            "dilute 96% 80% lots",
            2,
            [
                '"lots" is not an amount, because it does not begin with a number.',
                "  Write a number and a unit, such as 30 mL.",
            ],
        ),
        (
            'dilute 96% 80% "1 gal"',
            2,
            [
                "1 gal could be US or imperial, and the imperial is a fifth larger.",
                "  Write US gal or imp gal.",
            ],
        ),
        (
            "dilute 96% 80% 1L --temp warm",
            2,
            [
                '"warm" is not a temperature.',
                "  Write it in °C or °F, such as 25C or 77F.",
            ],
        ),
        (
            "dilute 130% 80% 1L",
            3,
            [
                "A strength is from 0 to 100 % vol, and 130 % vol is outside.",
                "  Read the label or the instrument again.",
            ],
        ),
        (
            "dilute 40% 80% 1L",
            3,
            [
                "Water makes spirit weaker, so 40 % vol cannot be diluted to 80 % vol.",
                "  Give the spirit first and the strength you want second, or use a stronger "
                "spirit.",
            ],
        ),
        (
            "dilute 96% 80% 0mL",
            3,
            [
                "An amount must be more than zero, and 0mL is not.",
                "  Write how much there really was.",
            ],
        ),
        (
            "dilute 96% 80% 1L --temp 41",
            3,
            [
                "The table of ethanol and water (OIML R 22) runs from −20 to 40 °C, "
                "and 41 °C is outside.",
                "  Bring the liquid into that range, best to 20 °C, and read again.",
            ],
        ),
        (
            "dilute 150% weak 1L --temp -30",
            3,
            [
                "A strength is from 0 to 100 % vol, and 150 % vol is outside.",
                "  Read the label or the instrument again.",
                '"weak" is not a strength to dilute to.',
                WAYS,
                "The table of ethanol and water (OIML R 22) runs from −20 to 40 °C, "
                "and −30 °C is outside.",
                "  Bring the liquid into that range, best to 20 °C, and read again.",
            ],
        ),
    ],
    ids=[
        "no strength",
        "no amount",
        "which gallon",
        "no temperature",
        "impossible",
        "upwards",
        "nothing",
        "too warm",
        "all at once",
    ],
)
def test_bad_input_is_answered_in_sentences(
    dilute: Shell, command: str, code: int, complaints: list[str]
) -> None:
    assert ended(dilute.line(command)) == (code, "", complaints)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("dilute")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("dilute", still)
