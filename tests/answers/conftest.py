"""The books that many tests ask, each made once."""

import pytest

from tests.answers import books
from tests.answers.books import Held, held
from tests.demonstration import demonstration
from tests.once import made_once


@pytest.fixture(scope="session")
def season(tmp_path_factory: pytest.TempPathFactory) -> Held:
    folder = tmp_path_factory.mktemp("season")
    return books.season(demonstration(tmp_path_factory, folder), folder)


@pytest.fixture(scope="session")
def story(tmp_path_factory: pytest.TempPathFactory) -> Held:
    _, made = made_once(tmp_path_factory, "story", lambda folder: held("story", folder))
    return made
