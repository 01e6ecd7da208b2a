"""A line to a server on which every word is so long on its way, as to a server far away.

Guarantees: what is sent arrives whole and in order, and not before its time; it counts how often an
asker spoke, and had to wait for an answer. Refuses: to lose anything.
"""

import socket
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from queue import Queue
from threading import Thread

from sqlalchemy import make_url

from tests.conftest import Server

_READY = b"Z\0\0\0\5"
"""How a server says that it answered all: before that nobody waited for what came (PostgreSQL,
message formats, ReadyForQuery; the state of the transaction follows)."""
Sent = tuple[float, bytes]
"""When something arrives, and what; nothing: its sender hung up."""


@dataclass(slots=True)
class SlowLine:
    """A line to a server with a delay."""

    to: str
    """The server's socket."""
    delay_s: float
    """How long a question and its answer are on their way together."""
    trips: int = 0
    """How often a question followed an answer, on any call."""
    said: int = 0
    """How often an asker said anything."""
    heard: socket.socket = field(default_factory=lambda: socket.create_server(("127.0.0.1", 0)))
    """Where clients call."""

    @property
    def port(self) -> int:
        """The port that clients call."""
        return int(self.heard.getsockname()[1])

    def serve(self) -> None:
        """Take calls until the line is closed."""
        with suppress(OSError):
            while True:
                caller, _ = self.heard.accept()
                caller.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
                called = socket.socket(socket.AF_UNIX)
                called.connect(self.to)
                Thread(target=self._carry, args=(caller, called), daemon=True).start()

    def _carry(self, caller: socket.socket, called: socket.socket) -> None:
        answered = [True]
        with caller, called:
            back = Thread(target=self._pass, args=(called, caller, answered, True), daemon=True)
            back.start()
            self._pass(caller, called, answered, False)
            back.join()

    def _pass(
        self, one: socket.socket, other: socket.socket, answered: list[bool], is_answer: bool
    ) -> None:
        """Pass on what one says to another, each word after half of the delay."""
        sent: Queue[Sent] = Queue()
        end = b""
        is_connected = False
        teller = Thread(target=_tell, args=(other, sent), daemon=True)
        teller.start()
        with suppress(OSError):
            while data := one.recv(65_536):
                self.trips += not is_answer and answered[0]
                self.said += not is_answer
                end = (end + data)[-len(_READY) - 1 :]
                is_ready = end.startswith(_READY)
                # Until it is connected every word is waited for.
                answered[0] = is_answer and (is_ready or not is_connected)
                is_connected = is_connected or is_ready
                sent.put((time.monotonic() + self.delay_s / 2, data))
        sent.put((time.monotonic() + self.delay_s / 2, b""))
        teller.join()


def _tell(to: socket.socket, sent: "Queue[Sent]") -> None:
    """Say what was sent when its time has come, until there is nothing more."""
    with suppress(OSError):
        while True:
            at, data = sent.get()
            time.sleep(max(0.0, at - time.monotonic()))
            if not data:
                break
            to.sendall(data)
    with suppress(OSError):
        to.shutdown(socket.SHUT_RDWR)


@contextmanager
def slow_line(server: Server, delay_s: float) -> Iterator[SlowLine]:
    """Lay a line to a server."""
    folder = make_url(server.address).query["host"]
    line = SlowLine(str(Path(str(folder), ".s.PGSQL.5432")), delay_s)
    Thread(target=line.serve, daemon=True).start()
    try:
        yield line
    finally:
        line.heard.close()


def through(line: SlowLine, where: str) -> str:
    """Return the address by which a server's book is reached through a line."""
    url = make_url(where).set(host="127.0.0.1", port=line.port, query={})
    return url.render_as_string(hide_password=False)
