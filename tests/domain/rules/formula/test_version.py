"""Following: a batch is begun by a formula in use, which somebody else has checked."""

from datetime import date
from typing import Any

import pytest

from ledger.domain.entries import Finish, Formula, Start
from ledger.domain.lots.control import Control
from ledger.domain.rules.finding import remark
from ledger.domain.rules.formula import version as following
from tests.domain.builders import at, draft, make, scene, when
from tests.domain.rules.cases import Case, find
from tests.domain.rules.formula.followed import follows, hm, why


def begun(day: int = 2, offset_min: int = 0, **changes: Any) -> tuple[Any, Any]:
    formula = make(Formula, valid_from=date(2026, 3, 2))
    happened = when(at(4, day=day), offset_min)
    return draft(make(Start), happened=happened), follows(formula, **changes)


def test_a_list_of_ingredients_in_a_label_text_is_remarked_on_as_a_formula_is_loaded() -> None:
    """A label leaves it off, for it has the list of its lot."""
    loaded = make(Formula, label_text="Store upright. Ingredients: sugar, water.", checked_by=None)
    (found,) = following.lists_are_reckoned(draft(loaded), scene())
    assert found == remark(
        "typed list",
        f"The label text of version {loaded.version} of {loaded.code} has a list of ingredients, "
        '"Ingredients: sugar, water."; a label leaves it off and has that of its lot as it was '
        "made.",
        "Leave it out; how a list calls something is said with: pottle material change CODE "
        '--ingredient-name "NAME"',
    )
    plain = draft(make(Formula, label_text="Store upright."))
    assert list(following.lists_are_reckoned(plain, scene())) == []


LATER = "Begin the batch then, or say why with --because."
VERSIONS = [
    Case("begun on the first day that it may be used", *begun()),
    Case(
        "begun the day before",
        *begun(day=1),
        why(
            "not valid yet",
            "Version 1 of the formula orange may be used from 2026-03-02; this is 2026-03-01.",
            LATER,
        ),
    ),
    Case(
        "begun the day before by the writer's clock",
        *begun(offset_min=-300),
        why(
            "not valid yet",
            "Version 1 of the formula orange may be used from 2026-03-02; this is 2026-03-01.",
            LATER,
        ),
    ),
    Case(
        "begun by a withdrawn version",
        *begun(is_withdrawn=True),
        why(
            "withdrawn",
            "Version 1 of the formula orange is withdrawn.",
            "Load a newer one: pottle formula load FILE (or say why with --because).",
        ),
    ),
    Case("begun without a formula", draft(make(Start)), scene(control=Control(is_withdrawn=True))),
    Case(
        "withdrawn after the batch was begun",
        draft(make(Finish)),
        follows(make(Formula), is_withdrawn=True),
    ),
    Case(
        "prepared and checked by the same person",
        draft(make(Formula, version=2, prepared_by="AB", checked_by="AB"), None),
        scene(),
        hm(
            "unchecked",
            "AB prepared and checked version 2 of orange: no other person has checked it.",
        ),
    ),
    Case(
        "checked by somebody else",
        draft(make(Formula, prepared_by="AB", checked_by="CD"), None),
    ),
    Case(
        "prepared, and checked by nobody",
        draft(make(Formula, prepared_by="AB"), None),
        scene(),
        hm("unchecked", "AB prepared version 1 of orange: nobody has checked it."),
    ),
    Case("nobody is named", draft(make(Formula), None)),
]


@pytest.mark.parametrize("case", VERSIONS, ids=str)
def test_a_version_that_is_not_in_use_or_not_checked_is_told(case: Case) -> None:
    assert find(following.RULES, case) == list(case.found)
