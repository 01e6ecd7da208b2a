"""An evening at a terminal: short lines, a rest that is counted down, slips and broken lines."""

import signal
from datetime import UTC, datetime, timedelta

from cli.screens.bench.terminal import Rests
from tests.cli.shell import Shell
from tests.cli.terminal import Seat

NEW = "OE-002-3 Orange essence, "
START = 'start --product "Orange essence" --kind essence --target 240mL\r'
NOW = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


def seat(shell: Shell, *args: str) -> Seat:
    home = str(shell.book.parent / "state")
    own = {"POTTLE_LEDGER": str(shell.book), "POTTLE_BY": "AB", "XDG_STATE_HOME": home}
    return Seat(["bench", *args], **own)


def test_an_evening_is_played_and_all_of_it_is_in_the_book(shell: Shell) -> None:
    before = shell.entries()
    with seat(shell) as bench:
        assert bench.wait("BOS-001-S Orange syrup, 250 mL, 9 > ")[0] == (
            "The bench: write a line, such as oil 15; help shows all, done or Ctrl-D leaves."
        )
        bench.type(START, f"{NEW}0 mL > ")
        bench.type("oil 15\r", f"{NEW}15 mL > ")
        bench.type("SOO-001-3\r", "How much of SOO-001-3, in mL: ")
        bench.type("\x03", "How much of SOO-001-3, in mL: ")
        bench.type("spirit 225\r", f"{NEW}240 mL > ")
        bench.type("cloudy\r", f"{NEW}240 mL > ")
        # The line is asked about, and left.
        asked = f"The line before said the same, and it is entry {before + 4}."
        bench.type("cloudy\r", f"{asked} Was it done twice? y/N:")
        bench.type("\x04", f"{NEW}240 mL > ")
        # Ctrl-Z strikes what was written last, if nothing is being written.
        assert "is struck out." in "\n".join(bench.type("\x1a", f"{NEW}240 mL > "))
        # A reason is asked for, and not given.
        bench.type("spirit 500L\r", "Why? (nothing: it is not recorded) ")
        bench.type("\x03", f"{NEW}240 mL > ")
        screen = bench.type("rest 2h\r", f"{NEW}240 mL > ")
        assert screen[-1].startswith("OE-002-3 1 h 59 min left")
        assert screen[-3:-1] == ["  1  rest end", f"{NEW}240 mL >"]
        assert bench.leave("\x04") == 0
        assert bench.lines[-1] == f"Recorded {before + 1} to {before + 6}."
    assert shell.entries() == before + 6
    assert shell.run("verify").exit_code == 0
    # No colour is ever asked for (ECMA-48, 8.3.117).
    assert not any(f"\x1b[{colour}m".encode() in bench.raw for colour in range(30, 50))


def test_a_pass_of_an_unsaid_medium_proposes_paper_again(shell: Shell) -> None:
    start = START.rstrip()
    shell.bench(start, "spirit 100", "filter 90", "hazy")
    assert shell.run("lot", "OE-002-3").lines[-1] == (
        "Next: pottle filter OE-002-3 --medium paper --pore 20 --out VOLUME --cake same"
    )


def test_a_terminal_that_is_closed_takes_nothing_with_it(shell: Shell) -> None:
    before = shell.entries()
    with seat(shell, "OE-001-5") as bench:
        prompt = "OE-001-5 Orange essence, 418 mL > "
        bench.wait(prompt)
        bench.type("note Smelled of peel.\r", prompt)
        bench.type("note Half a li", f"{prompt}note Half a li")
        assert bench.close() in (0, -signal.SIGHUP)
    assert shell.entries() == before + 1
    assert shell.run("verify").exit_code == 0


def test_rests_are_told_to_be_over_once_and_the_nearest_are_shown() -> None:
    hours = {"OE-001-5": 1, "OE-002-3": 0, "OE-005-Y": 3, "OE-004-X": 2}
    rests = Rests({lot: NOW + timedelta(hours=span) for lot, span in hours.items()})
    assert rests.line(NOW) == "OE-002-3 is over   OE-001-5 1 h left   OE-004-X 2 h left"
    assert rests.over(NOW) == ["OE-002-3"]
    assert rests.over(NOW) == []
    assert rests.over(NOW + timedelta(hours=2)) == ["OE-001-5", "OE-004-X"]
    rests.until = {}
    assert rests.line(NOW) == ""
