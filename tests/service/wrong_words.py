"""What a verb says of words that cannot be read: each of its words is named as people name it."""

from collections.abc import Iterator

from ledger.errors import LedgerError
from ledger.service.copies.season_files import words_of
from ledger.service.copies.season_verbs import VERBS
from tests.keeper import Keeper
from tests.kept.golden import check_golden_part

WRONG = {"hidden": "a\u200bb", "unreadable": "what?", "empty": ""}
"""Words that hold what nobody sees, mean nothing, and are none."""


def problems(keeper: Keeper, verb: str, wrong: str) -> Iterator[str]:
    """Yield what is said of a verb all of whose words are wrong, below the verb."""
    yield verb
    try:
        keeper.do(verb, **dict.fromkeys(words_of(VERBS[verb]), wrong))
    except LedgerError as error:
        for what, todo in error.problems:
            yield f"  {what}"
            yield f"    {todo}"


def check_wrong_words(keeper: Keeper, verb: str) -> None:
    """Say all words of a verb wrong, in three ways; what is said of each is as it is kept."""
    for kind, wrong in WRONG.items():
        check_golden_part(f"wrong_words/{kind}.txt", list(problems(keeper, verb, wrong)))
