"""What a complaint points to, in words."""

from types import SimpleNamespace
from typing import Any

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Complaint, is_of
from ledger.service.goods.triage import SharedInput, triage
from reports.words.goods import triage as module
from reports.words.goods.triage import triage_lines, triage_step
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots


def test_what_is_still_to_ask_is_told_first_and_a_second_complaint_asks_for_a_hold(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    done = keeper.do("complain", lot=lots.packed, symptom="ring", stored="cellar", mixed="1 to 7")
    assert is_of(done.entry, Complaint)
    found = triage(keeper.book, done.entry)
    lines = triage_lines(found)
    number = done.entry.seq
    assert lines[:2] == [
        "Still to ask: when it was opened, a photo. When it is known: pottle correct "
        f'{number} --set opened=ANSWER --because "asked later"',
        "Last look at what it was filled from, 2026-03-04 10:50: cloudy, neat. No bottle was kept "
        "back.",
    ]
    assert "1 other complaint of BOS-001-S: 2026-03-04 cloudy, to be answered in 7 d." in lines
    assert triage_step(found) == f'pottle hold {lots.packed} --because "WHY"'


def test_five_shared_inputs_are_told_and_one_more_as_one_more(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    done = keeper.do("complain", lot=lots.packed, symptom="ring")
    assert is_of(done.entry, Complaint)
    found = triage(keeper.book, done.entry)
    oil = replace(found.lot, code="SOO-001-3", name="Sweet orange oil")
    line = "  SOO-001-3 Sweet orange oil: 2 complaints of 1 other lot"
    for many, more in ((5, []), (6, ["  and 1 more input"]), (7, ["  and 2 more inputs"])):
        lines = triage_lines(replace(found, shared=(SharedInput(oil, 2, 1),) * many))
        at = lines.index("Other lots complained of are made of the same inputs:")
        assert lines[at + 1 :] == [line] * 5 + more
    assert triage_lines(found)[-1] == "No other lot made of the same inputs is complained of."


def test_a_complaint_about_clarity_points_to_what_the_last_look_tells(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    done = keeper.do("complain", lot=lots.packed, symptom="cloudy")
    assert is_of(done.entry, Complaint)
    found = triage(keeper.book, done.entry)
    of_bulk = found.look
    assert of_bulk is not None
    clear = replace(
        of_bulk, draft=replace(of_bulk.draft, facts=replace(of_bulk.facts, grade="clear"))
    )
    own = {"is_of_the_lot": True, "is_fresh": True}
    cases: tuple[tuple[dict[str, Any], str], ...] = (
        ({}, "No bottle of it was looked at: look at a bottle of it today."),
        ({"is_of_the_lot": True}, "That was before the complaint: look at a bottle of it today."),
        (own, "So a bottle of it is not clear either: that points to the lot."),
        (
            {**own, "kept_back": True, "look": clear},
            "So the bottle kept back is clear: that points to how theirs was stored or mixed, not "
            "to the lot.",
        ),
    )
    for changes, line in cases:
        assert line in triage_lines(replace(found, **changes))
    unseen = triage_lines(replace(found, look=None))
    assert f"Nobody has looked at {lots.packed} or what it was filled from." in unseen
    assert not any(word in " ".join(unseen) for word in ("look at a bottle", "points to"))


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


@pytest.mark.parametrize("is_fresh", [True, False])
@pytest.mark.parametrize("is_of_the_lot", [True, False])
def test_only_a_fresh_look_at_the_lot_itself_is_no_more_asked_for(
    is_fresh: bool, is_of_the_lot: bool
) -> None:
    found: Any = SimpleNamespace(
        lot=SimpleNamespace(code="A-1"), is_barred=False, is_unclear_here=False, others=(),
        shared=(), is_fresh=is_fresh, is_of_the_lot=is_of_the_lot,
    )  # fmt: skip
    enough = is_fresh and is_of_the_lot
    asked = 'note A-1 "WHAT THE CUSTOMER WAS TOLD"' if enough else "look A-1 GRADE --of neat"
    assert triage_step(found) == f"pottle {asked}"
