"""A few runs of each fault; `python -m tests.benchmarks.faults` has the long ones.

They run in a process of their own, because they fork.
"""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.benchmarks.faults.crowds import crowd
from tests.benchmarks.faults.lost_answers import line_to, tried
from tests.conftest import Server, new_keeper
from tests.old_books import OLD_BOOKS

ROOT = Path(__file__).parents[3]


def test_no_fault_loses_an_entry_or_leaves_a_half_one() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "tests.benchmarks.faults.crash", "3"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
    head, *rows = (line.split() for line in done.stdout.splitlines())
    assert head == ["fault", "runs", "whole", "nothing", "losses"]
    assert len(rows) == 10
    assert [int(row[-4]) for row in rows if row[2] == "upgrading"] == [len(OLD_BOOKS)]
    for row in rows:
        runs, whole, nothing, losses = map(int, row[-4:])
        assert (runs, losses) == (whole + nothing, 0)
        # What is killed or starved is seen to leave all as well as nothing; a book that nobody may
        # write in is left as it is, and a clock that is behind hinders nothing.
        hindered = row[0] == "file"
        assert (whole == 0, nothing == 0) == (hindered, row[0] == "clock"), row


def test_what_is_said_of_a_commit_whose_answer_was_lost_is_what_the_book_has(
    server: Server,
) -> None:
    where = server.where(server.new_database())
    new_keeper(where).book.close()
    with line_to(server) as line:
        assert [tried(server, line, where, number) for number in range(2)] == ["nothing", "whole"]


@pytest.mark.parametrize("engine", ["file", "server"])
def test_writers_at_once_lose_nothing(
    engine: str, request: pytest.FixtureRequest, tmp_path: Path
) -> None:
    if engine == "file":
        where = str(tmp_path / "book.db")
    else:
        server: Server = request.getfixturevalue("server")
        where = server.where(server.new_database())
    found = crowd(where, writers=4, seconds=1)
    assert found.entries > 0
    assert (found.errors, found.losses) == (0, 0)
