"""Where a lot stays that goes into others, and as which of its steps left it a lot is told."""

from ledger.domain.entries.choices import MaterialKind
from ledger.domain.lots.steps import Act, Step
from ledger.science.contents.composition import Contents
from ledger.science.contents.replay import Happening
from ledger.science.contents.shares import Stays, stays_as, told_at


def test_a_lot_is_told_as_the_last_change_left_it_that_left_any() -> None:
    """A draw, goods that come back and a count that found less are no change of what it is."""

    def happened(
        act: Act, left_ul: float, kept: float = 1.0, kind: str = "", outside: str = ""
    ) -> Happening:
        step = Step(act, 1, kind=kind, outside=outside)
        return Happening(step, Contents(), 9.0, Contents(left_ul), left_ul, kept)

    came, emptied = happened(Act.INTO, 9.0), happened(Act.LEVEL, 0.0, 0.0, kind="filter")
    assert [told_at([came, last]) for last in (
        emptied,
        happened(Act.OUT, 5.0, outside="sale"),
        happened(Act.INTO, 9.0, outside="returned"),
        happened(Act.LEVEL, 5.0, 0.5, kind="count"),
        happened(Act.LEVEL, 9.0, 1.0, kind="count"),
        happened(Act.LEVEL, 5.0, 0.5, kind="filter"),
        happened(Act.INTO, 9.5),
    )] == [0, 0, 0, 0, 1, 1, 1]  # fmt: skip
    assert (told_at([emptied]), told_at([emptied, emptied]), told_at([])) == (0, 1, -1)


def test_where_a_material_stays_follows_from_its_kind() -> None:
    cake = {MaterialKind.CLARIFIER, MaterialKind.FILTER}
    round_it = {MaterialKind.BOTTLE, MaterialKind.CLOSURE, MaterialKind.LABEL}
    for sort in MaterialKind:
        where = Stays.ROUND_IT if sort in round_it else Stays.IN_LIQUID
        assert stays_as(sort) is (Stays.IN_CAKE if sort in cake else where)
    assert stays_as(None) is Stays.IN_LIQUID
