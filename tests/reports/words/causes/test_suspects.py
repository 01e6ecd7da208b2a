"""Suspects in words: a maker reads no more than the test at its level says."""

import re
from fractions import Fraction
from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.lot import Lot, Status
from ledger.science.statistics.suspects import Conclusion, Level, Observed
from reports.json.causes.suspects import suspects_answer
from reports.words.causes import suspects as module
from reports.words.causes.suspects import HEADS, suspicion_lines, suspicion_rows, table_note
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.reports.words.causes.suspicions import NONE, lots, suspicion
from tests.science.statistics.judged import in_turn


def said(observed: list[Observed]) -> list[str]:
    return suspicion_lines(suspicion(observed))


def test_a_cause_is_said_with_counts_at_its_level_and_chance() -> None:
    lines = said(in_turn("AW", "W", syrups=2))
    assert lines[0] == (
        "10 lots of Syrup failed; 20 comparable ones were clear. They come from 15 batches of "
        "essence."
    )
    assert lines[-1].startswith(
        "Cause shown: A was in 5 of the 5 batches of essence that failed and in 0 of the 10 that "
        "stayed clear. Chance alone does so once in 3003 times; allowing for "
    )
    assert lines[-1].count(" tested and for being asked again after every failure, p is ") == 1


def test_two_batches_are_a_lead_and_a_hold_of_it_a_precaution() -> None:
    assert said(in_turn("A", "", each=2, syrups=3, gap=5))[-2:] == [
        "A lead, not yet evidence: A was in 2 of the 2 batches of essence that failed and in 0 of "
        "the 8 that stayed clear, which chance alone does once in 45 times. Two batches of essence "
        "cannot decide this; a trial can.",
        "Holding it meanwhile is a precaution, not a verdict: pottle hold A --because "
        '"suspected in 6 failed lots"',
    ]


def test_what_cannot_be_told_apart_is_said_and_nothing_is_named() -> None:
    observed = lots("AB", "")
    assert said(observed)[-2] == (
        "Cannot be told apart: A and B. A was in 5 of the 5 lots that failed and in 0 of the 7 "
        "that stayed clear, which chance alone does once in 792 times; the others explain the "
        "failures as well or nearly."
    )
    assert suspects_answer(suspicion(observed)).named == ()


def test_what_simply_followed_is_said_to_need_turns_or_a_trial() -> None:
    observed = [
        replace(item, begun=f"2026-03-{25 - n:02d}") for n, item in enumerate(lots("A", ""))
    ]
    lines = said(observed)
    assert any(line.startswith("Cannot be told apart: A and begun 2026-03-21 to ")
               for line in lines)  # fmt: skip
    assert (
        "What simply followed something else cannot be told from what changed with the time; only "
        "lots used turn about or a trial can tell."
    ) in lines


@pytest.mark.parametrize(
    ("bad", "good", "sentence"),
    [
        (0, 4, "Only lots that failed can show what they share."),
        (1, 9, "One failed lot alone cannot show what failed lots share."),
        (4, 0, "Every lot that could be compared failed, so nothing tells them apart."),
        (2, 2, "Two lots that failed cannot decide what is behind it. Look at more lots."),
    ],
    ids=["none", "one", "all", "few"],
)
def test_too_few_to_tell_is_said_without_a_table(bad: int, good: int, sentence: str) -> None:
    found = suspicion(lots("A", "", bad=bad, good=good))
    assert suspicion_lines(found)[-1] == f"Too few to tell. {sentence}"
    assert suspicion_rows(found, everything=True) == []
    assert suspects_answer(found).suspects == ()
    assert suspects_answer(found).verdict == "too few"


def test_lots_that_no_suspect_divides_cleanly_are_too_few() -> None:
    observed = [
        replace(item, inputs=frozenset("A" if n == 0 else ""))
        for n, item in enumerate(lots("", "", bad=3, good=3))
    ]
    assert said(observed)[-1] == (
        "Too few to tell. With 3 lots that failed of 6 no suspect could stand out: the cleanest "
        "split there could be comes about by chance once in 2 times. Look at more lots."
    )


def test_where_nothing_stands_out_no_cause_is_read_into_it() -> None:
    observed = [replace(item, inputs=frozenset("AB"[n % 2])) for n, item in enumerate(lots("", ""))]
    assert said(observed)[-1] == (
        "Nothing stands out. The strongest, A, was in 3 of the 5 lots that failed and in 3 of the "
        "7 that stayed clear; among 2 suspects tested chance alone does so much easily. Read no "
        "cause into the table."
    )


