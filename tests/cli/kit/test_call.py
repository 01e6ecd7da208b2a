"""What goes wrong is said in whole sentences, ends with its exit code and records nothing."""

from typing import Any

import pytest

from cli.kit import call as module
from cli.kit.call import Call
from tests.cli.kit.test_options import told_options
from tests.cli.shell import Shell
from tests.kept.golden import check_golden
from tests.kept.said import check_constants

ESSENCE, SYRUP, PACKED, SPIRIT = "OE-001-5", "OS-002-M", "BOS-001-S", "NS-001-J"


KNOWN_MATERIALS = "b250, cap, carb, orange-oil, spirit, sugar, water"


UNITS = (
    "µL, mL, cL, dL, L, US fl oz, US pt, US qt, US gal, imp fl oz, imp pt, imp qt, imp gal, "
    "mg, g, kg, oz av, lb and each"
)


REFUSALS: dict[str, tuple[tuple[str, ...], int, str, str]] = {
    "a lot that is not in the book": (
        ("lot", "OE-1-5"),
        3,
        "There is no lot OE-1-5 in the book. Near to it: OE-001-5.",
        "pottle stock lists the lots that are.",
    ),
    "a slip in a code": (
        ("lot", "OE-001-9"),
        3,
        "The lot code OE-001-9 ends in 9, but OE-001 calls for 5, so at least one character is "
        "wrong: read the code again. Near to it: OE-001-5, BOS-001-S, SOO-001-3.",
        "pottle stock lists the lots that are.",
    ),
    "a unit nobody knows": (
        ("add", ESSENCE, SPIRIT, "30mLx"),
        2,
        f'"mLx" in 30mLx is not a unit the book knows; it knows {UNITS}.',
        "Did you mean mL? Write the amount again with one of these.",
    ),
    "no unit": (
        ("add", ESSENCE, SPIRIT, "30"),
        2,
        "30 has no unit.",
        "Write the unit too, as in 30 mL, 15 g or 200 each.",
    ),
    "bare ounces": (
        ("add", ESSENCE, SPIRIT, "3", "oz"),
        2,
        "3 oz could be a volume or a weight.",
        "Write US fl oz, imp fl oz or oz av.",
    ),
    "nothing": (
        ("add", ESSENCE, SPIRIT, "0mL"),
        3,
        "An amount must be more than zero, and 0mL is not.",
        "Write how much there really was.",
    ),
    "less than nothing": (
        ("add", ESSENCE, SPIRIT, "-30mL"),
        3,
        "An amount must be more than zero, and −30mL is not.",
        "Write how much there really was.",
    ),
    "a day that is in no calendar": (
        ("note", "-", "x", "--at", "2026-02-30 10:00"),
        3,
        "There is no day 2026-02-30 in the calendar.",
        "Look at the calendar and write it again.",
    ),
    "initials nobody has": (
        ("note", "-", "x", "--by", "ZZ"),
        3,
        "The initials ZZ are not in the book; it knows AB.",
        'Add the person with: pottle person add ZZ "FULL NAME"',
    ),
    "a material nobody knows": (
        ("receive", "ghost", "1L"),
        3,
        f"The material ghost is not in the book; it knows {KNOWN_MATERIALS}.",
        'Add it with: pottle material add ghost --name "NAME" --kind KIND',
    ),
    "more filtrate than liquid": (
        ("filter", ESSENCE, "--medium", "paper", "--in", "100mL", "--out", "300mL"),
        3,
        "300mL of filtrate is more than the 100mL that went onto the filter.",
        "Read both volumes again; note a rinse apart: pottle rinse ...",
    ),
    "a lot in itself": (
        ("add", ESSENCE, ESSENCE, "1mL"),
        3,
        "OE-001-5 cannot go into itself.",
        "Name the lot that it really was; pottle stock lists what is on hand.",
    ),
    "a lot in what it was made from": (
        ("add", ESSENCE, SYRUP, "1mL"),
        3,
        "OS-002-M was made from OE-001-5, so it cannot go into OE-001-5: a lot would contain "
        "itself.",
        "Start a rework lot and add both to it: pottle start --kind rework ...",
    ),
    "characters nobody can see": (
        ("note", "-", "a\x07b"),
        2,
        "The note holds the invisible character U+0007.",
        "Type it again without it.",
    ),
    "a very long text": (
        ("note", "-", "x" * 2001),
        2,
        "The note has 2001 characters; at most 2000 are kept.",
        "Say it in fewer words, or in several notes.",
    ),
    "a strike without a reason": (
        ("strike", "18"),
        4,
        "Entry 18 cannot be changed without a reason.",
        'Say why: --because "what was wrong"',
    ),
    "a correction of nothing": (
        ("correct", "18", "--because", "misread"),
        2,
        "Nothing to change in entry 18 was given.",
        "Say what is right with --set FIELD=VALUE, or when it happened with --at.",
    ),
    "an entry that is not there": (
        ("journal", "--entry", "999"),
        3,
        "There is no entry 999 in the book.",
        "pottle journal lists the entries with their numbers.",
    ),
    "labels of what is not bottled": (
        ("label", ESSENCE, "--out", "labels.pdf"),
        3,
        "OE-001-5 is not a packed lot, so it has no bottles to label.",
        'Fill it first: pottle bottle OE-001-5 "15 x 250mL"',
    ),
    "a paper in no folder": (
        ("record", ESSENCE, "--out", "nowhere/record.pdf"),
        5,
        "There is no folder nowhere.",
        "Make it first, or give another place.",
    ),
    "more than is there": (
        ("send", PACKED, "1000", "--to", "A stall"),
        4,
        "1000 is more than is there of BOS-001-S: the book says 9.",
        "Check the lot and the amount; if it is so, say why with --because.",
    ),
}


