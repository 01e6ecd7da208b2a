"""A bad week, told by commands alone: nothing untrue is left in the book or on its papers.

The wrong bottle of spirit, a release against advice, a sale at a stall, a complaint, a printer that
fails, a strike of an addition a month old, a customer whose name no font here can draw, a recall.
Everybody and everything is invented.
"""

from pathlib import Path

import pytest

from tests.cli.shell import Answer, Shell
from tests.reports.pdf.readback import text_of

SET_UP = (
    'init --house "Notreal Fountain Works" --currency EUR --time-zone UTC',
    'person add AB "Ada Brook" --at 2026-02-01',
    'person add CD "Cleo Dunn" --at 2026-02-01',
    'material add orange-oil --name "Sweet orange oil" --kind oil --density 0.845 '
    "--allergens none --at 2026-02-01",
    'material add strong --name "Grain spirit" --kind ethanol --abv 96 '
    "--allergens none --at 2026-02-01",
    'material add weak --name "Weak spirit" --kind ethanol --abv 75.5 '
    "--allergens none --at 2026-02-01",
    'receive orange-oil 500mL --from "Orchard" --their-lot C1 --at 2026-02-01 --code OIL-1',
    'receive strong 5L --from "Spirits" --their-lot S1 --at 2026-02-01 --code STRONG-1',
    'receive weak 5L --from "Spirits" --their-lot W1 --at 2026-02-01 --code WEAK-1',
    'party add 王小明 --phone "555 0100" --at 2026-02-01',
)
MAKING = (
    'start --product "Orange essence" --kind essence --target 480mL --code ESSENCE '
    '--at "2026-02-02 09:00"',
    'add ESSENCE OIL-1 30mL --at "2026-02-02 09:05"',
    'add ESSENCE STRONG-1 450mL --at "2026-02-02 09:10"',
    'rest ESSENCE --for macerate --started "2026-02-02 09:20" --until "2026-02-04 09:20" '
    '--at "2026-02-04 09:20"',
    "filter ESSENCE --medium paper --pore 20 --out 460mL --first-runnings 20mL "
    '--at "2026-02-04 10:00"',
    'look ESSENCE clear --of neat --at "2026-02-04 11:00"',
    'finish ESSENCE 455mL --at "2026-02-04 12:00"',
    'release ESSENCE --by CD --at "2026-02-04 13:00"',
    'bottle ESSENCE 8 x 50mL --code BOTTLES --at "2026-02-05 09:00"',
    'label BOTTLES --out labels.pdf --at "2026-02-05 10:00"',
    'release BOTTLES --by CD --at "2026-02-05 11:00"',
)
WRONG_BOTTLE = 'add ESSENCE WEAK-1 20mL --as top-up --at "2026-02-06 09:00"'
"""The first entry after those."""


