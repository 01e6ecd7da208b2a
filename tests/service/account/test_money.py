"""Money of currencies with no, two and three digits, from receipts to prices."""

import pytest

from ledger.domain.entries.plain import facts_to_plain
from ledger.errors import InputError, RefusedError
from ledger.service.account import money
from ledger.service.desk.book import How
from ledger.service.desk.clock import house_of
from ledger.service.glass.cost import cost
from ledger.service.lots.stock import stock, values_left
from ledger.service.masters.house import house
from ledger.store.read import walk
from reports.json.glass.cost import cost_answer
from reports.json.lots.stock import stock_rows
from reports.words.entries.sentence import sentence
from reports.words.glass.cost import head
from tests.keeper import Keeper


def test_what_was_spent_on_lots_and_on_what_they_are_made_of_is_reckoned_with_them_once(
    sqlite_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    """On 3, of which 1 is made, spirit 7 was spent to rinse; on 5, of which 7 is made, 8 and 7."""
    made_of = {1: [3], 7: [5], 8: []}
    spent = {3: [7], 5: [8, 7]}
    monkeypatch.setattr(
        walk, "all_behind", lambda _, lots: [each for lot in lots for each in made_of[lot]]
    )
    monkeypatch.setattr(
        money, "spent_on", lambda _, lots: [each for lot in lots for each in spent.get(lot, ())]
    )
    with sqlite_keeper.reading() as connection:
        assert money._with_spent(connection, [1]) == [1, 7, 8]


def blend_of(keeper: Keeper, paid: str, **words: str) -> str:
    spirit = keeper.opens("receive", material="spirit", amount="3L", cost=paid, **words)
    batch = keeper.opens("start", product="Blend", kind="blend", target="1L")
    keeper.do("add", lot=batch, source=spirit, amount="1L")
    return batch


@pytest.mark.parametrize(
    ("currency", "paid", "line", "figures"),
    [
        ("KWD", "1.234", "0.411 KWD for 1 L.", ("0.411", "0.0004113")),
        ("JPY", "1014", "338 JPY for 1 L.", ("338", "0.3380")),
        ("EUR", "10.14", "3.38 EUR for 1 L.", ("3.38", "0.003380")),
    ],
)
def test_each_currency_is_counted_in_its_own_coins(
    currency: str, paid: str, line: str, figures: tuple[str, str], sqlite_keeper: Keeper
) -> None:
    keeper = sqlite_keeper
    house(keeper.book, How("AB"), currency=currency)
    batch = blend_of(keeper, paid)
    card = cost(keeper.book, batch)
    told = cost_answer(card)
    assert head(card)[0] == f"{batch}, Blend: {line}"
    assert (told.total, told.per_ml) == figures
    lots = stock(keeper.book)
    rows = stock_rows(lots, values_left(keeper.book, lots), currency)
    assert {row.code: (row.value, row.currency) for row in rows}[batch] == (figures[0], currency)


def test_a_delivery_tells_what_it_cost_to_the_last_coin(sqlite_keeper: Keeper) -> None:
    house(sqlite_keeper.book, How("AB"), currency="KWD")
    made = sqlite_keeper.do("receive", material="spirit", amount="1L", cost="1.234", duty="0.5")
    assert sentence(made.entry) == "1 L of spirit, cost 1.234, of it duty 0.500"
    house(sqlite_keeper.book, How("AB"), currency="JPY")
    with pytest.raises(InputError) as raised:
        sqlite_keeper.do("receive", material="spirit", amount="1L", cost="337.86")
    assert raised.value.problems == (
        ('"337.86" is a finer cost than the book keeps.', "Round it and write it again."),
    )


def test_old_money_keeps_its_scale_when_the_currency_or_the_entry_changes(
    sqlite_keeper: Keeper,
) -> None:
    keeper = sqlite_keeper
    old = keeper.do("receive", material="spirit", amount="1L", cost="3.38", duty="1.01")
    assert "cost_digits" not in facts_to_plain(old.entry.facts)
    house(keeper.book, How("AB"), currency="KWD", hour="1.250")
    new = keeper.do("correct", entry=str(old.seq), changes="cost=3.379", because="misread")
    assert sentence(new.entry) == "1 L of spirit, cost 3.379, of it duty 1.010"
    house(keeper.book, How("AB"), currency="JPY")
    again = keeper.do("correct", entry=str(new.seq), changes="cost=4", because="misread")
    assert sentence(again.entry) == "1 L of spirit, cost 4.000, of it duty 1.010"
    found = house_of(keeper.book)
    assert found is not None
    assert (found.hour_minor, found.hour_digits) == (1250, 3)


def test_more_duty_than_cost_is_refused_in_the_coins_of_the_currency(
    sqlite_keeper: Keeper,
) -> None:
    house(sqlite_keeper.book, How("AB"), currency="JPY")
    with pytest.raises(RefusedError) as raised:
        blend_of(sqlite_keeper, "10", duty="11")
    assert raised.value.problems == (
        ("A duty of 11 cannot be part of a cost of 10.", "Give the cost with the duty in it."),
    )


def test_work_is_counted_in_the_coins_of_the_currency(sqlite_keeper: Keeper) -> None:
    house(sqlite_keeper.book, How("AB"), currency="KWD", hour="1.250")
    batch = blend_of(sqlite_keeper, "3.000")
    sqlite_keeper.do("finish", lot=batch, volume="1L", labour="30min")
    assert cost_answer(cost(sqlite_keeper.book, batch)).labour == "0.625"
    assert cost_answer(cost(sqlite_keeper.book, batch, hour="2.001")).labour == "1.000"
