"""Suspects in words: what a maker reads first, and what she reads when there is no cause."""

import pytest
from msgspec.structs import replace

from ledger.science.statistics.suspects import Observed
from reports.json.causes.suspects import suspicion_plain
from reports.words.causes.suspects import (
    explained,
    next_step,
    suspicion_lines,
    suspicion_rows,
    table_note,
)
from tests.reports.words.causes.suspicions import NONE, lots, suspicion


def said(observed: list[Observed]) -> str:
    return suspicion_lines(suspicion(observed))[-1]


def test_a_named_suspect_is_said_with_counts_chance_and_a_trial() -> None:
    lines = suspicion_lines(suspicion(lots("AW", "W")))
    assert lines[0] == "5 lots of Syrup failed; 5 comparable ones were clear."
    assert lines[-2:] == [
        "Suspect: A was in 5 of the 5 failed lots and in 0 of the 5 clear ones. By chance alone so "
        "uneven a split of 10 lots comes about once in 126 times; allowing for 1 suspect tested, "
        "p is 0.0079.",
        "To be surer, make 8 fresh jars: 4 with A and 4 without, all else alike. Failing in all of "
        "the first and none of the others would show it (p 0.029).",
    ]


def test_suspects_that_went_together_are_said_not_to_be_separable() -> None:
    assert suspicion_lines(suspicion(lots("AB", "")))[-3:] == [
        "Suspects, not separable: A and B were in 5 of the 5 failed lots and in 0 of the 5 clear "
        "ones. By chance alone so uneven a split of 10 lots comes about once in 126 times; "
        "allowing for 1 suspect tested, p is 0.0079.",
        "They always went together in these lots, so this evidence cannot tell which of them it "
        "is.",
        "The cheapest trial that tells them apart takes 8 jars: 4 with A and 4 with B, each "
        "without the others and all else alike. If all jars of one kind fail and no other does, it "
        "is that one (p 0.029).",
    ]


@pytest.mark.parametrize(
    ("bad", "good", "sentence"),
    [
        (0, 4, "Only lots that failed can show what they share."),
        (1, 9, "One failed lot alone cannot show what failed lots share."),
        (4, 0, "Every lot that could be compared failed, so nothing tells them apart."),
        (
            2,
            2,
            "With 2 failed and 2 clear lots no suspect could stand out: the cleanest split there "
            "could be comes about by chance once in 3 times, and 1 was compared. Look at more "
            "lots.",
        ),
    ],
    ids=["none", "one", "all", "few"],
)
def test_too_little_evidence_is_said_without_a_table(bad: int, good: int, sentence: str) -> None:
    found = suspicion(lots("A", "", bad=bad, good=good))
    assert suspicion_lines(found)[-1] == f"Too little evidence to name a cause. {sentence}"
    assert suspicion_rows(found, everything=True) == []
    assert suspicion_plain(found)["suspects"] == []
    assert suspicion_plain(found)["verdict"] == "too little evidence"


def test_where_nothing_stands_out_no_cause_is_read_into_it() -> None:
    observed = [replace(item, inputs=frozenset("AB"[n % 2])) for n, item in enumerate(lots("", ""))]
    assert said(observed) == (
        "Nothing stands out. The strongest, A, was in 3 of the 5 failed lots and in 2 of the "
        "5 clear ones; among 1 suspect tested chance alone does so much easily. Read no cause into "
        "the table."
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


def test_the_table_fits_eighty_columns_and_names_the_rest() -> None:
    observed = [
        replace(item, settings={f"a setting with a very long name {k}": str((n * k + k * k) % 7 % 3)
                                for k in range(1, 20)})
        for n, item in enumerate(lots("A", ""))
    ]  # fmt: skip
    found = suspicion(observed)
    rows = suspicion_rows(found, everything=False)
    widths = [max(len(row[column]) for row in rows) for column in range(5)]
    assert sum(widths) + 4 * 2 <= 80
    (note,) = table_note(found, everything=False)
    assert note.endswith(" that tell less: --explain lists all.")
    assert len(suspicion_rows(found, everything=True)) > len(rows)


def test_a_setting_is_told_with_its_level() -> None:
    observed = [
        replace(item, settings={"passes": "1" if item.is_failed else "2"}) for item in lots("", "")
    ]
    found = suspicion(observed)
    assert suspicion_rows(found, everything=False)[0][:3] == ("passes 1", "5 of 5", "0 of 5")
    plain = suspicion_plain(found)["suspects"][0]
    assert (plain["what"], plain["setting"], plain["level"]) == ("passes 1", "passes", "1")


def test_the_method_names_its_tests_and_the_counts_by_maker() -> None:
    text = "\n".join(explained(suspicion(lots("AW", "W"))))
    for word in ("Fisher's exact test", "Holm", "Tarone", "Mantel-Haenszel"):
        assert word in text
    assert "In every lot compared, so nothing can be said of it: W." in text
    assert "  Syrup, made by AB: in 5 of 5 failed, in 0 of 5 clear" in text


def test_the_next_step_holds_a_suspected_lot() -> None:
    found = suspicion(lots("A", ""))
    assert next_step(found) == 'pottle hold A --because "suspected in 5 failed lots"'
    assert next_step(suspicion([])) == "pottle stock"