@pytest.fixture
def week(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    monkeypatch.chdir(tmp_path)
    shell = Shell(tmp_path / "pottle.db")
    for command in (*SET_UP, *MAKING):
        done(shell, command)
    return shell


def done(shell: Shell, command: str) -> Answer:
    """Return the answer of a command that records."""
    answer = shell.line(command)
    assert answer.exit_code == 0, (command, answer)
    return answer


def refused(shell: Shell, command: str, code: int) -> list[str]:
    """Return what a command says that records nothing."""
    before = shell.entries()
    answer = shell.line(command)
    assert (answer.exit_code, shell.entries()) == (code, before), (command, answer)
    return answer.complaints


def words(shell: Shell, command: str, paper: str) -> str:
    """Return the words of a paper, each white space as one blank."""
    done(shell, f"{command} --out {paper}")
    return " ".join(text_of(Path(paper).read_bytes()).split())


def test_a_bad_week_leaves_nothing_untrue_and_nothing_out(week: Shell) -> None:
    wrong = week.entries() + 1
    opened = done(week, WRONG_BOTTLE)
    assert "ESSENCE, Orange essence: about 74.8 mL, reckoned, being made." in opened.lines
    assert "it is released no longer" in opened.out

    done(week, 'send BOTTLES 3 --to market --at "2026-02-07 10:00"')
    done(week, 'send BOTTLES 2 --to 王小明 --at "2026-02-09 10:00"')
    done(week, 'complain BOTTLES cloudy --from 王小明 --at "2026-03-02 09:00"')
    complaint = week.entries()
    done(week, 'hold BOTTLES --because "a customer found it cloudy" --at "2026-03-02 09:30"')

    labels = 'label BOTTLES --out no-such-folder/held.pdf --because "for the shelf"'
    assert refused(week, labels, 5)[0] == "There is no folder no-such-folder."
    assert refused(week, "label BOTTLES --out held.pdf", 4)[0] == "BOTTLES is on hold."
    assert not Path("held.pdf").exists()
    held = words(week, 'label BOTTLES --because "for the shelf" --count 1', "held.pdf")
    assert "HOLD" in held

    against = 'release BOTTLES --because "the fridge was too cold" --at "2026-03-03 09:00"'
    unseen = "BOTTLES has not been looked at since it was put on hold."
    assert refused(week, against, 1)[0] == unseen
    released = done(week, f"{against} --anyway")
    assert [line.partition(": ")[2] for line in released.lines if "Deviation" in line] == [unseen]
    assert "BOTTLES is self-released" in released.out

    struck = f'strike {wrong} --because "poured away, not into it" --at "2026-03-06 09:00"'
    answer = done(week, struck)
    strike = week.entries()
    assert answer.lines[0] == f"Recorded {strike}: entry {wrong} of ESSENCE is struck out."
    assert "ESSENCE, Orange essence: 55 mL, released." in week.line("lot ESSENCE").lines

    recall = 'recall BOTTLES --because "two found it hazy" --out pack --at "2026-03-07 09:00"'
    called = done(week, recall)
    assert "8 bottles made = 3 here + 2 sent + 3 to nobody who can be named" in called.out
    assert "Accounted for: 62.5 %." in called.lines
    assert any("王小明: 555 0100" in line for line in called.lines)
    assert Path("pack/recall.pdf").stat().st_mode & 0o077 == 0
    done(week, 'contact BOTTLES 王小明 --reached spoken --still 1 --at "2026-03-07 10:00"')
    done(week, 'send BOTTLES 1 --from 王小明 --at "2026-03-08 10:00"')
    told = f"answer {complaint} recalled --told 2026-03-08 --told-by AB"
    done(week, f'{told} --at "2026-03-08 10:30"')
    assert "BOTTLES" not in week.line("complaints --open").out
    destroyed = 'send BOTTLES 4 --as destroyed --witness "Edda Fell" --at "2026-03-08 11:00"'
    assert "Nobody is named" not in done(week, destroyed).out
    close = 'recall BOTTLES --close "the neck was wiped with the weak spirit"'
    assert "market" in refused(week, close, 4)[0]
    done(week, f'{close} --because "a notice hangs at the market" --at "2026-03-09 09:00"')

    essence = words(week, "record ESSENCE", "essence.pdf")
    for told in (
        "RELEASED 2026-",
        "added, struck 20 mL of WEAK-1, as top-up",
        f"Struck by entry {strike}.",
        "Reason: poured away, not into it.",
        "AB Ada Brook",
        "CD Cleo Dunn",
    ):
        assert told in essence, told
    bottles = words(week, "record BOTTLES", "bottles.pdf")
    for told in (
        "RECALLED 2026-",
        "Labels 8 printed; nobody told how many were used; 1 with HOLD across",
        "1 printed, with HOLD across",
        f"complaint {complaint}, recalled, told by AB, told on 2026-03-08",
        "complaint cloudy, from 738B 5C0F 660E",
        "judged put on hold",
        "Reason: a customer found it cloudy.",
        "Reason: the fridge was too cold.",
        "judged recalled",
        "4 destroyed, witness Edda Fell",
        "Specimen label",
    ):
        assert told in bottles, told
    assert week.line("verify").exit_code == 0
    assert week.line("stock").out.count("BOTTLES") == 0