@pytest.mark.parametrize(("args", "code", "what", "todo"), REFUSALS.values(), ids=list(REFUSALS))
def test_what_cannot_be_is_said_in_a_sentence_and_a_next_step(
    shell: Shell, args: tuple[str, ...], code: int, what: str, todo: str
) -> None:
    before = shell.entries()
    answer = shell.run(*args)
    assert (answer.exit_code, answer.out) == (code, "")
    assert answer.complaints == [what, f"  {todo}"]
    assert shell.entries() == before


def test_nobody_writes_without_initials(shell: Shell) -> None:
    before, shell.by = shell.entries(), None
    answer = shell.run("note", "-", "x")
    assert answer.exit_code == 3
    assert answer.complaints == [
        "This entry does not say who made it.",
        "  Give your initials with --by or set POTTLE_BY.",
    ]
    assert shell.entries() == before


def test_a_time_to_come_is_refused_with_what_the_clock_says(shell: Shell) -> None:
    before = shell.entries()
    answer = shell.run("note", "-", "x", "--at", "2199-01-01")
    assert answer.exit_code == 3
    assert answer.err.startswith("2199-01-01 is in the future; the clock here says 20")
    assert shell.entries() == before


def test_all_that_is_wrong_with_an_entry_is_said_at_once(shell: Shell) -> None:
    answer = shell.run("look", SYRUP, "foggy", "--of", "spoon", "--temp", "warm")
    assert answer.exit_code == 2
    assert answer.complaints == [
        '"foggy" is not a grade of clarity.',
        "  Choose one of: bright, clear, hazy, opalescent, cloudy, milky.",
        '"spoon" is not a thing to look at.',
        "  Choose one of: neat, in-syrup, as-poured.",
        '"warm" is not a temperature in °C.',
        "  Write a number in °C.",
    ]


