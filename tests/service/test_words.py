"""The words of one entry: what is read, what is refused and in which words."""

from collections.abc import Iterator
from enum import StrEnum
from typing import TypeGuard

import pytest

from ledger.domain.entries import words as words_of_the_trade
from ledger.domain.entries.words import Grade, MaterialKind, ProductKind
from ledger.domain.quantity import Measure
from ledger.errors import InputError, LedgerError, RefusedError
from ledger.service.words import LONGEST_TEXT, Words, read_scaled, read_text, read_word, resolve_lot
from tests.keeper import Keeper


def is_list(item: object) -> TypeGuard[type[StrEnum]]:
    return isinstance(item, type) and issubclass(item, StrEnum) and item is not StrEnum


WORDS = [word for item in vars(words_of_the_trade).values() if is_list(item) for word in item]
GRADES = "Choose one of: bright, clear, hazy, opalescent, cloudy, milky."


@pytest.fixture
def stocked(sqlite_keeper: Keeper) -> Keeper:
    """A book with lots NS-001-J, NS-002-H, SOO-001-3 and MINE-1."""
    sqlite_keeper.do("receive", material="spirit", amount="5L")
    sqlite_keeper.do("receive", material="spirit", amount="2L")
    sqlite_keeper.do("receive", material="orange-oil", amount="100mL")
    sqlite_keeper.do("receive", material="carb", amount="1kg", code="mine-1")
    return sqlite_keeper


@pytest.fixture
def words(stocked: Keeper) -> Iterator[Words]:
    with stocked.reading() as connection:
        yield Words(connection, "US", "AB")


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("NS-001-J", "NS-001-J"),
        (" ns-001-j ", "NS-001-J"),
        ("001-J", "NS-001-J"),
        ("002-h", "NS-002-H"),
        ("H", "NS-002-H"),
        ("mine-1", "MINE-1"),
        ("E-1", "MINE-1"),
        ("SOO-001-3", "SOO-001-3"),
    ],
)
def test_a_lot_is_named_by_its_code_or_an_ending_of_one_lot_only(
    text: str, code: str, stocked: Keeper
) -> None:
    with stocked.reading() as connection:
        assert resolve_lot(connection, text) == code


@pytest.mark.parametrize(
    ("text", "error", "problem"),
    [
        (
            "NS-001-K",
            RefusedError,
            (
                "The lot code NS-001-K ends in K, but NS-001 calls for J, so at least one "
                "character is wrong: read the code again. Near to it: NS-001-J, NS-002-H, "
                "SOO-001-3.",
                "pottle stock lists the lots that are.",
            ),
        ),
        (
            "NS-003-F",
            RefusedError,
            (
                "There is no lot NS-003-F in the book. Near to it: NS-001-J, NS-002-H.",
                "pottle stock lists the lots that are.",
            ),
        ),
        (
            "QQQQQQ",
            RefusedError,
            ("There is no lot QQQQQQ in the book.", "pottle stock lists the lots that are."),
        ),
        (
            "%",
            InputError,
            (
                "A lot code holds only A-Z, 0-9 and -, and this one holds '%'.",
                "Read the code again and write it so.",
            ),
        ),
        (
            " ",
            InputError,
            ("No lot code was given.", "Write the code of a lot, such as OIL-007-1."),
        ),
        (
            "N",
            RefusedError,
            ("There is no lot N in the book.", "pottle stock lists the lots that are."),
        ),
        (
            ".",
            RefusedError,
            (
                "There is no lot in hand yet for a dot to stand for.",
                "Name the lot by its code.",
            ),
        ),
    ],
    ids=["slip", "not yet", "unlike", "pattern", "nothing", "no ending", "nothing in hand"],
)
def test_what_names_no_lot_is_refused(
    text: str, error: type[LedgerError], problem: tuple[str, str], stocked: Keeper
) -> None:
    with stocked.reading() as connection, pytest.raises(error) as raised:
        resolve_lot(connection, text, "AB")
    assert raised.value.problems == (problem,)


def test_an_ending_of_several_lots_is_refused_with_their_codes(stocked: Keeper) -> None:
    for number in range(1, 8):
        stocked.do("receive", material="water", amount="1L", code=f"W{number}-X")
    with stocked.reading() as connection, pytest.raises(RefusedError) as raised:
        resolve_lot(connection, "x")
    assert raised.value.problems == (
        (
            "X is the ending of 7 lots: W1-X, W2-X, W3-X, W4-X, W5-X and more.",
            "Give more of the code.",
        ),
    )


def test_a_dot_is_the_lot_one_wrote_about_last_but_deliveries(stocked: Keeper) -> None:
    stocked.do("note", text="Smells well.", lot="SOO-001-3")
    stocked.do("receive", material="water", amount="1L")
    with stocked.reading() as connection:
        assert resolve_lot(connection, ".", "AB") == "SOO-001-3"


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("washed essence", ProductKind.WASHED_ESSENCE),
        ("Washed_Essence", ProductKind.WASHED_ESSENCE),
        (" syrup ", ProductKind.SYRUP),
    ],
)
def test_a_word_of_a_list_is_read_however_it_is_joined(text: str, word: ProductKind) -> None:
    assert read_word(text, ProductKind, "kind of product") is word


@pytest.mark.parametrize("word", WORDS, ids=repr)
def test_every_word_of_every_list_is_read_as_it_is_written(word: StrEnum) -> None:
    assert read_word(str(word), type(word), "word") is word
    assert read_word(f" {str(word).upper().replace('-', '_')} ", type(word), "word") is word


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("murky", '"murky" is not a grade of clarity.'),
        ("", "The grade of clarity is missing."),
    ],
)
def test_a_word_outside_its_list_is_refused_with_the_list(text: str, what: str) -> None:
    with pytest.raises(InputError) as raised:
        read_word(text, Grade, "grade of clarity")
    assert raised.value.problems == ((what, GRADES),)


