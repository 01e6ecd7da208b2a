"""What published label law asks of a label, and that each row has its place or its reason.

Each check says which test holds a row, not that a label complies with any law.
"""

import ast
import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from tests.claims.label_holders import Beside, Held, Lacking, Place
from tests.claims.label_places import ARTICLE_9, HAZARD, LAW, PART_101
from tests.house import ROOT
from tests.science.published import REFERENCE, rows

PLACES: tuple[Place, ...] = tuple(
    place for table in (LAW, ARTICLE_9, PART_101, HAZARD) for place in table.values()
)


def read(name: str) -> dict[str, Any]:
    told = json.loads((REFERENCE / "labels" / name).read_text(encoding="utf-8"))
    assert isinstance(told, dict)
    return told


def test_every_row_of_label_law_has_its_place_and_no_other() -> None:
    assert [(row["quantity"], row["conditions"]) for row in rows("label_law.csv")] == list(LAW)


def test_every_particular_of_article_9_and_the_lot_has_its_place_and_no_other() -> None:
    law = read("eu-1169-art9.json")
    assert [*law["items"], *law["plus"]] == list(ARTICLE_9)
    (count,) = [row["value"] for row in rows("label_law.csv") if row["unit"] == "items"]
    assert len(law["items"]) == int(count)


def test_every_item_of_part_101_and_of_spirit_as_a_hazard_has_its_place_and_no_other() -> None:
    assert [item for item, _ in read("us-21cfr101.json")["items"]] == list(PART_101)
    assert list(read("ethanol-hazard.json")) == list(HAZARD)


@cache
def functions_in(path: str) -> frozenset[str]:
    tree = ast.parse(Path(ROOT / path).read_text(encoding="utf-8"))
    return frozenset(node.name for node in tree.body if isinstance(node, ast.FunctionDef))


def named() -> Iterator[str]:
    return (test for place in PLACES if isinstance(place, Held) for test in place.tests)


@pytest.mark.parametrize("test", sorted(set(named())), ids=lambda test: test.partition("::")[2])
def test_a_test_that_holds_a_row_stands_where_it_is_said_to(test: str) -> None:
    path, _, name = test.partition("::")
    assert name.startswith("test_")
    assert name in functions_in(path)


def test_what_is_met_names_its_tests_and_what_is_not_says_why_in_a_sentence() -> None:
    for place in PLACES:
        if isinstance(place, Held):
            assert place.what
            assert place.tests
        else:
            assert isinstance(place, Beside | Lacking)
            assert place.why.endswith(".")
