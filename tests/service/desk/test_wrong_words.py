"""What every verb says of words that cannot be read: each of its words is named as people name it.

One call of a verb with all of its words wrong tells of all at once; they are kept whole, so that
the name of a field, the words for a choice and what to do cannot change unseen.
"""

from collections.abc import Iterator

import pytest

from ledger.errors import LedgerError
from ledger.service.copies.season_files import words_of
from ledger.service.copies.season_verbs import VERBS
from tests.keeper import Keeper
from tests.kept.golden import check_golden

WRONG = {"hidden": "a\u200bb", "unreadable": "what?", "empty": ""}
"""Words that hold what nobody sees, mean nothing, and are none."""


def problems(keeper: Keeper, verb: str, wrong: str) -> Iterator[str]:
    """Yield what is said of a verb all of whose words are wrong."""
    try:
        keeper.do(verb, **dict.fromkeys(words_of(VERBS[verb]), wrong))
    except LedgerError as error:
        for what, todo in error.problems:
            yield f"  {what}"
            yield f"    {todo}"


@pytest.mark.parametrize("kind", WRONG)
def test_each_verb_names_each_of_its_words_that_is_wrong(kind: str, sqlite_keeper: Keeper) -> None:
    lines = [
        line
        for verb in sorted(VERBS)
        for line in (verb, *problems(sqlite_keeper, verb, WRONG[kind]))
    ]
    check_golden(f"wrong_words/{kind}.txt", "\n".join((*lines, "")))