def test_free_text_is_kept_on_one_line() -> None:
    assert read_text("  a little\n hazy,\tlike tea ", "note") == "a little hazy, like tea"


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        (" \n", ("The note is missing.", "Give the note in words.")),
        (
            "x" * (LONGEST_TEXT + 1),
            (
                "The note has 2001 characters; at most 2000 are kept.",
                "Say it in fewer words, or in several notes.",
            ),
        ),
        (
            "left\u202eright",
            ("The note holds the invisible character U+202E.", "Type it again without it."),
        ),
        (
            "nul\x00",
            ("The note holds the invisible character U+0000.", "Type it again without it."),
        ),
    ],
    ids=["nothing", "long", "turned about", "nul"],
)
def test_text_that_cannot_be_kept_is_refused(text: str, problem: tuple[str, str]) -> None:
    with pytest.raises(InputError) as raised:
        read_text(text, "note")
    assert raised.value.problems == (problem,)


@pytest.mark.parametrize(
    ("text", "scale", "unit", "number"),
    [
        ("0.845", 1_000_000, "g/mL", 845_000),
        ("0,845 g/mL", 1_000_000, "g/mL", 845_000),
        ("20", 1000, "°C", 20_000),
        ("20C", 1000, "°C", 20_000),
        ("-4.5 °C", 1000, "°C", -4_500),
        ("−4", 1000, "°C", -4_000),
        ("+4", 1000, "°C", 4_000),
        ("96%", 1000, "%", 96_000),
        ("40 kpa", 1000, "kPa", 40_000),
        ("20 μm", 1000, "µm", 20_000),
        ("48.00", 100, "", 4_800),
        ("12", 1, "", 12),
    ],
)
def test_a_number_is_read_in_its_smaller_unit(
    text: str, scale: int, unit: str, number: int
) -> None:
    assert read_scaled(text, scale, unit, "number") == number


@pytest.mark.parametrize(
    ("text", "scale", "unit", "problem"),
    [
        ("warm", 1000, "°C", ('"warm" is not a temperature in °C.', "Write a number in °C.")),
        ("68 F", 1000, "°C", ('"68 F" is not a temperature in °C.', "Write a number in °C.")),
        ("1,000.5", 1, "", ('"1,000.5" is not a temperature.', "Write a number.")),
        ("1e3", 1, "", ('"1e3" is not a temperature.', "Write a number.")),
        ("٣", 1, "", ('"٣" is not a temperature.', "Write a number.")),
        (
            "20.0001",
            1000,
            "°C",
            (
                '"20.0001" is a finer temperature than the book keeps.',
                "Round it and write it again.",
            ),
        ),
        (
            f"20.{'0' * 30}1",
            1000,
            "°C",
            (
                f'"20.{"0" * 30}1" is a finer temperature than the book keeps.',
                "Round it and write it again.",
            ),
        ),
        (
            "1.5",
            1,
            "",
            ('"1.5" is a finer temperature than the book keeps.', "Round it and write it again."),
        ),
        (
            "9" * 16,
            1,
            "",
            (f'"{"9" * 16}" is too large for a temperature.', "Check the number."),
        ),
    ],
)
def test_what_is_no_such_number_is_refused(
    text: str, scale: int, unit: str, problem: tuple[str, str]
) -> None:
    with pytest.raises(InputError) as raised:
        read_scaled(text, scale, unit, "temperature")
    assert raised.value.problems == (problem,)


@pytest.mark.parametrize("sort", [MaterialKind.BOTTLE, MaterialKind.LABEL])
def test_a_bare_number_counts_pieces_of_what_is_counted(sort: MaterialKind, words: Words) -> None:
    amount = words.amount("100", sort)
    words.done()
    assert (amount.amount, amount.measure) == (100_000_000, Measure.UEACH)


def test_a_bare_number_of_a_liquid_is_refused(words: Words) -> None:
    words.amount("100", MaterialKind.OIL)
    with pytest.raises(InputError) as raised:
        words.done()
    assert raised.value.problems == (
        ("100 has no unit.", "Write the unit too, as in 30 mL, 15 g or 200 each."),
    )


@pytest.mark.parametrize(("text", "minutes"), [("90", 90), ("2h", 120), ("", None), (None, None)])
def test_a_bare_duration_is_in_minutes(text: str | None, minutes: int | None, words: Words) -> None:
    assert words.minutes(text) == minutes
    words.done()


def test_all_that_is_wrong_is_told_once_and_in_order(words: Words) -> None:
    words.lot("QQQQQQ")
    words.amount("0mL")
    words.amount("5 oz")
    words.amount("5 oz")
    words.needed("murky", Grade, "grade of clarity")
    with pytest.raises(RefusedError) as raised:
        words.done()
    assert raised.value.problems == (
        ("There is no lot QQQQQQ in the book.", "pottle stock lists the lots that are."),
        ("An amount must be more than zero, and 0mL is not.", "Write how much there really was."),
        ("5 oz could be a volume or a weight.", "Write US fl oz, imp fl oz or oz av."),
        ('"murky" is not a grade of clarity.', GRADES),
    )


def test_nothing_wrong_raises_nothing(words: Words) -> None:
    assert words.lot("mine-1") == "MINE-1"
    assert words.lot_or_none(None) is None
    assert words.text_or_none("  ", "note") is None
    assert words.scaled(None, 1000, "°C", "temperature") is None
    words.done()
