"""What is done once for many rows is told by the first of them, with all of them summed."""

import pytest
from msgspec.structs import replace

from ledger.service.copies.intake.row_acts import Act
from ledger.service.copies.intake.row_sums import _sum, summed


def act(line: int, verb: str = "receive", **words: str) -> Act:
    turn = (f"2026-03-{line:02}", 0, line, 0)
    return Act(verb, words, {}, "may.csv", line, f"{line:016x}", turn, is_once=True, is_summed=True)


def told(acts: list[Act]) -> list[dict[str, str]]:
    return [dict(each.words) for each in summed(acts)]


def test_the_earliest_of_a_code_has_the_sum_of_all_and_the_others_stay_as_they_are() -> None:
    late = act(4, code="an-1", amount="31.5 mL", cost="3.02", duty="1")
    early = act(2, code="AN-1", amount="62 mL", cost="5.95")
    other = act(3, code="AN-2", amount="5 mL", cost="1")
    elsewhere = act(5, "start", code="AN-1", amount="7 mL")
    whole = {"code": "AN-1", "amount": "93.5 mL", "cost": "8.97", "duty": "1"}
    assert told([late, early, other, elsewhere]) == [
        *(dict(late.words), whole, dict(other.words), dict(elsewhere.words)),
    ]


def test_what_is_not_told_for_all_rows_together_or_cannot_be_read_is_no_part_of_a_sum() -> None:
    rows = [act(2, code="A", amount="1 L"), act(3, code="A", amount="2 L")]
    assert [each["amount"] for each in told(rows)] == ["3 L", "2 L"]
    for change in ({"is_summed": False}, {"is_broken": True}):
        changed = [rows[0], replace(rows[1], **change)]
        assert summed(changed) == changed


def test_rows_without_a_code_are_summed_together_and_other_units_stay_apart() -> None:
    assert [each["amount"] for each in told([act(2, amount="1 L"), act(3, amount="2 L")])] == [
        *("3 L", "2 L"),
    ]
    apart = [act(2, code="A", amount="1 L", cost="2"), act(3, code="A", amount="5 mL", cost="3")]
    assert told(apart)[0] == {"code": "A", "amount": "1 L", "cost": "5"}


@pytest.mark.parametrize(
    ("texts", "whole"),
    [
        (["31.5 mL", None, "62 mL"], "93.5 mL"),
        (["0.1", "0.2"], "0.3"),
        (["-1.50", "2"], "0.50"),
        (["1 x 250 mL", "2 x 250 mL"], "3 x 250 mL"),
        (["1 L", "5 mL"], None),
        (["1 L", "some"], None),
        ([None, ""], None),
        ([], None),
    ],
)
def test_amounts_of_one_unit_are_summed_exactly(texts: list[str | None], whole: str | None) -> None:
    assert _sum(texts) == whole
