"""The schema of a command's answer is printed with nothing else asked for."""

import pytest

from cli.kit import schema as module
from tests.cli.shell import Shell
from tests.kept.said import check_constants


def test_a_schema_needs_no_book_and_no_other_word_of_its_command(
    shell: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("POTTLE_LEDGER", raising=False)
    shell.book = shell.book.with_name("none.db")
    answer = shell.run("add", "--json-schema")
    assert (answer.exit_code, answer.err) == (0, "")
    assert answer.json["title"] == "pottle add"
    assert answer.json["$defs"]["RecordedAnswer"]["properties"]["next"] == {
        "anyOf": [{"type": "string"}, {"type": "null"}],
        "description": "The command that usually comes next.",
    }


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
