"""Text that could deceive is refused in words; what looks like markup is shown as typed."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.entries import Note
from ledger.errors import LedgerError
from ledger.service.copies.season_files import read_rows
from ledger.service.copies.season_verbs import VERBS
from ledger.service.desk.book import How
from ledger.service.masters import formula as formulas
from tests.cli.shell import Shell
from tests.conftest import opened
from tests.keeper import Keeper, SetClock, copy_book
from tests.reports.pdf.readback import texts_of
from tests.service.copies.season_folder import folder_with


def check_words(error: LedgerError) -> None:
    """Every problem is told in a whole sentence."""
    assert error.problems
    assert all(what.endswith((".", "?")) for what, _ in error.problems)


HIDDEN = {
    "escape": "\x1b",
    "bell": "\a",
    "null of another kind": "\x80",
    "right-to-left override": "\u202e",
    "left-to-right isolate": "\u2066",
    "right-to-left mark": "\u200f",
    "zero-width space": "\u200b",
    "zero-width joiner": "\u200d",
    "byte order mark": "\ufeff",
    "soft hyphen": "\u00ad",
    "tag": "\U000e0041",
    "nobody's": "\ue000",
    "unassigned": "\u0378",
}
HARMLESS = (
    "<b>bold</b> & <img src=x>",
    "[red]stop[/red] [bold",
    "=cmd|'/c calc'!A0",
    "+1 -1 @SUM(A1)",
    "../../etc/passwd",
    "'; DROP TABLE entry; --",
    "%s %d {0} {house} $HOME `id`",
    "\\x1b[31m \\u202e",
)


@pytest.mark.parametrize("letter", HIDDEN.values(), ids=HIDDEN)
def test_an_invisible_character_is_refused_wherever_words_are_taken(
    letter: str, shell: Shell
) -> None:
    before = shell.entries()
    for args in (
        ("note", "-", f"Good{letter}ness"),
        ("receive", "spirit", "1L", "--from", f"Wren{letter}Co"),
        ("person", "add", "ZZ", f"Zo{letter}e"),
        ("material", "add", "acid", "--kind", "acid", "--name", f"Acid{letter}x"),
        ("start", "--product", f"Or{letter}ange", "--kind", "syrup", "--target", "1L"),
        ("send", "{packed}".format(**shell.codes), "1", "--to", f"Bar{letter}x"),
        ("note", "-", "x", "--sheet", f"1{letter}7"),
        ("correct", "18", "--set", "amount=31mL", "--because", f"mis{letter}read"),
    ):
        answer = shell.run(*args)
        assert answer.exit_code == 2, args
        assert f" holds the invisible character U+{ord(letter):04X}." in answer.complaints[0]
        assert answer.complaints[1] == "  Type it again without it."
    assert shell.entries() == before


@pytest.mark.parametrize("letter", HIDDEN.values(), ids=HIDDEN)
def test_no_complaint_carries_what_a_terminal_would_obey(letter: str, shell: Shell) -> None:
    for args in (
        ("add", ".", "NS-001-J", "1L", "--at", f"14{letter}30"),
        ("filter", ".", "--medium", "paper", "--out", "1L", "--pore", f"2{letter}0"),
        ("look", ".", f"cl{letter}ear"),
        ("formula", "show", f"or{letter}ange"),
    ):
        answer = shell.run(*args)
        assert answer.exit_code in (2, 3), args
        assert letter not in answer.err
        assert f"U+{ord(letter):04X}" in answer.err


@pytest.mark.parametrize("words", HARMLESS)
def test_what_looks_like_markup_is_kept_and_shown_as_it_was_typed(words: str, shell: Shell) -> None:
    essence = shell.codes["essence"]
    recorded = shell.run("note", essence, words, "--json")
    assert (recorded.exit_code, recorded.json["says"]) == (0, words)
    assert words in shell.run("journal", "--last", "1").out
    assert shell.run("journal", "--last", "1", "--json").json[0]["says"] == words
    assert words in shell.run("lot", essence).out
    assert shell.run("record", essence, "--out", "record.pdf").exit_code == 0
    printed = " ".join(" ".join(texts_of(Path("record.pdf").read_bytes())).split())
    assert words in printed
    shell.run("prove", essence, "--out", "proof.json")
    assert words in shell.run("prove", "--check", "proof.json").out


OVER = "Give another name with --out, or --force to write over it."


def test_letters_from_right_to_left_are_kept_and_shown(shell: Shell) -> None:
    words = "שלום and مرحبا"
    shell.run("note", "-", words)
    assert words in shell.run("journal", "--last", "1").out


@pytest.mark.parametrize(
    ("out", "what", "todo"),
    [
        (
            "none/../x.pdf",
            "There is no folder none/...",
            "Make it first, or give another place.",
        ),
        (
            "x" * 300,
            f"No file can be named {'x' * 300}: File name too long.",
            "Give a shorter name.",
        ),
        (".", "There is a file . already; it was left as it is.", OVER),
        ("/dev/null", "There is a file /dev/null already; it was left as it is.", OVER),
        (
            "/proc/new",
            "The file /proc/new could not be written: No such file or directory.",
            "Choose a place that you may write in.",
        ),
        ("dangling", "There is a file dangling already; it was left as it is.", OVER),
    ],
    ids=["no folder", "long", "folder", "device", "no place for files", "link"],
)
@pytest.mark.parametrize("command", ["record", "prove", "seal"])
def test_a_file_in_a_wrong_place_is_refused_in_words(
    command: str, out: str, what: str, todo: str, shell: Shell
) -> None:
    Path("dangling").symlink_to("elsewhere")
    lot = () if command == "seal" else (shell.codes["essence"],)
    answer = shell.run(command, *lot, "--out", out)
    assert (answer.exit_code, answer.complaints) == (5, [what, f"  {todo}"])
    assert not Path("elsewhere").exists()


def test_a_book_with_too_long_a_name_is_said(shell: Shell) -> None:
    answer = shell.run("stock", "--ledger", "x" * 300)
    assert (answer.exit_code, answer.complaints) == (
        5,
        [f"No book can be named {'x' * 300}: File name too long.", "  Give a shorter name."],
    )


@given(st.text(max_size=60) | st.text("<>[]&=+-@'\"\\/\u202e\u200b שlא", max_size=20))
def test_any_words_are_kept_as_folded_or_refused_in_words(
    hypothesis_keeper: Keeper, words: str
) -> None:
    try:
        facts = hypothesis_keeper.do("note", text=words).entry.facts
    except LedgerError as error:
        check_words(error)
    else:
        assert facts == Note(" ".join(words.split()))


@pytest.fixture(scope="module")
def hypothesis_keeper(template: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Keeper]:
    folder = tmp_path_factory.mktemp("words")
    with opened(str(copy_book(template, folder / "book.db")), SetClock()) as keeper:
        yield keeper


TOML = Path("sample_data/formulas/orange-essence.toml")


@given(data=st.data())
def test_a_spoilt_formula_is_loaded_or_refused_in_words(
    hypothesis_keeper: Keeper, data: st.DataObject, tmp_path_factory: pytest.TempPathFactory
) -> None:
    whole = (Path(__file__).parents[2] / TOML).read_text(encoding="utf-8")
    place = data.draw(st.integers(0, len(whole)))
    put = data.draw(
        st.text(max_size=3) | st.sampled_from(["[[lines]]\n", "= 1\n", '"""', "9" * 40])
    )
    spoilt = whole[:place] + put + whole[place + data.draw(st.integers(0, 40)) :]
    path = tmp_path_factory.mktemp("toml") / "formula.toml"
    path.write_text(spoilt, encoding="utf-8")
    try:
        formulas.load(hypothesis_keeper.book, How("AB"), file=str(path))
    except LedgerError as error:
        check_words(error)


@given(data=st.data())
def test_a_spoilt_season_is_read_or_told_line_by_line(
    data: st.DataObject, tmp_path_factory: pytest.TempPathFactory
) -> None:
    folder = folder_with(tmp_path_factory.mktemp("season"))
    path = data.draw(st.sampled_from(sorted(folder.glob("*.csv"))))
    whole = path.read_bytes()
    place = data.draw(st.integers(0, len(whole)))
    put = data.draw(st.binary(max_size=3) | st.sampled_from([b'"', b",", b"\n", b"\0", b"=cmd"]))
    path.write_bytes(whole[:place] + put + whole[place + data.draw(st.integers(0, 9)) :])
    _, problems = read_rows(folder, VERBS)
    assert all(what.endswith(".") for what, _ in problems)
