"""The words of one entry: read together, and all that is wrong told at once."""

from collections.abc import Iterator

import pytest

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries.choices import Grade, MaterialKind
from ledger.errors import InputError, LedgerError, RefusedError
from ledger.service.desk.reader import Words
from tests.heard import heard
from tests.keeper import Keeper

GRADES = "Choose one of: bright, clear, hazy, opalescent, cloudy, milky."


@pytest.fixture
def words(stocked: Keeper) -> Iterator[Words]:
    with stocked.reading() as connection:
        yield Words(connection, "US", "AB")


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
    assert words.lot("mine-1") == words.source("mine-1") == "MINE-1"
    assert (words.source_or_none("mine-1"), words.source_or_none(None)) == ("MINE-1", None)
    assert words.lot_or_none(None) is None
    assert words.text_or_none("  ", "note") is None
    assert words.scaled(None, 1000, "°C", "temperature") is None
    words.done()


def test_all_of_a_lot_is_what_is_left_and_of_an_empty_one_no_amount(
    stocked: Keeper, words: Words
) -> None:
    assert words.amount_of("NS-002-H", "all").amount == 2_000_000
    words.done()
    stocked.do("send", lot="SOO-001-3", amount="100mL", moved_as="breakage", because="it fell")
    with stocked.reading() as connection:
        after = Words(connection, "US", "AB")
        after.amount_of("SOO-001-3", "all")
        with pytest.raises(RefusedError) as raised:
            after.done()
    assert raised.value.problems == (
        (
            "By the book nothing is left of SOO-001-3, so all of it is no amount.",
            "Write how much it was, or count what is there: pottle count SOO-001-3 AMOUNT.",
        ),
    )


def test_a_material_comes_before_an_ending_of_a_code_and_looks_through_no_codes(
    stocked: Keeper,
) -> None:
    stocked.opens("receive", material="spirit", amount="1L", code="OLD-SPIRIT")
    with heard(stocked.book) as told, stocked.reading() as connection:
        words = Words(connection, "US", "AB")
        assert words.source("Spirit") == "NS-001-J"
        assert words.source("old-spirit") == "OLD-SPIRIT"
        assert not [one for one in told if "LIKE" in one]
        assert words.source("D-SPIRIT") == "OLD-SPIRIT"
    words.done()


def test_what_a_material_is_taken_from_is_noted_with_how_it_was_chosen(
    stocked: Keeper, words: Words
) -> None:
    assert words.source("orange-oil") == "SOO-001-3"
    told = {"material": "orange-oil", "amount": "50mL", "best_before": "2027-01-31"}
    second = stocked.opens("receive", **told)
    with stocked.reading() as connection:
        after = Words(connection, "US", "AB")
        assert after.source("Orange-Oil") == second
        after.done()
    words.done()
    assert (words.notes, after.notes) == (
        ["orange-oil was taken from SOO-001-3, the one lot on hand."],
        [
            f"orange-oil was taken from {second}, best before 2027-01-31, "
            "the first to expire of several lots."
        ],
    )


def test_a_number_is_read_whole_or_in_a_smaller_unit_and_called_what_it_is(words: Words) -> None:
    assert (words.whole("12", "number of days"), words.whole("", "number of days")) == (12, None)
    assert words.scaled("4.5", 1000, "°C", "temperature") == 4_500
    assert words.number("0.845", 1000, "g/mL", "density") == 845
    words.done()
    words.whole("half", "number of days")
    words.scaled("warm", 1000, "°C", "temperature")
    words.number("", 1000, "g/mL", "density")
    with pytest.raises(InputError) as raised:
        words.done()
    assert raised.value.problems == (
        ('"half" is not a number of days.', "Write a number."),
        ('"warm" is not a temperature in °C.', "Write a number in °C."),
        ("The density is missing.", "Write a number in g/mL."),
    )


def test_pieces_are_counted_unless_a_unit_is_given_and_all_is_all_of_a_lot(words: Words) -> None:
    assert words.pieces("4") == Quantity(4_000_000, Measure.UEACH, "4")
    assert words.pieces("30 mL").measure is Measure.UL
    assert words.pieces("0", may_be_nothing=True).amount == 0
    assert words.amount_of("NS-001-J", "4", counted=True).measure is Measure.UEACH
    assert words.amount_of("NS-001-J", " ALL ", counted=True).amount == 5_000_000
    assert words.amount_or_none("3 g") == Quantity(3_000, Measure.MG, "3 g")
    assert (words.amount_or_none(""), words.amount_or_none(None)) == (None, None)
    words.done()
    words.pieces("0")
    # What cannot be read is an amount still, so that the rest is read on.
    assert words.needed_amount("  ", "target") == Quantity(1, Measure.UL, "")
    with pytest.raises(LedgerError) as raised:
        words.done()
    assert raised.value.problems == (
        ("An amount must be more than zero, and 0 is not.", "Write how much there really was."),
        ("The target is missing.", "Write a number and a unit, such as 480mL."),
    )


def test_what_must_be_given_is_missing_where_there_are_no_words(words: Words) -> None:
    for text in (None, "", "  "):
        assert words.text(text, "note") == ""
        assert words.text_or_none(text, "note") is None
    words.number(None, 1000, "g/mL", "density")
    words.needed(None, Grade, "grade of clarity")
    assert words.one_of(None, Grade, "grade of clarity") is None
    with pytest.raises(InputError) as raised:
        words.done()
    assert raised.value.problems == (
        ("The note is missing.", "Give the note in words."),
        ("The density is missing.", "Write a number in g/mL."),
        ("The grade of clarity is missing.", GRADES),
    )


def test_what_cannot_be_read_is_noted_and_nothing_stands_in_for_it(words: Words) -> None:
    """What is judged next must not take it for a day, a time or a lot."""
    read = (
        words.day("someday"),
        words.minutes("a while"),
        words.scaled("warm", 1000, "°C", "temperature"),
    )
    assert read == (None, None, None)
    assert (words.number("much", 1, "", "amount"), words.whole("few", "count")) == (0, None)
    assert len(words.errors) == 5
