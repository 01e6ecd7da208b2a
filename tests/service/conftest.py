"""A book on a working day: deliveries, a batch with spirit in it, and a filled lot."""

from pathlib import Path

import pytest

from tests.conftest import opened
from tests.keeper import LATER, MORNING, Keeper, SetClock, copy_book
from tests.path import receive_all


@pytest.fixture(scope="session")
def bench_template(template: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    where = copy_book(template, tmp_path_factory.mktemp("template") / "bench.db")
    keeper = opened(str(where), SetClock(MORNING))
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
def bench(bench_template: Path, tmp_path: Path) -> Keeper:
    """A book in which OE-001-5 is being made and BPS-001-3 is filled from PS-001-7."""
    return opened(str(copy_book(bench_template, tmp_path / "bench.db")), SetClock(LATER))