def test_what_stays_out_is_told() -> None:
    found = suspicion(lots("A", ""))
    out = replace(NONE, is_by_kind=True, not_seen=2, too_far=1)
    assert suspicion_lines(replace(found, sorted=out))[-3:] == [
        "There are too few clear lots of the same product, so different products are compared; "
        "what only one product has cannot be told from the product itself.",
        "Not counted: 2 lots that nobody looked at or was sent.",
        "Not counted: 1 clear lot furthest away in time.",
    ]


def test_what_failed_otherwise_is_not_counted_as_clear_and_other_kinds_are_named() -> None:
    found = suspicion(lots("A", ""))
    others = tuple(SimpleNamespace(code=f"X-{number}") for number in range(1, 14))
    out = replace(NONE, otherwise_failed=others, other_stage=others[:2])
    assert suspicion_lines(replace(found, sorted=out))[-2:] == [
        "Failed too, but of another kind: pottle suspects X-1 X-2",
        "Not counted as clear: 13 lots that failed otherwise (X-1, X-2, X-3, X-4, X-5, X-6, X-7, "
        "X-8, X-9, X-10, X-11 and X-12).",
    ]


def test_a_lead_says_why_it_is_no_more() -> None:
    """The same lead of 5 batches as if it were p 1/5, p 1/100, made here, within a batch, few."""
    found = suspicion(in_turn("A", "", syrups=2))
    judgement = found.judgement
    (named,) = judgement.named
    made = Lot(1, "A", LotType.MADE, Measure.UL, None, "Orange essence", Status.RELEASED, 1)
    bought = replace(made, lot_type=LotType.RECEIVED, supplier="Harbour Oils", supplier_lot="C7")
    told = []
    for lead, known in (
        (replace(named, p_adjusted=Fraction(1, 5)), {}),
        (replace(named, p_adjusted=Fraction(1, 6)), {"A": bought}),
        (replace(named, p_adjusted=Fraction(1, 100)), {}),
        (named, {"A": made}),
        (replace(named, level=Level.RUN, p_adjusted=Fraction(1, 5)), {}),
        *(
            (replace(named, units=replace(named.units, failed_with=few)), {})
            for few in (0, 1, 2, 3)
        ),
    ):
        as_lead = replace(judgement, named=(), lead=lead, verdict=Conclusion.LEAD)
        told += suspicion_lines(replace(found, judgement=as_lead, lots=known))[-2:]
    check_golden("suspects_lead.txt", "".join(f"{line}\n" for line in told))


def test_the_table_has_each_suspect_whole_and_counts_the_rest() -> None:
    observed = [
        replace(item, settings={f"a setting with a very long name {k}": str((n * k + k * k) % 7 % 3)
                                for k in range(1, 20)})
        for n, item in enumerate(lots("A", ""))
    ]  # fmt: skip
    found = suspicion(observed)
    rows = suspicion_rows(found, everything=False)
    names = [row[0] for row in rows if "very long name" in row[0]]
    assert names
    assert all(
        re.fullmatch(r"( {2}or )?a setting with a very long name \d+ .*\d", name) for name in names
    )
    (note,) = table_note(found, everything=False)
    assert note.endswith(" that tell less: --explain lists all.")
    assert len(suspicion_rows(found, everything=True)) > len(rows)


def test_suspicions_read_as_the_kept_ones() -> None:
    """A cause, a lead, what cannot be told apart, nothing, too few, and none that failed."""
    mixed = [replace(item, inputs=frozenset("AB"[n % 2])) for n, item in enumerate(lots("", ""))]
    cause = suspicion(in_turn("AW", "W", syrups=2))
    made = (
        cause,
        replace(cause, tried_in="cloudy orange"),
        suspicion(in_turn("A", "", each=2, syrups=3, gap=5)),
        suspicion(lots("AB", "")),
        suspicion(mixed),
        suspicion(lots("A", "", bad=2, good=2)),
        suspicion(lots("A", "", bad=0, good=4)),
        suspicion(lots("A", "", bad=4, good=1)),
    )
    told = []
    for found in made:
        rows = [HEADS, *suspicion_rows(found, everything=True)]
        told += [*suspicion_lines(found), *(" | ".join(row) for row in rows), "--"]
    check_golden("suspects_words.txt", "\n".join(told) + "\n")


@pytest.mark.parametrize(
    ("many", "note"),
    [
        (12, []),
        (13, ["1 more suspect that tell less: --explain lists all."]),
        (14, ["2 more suspects that tell less: --explain lists all."]),
    ],
)
def test_suspects_that_the_table_leaves_out_are_counted(many: int, note: list[str]) -> None:
    found = suspicion(lots("A", ""))
    suspects = found.judgement.suspects[:1] * many
    found = replace(found, judgement=replace(found.judgement, suspects=suspects))
    assert table_note(found, everything=False) == note
    assert table_note(found, everything=True) == []


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
