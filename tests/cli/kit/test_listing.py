"""A list with nothing in it says so, and how to begin."""

import pytest

from tests.cli.shell import Shell


@pytest.mark.parametrize(
    ("command", "lines"),
    [
        (
            "person list",
            [
                "There is nobody in the book yet.",
                'Next: pottle person add INITIALS "NAME"',
            ],
        ),
        (
            "material list",
            [
                "There is no material in the book yet.",
                'Next: pottle material add CODE --name "NAME" --kind KIND',
            ],
        ),
        (
            "party list",
            [
                "The book knows nobody's telephone number yet.",
                'Next: pottle party add "NAME" --phone NUMBER',
            ],
        ),
    ],
)
def test_an_empty_list_says_so_and_how_to_begin(
    bare: Shell, command: str, lines: list[str]
) -> None:
    assert bare.line(command).lines == lines
    assert bare.line(f"{command} --json").json == []
