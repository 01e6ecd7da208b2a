"""Books to begin from: one on a working day, one with a lot of each sort, one for trying in."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.conftest import opened
from tests.keeper import LATER, MORNING, Keeper, SetClock, copy_book
from tests.path import receive_all


@pytest.fixture(scope="session")
def bench_template(template: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    where = copy_book(template, tmp_path_factory.mktemp("template") / "bench.db")
    with opened(str(where), SetClock(MORNING)) as keeper:
        lots = receive_all(keeper)
        batch = keeper.opens("start", product="Orange essence", kind="essence", target="480mL")
        keeper.do("add", lot=batch, source=lots.spirit, amount="420mL")
        bulk = keeper.opens("start", product="Plain syrup", kind="base-syrup", target="1L")
        keeper.do("add", lot=bulk, source=lots.water, amount="1L")
        keeper.do("look", lot=bulk, grade="bright")
        keeper.do("finish", lot=bulk, volume="1L")
        keeper.opens("bottle", source=bulk, pack="3 x 250mL", bottles=lots.bottles)
    return where


@pytest.fixture
def bench(bench_template: Path, tmp_path: Path) -> Iterator[Keeper]:
    """A book in which OE-001-5 is being made and BPS-001-3 is filled from PS-001-7."""
    where = copy_book(bench_template, tmp_path / "bench.db")
    with opened(str(where), SetClock(LATER)) as keeper:
        yield keeper


@pytest.fixture(scope="session")
def shelf(template: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Keeper]:
    """A book with people and materials in which nothing is left of what is tried."""
    where = copy_book(template, tmp_path_factory.mktemp("shelf") / "book.db")
    with opened(str(where), SetClock(MORNING)) as keeper:
        yield keeper


@pytest.fixture
def keeper(request: pytest.FixtureRequest) -> Keeper:
    """A book with its people and materials, on the engine that is marked (`ON_EACH_ENGINE`)."""
    engine = getattr(request, "param", "sqlite")
    found: Keeper = request.getfixturevalue(f"{engine}_keeper")
    return found


@pytest.fixture(params=["sqlite", "postgres"])
def full(request: pytest.FixtureRequest) -> Keeper:
    """A book with a row in every table, on each engine."""
    found: Keeper = request.getfixturevalue(f"{request.param}_walked")
    return found


@pytest.fixture(scope="module")
def whole(walked_template: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The file of a book with a row in every table, from which tests copy."""
    return copy_book(walked_template, tmp_path_factory.mktemp("whole") / "book.db")


@pytest.fixture
def path(whole: Path, tmp_path: Path) -> Path:
    """The file of a book with a row in every table, to be changed."""
    return Path(shutil.copyfile(whole, tmp_path / "book.db"))


@pytest.fixture
def stocked(sqlite_keeper: Keeper) -> Keeper:
    """A book with lots NS-001-J, NS-002-H, SOO-001-3 and MINE-1."""
    sqlite_keeper.do("receive", material="spirit", amount="5L")
    sqlite_keeper.do("receive", material="spirit", amount="2L")
    sqlite_keeper.do("receive", material="orange-oil", amount="100mL")
    sqlite_keeper.do("receive", material="carb", amount="1kg", code="mine-1")
    return sqlite_keeper
