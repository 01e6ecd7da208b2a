"""Materials known for a substance of concern: what is remarked on, and what limits know of it."""

import re
import tomllib
from pathlib import Path
from typing import Any

import pytest
from stdnum import casrn

import ledger
from ledger.errors import RefusedError
from ledger.service.account.shipped import shipped, substances, usual_concerns
from ledger.service.glass.serving import serving
from tests.keeper import Keeper

ROWS = tomllib.loads(
    (Path(ledger.__file__).parent / "substances.toml").read_text(encoding="utf-8")
)["substance"]


def remarks(keeper: Keeper, **words: Any) -> tuple[tuple[str, str], ...]:
    return keeper.do("material", **words).remarks


def test_an_oil_known_for_a_substance_of_concern_is_remarked_on_when_it_is_made(
    sqlite_keeper: Keeper,
) -> None:
    assert remarks(sqlite_keeper, code="birch-oil", name="Sweet birch oil", kind="oil") == (
        (
            "Sweet birch oil is of a kind known to carry methyl salicylate, and the book does not "
            "know how much: it holds none of it against a limit.",
            "Record it from the certificate: pottle material change birch-oil --constituents "
            '"methyl salicylate SHARE%"',
        ),
    )


def test_the_hint_for_what_is_missing_keeps_the_shares_that_are_told(
    sqlite_keeper: Keeper,
) -> None:
    ((_, todo),) = remarks(
        sqlite_keeper, code="mint", kind="oil", density="0.9", constituents="menthofuran 3,5%"
    )
    assert todo == (
        "Record it from the certificate: pottle material change mint --constituents "
        '"menthofuran 3.5 %; pulegone SHARE%"'
    )
    assert (
        remarks(
            sqlite_keeper, code="mint", change=True, constituents="menthofuran 3.5 %; pulegone 1%"
        )
        == ()
    )


def test_goods_that_are_no_oil_and_oils_of_no_such_kind_are_not_remarked_on(
    sqlite_keeper: Keeper,
) -> None:
    assert remarks(sqlite_keeper, code="mint-bottle", kind="bottle") == ()
    assert remarks(sqlite_keeper, code="lemon-oil", kind="oil") == ()


def test_a_name_that_no_limit_speaks_of_is_said_at_once_and_once(sqlite_keeper: Keeper) -> None:
    said = "No limit in force speaks of limonene or decanal: what is recorded of it is held against"
    words = {"code": "lime", "kind": "oil", "constituents": "limonene 60%, decanal 1%"}
    assert remarks(sqlite_keeper, **words) == (
        (f"{said} none.", "See what is limited: pottle limits"),
    )
    assert remarks(sqlite_keeper, code="lime", change=True, density="0.87") == ()


def test_a_slip_of_spelling_is_asked_about(sqlite_keeper: Keeper) -> None:
    assert remarks(sqlite_keeper, code="oil", kind="oil", constituents="methyl salicilate 98%") == (
        (
            "No limit in force speaks of methyl salicilate: what is recorded of it is held against "
            "none.",
            "If you mean methyl salicylate for methyl salicilate, say so with pottle material "
            "change.",
        ),
    )


def test_salts_of_a_limited_acid_and_other_names_of_a_limited_substance_are_limited(
    sqlite_keeper: Keeper,
) -> None:
    told = "potassium sorbate 50%; methyl chavicol 1%; α-thujone 1%"
    assert remarks(sqlite_keeper, code="mix", kind="other", constituents=told) == ()


def test_more_than_all_of_a_material_is_refused(sqlite_keeper: Keeper) -> None:
    with pytest.raises(RefusedError) as raised:
        remarks(sqlite_keeper, code="oil", kind="oil", constituents="safrole 60%, estragole 40,1%")
    assert raised.value.problems == (
        (
            "The constituents of oil come to 100.1 %, more than all of it.",
            "Check the shares; a certificate gives them in % of the whole.",
        ),
    )


def test_kinds_of_a_substance_are_held_against_its_limit_together(sqlite_keeper: Keeper) -> None:
    told = "α-thujone 30%, β-thujone 10%"
    sqlite_keeper.do("material", code="sage", kind="oil", density="0.9", constituents=told)
    oil = sqlite_keeper.opens("receive", material="sage", amount="100mL")
    water = sqlite_keeper.opens("receive", material="water", amount="10L")
    code = sqlite_keeper.opens("start", product="Sage", kind="syrup", target="1L")
    sqlite_keeper.do("add", lot=code, source=water, amount="999mL")
    sqlite_keeper.do("add", lot=code, source=oil, amount="1mL")
    served = serving(sqlite_keeper.book, code, glass="240mL", pour="1:7").pourings[0].concerns
    (thujone,) = [item for item in served if item.concern.substance == "thujone"]
    # 1 mL of oil at 0.9 g/mL is 900 mg; 40 % of it in a litre, of which a glass takes 30 mL.
    assert thujone.concern.mg_per_glass == pytest.approx(0.4 * 900 * 30 / 1000, rel=1e-3)
    assert any(item.is_passed and item.limit.code == "eu-thujone" for item in thujone.limits)


def test_every_limit_and_reminder_speaks_of_a_substance_that_the_table_knows() -> None:
    limited = {item.substance for item in shipped()} - {"alcohol", "sugar"}
    assert limited <= {row["name"] for row in ROWS}


def test_no_name_stands_for_two_substances() -> None:
    names = [
        substances().counted_as(name)
        for row in ROWS
        for name in (row["name"], *row["cas"], *row.get("also", ()), *row.get("forms", ()))
    ]
    assert names == [
        row["name"]
        for row in ROWS
        for _ in (row["name"], *row["cas"], *row.get("also", ()), *row.get("forms", ()))
    ]


def test_every_cas_number_ends_in_its_check_digit() -> None:
    """By the algorithm of python-stdnum, a reference library kept by others."""
    numbers = [
        name
        for row in ROWS
        for name in (*row["cas"], *row.get("forms", ()))
        if re.fullmatch(r"[\d-]+", name)
    ]
    assert len(numbers) > 30
    assert [number for number in numbers if not casrn.is_valid(number)] == []


@pytest.mark.parametrize(
    ("called", "carries"),
    [
        ("Bitter almonds, oil of", ("hydrocyanic acid",)),
        ("wormwood-oil", ("thujone",)),
        ("Sweet flag root", ("beta-asarone",)),
        ("Spearmint oil", ()),
    ],
)
def test_goods_are_known_by_whole_words_of_their_names(
    called: str, carries: tuple[str, ...]
) -> None:
    assert usual_concerns(called) == carries
