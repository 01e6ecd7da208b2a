"""Columns may be named as the words of a verb or as the options of its command."""

from typing import Any

import pytest
import typer
from typer._click import Context

from cli.main import app
from ledger.domain.tables.option_words import OPTIONS, word_of
from ledger.service.copies.season_files import words_of
from ledger.service.copies.season_verbs import VERBS


@pytest.mark.parametrize("verb", OPTIONS)
def test_each_option_is_one_of_the_command_and_means_a_word_of_its_verb(verb: str) -> None:
    group: Any = typer.main.get_command(app)
    command = group.get_command(Context(group), verb)
    written = {option for param in command.params for option in param.opts}
    for option, word in OPTIONS[verb].items():
        assert f"--{option}" in written
        assert word in words_of(VERBS[verb])


@pytest.mark.parametrize(
    ("column", "word"),
    [
        ("volume_out", "volume_out"),
        ("out", "volume_out"),
        ("--Out", "volume_out"),
        ("first-runnings", "first_runnings"),
        ("first runnings", "first_runnings"),
        ("yield", None),
        ("", None),
    ],
)
def test_a_column_means_a_word_or_nothing(column: str, word: str | None) -> None:
    assert word_of("filter", column, words_of(VERBS["filter"])) == word
