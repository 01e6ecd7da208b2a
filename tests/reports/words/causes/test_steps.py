"""What comes after suspects is a command that can be given as it stands."""

from msgspec.structs import replace

from ledger.domain.lots.lot import Lot, Status
from ledger.science.statistics.suspects import Observed
from ledger.store.read.runs import Run
from reports.words.causes import steps as module
from reports.words.causes.steps import is_barred, next_step, trial_factors
from reports.words.causes.suspects import suspicion_lines
from tests.kept.filled import filled
from tests.kept.said import check_said
from tests.reports.words.causes.suspicions import lots, suspicion
from tests.science.statistics.judged import in_turn


def test_a_cause_is_to_be_held_and_a_lead_to_be_tried() -> None:
    assert next_step(suspicion(lots("A", ""))) == (
        'pottle hold A --because "suspected in 5 failed lots"'
    )
    lead = suspicion(in_turn("A", "", each=2, syrups=3, gap=5))
    assert next_step(lead) == 'pottle trial plan "Syrup" --try A'
    tried = replace(lead, tried_in="cloudy")
    assert next_step(tried) == 'pottle compare "cloudy"'
    assert 'A trial of it is planned or made: pottle compare "cloudy"' in suspicion_lines(tried)
    both = suspicion(lots("AB", ""))
    assert trial_factors(both) == ("A", "B")
    assert next_step(both) == 'pottle trial plan "Syrup" --try A --try B'
    assert next_step(suspicion([])) == "pottle stock"


def test_a_cause_that_is_barred_already_is_traced_to_whoever_has_of_it() -> None:
    found = suspicion(lots("A", ""))
    held = replace(found, lots={"A": filled(Lot, code="A", status=Status.HELD)})
    assert next_step(held) == "pottle trace A --forward"


def test_a_setting_is_tried_at_the_levels_that_the_book_has() -> None:
    def jars(letter: str, level: str, *, is_failed: bool) -> list[Observed]:
        return [
            Observed(f"{letter}{n}", is_failed, frozenset(), {"powder": level}, "Syrup", "AB")
            for n in range(6)
        ]

    weak = jars("F", "up to 2 g", is_failed=True) + jars("C", "above 2 g", is_failed=False)
    assert next_step(suspicion(weak)) == (
        'pottle trial plan "Syrup" --try "powder=above 2 g/up to 2 g"'
    )
    per_ml = jars("F", "up to 2 g/mL", is_failed=True) + jars("C", "above 2 g/mL", is_failed=False)
    assert next_step(suspicion(per_ml)) == (
        'pottle trial plan "Syrup" --try "powder=above 2 g/mL / up to 2 g/mL"'
    )


def test_of_what_failed_without_a_suspect_the_making_is_traced() -> None:
    alone = suspicion([Observed("F1", True, frozenset(), {}, "Syrup", "AB")])
    assert next_step(alone) == "pottle trace F1 --back"
    sorts = replace(alone.sorted, otherwise_failed=(filled(Run),))
    assert next_step(replace(alone, sorted=sorts)) == "pottle suspects"
    two = [Observed(f"F{n}", True, frozenset(), {}, "Syrup", "AB") for n in (1, 2)]
    assert next_step(replace(suspicion(two), sorted=sorts)) == "pottle trace F1 --back"


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_only_a_lot_on_hold_or_worse_is_barred() -> None:
    lots: dict[str, Lot] = {status: filled(Lot, status=status) for status in Status}
    barred = {status for status in Status if is_barred(status, lots)}
    assert barred == {Status.HELD, Status.REJECTED, Status.RECALLED}
    assert not is_barred("unknown", lots)
