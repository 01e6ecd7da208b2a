"""A seal that cannot be read is refused, whatever was given for it."""

from pathlib import Path

import pytest

from cli.kit import seals as module
from tests.cli.kit.test_options import told_options
from tests.cli.shell import Shell
from tests.kept.golden import check_golden
from tests.kept.said import check_constants

GIVE = 'Give the file, or the three lines in quotes: "House ... Entries ... Root ..."'


@pytest.mark.parametrize(
    ("given", "complaint", "todo"),
    [
        ("none.txt", "There is no file none.txt with a seal, and the text is none itself.", GIVE),
        (
            "x" * 5000,
            f"There is no file {'x' * 5000} with a seal, and the text is none itself.",
            GIVE,
        ),
        ("\x00", "There is no file U+0000 with a seal, and the text is none itself.", GIVE),
        ("bad.txt", "The file bad.txt is no text in UTF-8.", "Name the right file."),
        ("big.txt", "The file big.txt is larger than 1000000 bytes.", "Name the right file."),
        (
            "House Wren & Co\nEntries 38\nRoot 12",
            "The seal's root has 2 characters of 0-9 and a-f, not 64.",
            "Copy the three lines again as they stand on the paper: House ..., Entries ..., Root "
            "and 64 characters of 0-9 and a-f.",
        ),
    ],
    ids=["no file", "long", "no path", "no text", "large", "damaged"],
)
def test_a_seal_that_cannot_be_read_is_refused(
    shell: Shell, given: str, complaint: str, todo: str
) -> None:
    Path("bad.txt").write_bytes(b"\xff\xfe")
    Path("big.txt").write_bytes(b"x" * 1_000_001)
    answer = shell.run("verify", "--seal", given)
    assert (answer.exit_code, answer.complaints) == (2, [complaint, f"  {todo}"])


def test_how_a_seal_is_asked_for_is_the_kept_way() -> None:
    check_golden("cli/asked/seal_text.txt", told_options(module))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
