"""A recall, for machines."""

from ledger.service.recall.standing import Recall, recall_of
from reports.json.kit.answer import Amount
from reports.json.recall.recall import recall_answer
from tests.keeper import Keeper
from tests.kept.filled import bare, filled
from tests.path import Lots
from tests.reports.json.kept import check
from tests.reports.words.recall.story import recalled


def test_a_drill_tells_where_all_bottles_are_and_whom_to_call(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    told = recall_answer(recall_of(keeper.book, lots.oil), drill=True, took_ms=1)
    assert (told.code, told.drill, told.begun) == (lots.oil, True, None)
    assert told.not_recalled_codes == (lots.oil, lots.essence, lots.syrup, lots.packed)
    balance = told.balance
    assert balance.made == Amount("15", "each")
    assert (balance.on_hand, balance.sent) == (Amount("9", "each"), Amount("6", "each"))
    (call,) = told.to_call
    assert (call.party, call.may_have, call.spoken_to) == (
        "Bridge Street Stall",
        Amount("6", "each"),
        False,
    )
    assert told.next == f'pottle recall {lots.oil} --because "WHY"'


def test_a_call_says_what_is_left_there(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("recall", lot=lots.oil, because="throws haze")
    words = {"party": "Bridge Street Stall", "reached": "spoken", "still_there": "2"}
    keeper.do("contact", lot=lots.oil, **words)
    (call,) = recall_answer(recall_of(keeper.book, lots.oil), drill=False, took_ms=1).to_call
    (told,) = call.contacts
    assert (told.reached, told.still_there) == ("spoken", Amount("2", "each"))
    assert call.spoken_to is True


def test_every_field_of_a_recall_in_which_all_happens_is_the_kept_one(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    answer = recall_answer(recalled(keeper, lots), drill=False, took_ms=7, paths=("pack.pdf",))
    check("recall", answer)


def test_every_part_of_a_recall_stands_under_its_own_key_and_what_there_is_none_of_is_null() -> (
    None
):
    """Closed, with why although, and calls that say what is left."""
    full = filled(Recall)
    check(
        "recall_filled",
        recall_answer(full, drill=True, took_ms=7, paths=("pack.pdf", "pack.csv")),
        recall_answer(bare(Recall), drill=False, took_ms=0),
    )
