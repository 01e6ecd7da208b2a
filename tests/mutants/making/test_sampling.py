"""Mutants are drawn alike by the same seed and told by their change."""

from tests.mutants.cases import TEXT, mutants
from tests.mutants.making.sampling import drawn

FILES = [("ledger/a.py", TEXT), ("ledger/b.py", TEXT.replace("cloudy", "bright"))]


def test_the_same_seed_draws_the_same_mutants() -> None:
    first, places = drawn(FILES, 5, 1)
    assert (first, places) == drawn(FILES, 5, 1)
    assert first != drawn(FILES, 5, 2)[0]
    assert len(first) == 5


def test_more_than_there_are_cannot_be_drawn() -> None:
    every, places = drawn(FILES, 1000, 1)
    assert len(every) == places == 2 * len(mutants())


def test_a_mutant_tells_its_line_and_its_change() -> None:
    mutant = mutants()[">= -> >"]
    assert (mutant.line, mutant.old_line) == (2, "return left >= wanted")
    assert mutant.new_line == "return left > wanted"
    assert mutant.diff == ["- return left >= wanted", "+ return left > wanted"]
    assert mutant.text == TEXT.replace(">=", ">")


def test_a_change_of_several_lines_is_told_whole() -> None:
    mutant = mutants()['say( "cloudy", ) -> pass']
    assert mutant.line == 7
    assert mutant.diff == ["- say(", '- "cloudy",', "- )", "+ pass"]
