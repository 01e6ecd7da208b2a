"""Beginning a batch: what is recorded, and what is refused in which words."""

from datetime import date

import pytest

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula, Start
from ledger.domain.entries.choices import ProductKind
from ledger.errors import InputError, RefusedError
from ledger.service.bench.start import _factors
from tests.keeper import Keeper
from tests.service.cases import UL, Refused, Said, amount, check_recorded, check_refused
from tests.service.said_alone import Alone, check_said_alone
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "a start": (
        "start",
        {
            "product": "Lemon syrup",
            "kind": "syrup",
            "target": "4L",
            "pour": "1:7",
            "vessel": "Pan 2",
            "best_before": "2026-06-01",
        },
        "LS-001-P",
        {
            "product": "Lemon syrup",
            "product_kind": "syrup",
            "target": amount(4_000_000, UL, "4L"),
            "purpose": "sale",
            "pour_parts": 7,
            "vessel": "Pan 2",
            "best_before": "2026-06-01",
        },
    ),
    "a trial with its factors": (
        "start",
        {
            "product": "Lemon essence",
            "kind": "essence",
            "target": "1L",
            "trial": "resting",
            "factors": "rest=48h; pore = 5 µm",
        },
        "LE-001-R",
        {
            "product": "Lemon essence",
            "product_kind": "essence",
            "target": amount(1_000_000, UL, "1L"),
            "purpose": "trial",
            "trial_group": "resting",
            "factors": [
                {"name": "rest", "planned": "48h"},
                {"name": "pore", "planned": "5 µm"},
            ],
        },
    ),
}

REFUSED: dict[str, Refused] = {
    "a start by a formula that is not there": (
        "start",
        {"target": "1L", "formula": "Lemon"},
        RefusedError,
        (
            (
                "The formula lemon is not in the book; it knows none yet.",
                "Load it with: pottle formula load FILE",
            ),
        ),
    ),
    "a start without a target": (
        "start",
        {"product": "Syrup", "kind": "syrup", "target": " "},
        InputError,
        (("The target is missing.", "Write a number and a unit, such as 480mL."),),
    ),
    "a way to pour of more digits than are read": (
        "start",
        {"product": "Syrup", "kind": "syrup", "target": "1L", "pour": "9" * 5000},
        InputError,
        (
            (
                f'"{"9" * 5000}" is not a way to pour.',
                "Write 1:7 for one part to seven of soda water.",
            ),
        ),
    ),
    "a way to pour that is none": (
        "start",
        {"product": "Syrup", "kind": "syrup", "target": "1L", "pour": "7:1"},
        InputError,
        (
            (
                '"7:1" is not a way to pour.',
                "Write 1:7 for one part to seven of soda water.",
            ),
        ),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_a_batch_is_begun_by_the_newest_version_that_may_be_used_unless_one_is_named(
    sqlite_keeper: Keeper,
) -> None:
    """Of four the second is withdrawn, the third valid from today and the last from tomorrow."""
    for version in (1, 2, 3, 4):
        valid = date(2026, 3, version - 1) if version > 2 else None
        basis = parse_quantity("1L")
        facts = Formula("lime", version, "Lime", ProductKind.SYRUP, basis, valid_from=valid)
        sqlite_keeper.record(facts)
    sqlite_keeper.do("withdraw", code="lime", version="2", because="thin")

    def begun(**words: str) -> int | None:
        done = sqlite_keeper.do("start", formula=" Lime ", target="1L", because="to see", **words)
        assert isinstance(done.entry.facts, Start)
        return done.entry.facts.formula_version

    assert [begun(), begun(version="4"), begun(version="2")] == [3, 4, 2]
    sqlite_keeper.do("withdraw", code="lime", version="3", because="thin")
    assert begun() == 1
    sqlite_keeper.do("withdraw", code="lime", version="1", because="thin")
    assert begun() == 4
    with pytest.raises(RefusedError) as refused:
        begun(version="5")
    assert refused.value.problems == (
        (
            "There is no version 5 of the formula lime in the book.",
            "pottle formula list shows those that are.",
        ),
    )
    sqlite_keeper.record(Formula("fudge", 1, "Fudge", ProductKind.BLEND, parse_quantity("1L")))
    with pytest.raises(RefusedError) as refused:
        sqlite_keeper.do("start", formula="lemon", target="1L")
    assert refused.value.problems[0][0] == (
        "The formula lemon is not in the book; it knows fudge, lime."
    )


def test_factors_stand_between_semicolons_each_with_its_level() -> None:
    assert _factors(None) == _factors(" ; ") == ()
    told = _factors("rest = 48h;; pore=5=6 µm ;")
    assert [(factor.name, factor.planned) for factor in told] == [
        ("rest", "48h"),
        ("pore", "5=6 µm"),
    ]
    for text, problem in (
        ("rest=48h; cold ", ('"cold" is not a factor.', "Write it as rest=48h.")),
        ("=48h", ("The factor is missing.", "Give the factor in words.")),
        ("rest=", ("The level is missing.", "Give the level in words.")),
    ):
        with pytest.raises(InputError) as refused:
            _factors(text)
        assert refused.value.problems == (problem,)


ALONE: Alone = (
    {"product": "Lime", "kind": "syrup", "target": "1L"},
    {
        "pour": ("1:9", {"pour_parts": 9}),
        "best_before": ("2027-06-30", {"best_before": "2027-06-30"}),
        "vessel": ("Jar 1", {"vessel": "Jar 1"}),
        "purpose": ("trial", {"purpose": "trial"}),
        "trial": ("rests", {"purpose": "trial", "trial_group": "rests"}),
    },
)


def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(bench: Keeper) -> None:
    check_said_alone(bench, "start", ALONE)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "start")
