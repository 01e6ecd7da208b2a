"""A listed mutant is known by its text, wherever its line stands."""

import pytest

from tests.mutants.cases import TEXT, mutants
from tests.mutants.telling.equivalents import LISTED, listed, reason_of

LIST = """
[[mutant]]
file = "ledger/domain/sums.py"
line = "return left >= wanted"
becomes = "return left > wanted"
reason = "Nothing is ever just enough."
"""


def test_a_mutant_is_found_by_file_line_and_what_that_becomes() -> None:
    (one,) = listed(LIST)
    assert reason_of(mutants()[">= -> >"], [one]) == "Nothing is ever just enough."
    assert reason_of(mutants()["left >= wanted -> None"], [one]) is None
    assert reason_of(mutants("ledger/domain/other.py")[">= -> >"], [one]) is None
    assert reason_of(mutants(text=TEXT.replace("wanted", "asked"))[">= -> >"], [one]) is None


def test_it_is_found_when_its_line_has_moved_and_is_indented_otherwise() -> None:
    moved = "class A:\n" + "".join(f"    {line}\n" for line in TEXT.splitlines())
    assert reason_of(mutants(text=moved)[">= -> >"], listed(LIST)) is not None


def test_a_star_stands_for_anything() -> None:
    wide = listed(LIST.replace("sums.py", "*").replace("wanted", "*"))
    assert reason_of(mutants(text=TEXT.replace("wanted", "asked"))[">= -> >"], wide) is not None
    assert reason_of(mutants("ledger/store/sums.py")[">= -> >"], wide) is None


def test_a_mutant_without_a_reason_is_refused() -> None:
    with pytest.raises(TypeError, match="reason"):
        listed(LIST.replace("reason =", "# reason ="))


def test_the_kept_list_is_whole_sentences() -> None:
    for one in listed(LISTED.read_text(encoding="utf-8")):
        assert one.reason.endswith(".")
        assert one.line != one.becomes
