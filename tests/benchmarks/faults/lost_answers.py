"""What a command says, and what is left, when a server's answer to its commit is lost.

``python -m tests.benchmarks.faults.lost_answers [RUNS]`` cuts the line to a server RUNS times
(200 if not said) when a commit is on its way to it, and when its answer is on its way back, by
turns. A run is a loss when the book does not verify, when it holds anything but all or
nothing of the command, and when the command said otherwise than the book has it.
"""

import socket
import sys
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from enum import Enum, auto
from pathlib import Path
from threading import Thread

from sqlalchemy import make_url

from ledger.errors import StorageError
from ledger.service.bench.note import note
from ledger.service.desk.book import How, open_book
from ledger.service.evidence.verify import verify
from tests.conftest import Server, new_keeper, passing_server
from tests.keeper import LATER, Keeper, SetClock


class Cut(Enum):
    """Where the line is cut."""

    COMMIT = auto()
    """Before the commit reaches the server."""
    ANSWER = auto()
    """Before its answer reaches the command."""


@dataclass(slots=True)
class Line:
    """A line to a server that can be cut at the next commit."""

    to: str
    """The server's socket."""
    heard: socket.socket = field(default_factory=lambda: socket.create_server(("127.0.0.1", 0)))
    """Where clients call."""
    cut: Cut | None = None
    """Where the next commit is cut off."""

    @property
    def port(self) -> int:
        """The port that clients call."""
        return int(self.heard.getsockname()[1])

    def serve(self) -> None:
        """Take calls until the line is closed."""
        with suppress(OSError):
            while True:
                caller, _ = self.heard.accept()
                called = socket.socket(socket.AF_UNIX)
                called.connect(self.to)
                Thread(target=self._carry, args=(caller, called), daemon=True).start()

    def _carry(self, caller: socket.socket, called: socket.socket) -> None:
        lost = list[bool]()
        with caller, called:
            back = Thread(target=_down, args=(called, caller, lost), daemon=True)
            back.start()
            self._up(caller, called, lost)
            back.join()

    def _up(self, caller: socket.socket, called: socket.socket, lost: list[bool]) -> None:
        with suppress(OSError):
            while data := caller.recv(65_536):
                if self.cut and b"COMMIT" in data:
                    where, self.cut = self.cut, None
                    lost.append(True)
                    if where is Cut.COMMIT:
                        break
                called.sendall(data)
        _hang_up(caller, called)


def _down(called: socket.socket, caller: socket.socket, lost: list[bool]) -> None:
    with suppress(OSError):
        while data := called.recv(65_536):
            # The server has answered, and nobody hears it.
            if lost and b"COMMIT" in data:
                break
            caller.sendall(data)
    _hang_up(caller, called)


def _hang_up(*ends: socket.socket) -> None:
    for end in ends:
        with suppress(OSError):
            end.shutdown(socket.SHUT_RDWR)


@contextmanager
def line_to(server: Server) -> Iterator[Line]:
    """Lay a line to a server."""
    folder = make_url(server.address).query["host"]
    line = Line(str(Path(str(folder), ".s.PGSQL.5432")))
    Thread(target=line.serve, daemon=True).start()
    try:
        yield line
    finally:
        line.heard.close()


def tried(server: Server, line: Line, where: str, number: int) -> str:
    """Cut the line at one commit, and return what came of it: whole, nothing or loss."""
    straight = Keeper(open_book(where, SetClock(LATER)), SetClock(LATER))
    called = make_url(where).set(host="127.0.0.1", port=line.port, query={})
    with straight, open_book(called.render_as_string(hide_password=False), SetClock(LATER)) as book:
        before = straight.bodies()
        line.cut = Cut.ANSWER if number % 2 else Cut.COMMIT
        try:
            said = note(book, How("AB"), text=f"Note {number}.").seq
        except StorageError:
            said = 0
        after = straight.bodies()
        is_sound = after[: len(before)] == before and not verify(straight.book).faults
    added = [seq for seq, _ in after[len(before) :]]
    if line.cut or not is_sound or added != ([said] if said else []):
        return "loss"
    return "whole" if added else "nothing"


def main(runs: int) -> int:
    """Print the line of the table; return how many runs were losses."""
    with passing_server() as server, line_to(server) as line:
        where = server.where(server.new_database())
        new_keeper(where).book.close()
        found = Counter(tried(server, line, where, number) for number in range(runs))
    print(
        f"{'answer of a server lost':<32}{runs:>7}{found['whole']:>7}{found['nothing']:>9}"
        f"{found['loss']:>8}",
        flush=True,
    )
    return found["loss"]


if __name__ == "__main__":
    sys.exit(bool(main(int(sys.argv[1]) if len(sys.argv) > 1 else 200)))
