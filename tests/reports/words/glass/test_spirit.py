"""The spirit account in rows, and what to know besides."""

from msgspec.structs import replace

from ledger.science.contents.spirit import SpiritAccount, SpiritLot
from ledger.service.glass.spirit import spirit_account
from reports.words.glass import spirit as module
from reports.words.glass.spirit import lines, lot_rows, notes, rows, spirit_sheet
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots


def test_the_account_goes_from_what_was_there_to_what_is(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    report = spirit_account(keeper.book, "2026-01-01", "2026-12-31")
    told = rows(report)
    assert told[:3] == [
        ["on hand before 2026-01-01", "0.000"],
        ["received", "4.800"],
        ["  sold", "0.010"],
    ]
    assert ["on hand after 2026-12-31", "4.768"] in told
    assert lot_rows(report) == [[lots.spirit, "Neutral spirit", "4.800", "0.422", "4.378"]]


def test_a_spirit_whose_strength_is_not_known_is_named(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    report = spirit_account(keeper.book, "2026-01-01", "2026-12-31")
    rounded = "Each line is rounded by itself, so a sum may be off by a mL or two."
    assert notes(report) == [
        rounded,
        "For the officer's own form; local law says what must be kept, and how long.",
    ]
    assert notes(replace(report, unknown=(lots.spirit,))) == [
        f"Missing: the strength of {lots.spirit} is not in the book, so it counts as nothing. "
        f"Record it: pottle measure {lots.spirit} abv READING --temp CELSIUS",
        rounded,
        "For the officer's own form; local law says what must be kept, and how long.",
    ]


def test_each_line_of_the_account_has_its_own_figure(walked: tuple[Keeper, Lots]) -> None:
    """Every figure another; what came back is told as coming back, never as negative."""
    keeper, _ = walked
    account = SpiritAccount(
        opening=1.001,
        received=20.002,
        used=3.003,
        sent={
            "sale": 4.004, "sample": 0.401, "tasting": 0.402, "on-return": 0.403,
            "returned": -0.404, "breakage": 0.405, "retained": 0.406, "destroyed": 0.407,
            "waste": 0.408, "elsewhere": 0.409,
        },
        lost=0.505,
        unexplained=-0.606,
        in_spirit=7.007,
        in_making=0.808,
        in_product=0.909,
    )  # fmt: skip
    report = replace(spirit_account(keeper.book, "2026-01-01", "2026-12-31"), account=account)
    assert rows(report) == [
        ["on hand before 2026-01-01", "1.001"],
        ["received", "20.002"],
        ["  broken", "0.405"],
        ["  destroyed", "0.407"],
        ["  elsewhere", "0.409"],
        ["  sent on sale or return", "0.403"],
        ["  kept back as samples", "0.406"],
        ["  came back", "0.404"],
        ["  sold", "4.004"],
        ["  given as samples", "0.401"],
        ["  poured at tastings", "0.402"],
        ["  thrown away", "0.408"],
        ["  lost in filters, cakes, heels and rinses", "0.505"],
        ["  unexplained, found by counts", "−0.606"],
        ["on hand after 2026-12-31", "8.724"],
        ["  of it spirit", "7.007"],
        ["  of it in batches", "0.808"],
        ["  of it in product", "0.909"],
        ["used: drawn from spirit into batches and rinses", "3.003"],
    ]


def test_each_line_of_the_account_says_whether_it_adds_or_takes_off(
    walked: tuple[Keeper, Lots],
) -> None:
    """What was found rather than lost adds; figures with a sign are never below nought."""
    keeper, _ = walked
    report = spirit_account(keeper.book, "2026-01-01", "2026-12-31")
    account = replace(report.account, sent={"returned": -0.25, "sale": 1.0}, unexplained=-0.5)
    told = [line.signed for line in lines(replace(report, account=account))]
    assert [(sign, what.strip(), litres) for sign, what, litres in told[1:6]] == [
        ("+", "received", "4.800"),
        ("+", "came back", "0.250"),
        ("−", "sold", "1.000"),
        ("−", "lost in filters, cakes, heels and rinses", f"{account.lost:.3f}"),
        ("+", "unexplained, found by counts", "0.500"),
    ]
    assert told[6][0] == "="


def test_a_lot_of_spirit_has_its_row_unless_nothing_moved_and_nothing_is_there(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, _ = walked
    report = spirit_account(keeper.book, "2026-01-01", "2026-12-31")
    lots = {
        "A-1": SpiritLot(4.0, 0.0, 4.0),
        "A-2": SpiritLot(0.0, 0.001, -0.001),
        "A-3": SpiritLot(0.0, 0.0, 0.0004),
        "A-4": SpiritLot(0.0003, 0.0, 0.0003),
    }
    names = {code: f"Spirit {code}" for code in lots}
    told = replace(report, account=replace(report.account, lots=lots), names=names)
    assert lot_rows(told) == [
        ["A-1", "Spirit A-1", "4.000", "0.000", "4.000"],
        ["A-2", "Spirit A-2", "0.000", "0.001", "−0.001"],
        ["A-4", "Spirit A-4", "0.000", "0.000", "0.000"],
    ]
    sheet = spirit_sheet(told)
    assert sheet.heads == ("what", "lot", "pure_alcohol_l_at_20c")
    assert sheet.rows[:2] == (
        ("on hand before 2026-01-01", "", "0.000"),
        ("received", "", "4.800"),
    )
    assert sheet.rows[-12:-6] == (
        ("received", "A-1", "4.000"),
        ("used", "A-1", "0.000"),
        ("left", "A-1", "4.000"),
        ("received", "A-2", "0.000"),
        ("used", "A-2", "0.001"),
        ("left", "A-2", "-0.001"),
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
