"""A batch that is made by a formula is made by its next steps alone."""

from pathlib import Path

import pytest

from tests.cli.path import SET_UP
from tests.cli.shell import Shell, walk

FORMULAS = Path("sample_data/formulas").resolve()
LONG_AGO = 600
"""Hours ago at which the goods came."""
APART = 30
"""Hours from one act to the next, longer than any rest of these formulas has to be."""
FILLED = {
    "SIZE": "20",
    "GRADE": "bright",
    "DEGREES": "4",
}
"""What a maker might fill in for the capitals of a next step."""
GOODS = (
    'material add carbonate --name "Light magnesium carbonate" --kind clarifier',
    f"receive orange-oil 500mL --at -{LONG_AGO}h",
    f"receive carbonate 500g --at -{LONG_AGO}h",
    f"receive spirit 5L --at -{LONG_AGO}h",
    f"receive sugar 25kg --at -{LONG_AGO}h",
    f"receive water 100L --at -{LONG_AGO}h",
)


@pytest.fixture
def stocked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """A book with both sample formulas and all that they call for."""
    monkeypatch.chdir(tmp_path)
    shell = Shell(tmp_path / "pottle.db")
    load = [f"formula load '{FORMULAS / name}.toml'" for name in ("orange-essence", "orange-syrup")]
    for command, answer in walk(shell, (*SET_UP, *(("", line) for line in (*GOODS, *load)))):
        assert answer.exit_code == 0, (command, answer)
    return shell


def acts(shell: Shell, step: str, ago: int, volume: str) -> list[str]:
    """Begin a batch and do each next step until its making has ended; return them all."""
    told = list[str]()
    while not told or not told[-1].startswith("finish"):
        for capitals, words in {**FILLED, "VOLUME": volume}.items():
            step = step.replace(f" {capitals}", f" {words}")
        told.append(step)
        answer = shell.line(f"{step} --at -{ago - APART * len(told)}h --json")
        assert answer.exit_code == 0, (told, answer.err)
        step = answer.json["next"].removeprefix("pottle ")
    return told


def test_a_batch_is_made_by_the_next_steps_alone(stocked: Shell) -> None:
    assert acts(stocked, "start orange-essence 480mL", LONG_AGO, "440mL") == [
        "start orange-essence 480mL",
        "add OE-001-5 SOO-001-3 30mL",
        "add OE-001-5 LMC-001-F 20g",
        "add OE-001-5 NS-001-J 450mL",
        "rest OE-001-5 --for macerate",
        "rest OE-001-5 --end",
        "rest OE-001-5 --for chill",
        "rest OE-001-5 --end --temp 4",
        "filter OE-001-5 --medium paper --pore 20 --out 440mL --temp 4",
        "filter OE-001-5 --medium paper --pore 20 --out 440mL --temp 4",
        "look OE-001-5 bright --of neat",
        "finish OE-001-5 440mL",
    ]


def test_the_look_at_a_sample_of_some_age_comes_after_the_making(stocked: Shell) -> None:
    acts(stocked, "start orange-essence 480mL", LONG_AGO, "440mL")
    old = stocked.run("lot", "OE-001-5", "--json").json["next"]
    assert old == "pottle look OE-001-5 GRADE --of neat"
    stocked.line("finish OE-001-5 440mL")
    young = stocked.run("lot", "OE-001-5", "--json").json["next"]
    assert young == "pottle due"


def test_what_still_goes_in_comes_before_the_next_step(stocked: Shell) -> None:
    begun = stocked.line("start orange-syrup 4L --json").json["code"]
    stocked.line(f"add {begun} WTR-001-0 2.06L")
    told = stocked.line(f"add {begun} WS-001-R 3.09kg --json").json
    assert told["next"] == "pottle start orange-essence VOLUME"
    read = stocked.line(f"measure {begun} brix 60 --json").json
    assert read["next"] == told["next"]
