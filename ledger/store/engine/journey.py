"""Many statements to a server in one round trip.

Guarantees: they run in their order, and after one that failed none does; who then stops is noticed
by the server. Refuses: to know what they say.
"""

import logging
from collections.abc import Generator, Iterator, Sequence
from contextlib import contextmanager
from typing import Any

from ledger.store.engine.turn import Part

# Of a line that was cut it would write a word of its own beside the sentence that tells of it.
logging.getLogger("psycopg").addHandler(logging.NullHandler())


def answers(driver: Any, parts: Sequence[Part]) -> list[list[Any]]:  # noqa: ANN401 - of psycopg
    """Run statements by a connection of psycopg, and return the rows of each."""
    with _pipeline(driver):
        cursors = [
            # Prepared at once: what an act asked before it wrote it asks after it.
            driver.execute(statement, cells, binary=is_binary, prepare=True)
            for statement, cells, is_binary in parts
        ]
    return [cursor.fetchall() if cursor.rownumber is not None else [] for cursor in cursors]


@contextmanager
def _pipeline(driver: Any) -> Iterator[None]:  # noqa: ANN401 - of psycopg
    from psycopg import Pipeline  # an extra, for servers alone

    class Once(Pipeline):
        """A pipeline that says all at once, and nothing more once it has asked for its answers.

        psycopg sends each statement by itself, which takes longer than to make it; and a flush
        after them, by which a server stops to count how long somebody who holds the writers' lock
        is idle.
        """

        def _communicate_gen(self) -> Generator[Any, Any, None]:
            yield from ()  # until the end

        def _exit_gen(self) -> Generator[Any, Any, None]:
            try:
                self._enqueue_sync()
                while self.command_queue:
                    self.command_queue.popleft()()
                yield from super()._communicate_gen()
            finally:
                yield from self._fetch_gen(flush=False)

    driver._pipeline = Once(driver)  # which `pipeline` takes up, and leaves at its end
    with driver.pipeline():
        yield
