"""A trial compared, for machines: figures as text, and no levels where factors moved together."""

from fractions import Fraction
from types import SimpleNamespace

from msgspec.structs import replace

from ledger.domain.entries.choices import Grade
from ledger.science.statistics.trials import Spread
from ledger.service.causes.compare import Comparison
from reports.json.causes.compare import CompareAnswer, LookTold, SetTold, compare_answer
from reports.words.causes.compare import comparison_view
from tests.kept.filled import bare, filled
from tests.reports.json.kept import check
from tests.reports.words.causes.plans import THREE, outcome, planned
from tests.reports.words.causes.trials import CONFOUNDED, CROSSED


def told(found: Comparison) -> CompareAnswer:
    return compare_answer(found, comparison_view(found), None)


def test_every_batch_has_its_factors_looks_and_figures() -> None:
    plain = told(CROSSED)
    first, control = plain.batches[0], plain.batches[-1]
    assert first.settings == (SetTold("rest", "24h"),)
    assert first.looks == (LookTold("at once", Grade.OPALESCENT), LookTold("7 d", Grade.HAZY))
    assert (first.ntu, first.yield_percent) == ("3.4", "90")
    assert (control.code, control.is_control, plain.control_codes) == ("A-5", True, ("A-5",))


def test_levels_have_means_of_as_many_batches_as_are_named() -> None:
    (rest,) = told(CROSSED).factors
    assert [(level.level, level.n, level.codes) for level in rest.levels] == [
        ("24h", 2, ("A-1", "A-2")),
        ("96h", 2, ("A-3", "A-4")),
    ]
    assert [level.ntu for level in rest.levels] == ["3.1", "0.8"]


def test_factors_that_moved_together_name_each_other_and_have_no_levels() -> None:
    factors = told(CONFOUNDED).factors
    assert [(item.factor, item.confounded_with, item.levels) for item in factors] == [
        ("rest", ("dose",), ()),
        ("dose", ("rest",), ()),
    ]


def test_every_field_of_trials_is_the_kept_one() -> None:
    found = outcome(planned(THREE))
    by_plan = replace(
        CONFOUNDED,
        held=(
            SimpleNamespace(code="LMC-001-F", name="Carbonate"),
            SimpleNamespace(code="NS-001-J", name="Spirit"),
        ),
        outcome=found,
        spread=Spread(2, 1, Fraction(1, 3), Fraction(5, 2)),
    )
    check(
        "compare",
        told(CROSSED),
        compare_answer(by_plan, comparison_view(by_plan), "trial.pdf"),
    )


def test_every_part_of_a_comparison_stands_under_its_own_key() -> None:
    full = filled(Comparison, grades=(("at once", 1), ("7 d", 2)))
    view = comparison_view(CROSSED)
    answers = (compare_answer(found, view, "a.pdf") for found in (full, bare(Comparison)))
    check("compare_filled", *answers)
