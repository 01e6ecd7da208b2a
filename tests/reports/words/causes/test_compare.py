"""A trial in words, rows and places."""

from fractions import Fraction

from msgspec.structs import replace

from ledger.science.statistics.trials import Factor, Jar, Spread
from ledger.service.causes.compare import Uneven
from reports.words.causes import compare as module
from reports.words.causes.compare import comparison_view
from tests.kept.said import check_constants, check_said
from tests.reports.words.causes.trials import CONFOUNDED, CROSSED, comparison, jar


def test_levels_stand_side_by_side_with_n_and_the_control() -> None:
    (rest,) = comparison_view(CROSSED).factors
    assert [(row.level, row.n, row.looks, row.ntu, row.yield_pct) for row in rest.rows] == [
        ("24h", "2", ("hazy–opalescent", "clear–hazy"), "3.1", "89"),
        ("96h", "2", ("clear", "bright"), "0.8", "86.5"),
        ("control", "1", ("hazy", "clear"), "1.8", "89"),
    ]
    assert rest.words == (
        "96h against 24h (means of 2 and 2): 1.5 grades clearer, 2.3 NTU lower and 2.5 points of "
        "yield less."
    )


def test_the_other_way_round_every_effect_has_its_other_word() -> None:
    one, other = jar("A-1", 0, "1.5", 85, rest="24h"), jar("A-2", 1, "2.5", 86, rest="96h")
    assert comparison_view(comparison(one, other)).factors[0].words == (
        "96h against 24h (means of 1 and 1): 1 grade less clear, 1 NTU higher and 1 point of yield "
        "more."
    )
    alike = comparison_view(comparison(one, jar("A-2", 0, "1.5", 85, rest="96h")))
    assert alike.factors[0].words == (
        "96h against 24h (means of 1 and 1): no difference in grade, no difference in NTU and no "
        "difference in yield."
    )


def test_what_repeats_differ_by_stands_before_the_effects() -> None:
    assert comparison_view(CROSSED).lines == (
        "Trial rests: 5 batches, 1 of them the control. In all of them: no lot.",
        "The 4 batches with a repeat differ from it by up to 1 grade, 0.6 NTU and 2 points of "
        "yield; what factors do within that means nothing.",
    )


def test_one_point_of_yield_is_told_as_one() -> None:
    view = comparison_view(replace(CROSSED, spread=Spread(2, 1, Fraction(1), Fraction(1))))
    assert "differ from it by up to 1 grade, 1 NTU and 1 point of yield;" in view.lines[1]


def test_what_was_not_the_same_in_all_is_told_with_how_many_had_it() -> None:
    uneven = Uneven("sugar", (("SU-1", 2), ("SU-2", 3)))
    assert comparison_view(replace(CROSSED, uneven=(uneven,))).lines[1] == (
        "Not all batches had the same sugar, and no factor says so: SU-1 in 2 and SU-2 in 3."
    )


def test_factors_that_moved_together_have_no_effect_and_no_plot() -> None:
    view = comparison_view(CONFOUNDED)
    assert [item.rows for item in view.factors] == [(), ()]
    assert view.factors[0].words == (
        "rest and dose changed together, so no effect is shown for it. Change them apart in the "
        "next trial."
    )
    assert [plot.title for plot in view.plots] == ["yield % by last look"]


def test_without_control_or_repeat_that_is_said() -> None:
    assert comparison_view(CONFOUNDED).lines[1:] == (
        "Without a control nothing tells how the house's own way would have done.",
        "No batch has a repeat, so nothing tells how much differs by chance alone; take "
        "differences as hints.",
    )


def test_the_front_is_said_and_marked() -> None:
    view = comparison_view(CROSSED)
    assert view.front == (
        "Of 5 with a look and a yield, none is both clearer and has less loss than: "
        "A-1 (rest=24h), A-4 (rest=96h) and A-5 (control)."
    )
    assert [row.lot for row in view.batches if row.is_front] == ["A-4", "A-5", "A-1"]


def test_a_batch_that_nobody_looked_at_is_a_dash() -> None:
    bare = Jar("C-1", {"rest": "1h"}, False, (), None, None)
    view = comparison_view(comparison(bare, Jar("C-2", {"rest": "2h"}, False, (), None, None)))
    assert "Nobody has looked at any of them yet." in view.lines
    assert view.front == (
        "Which are best on clarity and loss together cannot be told: no batch has both."
    )
    assert [(row.look, row.ntu, row.yield_pct) for row in view.batches] == [("–", "–", "–")] * 2
    assert view.factors[0].words == "2h against 1h (means of 1 and 1): nothing known of either."
    assert view.plots == ()


def test_a_factor_of_one_level_and_repeats_that_tell_nothing_are_said_to_be_such() -> None:
    alone = Factor("rest", (("24h", CROSSED.jars[:1]),), ())
    bare = replace(CROSSED, factors=(alone,), spread=Spread(3, None, None, None))
    view = comparison_view(bare)
    assert view.factors[0].words == "rest had one level only, so nothing compares with it."
    assert view.lines[-1] == (
        "The 3 batches with a repeat differ from it by up to nothing known yet; what factors do "
        "within that means nothing."
    )


def test_an_ungraded_jar_among_graded_ones_comes_last_and_counts_in_no_mean() -> None:
    """Grades 2 and 0 at 24 h mean 1, the jar nobody looked at apart; 0 at 96 h: one grade."""
    unseen = Jar("A-2", {"rest": "24h"}, False, (), None, Fraction(95))
    seen = jar("A-1", 2, "3", 90, rest="24h"), jar("A-3", 0, "1", 90, rest="24h")
    view = comparison_view(comparison(unseen, *seen, jar("A-4", 0, "2", 90, rest="96h")))
    assert [row.lot for row in view.batches] == ["A-3", "A-4", "A-1", "A-2"]
    assert view.batches[-1].look == "–"
    (rest,) = view.factors
    assert [(row.n, row.looks) for row in rest.rows] == [
        ("3", ("clear–opalescent", "bright–hazy")),
        ("1", ("clear", "bright")),
    ]
    assert rest.words.startswith("96h against 24h (means of 1 and 3): 1 grade clearer, ")
    assert view.front.startswith("Of 3 with a look and a yield, ")


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_batches_alike_stand_in_the_order_of_their_codes() -> None:
    first = CROSSED.jars[0]
    jars = tuple(replace(first, lot=code) for code in ("B-2", "A-1"))
    view = comparison_view(replace(CROSSED, jars=jars, front=()))
    assert [row.lot for row in view.batches] == ["A-1", "B-2"]
