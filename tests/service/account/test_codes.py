"""The words for a lot: its code, an ending of it, or a dot for the one in hand."""

from datetime import date

import pytest

from ledger.domain.lots.lot import by_date
from ledger.errors import InputError, LedgerError, RefusedError
from ledger.service.account import codes as codes_of
from ledger.service.account.codes import first_of_material, known_lot, resolve_lot, whole_code
from ledger.store.engine.connections import Connection
from ledger.store.read.received import deliveries
from tests.keeper import Keeper


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("NS-001-J", "NS-001-J"),
        (" ns-001-j ", "NS-001-J"),
        ("001-J", "NS-001-J"),
        ("002-h", "NS-002-H"),
        ("mine-1", "MINE-1"),
        ("NE-1", "MINE-1"),
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
                'A lot code holds only A-Z, 0-9 and -, and this one holds "%".',
                "Read the code again and write it so.",
            ),
        ),
        (
            " ",
            InputError,
            ("No lot code was given.", "Write the code of a lot, such as OIL-001-D."),
        ),
        (
            "00N",
            RefusedError,
            ("There is no lot 00N in the book.", "pottle stock lists the lots that are."),
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
    """Five are told one by one, more only as more."""
    five = "W1-XYZ, W2-XYZ, W3-XYZ, W4-XYZ, W5-XYZ"
    for number in range(1, 7):
        stocked.do("receive", material="water", amount="1L", code=f"W{number}-XYZ")
        if number < 5:
            continue
        with stocked.reading() as connection, pytest.raises(RefusedError) as raised:
            resolve_lot(connection, "xyz")
        more = " and more" if number > 5 else ""
        assert raised.value.problems == (
            (f"XYZ is the ending of {number} lots: {five}{more}.", "Give more of the code."),
        )


@pytest.mark.parametrize("text", ["h", "J", "1-J", "-J"])
def test_the_check_letter_and_a_figure_name_nothing(text: str, stocked: Keeper) -> None:
    with stocked.reading() as connection, pytest.raises(RefusedError) as raised:
        resolve_lot(connection, text)
    assert raised.value.problems == (
        (
            f"{text.upper()} is too little of a code to name a lot: many end so.",
            "Give at least 3 characters of it, such as 001-3 of SOO-001-3.",
        ),
    )


def by_material(connection: Connection, material: str, today: date) -> tuple[str, bool]:
    """Return the code of the lot that a material names, and whether there are others."""
    lot, is_choice = first_of_material(connection, material, today)
    return lot.code, is_choice


@pytest.mark.parametrize("at_first", [1, 2, 8])
def test_a_material_names_the_lot_that_expires_first(
    at_first: int, stocked: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Barred lots, empty ones and those past their date are passed over."""
    monkeypatch.setattr(codes_of, "FIRST_ASKED", at_first)
    codes = [
        stocked.opens("receive", material="water", amount="1L", best_before=day)
        for day in ("2026-12-01", "2026-06-01", "2026-01-01", "2026-05-01")
    ]
    stocked.do("judge", lot=codes[3], verdict="hold", because="smells")
    today = stocked.clock.now.date()
    with stocked.reading() as connection:
        assert by_material(connection, "water", today) == (codes[1], True)
    with stocked.reading() as connection, pytest.raises(RefusedError) as raised:
        first_of_material(connection, "ink", today)
    assert raised.value.problems == (
        (
            "There is nothing of ink on hand that may be used.",
            "Record a delivery: pottle receive ink AMOUNT; or name a lot by its code.",
        ),
    )


def test_past_its_date_a_lot_is_taken_where_there_is_no_other(stocked: Keeper) -> None:
    old = stocked.opens("receive", material="water", amount="1L", best_before="2026-01-01")
    today = stocked.clock.now.date()
    with stocked.reading() as connection:
        assert by_material(connection, "water", today) == (old, False)
    new = stocked.opens("receive", material="water", amount="1L")
    with stocked.reading() as connection:
        assert by_material(connection, "water", today) == (new, False)


def test_a_dot_stays_with_the_bulk_while_a_bottle_of_it_is_left(stocked: Keeper) -> None:
    batch = stocked.opens("start", product="Plain", kind="blend", target="1L")
    stocked.do("add", lot=batch, source="NS-001-J", amount="1L")
    stocked.do("finish", lot=batch, volume="1L")
    stocked.do("judge", lot=batch, verdict="release", because="a test", anyway="yes")
    first = stocked.do("bottle", source=batch, pack="3 x 250mL")
    assert first.remarks[-1] == (
        f"250 mL of {batch} are left to fill, so a dot goes on standing for it.",
        f"Name the bottles by their code, {first.code}.",
    )
    with stocked.reading() as connection:
        assert resolve_lot(connection, ".", "AB") == batch
    stocked.do("note", text="Filled well.", lot=str(first.code))
    with stocked.reading() as connection:
        assert resolve_lot(connection, ".", "AB") == first.code
    # A heel that fills no bottle more is not what one goes on with.
    second = stocked.do("bottle", source=batch, pack="1 x 200mL")
    with stocked.reading() as connection:
        assert resolve_lot(connection, ".", "AB") == second.code


def test_a_dot_is_the_lot_one_wrote_about_last_but_deliveries(stocked: Keeper) -> None:
    stocked.do("note", text="Smells well.", lot="SOO-001-3")
    stocked.do("receive", material="water", amount="1L")
    with stocked.reading() as connection:
        assert resolve_lot(connection, ".", "AB") == "SOO-001-3"


def test_a_whole_code_that_is_not_in_the_book_is_refused(stocked: Keeper) -> None:
    with stocked.reading() as connection:
        assert known_lot(connection, "NS-001-J").opened.code == "NS-001-J"
        with pytest.raises(RefusedError) as raised:
            known_lot(connection, "001-J")
    assert raised.value.problems == (
        ("The lot 001-J is not in the book.", "pottle stock lists the lots that are."),
    )


def test_lots_of_a_material_come_in_the_order_in_which_all_lots_are_told(stocked: Keeper) -> None:
    """By their days, those without one last; of one day or none, as they came."""
    early = {"at": "2026-03-01 08:00", "because": "found late"}
    for more in ({"best_before": "2027-06-30"}, {"best_before": "2027-01-31"}, {}):
        stocked.do("receive", material="water", amount="1L", **more)
        stocked.do("receive", material="water", amount="2L", **more, **early)
    with stocked.reading() as connection:
        found = list(codes_of._usable(connection, deliveries(connection, "water")))
    assert len(found) >= 6
    assert found == sorted(found, key=by_date)
    assert found != sorted(found, key=lambda lot: (lot.best_before or date.max, lot.seq))


def test_what_can_be_no_code_is_no_lot_and_a_dot_of_nobody_is_refused(stocked: Keeper) -> None:
    with stocked.reading() as connection:
        found = [whole_code(connection, text) for text in ("ns-001-j", "001-J", "a b?", "NS-001-K")]
        assert [row and row.opened.code for row in found] == ["NS-001-J", None, None, None]
        with pytest.raises(RefusedError) as raised:
            resolve_lot(connection, ".", None)
    assert raised.value.problems == (
        (
            "A dot stands for the lot that somebody has in hand, and no initials are given.",
            "Give --by INITIALS, set POTTLE_BY, or name the lot by its code.",
        ),
    )
