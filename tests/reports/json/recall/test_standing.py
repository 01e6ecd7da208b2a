"""A recall, for machines."""

from ledger.service.recall.standing import recall_of
from reports.json.recall.standing import recall_plain
from tests.keeper import Keeper
from tests.path import Lots


def test_a_drill_tells_where_all_bottles_are_and_whom_to_call(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    told = recall_plain(recall_of(keeper.book, lots.oil), drill=True)
    assert (told["lot"], told["drill"], told["begun"]) == (lots.oil, True, None)
    assert told["not_recalled"] == [lots.oil, lots.essence, lots.syrup, lots.packed]
    balance = {key: told["balance"][key] for key in ("made", "on_hand", "sent", "unit")}
    assert balance == {"made": "15000000", "on_hand": "9000000", "sent": "6000000", "unit": "ueach"}
    (call,) = told["to_call"]
    assert (call["party"], call["may_have"], call["spoken_to"]) == (
        "Bridge Street Stall",
        "6000000",
        False,
    )
    assert told["next"] == f'pottle recall {lots.oil} --because "WHY"'


def test_a_call_says_what_is_left_there(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("recall", lot=lots.oil, because="throws haze")
    words = {"party": "Bridge Street Stall", "reached": "spoken", "still_there": "2"}
    keeper.do("contact", lot=lots.oil, **words)
    (call,) = recall_plain(recall_of(keeper.book, lots.oil), drill=False)["to_call"]
    (told,) = call["contacts"]
    assert (told["reached"], told["still_there"], told["unit"]) == ("spoken", "2000000", "ueach")
    assert call["spoken_to"] is True
