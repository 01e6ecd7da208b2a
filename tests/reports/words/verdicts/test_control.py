"""What a lot was held to: its formula, who checked, how it was released."""

import pytest
from msgspec.structs import replace

from ledger.errors import FindingError
from ledger.service.lots.dossier import dossier
from ledger.store.read.dependents import Changed
from reports.words.verdicts import control as module
from reports.words.verdicts.control import control_facts
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said


def told(keeper: Keeper, code: str) -> dict[str, str]:
    return dict(control_facts(dossier(keeper.book, code)))


def test_a_refused_release_leaves_nothing_and_names_all(orange: tuple[Keeper, str]) -> None:
    keeper, code = orange
    before = keeper.bodies()
    with pytest.raises(FindingError) as raised:
        keeper.do("judge", lot=code, verdict="release")
    assert [what for what, _ in raised.value.problems] == [
        f"{code} is made of NS-001-J, now held, rejected or recalled.",
        "Deviation 24 has not been reviewed: NS-001-J is on hold.",
    ]
    assert keeper.bodies() == before
    assert told(keeper, code) == {
        "Formula": "orange-essence version 1",
        "Beware": "made of NS-001-J, now held, rejected or recalled",
    }


def test_an_override_is_told_with_its_reason_and_as_self_released(
    orange: tuple[Keeper, str],
) -> None:
    keeper, code = orange
    keeper.do("judge", lot=code, verdict="release", because="the papers came by post")
    released = told(keeper, code)["Released"]
    assert released.startswith("by AB on 2026-03-03 ")
    assert released.endswith(", over 2 findings: the papers came by post; self-released")
    keeper.do("judge", lot=code, verdict="hold", because="looked at once more")
    assert told(keeper, code)["Released"] == released


def test_a_second_persons_check_is_told_and_her_own_is_flagged(
    orange: tuple[Keeper, str],
) -> None:
    keeper, code = orange
    keeper.do("judge", lot="NS-001-J", verdict="release", because="its papers came")
    keeper.do("check", entry="23", words="certificate read")
    keeper.do("check", lot=code)
    own = "AB (entry 23), who did it too; AB, who did it too"
    assert told(keeper, code)["Checked by"] == own
    keeper.by = "CD"
    keeper.do("check", entry="23", words="read it too")
    keeper.do("check", lot=code)
    keeper.by = "AB"
    made = keeper.do("judge", lot=code, verdict="release")
    assert made.remarks == ()
    facts = told(keeper, code)
    assert facts["Checked by"] == f"{own}; CD (entry 23); CD"
    assert "self-released" not in facts["Released"]


def test_three_changes_since_a_release_are_told_and_one_more_as_one_more(
    orange: tuple[Keeper, str],
) -> None:
    keeper, code = orange
    found = dossier(keeper.book, code)
    changes = tuple(Changed(30 + n, n == 1, 10 + n, f"L-{n}") for n in range(4))
    each = (
        "entry 10 of L-0, corrected by entry 30; entry 11 of L-1, struck by entry 31; "
        "entry 12 of L-2, corrected by entry 32"
    )
    anew = f". Decide about it anew: pottle hold {code}, or pottle release {code}"
    for many, more in ((3, ""), (4, "; and 1 more")):
        facts = dict(control_facts(replace(found, changed=changes[:many])))
        assert facts["Changed since its release"] == f"{each}{more}{anew}"
    paper = dict(control_facts(replace(found, changed=changes[:1]), on_paper=True))
    (words,) = [words for label, words in paper.items() if label == "Changed since its release"]
    assert words.endswith("; to be decided about anew")
    assert "pottle" not in words
    assert "Changed since its release" not in dict(control_facts(found))


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
