"""The spirit account, for machines."""

from collections import defaultdict
from datetime import date

from ledger.service.glass.spirit import SpiritReport, spirit_account
from reports.json.glass.spirit import spirit_answer
from tests.keeper import Keeper
from tests.kept.filled import bare, filled
from tests.path import Lots
from tests.reports.json.kept import check


def test_litres_of_pure_alcohol_are_text_and_balance(walked: tuple[Keeper, Lots]) -> None:
    """5 L of 96 % are 4.8 L; 440 mL of it were used."""
    keeper, lots = walked
    told = spirit_answer(spirit_account(keeper.book, "2026-01-01", "2026-12-31"), "pottle stock")
    assert (told.first_day, told.last_day) == (date(2026, 1, 1), date(2026, 12, 31))
    assert (told.received, told.used, told.in_spirit) == ("4.800000", "0.422400", "4.377600")
    went = sum(float(amount) for amount in told.sent.values()) + float(told.lost)
    assert round(float(told.received) - went, 6) == float(told.closing)
    assert [lot.code for lot in told.lots] == [lots.spirit]


def test_every_figure_of_the_account_is_the_kept_one(walked: tuple[Keeper, Lots]) -> None:
    keeper, _ = walked
    answer = spirit_answer(spirit_account(keeper.book, "2026-03-04", "2026-12-31"), "pottle stock")
    check("spirit", answer)


def test_every_part_of_an_account_stands_under_its_own_key() -> None:
    names: dict[str, str] = defaultdict(lambda: "Neutral spirit")
    answers = (spirit_answer(each(SpiritReport, names=names), "next") for each in (filled, bare))
    check("spirit_filled", *answers)
