"""`pottle syrup`: how strong a simple syrup is, whether it stays clear, and how it refuses."""

from pathlib import Path

import pytest

from reports.words.glass.syrup import BASIS
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


@pytest.fixture
def shell(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """Return a shell in an empty folder, without a book."""
    monkeypatch.chdir(tmp_path)
    return Shell(tmp_path / "pottle.db")


@pytest.mark.parametrize(
    ("command", "told"),
    [
        (
            "syrup 2:1 --by weight --kept-at 4C",
            [
                "2 parts of sugar to 1 of water by weight make syrup of 66.67 °Bx.",
                "1 kg of water makes 2.261 L of it.",
                "At 20 °C a litre holds 884.5 g of sugar and weighs 1326.8 g; its specific gravity "
                "is 1.3291 (20/20 °C).",
                "A syrup of 66.7 °Bx will throw crystals at 4 °C, where water holds about "
                "64.8 °Bx.",
                BASIS,
            ],
        ),
        (
            "syrup 1:1 --by volume --bulk 0.8",
            [
                "1 part of sugar to 1 of water by volume make syrup of 44.49 °Bx.",
                "1 kg of water makes 1.501 L of it.",
                "At 20 °C a litre holds 533.8 g of sugar and weighs 1199.9 g; its specific gravity "
                "is 1.2021 (20/20 °C).",
                "The loose sugar is taken to weigh 0.8 g/mL; kinds range from 0.7 to 0.9. Weigh a "
                "filled measure and say it with --bulk.",
                BASIS,
            ],
        ),
        (
            "syrup 65Bx --read-at 20C",
            [
                "Read with a glass hydrometer at 20 °C, it is 65 °Bx.",
                "At 20 °C a litre holds 855.8 g of sugar and weighs 1316.6 g; its specific gravity "
                "is 1.3189 (20/20 °C).",
                BASIS,
            ],
        ),
    ],
    ids=["by weight, kept cold", "by volume", "a reading"],
)
def test_a_syrup_is_told_in_every_measure(shell: Shell, command: str, told: list[str]) -> None:
    answer = shell.line(command)
    assert (answer.exit_code, answer.err) == (0, "")
    assert answer.out.splitlines() == told


@pytest.mark.parametrize(
    ("asked", "least", "most"),
    [
        ('"850 g/L"', 1.30, 1.33),
        ("2:1 --by weight", 1.325, 1.335),
    ],
    ids=["Syrup NF", "Cooley"],
)
def test_syrups_of_the_books_have_their_specific_gravity(
    shell: Shell, asked: str, least: float, most: float
) -> None:
    """Syrup NF: 850 g in 1000 mL, specific gravity not less than 1.30 (in air, 25/25 °C).

    Cooley: 6 of sugar and water to weigh 9, specific gravity 1.33. Both as in
    tests/reference/syrups.csv.
    """
    told = shell.line(f"syrup {asked} --json").json
    assert least <= float(told["specific_gravity"]) < most


def test_measures_lead_back_to_each_other(shell: Shell) -> None:
    told = shell.line("syrup 3:2 --by weight --json").json
    for asked in (f"{told['sugar_g_per_l']} g/L", f"{told['specific_gravity']} SG"):
        back = shell.line(f"syrup '{asked}' --json").json
        assert float(back["brix"]) == pytest.approx(60, abs=0.02)
        assert back["basis"] is None


def test_a_warm_reading_is_raised_and_a_cold_one_lowered(shell: Shell) -> None:
    warm, cold = (
        float(shell.line(f"syrup 65Bx --read-at {temp} --json").json["brix"])
        for temp in ("30C", "50F")
    )
    assert cold < 65 < warm


def test_no_book_is_read_or_made(shell: Shell, tmp_path: Path) -> None:
    assert shell.line("syrup 65Bx").exit_code == 0
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("command", "code", "complaints"),
    [
        (
            "syrup 1:1",
            2,
            [
                "Parts are by weight or by volume, and neither was said.",
                "  Write --by weight or --by volume: 1:1 is 50 °Bx by weight, about 46 by volume.",
            ],
        ),
        (
            "syrup 1:1 --by eye",
            2,
            [
                'Parts are by weight or by volume, and "eye" was said.',
                "  Write --by weight or --by volume: 1:1 is 50 °Bx by weight, about 46 by volume.",
            ],
        ),
        (
            "syrup 65 --by weight --bulk heavy --kept-at cold",
            2,
            [
                '"cold" is not a temperature.',
                "  Write it in °C or °F, such as 25C or 77F.",
                "Only parts are by weight or by volume.",
                "  Leave --by away.",
                "A bulk density counts for parts by volume only.",
                "  Leave --bulk away, or write --by volume.",
                '"65" is neither parts nor a strength of syrup.',
                '  Write parts of sugar to water, 3:2; or 65 Bx, "850 g/L" or "1.33 SG".',
            ],
        ),
        (
            "syrup 1:1 --by volume --bulk heavy --read-at 20C",
            2,
            [
                '"heavy" is not a bulk density.',
                "  Write it in g/mL, such as 0.85.",
                "Parts are not read with a hydrometer.",
                "  Leave --read-at away.",
            ],
        ),
        (
            'syrup "850 g/L" --read-at 25C',
            2,
            [
                "Only a reading in °Bx is corrected for its temperature.",
                "  Leave --read-at away, or write the reading as 65 Bx.",
            ],
        ),
        (
            "syrup 0:1 --by weight",
            3,
            [
                "The parts of sugar must be a number above zero, and 0 is not.",
                "  Say how many parts of each, such as 3 of sugar to 2 of water.",
            ],
        ),
        (
            "syrup 1:1 --by volume --bulk 0",
            3,
            [
                "Loose sugar weighs from 0.7 to 0.9 g/mL, and 0 g/mL is outside.",
                "  Weigh a filled measure and divide the g by its mL.",
            ],
        ),
        (
            "syrup 90Bx",
            3,
            [
                "The table of sugar and water (ICUMSA SPS-4) is used from 0 to 75 °Bx, and 90 °Bx "
                "is outside.",
                "  Check the number; °Brix is g of sugar in 100 g of syrup.",
            ],
        ),
    ],
)
def test_bad_input_is_answered_in_sentences(
    shell: Shell, command: str, code: int, complaints: list[str]
) -> None:
    answer = shell.line(command)
    assert (answer.exit_code, answer.out, answer.complaints) == (code, "", complaints)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("syrup")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("syrup", still)
