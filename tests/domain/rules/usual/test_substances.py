"""What is said at once of a material's constituents."""

from msgspec.structs import replace

from ledger.domain.entries import Material, Receipt
from ledger.domain.entries.masters import Constituent
from ledger.domain.masters.substances import Concerns
from ledger.domain.rules import Finding, Severity
from ledger.domain.rules.usual.substances import (
    constituents_are_parts,
    constituents_have_limits,
    goods_are_stored_with_care,
    usual_concern_is_told,
)
from tests.domain.builders import draft, make, scene


def birch(*told: Constituent) -> Material:
    return make(Material, code="birch-oil", name="Birch oil", constituents=told)


def test_constituents_come_to_no_more_than_all() -> None:
    half = Constituent("coumarin", 500_000)
    assert not list(constituents_are_parts(draft(birch(half, half), None), scene()))
    more = birch(half, half, Constituent("eugenol", 1))
    (found,) = constituents_are_parts(draft(more, None), scene())
    assert found == Finding(
        Severity.IMPOSSIBLE,
        "constituents",
        "The constituents of birch-oil come to 100.0001 %, more than all of it.",
        "Check the shares; a certificate gives them in % of the whole.",
    )


def test_goods_known_for_a_substance_are_remarked_on_without_a_figure_of_others() -> None:
    known = scene(concerns=Concerns(usual=("methyl salicylate",)))
    (found,) = usual_concern_is_told(draft(birch(Constituent("linalool", 20_000)), None), known)
    assert (found.severity, found.rule) == (Severity.REMARK, "usual concern")
    assert found.what == (
        "Birch oil is of a kind known to carry methyl salicylate, and the book does not know how "
        "much: it holds none of it against a limit."
    )
    assert found.todo == (
        "Record it from the certificate: pottle material change birch-oil "
        '--constituents "linalool 2 %; methyl salicylate SHARE%"'
    )
    assert not list(usual_concern_is_told(draft(birch(), None), scene()))


def test_a_name_without_a_limit_is_said_with_what_it_may_mean() -> None:
    named = scene(concerns=Concerns(unlimited={"cumarin": "coumarin"}))
    (found,) = constituents_have_limits(draft(birch(), None), named)
    assert found == Finding(
        Severity.REMARK,
        "no limit",
        "No limit in force speaks of cumarin: what is recorded of it is held against none.",
        "If you mean coumarin for cumarin, say so with pottle material change.",
    )
    other = scene(concerns=Concerns(unlimited={"limonene": None}))
    (found,) = constituents_have_limits(draft(birch(), None), other)
    assert found.todo == "See what is limited: pottle limits"
    several = Concerns(unlimited={"cumarin": "coumarin", "limonen": None, "eugenl": "eugenol"})
    (found,) = constituents_have_limits(draft(birch(), None), scene(concerns=several))
    assert (found.what, found.todo) == (
        "No limit in force speaks of cumarin or limonen or eugenl: what is recorded of it is held "
        "against none.",
        "If you mean coumarin for cumarin and eugenol for eugenl, say so with pottle material "
        "change.",
    )
    assert not list(constituents_have_limits(draft(make(Receipt)), named))
    assert not list(constituents_have_limits(draft(birch(), None), scene()))


def test_goods_that_can_hurt_come_in_with_their_caution() -> None:
    neat = "Sweet birch oil neat: Poisons children in teaspoons; keep it locked away."
    receipt = draft(make(Receipt, material="birch-oil"), "SBO-001-7")
    (found,) = goods_are_stored_with_care(receipt, scene(concerns=Concerns(neat=neat)))
    assert found == Finding(
        Severity.REMARK, "handled with care", neat, "Its papers and local law say how it is kept."
    )
    assert not list(goods_are_stored_with_care(receipt, scene()))
    corrected = replace(receipt, corrects=4)
    assert not list(goods_are_stored_with_care(corrected, scene(concerns=Concerns(neat=neat))))
