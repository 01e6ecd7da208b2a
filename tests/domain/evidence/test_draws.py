"""Order and marks of a trial's jars: who knows the root draws the same, with SHA-256 alone."""

from hashlib import sha256

import pytest
from msgspec.structs import replace

from ledger.domain.entries.trials import Evening, Plan, TwoLevels
from ledger.domain.evidence.draws import (
    CLEAR,
    MOST_DRAWN,
    drawn,
    jars_of,
    lot_code,
    mark,
    question_of,
    seed_of,
)
from ledger.domain.lots.codes import check_code
from tests.planned import PLAN

QUESTION = '{"factors":[["oil","SOO-001-3","SOO-002-1"]],"product":"orange essence"}'
SEED = sha256(bytes.fromhex("0a" * 32) + QUESTION.encode() + b" 8 4").digest()


def test_the_seed_is_the_hash_of_the_root_the_question_and_the_evenings() -> None:
    assert question_of(PLAN) == QUESTION
    assert seed_of(PLAN) == SEED


def test_the_jars_of_an_evening_stand_in_the_order_of_their_hashes() -> None:
    """Drawn here a second time, from what the guide says alone."""
    jars = drawn(SEED, [8, 4])
    wanted = [
        sorted(range(first, last), key=lambda row: sha256(SEED + f"jar {row}".encode()).hexdigest())
        for first, last in ((0, 8), (8, 12))
    ]
    assert [jar.row for jar in jars] == [*wanted[0], *wanted[1]]
    assert [jar.number for jar in jars] == list(range(1, 13))
    assert [jar.evening for jar in jars] == [1] * 8 + [2] * 4


def test_the_codes_are_three_digits_each_its_own_in_the_order_they_were_drawn() -> None:
    hashes = (sha256(SEED + f"code {number}".encode()).hexdigest() for number in range(40))
    wanted = list(dict.fromkeys(int(text[:16], 16) % 900 + 100 for text in hashes))[:12]
    assert [jar.blind for jar in drawn(SEED, [8, 4])] == wanted
    many = [jar.blind for jar in drawn(SEED, [8] * 50)]
    assert len(set(many)) == 400
    assert all(100 <= code <= 999 for code in many)


def test_another_root_or_another_question_draws_otherwise() -> None:
    other = replace(PLAN, root="0b" * 32)
    asked = replace(PLAN, factors=(TwoLevels("oil", "SOO-001-3", "SOO-004-X"),))
    found = [[jar.row for jar in drawn(seed_of(plan), [8, 4])] for plan in (PLAN, other, asked)]
    assert found[0] != found[1] != found[2]


def test_the_order_in_which_suspects_are_named_is_no_other_question() -> None:
    two = (TwoLevels("a", "1", "2"), TwoLevels("b", "3", "4"))
    one, other = (replace(PLAN, factors=factors) for factors in (two, two[::-1]))
    assert question_of(one) == question_of(other)


def test_every_order_of_four_comes_about_as_often() -> None:
    """Chi-squared of 24 orders in 2400 draws stays below its 99.9 % point, 49.7 (23 degrees)."""
    counts: dict[tuple[int, ...], int] = {}
    for number in range(2400):
        rows = tuple(jar.row for jar in drawn(sha256(str(number).encode()).digest(), [4]))
        counts[rows] = counts.get(rows, 0) + 1
    assert len(counts) == 24
    assert sum((count - 100) ** 2 / 100 for count in counts.values()) < 49.7


def test_a_mark_is_the_ending_of_a_lot_code_with_its_check() -> None:
    code = lot_code(PLAN, 417)
    assert code.startswith("T1-417-")
    assert check_code(code) is None
    assert mark(code) == code.removeprefix("T1-")


def test_more_jars_than_marks_are_not_drawn() -> None:
    with pytest.raises(ValueError, match=r"^So many jars have no codes\.$"):
        drawn(SEED, [MOST_DRAWN + 1])
    assert len({jar.blind for jar in drawn(SEED, [MOST_DRAWN])}) == MOST_DRAWN


def test_a_new_plan_draws_no_mark_that_is_read_for_another_and_an_old_one_keeps_its_own() -> None:
    plan = replace(PLAN, evenings=tuple(Evening(8) for _ in range(12)))
    endings = [[lot_code(one, jar.blind)[-1] for jar in jars_of(one)] for one in (plan, new(plan))]
    assert set(endings[0]) & set("1IL0OQ")
    assert not set(endings[1]) & set("1IL0OQ")
    blinds = [[jar.blind for jar in jars_of(one)] for one in (plan, new(plan))]
    clear = [blind for blind in blinds[0] if lot_code(plan, blind)[-1] not in "1IL0OQ"]
    assert blinds[1][: len(clear)] == clear


def new(plan: Plan) -> Plan:
    return replace(plan, draw=CLEAR)
