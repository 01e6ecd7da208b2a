"""How old a lot was at a look counts from the end of its making, or as it was told."""

from datetime import timedelta

import pytest

from ledger.domain.entries import Add, Facts, Filter, Finish, Look, Note
from ledger.service.causes.ages import aged_looks
from tests.domain.builders import NOW, entry, make


@pytest.mark.parametrize(
    ("hours", "age"),
    [
        (0, "at once"),
        (11.9, "at once"),
        (12, "1 d"),
        (71.9, "1 d"),
        (72, "7 d"),
        (335.9, "7 d"),
        (336, "30 d"),
        (1439.9, "30 d"),
        (1440, "90 d"),
        (9999, "90 d"),
    ],
)
def test_an_age_is_the_next_at_which_a_trial_is_looked_at(hours: float, age: str) -> None:
    told = entry(make(Look, age_minutes=round(60 * hours)))
    assert aged_looks([told]) == ((age, told.facts),)
    seen = (entry(make(Finish), 1), entry(make(Look), 2, NOW + timedelta(hours=hours)))
    assert [each for each, _ in aged_looks(seen)] == [age]


def ages(*told: tuple[type[Facts], float]) -> list[str]:
    """Return the ages of the looks among acts, each so many hours after the first."""
    said = [
        entry(make(kind), number, NOW + timedelta(hours=hours))
        for number, (kind, hours) in enumerate(told, 1)
    ]
    return [age for age, _ in aged_looks(said)]


def test_an_age_counts_from_the_last_finish_else_from_the_last_act_before_the_look() -> None:
    """What was done after a look says nothing of its age; a look is no act at the bench."""
    assert ages((Add, 0), (Look, 80), (Look, 100)) == ["7 d", "7 d"]
    assert ages((Add, 0), (Look, 80), (Note, 90)) == ["7 d"]
    assert ages((Add, 0), (Filter, 75), (Look, 80)) == ["at once"]
    assert ages((Add, 0), (Filter, 10), (Look, 80)) == ["1 d"]
    assert ages((Finish, 0), (Filter, 75), (Look, 80)) == ["7 d"]
    assert ages((Finish, 0), (Finish, 70), (Look, 80)) == ["at once"]
    assert ages((Look, 5)) == ["at once"]
