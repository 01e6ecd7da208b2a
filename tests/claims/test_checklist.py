"""What a batch record must hold by published rules, and that this book has a place for each thing.

The list is of 21 CFR 111, 211 and 117, each row with its sections, kept under `tests/reference/`.
Each check says where a thing is written down, not that a house complies with any law.
"""

import csv
import re
from dataclasses import dataclass
from pathlib import Path

import pytest
from msgspec import Struct

from ledger.domain import entries
from ledger.domain.entries import masters
from tests.claims.batch_papers import keep_batch, papers_of
from tests.claims.record_places import PLACES
from tests.conftest import opened
from tests.keeper import MORNING, SetClock, copy_book

LIST = Path(__file__).parents[1] / "reference" / "batch_record_checklist.csv"
SECTION = re.compile(r"\b(111|211|117|101|1)\.\d+")


def rows() -> list[dict[str, str]]:
    with LIST.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@dataclass(frozen=True, slots=True)
class Papers:
    """All that is printed of the batch of a small book."""

    texts: dict[str, str]
    """The words of each paper by its name."""
    codes: dict[str, str]
    """The codes of its lots by nickname."""


@pytest.fixture(scope="module")
def papers(template: Path, tmp_path_factory: pytest.TempPathFactory) -> Papers:
    folder = tmp_path_factory.mktemp("checklist")
    book = copy_book(template, folder / "book.db")
    with opened(str(book), SetClock(MORNING)) as keeper:
        keep_batch(keeper, folder)
        return Papers(papers_of(keeper, book, folder), keeper.codes)


def test_every_row_of_the_list_has_its_place_and_no_other() -> None:
    assert [(row["area"], row["item"]) for row in rows()] == list(PLACES)


@pytest.mark.parametrize("row", rows(), ids=lambda row: row["item"][:40])
def test_every_row_names_the_section_it_comes_from(row: dict[str, str]) -> None:
    named = [text for column, text in row.items() if column not in ("area", "item") and text]
    assert named
    assert all(SECTION.search(text) for text in named)


def known_fields() -> set[str]:
    modules = (entries, masters)
    classes = [item for module in modules for item in vars(module).values()]
    return {
        f"{found.__name__}.{name}"
        for found in classes
        if isinstance(found, type) and issubclass(found, Struct)
        for name in found.__struct_fields__
    }


@pytest.mark.parametrize("item", PLACES, ids=lambda item: item[1][:40])
def test_what_a_row_asks_for_has_a_field_and_stands_on_a_paper(
    item: tuple[str, str], papers: Papers
) -> None:
    place = PLACES[item]
    assert set(place.fields) <= known_fields()
    shown = [(paper, words.format(**papers.codes)) for paper, words in place.shown]
    assert shown
    assert [(paper, words) for paper, words in shown if words not in papers.texts[paper]] == []
