"""How long a book is waited for, and what is said when that was too long.

Guarantees: nobody is waited for without an end, neither another writer nor a server; each time-out
has its sentence. Refuses: to wait, and to know a connection.
"""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sqlalchemy import URL

BUSY_MS = 30_000
"""How long a writer waits for its turn."""
IDLE_MS = 20_000
"""How long a writer on a server may stop before its turn is taken away: less than others wait, so
that one who stopped keeps nobody from writing."""
STATEMENT_MS = 600_000
"""How long a server may work at one statement; verifying a million lots takes less."""
CONNECT_S = 10
"""How long a server is waited for that does not answer."""
_TOO_LONG = {
    "55P03": (  # lock_not_available in PostgreSQL's table of error codes
        "Another has been writing in the book for too long, and it was waited for in vain.",
        "Nothing was recorded. Try again; a writer that stopped is put out by the server.",
    ),
    "57014": (  # query_canceled
        "The server worked at the question for too long and gave it up.",
        "Nothing was recorded. Try again later, or ask the keeper of the server.",
    ),
    "25P03": (  # idle_in_transaction_session_timeout
        "This writer stopped for so long that the server took its turn away.",
        "Nothing was recorded. Enter it again.",
    ),
}
"""What is said of each time-out, by its code."""


def sentence(cause: object) -> tuple[str, str] | None:
    """Return what to say of a time-out that a driver told of, and what to do; None of another."""
    return _TOO_LONG.get(str(getattr(cause, "sqlstate", "")))


def of_server(url: "URL") -> dict[str, object]:
    """Return how long a server is waited for, in the words of its driver; the address may say more.

    A machine that went away without a word is noticed by the questions that its silence answers.
    """
    told: dict[str, object] = {
        "connect_timeout": CONNECT_S,
        "keepalives_idle": 20,
        "keepalives_interval": 5,
        "keepalives_count": 4,
        "options": f"-c lock_timeout={BUSY_MS} -c statement_timeout={STATEMENT_MS}",
    }
    return {name: value for name, value in told.items() if name not in url.query}
