"""How suspects were reckoned, in words, with the table at its level and what was not tested."""

from fractions import Fraction

from msgspec.structs import replace

from ledger.science.statistics.suspects import Level
from reports.words.causes import method as module
from reports.words.causes.method import explained
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.words.causes.suspicions import lots, suspicion
from tests.science.statistics.judged import in_turn


def test_the_method_names_its_tests_and_what_is_left_of_the_level() -> None:
    text = "\n".join(explained(suspicion(lots("AW", "W"))))
    for word in ("Tarone", "Westfall and Young", "Mantel-Haenszel"):
        assert word in text
    assert "with 5 lots that failed" in text
    assert "In every lot compared, so nothing can be said of it: W." in text


def test_the_counts_are_told_by_stratum_and_at_their_level() -> None:
    text = "\n".join(explained(suspicion(in_turn("A", "", syrups=2))))
    assert "A: the same in all lots of a batch of essence, so batches are counted." in text
    assert "  Syrup: in 5 of 5 failed, in 0 of 10 clear" in text


def test_the_method_reads_as_the_kept_one_at_every_level() -> None:
    """As it is, and as though its suspect stood elsewhere, with as many strata as are told."""
    plain, turned = suspicion(lots("AW", "W")), suspicion(in_turn("A", "", syrups=2))
    judgement = turned.judgement
    (named,) = judgement.named
    told = [*explained(plain), "", *explained(turned)]
    for level, many in ((Level.BASE, 12), (Level.RUN, 13), (Level.BATCH, 14)):
        moved = replace(named, level=level, strata=named.strata[:1] * many)
        as_lead = replace(judgement, named=(), lead=moved, level=Fraction(1, 40))
        told += ["", *explained(replace(turned, judgement=as_lead))]
    check_golden("suspects_method.txt", "".join(f"{line}\n" for line in told))


def test_what_was_not_tested_is_named() -> None:
    observed = [
        replace(item, inputs=item.inputs | ({"ONCE"} if n == 0 else set()))
        for n, item in enumerate(lots("A", ""))
    ]
    text = "\n".join(explained(suspicion(observed)))
    assert "Not tested, because its counts could not stand out: ONCE." in text


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
