"""Areas are told by how a path begins, whatever folders are made inside of them."""

import pytest

from tests.mutants.making.tree import mutable, project_files
from tests.mutants.telling.areas import AREAS, NAMES, area_of


@pytest.mark.parametrize(
    ("file", "area"),
    [
        ("ledger/domain/lots/codes.py", "domain"),
        ("ledger/domain/entries/words.py", "domain"),
        ("ledger/errors.py", "domain"),
        ("ledger/domain/rules/gate.py", "rules"),
        ("ledger/science/liquids/alcohol.py", "science"),
        ("ledger/store/engine/connections.py", "store"),
        ("ledger/service/desk/act.py", "service"),
        ("ledger/service/recalls/calls.py", "service"),
        ("reports/words/glass/cautions.py", "words"),
        ("reports/words/cautions.py", "words"),
        ("reports/json/views.py", "words"),
        ("reports/views.py", "words"),
        ("reports/pdf/rows.py", "pdf"),
        ("cli/commands/add.py", "cli"),
        ("cli/kit/out.py", "cli"),
        ("sample_data/season.py", "elsewhere"),
    ],
)
def test_a_file_is_in_one_area(file: str, area: str) -> None:
    assert area_of(file) == area


def test_every_module_of_the_source_is_in_an_area_and_every_area_has_modules() -> None:
    assert {area_of(file) for file in mutable(project_files())} == set(NAMES)
    assert {area for _, area in AREAS} == set(NAMES)
