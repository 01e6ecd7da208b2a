"""A weight becomes a number once it stands still; the scale is one at a pseudo-terminal."""

import os
import pty
import sqlite3
import threading
from contextlib import closing

import pytest

from cli.screens.bench import scale
from cli.screens.bench.scale import stable, weigh
from ledger.errors import InputError, StorageError
from tests.cli.shell import Shell


def playing(*lines: str) -> str:
    """Return the port of a scale that answers so, a line each, once it was asked."""
    ours, theirs = pty.openpty()

    def answer() -> None:
        os.read(ours, 16)
        for line in lines:
            os.write(ours, f"{line}\r\n".encode())

    threading.Thread(target=answer, daemon=True).start()
    return os.ttyname(theirs)


def test_what_moves_is_not_taken_and_what_the_scale_calls_stable_is() -> None:
    assert weigh(playing("S D      7.10 g", "S D      7.44 g", "S S      7.52 g")) == "7.52g"


def test_three_equal_readings_stand_still() -> None:
    assert stable(iter(["+ 7.4 g", "+ 7.5 g", "+ 7.5 g", "", "+ 7.5 g"])) == "7.5g"
    assert stable(iter(["+ 7.4 g", "+ 7.5 g", "+ 7.4 g", "- 7.4 g", "+ 7.4 g"])) is None


def test_a_scale_that_never_comes_to_rest_gives_no_number(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(scale, "PATIENCE_S", 0.6)
    with pytest.raises(InputError, match="said no weight that stands still"):
        weigh(playing("S D 7.1 g", "S I"))


def test_a_port_that_is_none_is_told() -> None:
    with pytest.raises(StorageError, match="The scale at /dev/none cannot be read"):
        weigh("/dev/none")


def test_a_weight_at_the_bench_is_of_an_instrument(shell: Shell) -> None:
    port = playing("S S      7.52 g")
    start = 'start --product "Orange essence" --kind essence --target 240mL'
    shell.bench(start)
    answer = shell.run("bench", "--scale", port, given="carb weigh\n")
    assert answer.exit_code == 0, answer.err
    assert f"7.52 g of Light magnesium carbonate, LMC-001-F, on scale at {port}" in answer.out
    with closing(sqlite3.connect(shell.book)) as connection:
        origin = "SELECT origin FROM entry ORDER BY seq DESC LIMIT 1"
        assert connection.execute(origin).fetchone() == ("instrument",)
