"""Mutants of a small text, for tests."""

from tests.mutants.making.places import places
from tests.mutants.making.sampling import Mutant
from tests.mutants.trying.running import Outcome

TEXT = """\
def is_enough(left, wanted):
    return left >= wanted


def note(left):
    if left:
        say(
            "cloudy",
        )
"""


def mutants(file: str = "ledger/domain/sums.py", text: str = TEXT) -> dict[str, Mutant]:
    """Return all mutants of a text by their change."""
    found = [Mutant(file, place, text) for place in places(text)]
    return {mutant.change: mutant for mutant in found}


def outcomes() -> list[Outcome]:
    """Return an outcome of every end."""
    domain, words = mutants(), mutants("reports/words/sums.py")
    return [
        Outcome(domain[">= -> >"], "survived", tests=12),
        Outcome(domain["left -> not (left)"], "killed", "tests/domain/test_sums.py::test_a", 3),
        Outcome(words['say( "cloudy", ) -> pass'], "unrun"),
        Outcome(words['"cloudy" -> "XXcloudy"'], "killed", "its time was over", 3),
        Outcome(words["left -> not (left)"], "equivalent"),
        Outcome(words["left >= wanted -> None"], "broken", "tests/domain/test_sums.py::test_b", 1),
    ]
