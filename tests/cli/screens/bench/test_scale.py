"""A weight becomes a number once it stands still; the scale is one at a pseudo-terminal."""

import os
import pty
import sqlite3
import sys
import threading
from contextlib import closing

import pytest

from cli.screens.bench import scale
from cli.screens.bench import scale as module
from cli.screens.bench.scale import stable, weigh, weight_in
from ledger.errors import InputError, StorageError
from tests.cli.shell import Shell
from tests.kept.said import check_constants


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
    port = playing("S D 7.1 g", "S I")
    with pytest.raises(InputError) as refused:
        weigh(port)
    assert refused.value.problems == (
        (
            f"The scale at {port} said no weight that stands still.",
            "Let it come to rest and write the line again, or write the weight.",
        ),
    )


def test_without_its_library_a_scale_is_refused_with_what_to_install(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(sys.modules, "serial", None)
    with pytest.raises(StorageError) as refused:
        weigh("/dev/none")
    assert refused.value.problems == (
        (
            "A scale is read with pyserial, which is not installed.",
            "Install it: pip install 'pottle[scale]'",
        ),
    )


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("S S 7,52 kg", ("7,52kg", True)),
        ("ST,NT,  7 MG", ("7mg", True)),
        ("+7.5g", ("7.5g", False)),
        ("7.5 g", ("7.5g", False)),
        ("- 7.5 g", None),
        ("S I", None),
        ("S D 7 g", None),
        ("S + 7 g", None),
        ("S - 7 g", None),
        ("US 7 g", None),
        ("7 g ?", None),
        ("7 gr", None),
        ("STX 7 g", ("7g", False)),
    ],
)
def test_a_weight_is_read_as_the_scale_means_it(line: str, told: object) -> None:
    assert weight_in(line) == told


def test_a_port_that_is_none_is_told() -> None:
    with pytest.raises(StorageError) as refused:
        weigh("/dev/none")
    ((what, todo),) = refused.value.problems
    assert what.startswith("The scale at /dev/none cannot be read: ")
    assert todo == "Look at its cable and its name."


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


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_what_is_no_weight_between_equal_readings_begins_their_count_anew() -> None:
    assert stable(iter(["7.5 g", "7.5 g", "S I", "7.5 g", "7.5 g"])) is None
    assert stable(iter(["7.5 g", "7.5 g", " ", "7.5 g"])) == "7.5g"
