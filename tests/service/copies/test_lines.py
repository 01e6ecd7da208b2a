"""Lines that are not those of a book as it was are refused in words, and nothing is kept."""

import json
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.errors import FindingError, InputError, LedgerError, StorageError
from ledger.service.copies.export import export
from ledger.service.copies.import_ import import_book
from ledger.service.desk.book import open_book
from ledger.service.evidence.seal import seal
from tests.conftest import Server
from tests.keeper import silent

NOTHING_KEPT = "Nothing was kept. Use an export that is whole, as pottle export writes it."


@pytest.fixture(scope="module")
def lines(walked_template: Path, tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """The lines of a book with a row in every table."""
    path = tmp_path_factory.mktemp("lines") / "book.jsonl"
    with open_book(str(walked_template)) as book:
        export(book, path, silent)
    return path.read_text(encoding="utf-8").split("\n")


def swap(lines: list[str], one: int, other: int) -> list[str]:
    swapped = [*lines]
    swapped[one], swapped[other] = swapped[other], swapped[one]
    return swapped


def entries(lines: list[str]) -> int:
    """Return how many of the lines are entries."""
    return sum('"facts":' in line for line in lines)


BAD_LINES: dict[str, tuple[Callable[[list[str]], list[str]], str]] = {
    "a line lost": (
        lambda lines: lines[:5] + lines[6:],
        "Line 6 holds entry 6, where entry 5 was expected.",
    ),
    "a line twice": (
        lambda lines: [*lines[:6], *lines[5:]],
        "Line 7 holds entry 5, where entry 6 was expected.",
    ),
    "two lines swapped": (
        lambda lines: swap(lines, 4, 5),
        "Line 5 holds entry 5, where entry 4 was expected.",
    ),
    "the end lost": (
        lambda lines: [line for line in lines if f'"seq":{entries(lines)},' not in line],
        "The file has {less} entries, and its first line says {size}.",
    ),
    "a line cut": (
        lambda lines: [*lines[:3], lines[3][:-9], *lines[4:]],
        "Line 4 is not an entry as a book writes it.",
    ),
    "a word changed": (
        lambda lines: [lines[0], *(line.replace("C7731", "C7732") for line in lines[1:])],
        "The entries do not have the root that the first line says.",
    ),
    "a space more": (
        lambda lines: [lines[0], lines[1].replace(":", ": ", 1), *lines[2:]],
        "Line 2 is not an entry as a book writes it.",
    ),
    "a first line of another root": (
        lambda lines: [lines[0].replace('"root":"', '"root":"ab')[:-4] + '"}', *lines[1:]],
        "The entries do not have the root that the first line says.",
    ),
    "a first line of another house": (
        lambda lines: [lines[0].replace("Quayside", "Kerbside"), *lines[1:]],
        "The entries are of the house Quayside Essences, and the first line of another.",
    ),
    "details of another": (
        lambda lines: [line.replace("Anna Bell", "Hanna Bell") for line in lines],
        "The details of entry {details} are not those that the entry has a commitment to.",
    ),
    "details that are none": (
        lambda lines: [line.replace('"Anna Bell"', '"Anna Bell","nose":"Bo"') for line in lines],
        "Line {told} is not the details of an entry as a book writes them.",
    ),
    "details before the entries": (
        lambda lines: [lines[0], next(line for line in lines if "Anna Bell" in line), *lines[1:]],
        "Line 3 is no details, and after the first of these come details alone.",
    ),
    "details left out": (
        lambda lines: [line for line in lines if "Anna Bell" not in line],
        "The details of entry {details} are lost, and no entry says that they were forgotten.",
    ),
    "details left out under another root": (
        lambda lines: [
            lines[0].replace('"root":"', '"root":"ab')[:-4] + '"}',
            *(line for line in lines[1:] if "Anna Bell" not in line),
        ],
        "The details of entry {details} are lost, and no entry says that they were forgotten.",
    ),
    "details left out of another house": (
        lambda lines: [
            lines[0].replace("Quayside", "Kerbside"),
            *(line for line in lines[1:] if "Anna Bell" not in line),
        ],
        "The details of entry {details} are lost, and no entry says that they were forgotten.",
    ),
    "another root and another house": (
        lambda lines: [
            lines[0].replace("Quayside", "Kerbside").replace('"root":"', '"root":"ab')[:-4] + '"}',
            *lines[1:],
        ],
        "The entries do not have the root that the first line says.",
    ),
    "a lot nobody opened": (
        lambda lines: [
            lines[0], *(line.replace('"SOO-001-3"', '"SOO-009-J"', 1) for line in lines[1:])
        ],
        "Line {oil} speaks of the lot SOO-009-J, which no line before it opened.",
    ),
    "a person nobody entered": (
        lambda lines: [*lines[:4], *(line.replace('"by":"AB"', '"by":"ZZ"') for line in lines[4:])],
        "A row of the table entry refers to a row of person_key that is not there.",
    ),
}  # fmt: skip


@pytest.mark.parametrize("case", BAD_LINES)
def test_lines_that_do_not_fit_are_refused_and_nothing_is_kept(
    case: str, lines: list[str], tmp_path: Path
) -> None:
    spoil, what = BAD_LINES[case]
    path = tmp_path / "bad.jsonl"
    path.write_text("\n".join(spoil(lines)), encoding="utf-8")
    with pytest.raises((InputError, FindingError)) as raised:
        import_book(path, str(tmp_path / "new.db"), silent)
    size = entries(lines)
    oil = next(n for n, line in enumerate(lines, start=1) if '"SOO-001-3"' in line)
    told, line = next((n, line) for n, line in enumerate(lines, start=1) if "Anna Bell" in line)
    details = json.loads(line)["entry"]
    said = what.format(size=size, less=size - 1, oil=oil, told=told, details=details)
    assert raised.value.problems == ((said, NOTHING_KEPT),)
    assert [item.name for item in tmp_path.iterdir()] == ["bad.jsonl"]


COPY = (
    "Copy the three lines again as they stand on the paper: House ..., Entries ..., Root and 64 "
    "characters of 0-9 and a-f."
)


@pytest.mark.parametrize(
    ("head", "what", "todo"),
    [
        *(
            (
                head,
                "The first line is not that of a book in lines.",
                "Name a file of pottle export.",
            )
            for head in ("", "{}", "[1]")
        ),
        (
            '{"entries":1,"format":"pottle book 3","house":"W","root":"ab"}',
            'The file is of the form "pottle book 3", not "pottle book 2".',
            "Use the pottle that wrote it.",
        ),
        (
            '{"entries":1,"format":"pottle book 1","house":"W","root":"ab"}',
            "The seal's root has 2 characters of 0-9 and a-f, not 64.",
            COPY,
        ),
        (
            '{"entries":"x","format":"pottle book 1","house":"W","root":"ab"}',
            'The seal\'s number of entries is written as "x".',
            COPY,
        ),
    ],
)
def test_a_first_line_that_is_none_is_refused(
    head: str, what: str, todo: str, tmp_path: Path
) -> None:
    path = tmp_path / "bad.jsonl"
    path.write_text(head, encoding="utf-8")
    with pytest.raises(InputError) as raised:
        import_book(path, str(tmp_path / "new.db"), silent)
    assert raised.value.problems == ((what, todo),)


def test_a_failed_import_leaves_nothing_on_a_server(
    server: Server, lines: list[str], tmp_path: Path
) -> None:
    path = tmp_path / "bad.jsonl"
    path.write_text("\n".join(swap(lines, 7, 8)), encoding="utf-8")
    where = server.where(server.new_database())
    with pytest.raises(InputError):
        import_book(path, where, silent)
    with pytest.raises(StorageError) as raised:
        open_book(where)
    assert raised.value.problems == (
        (
            "The database named in POTTLE_LEDGER holds no book.",
            'Make one with: pottle init --house "NAME" --currency EUR',
        ),
    )


@given(data=st.data())
def test_any_changed_byte_of_the_lines_is_refused_in_words(
    data: st.DataObject, lines: list[str], tmp_path_factory: pytest.TempPathFactory
) -> None:
    folder = tmp_path_factory.mktemp("fuzz")
    whole = "\n".join(lines).encode()
    place = data.draw(st.integers(0, len(whole) - 1))
    byte = data.draw(st.binary(min_size=1, max_size=3))
    changed = whole[:place] + byte + whole[place + data.draw(st.integers(0, 3)) :]
    path = folder / "bad.jsonl"
    path.write_bytes(changed)
    try:
        made = import_book(path, str(folder / "new.db"), silent)
    except LedgerError:
        assert not (folder / "new.db").exists()
    else:
        with path.open("rb") as file:
            assert file.readlines()[1:] == whole.splitlines(keepends=True)[1:]
        with open_book(str(folder / "new.db")) as book:
            assert made.seal.root == seal(book).root
    shutil.rmtree(folder)
