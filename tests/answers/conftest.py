"""The books that are asked, each made once for all tests of a worker."""

import pytest

from tests.answers import books
from tests.answers.books import SMALL, Held, held
from tests.demonstration import demonstration


@pytest.fixture(scope="session")
def season(tmp_path_factory: pytest.TempPathFactory) -> Held:
    folder = tmp_path_factory.mktemp("season")
    return books.season(demonstration(tmp_path_factory, folder), folder)


@pytest.fixture(scope="session")
def story(tmp_path_factory: pytest.TempPathFactory) -> Held:
    return held("story", tmp_path_factory.mktemp("story"))


@pytest.fixture(scope="session")
def small(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Held]:
    """Every other book by its name."""
    return {name: held(name, tmp_path_factory.mktemp(name)) for name in SMALL}
