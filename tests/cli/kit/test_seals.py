"""A seal that cannot be read is refused, whatever was given for it."""

from pathlib import Path

import pytest

from tests.cli.shell import Shell


@pytest.mark.parametrize(
    ("given", "complaint"),
    [
        ("none.txt", "There is no file none.txt with a seal, and the text is none itself."),
        ("x" * 5000, f"There is no file {'x' * 5000} with a seal, and the text is none itself."),
        ("\x00", "There is no file U+0000 with a seal, and the text is none itself."),
        ("bad.txt", "The file bad.txt is no text in UTF-8."),
        ("big.txt", "The file big.txt is larger than 1000000 bytes."),
        (
            "House Wren & Co\nEntries 38\nRoot 12",
            "The seal's root has 2 characters of 0-9 and a-f, not 64.",
        ),
    ],
    ids=["no file", "long", "no path", "no text", "large", "damaged"],
)
def test_a_seal_that_cannot_be_read_is_refused(shell: Shell, given: str, complaint: str) -> None:
    Path("bad.txt").write_bytes(b"\xff\xfe")
    Path("big.txt").write_bytes(b"x" * 1_000_001)
    answer = shell.run("verify", "--seal", given)
    assert (answer.exit_code, answer.complaints[0]) == (2, complaint)