def test_a_held_lot_needs_a_reason_which_is_kept_as_a_deviation(shell: Shell) -> None:
    shell.run("hold", SPIRIT, "--because", "no papers")
    before = shell.entries()
    asked = shell.run("add", SYRUP, SPIRIT, "3mL")
    assert asked.exit_code == 4
    assert asked.complaints == [
        "NS-001-J is on hold.",
        "  Use another lot; if it must be this one, say why with --because.",
    ]
    assert shell.entries() == before
    done = shell.run("add", SYRUP, SPIRIT, "3mL", "--because", "The only one left.", "--json")
    assert (done.exit_code, done.json["deviations"]) == (0, [before + 2])
    told = shell.run("journal", "--entry", str(before + 2), "--json").json[0]
    assert (told["says"], told["reason"]) == ("NS-001-J is on hold.", "The only one left.")


@pytest.mark.parametrize("text", ["<b>bold</b>", "salt & sugar", "[red]x[/red]", "{x} %s"])
def test_markup_in_words_is_only_words(shell: Shell, text: str) -> None:
    assert shell.run("note", "-", text).out == f"Recorded 39, note: {text}.\n"
    assert text in shell.run("journal", "--last", "1").out


@pytest.mark.parametrize(
    ("args", "says", "todo"),
    [
        (("add", ESSENCE), "Missing argument 'SOURCE'.", "add --help"),
        (
            ("add", ESSENCE, SPIRIT, "3mL", "--tmep", "3"),
            "No such option: --tmep. Did you mean --temp?",
            "add --help",
        ),
        (("adds",), "No such command 'adds'. Did you mean add?", "--help"),
        (
            ("journal", "--last", "-3"),
            "Invalid value for '--last': -3 is not in the range x>=0.",
            "journal --help",
        ),
    ],
    ids=["too few words", "an unknown option", "an unknown command", "a figure below zero"],
)
def test_a_command_that_is_written_wrongly_is_bad_usage(
    shell: Shell, args: tuple[str, ...], says: str, todo: str
) -> None:
    answer = shell.run(*args)
    assert (answer.exit_code, answer.out) == (2, "")
    assert answer.complaints == [says, f"  See how it is called: pottle {todo}"]


def test_a_fault_of_its_own_ends_in_a_sentence_too(
    shell: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_args: object, **_words: object) -> None:
        raise ZeroDivisionError("division by zero")

    monkeypatch.setattr("cli.screens.lots.stock.stock", broken)
    answer = shell.run("stock")
    assert (answer.exit_code, answer.out) == (70, "")
    assert answer.complaints == [
        "Something went wrong inside pottle: ZeroDivisionError: division by zero.",
        "  pottle journal shows what the book has. POTTLE_DEBUG=1 shows where it went wrong.",
    ]


@pytest.mark.parametrize(
    ("args", "exit_code"),
    [
        (("note", "-", "A note."), 0),
        (("stock",), 0),
        (("lot", "OE-1-5"), 3),
        (("house", "--phone", "01 555 0100"), 0),
    ],
    ids=["records", "reads", "refused", "opens it twice"],
)
def test_a_command_has_let_go_of_the_book_when_it_ends(
    shell: Shell, args: tuple[str, ...], exit_code: int
) -> None:
    """The last to let go of a book takes the write-ahead log beside it away (sqlite.org/wal)."""
    assert shell.run(*args).exit_code == exit_code
    assert [path.name for path in shell.book.parent.glob("pottle.db*")] == ["pottle.db"]


def test_what_is_wrong_with_every_book_that_was_opened_is_told(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("ledger.service.evidence.verify.verify", lambda book: f"audit of {book}")
    monkeypatch.setattr(
        "reports.words.evidence.damage.damage_of", lambda audit: [(f"The {audit}.", "See.")] * 2
    )
    books: Any = ["one", "two"]
    told = [("The audit of one.", "See.")] * 2 + [("The audit of two.", "See.")] * 2
    assert Call(books=books).damage() == told


def test_every_option_that_all_commands_have_is_the_kept_one() -> None:
    check_golden("cli/asked/common.txt", told_options(module))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
