"""What every verb says of words that cannot be read, verb by verb.

One call of a verb with all of its words wrong tells of all at once; they are kept whole, so that
the name of a field, the words for a choice and what to do cannot change unseen.
"""

import pytest

from ledger.service.copies.season_verbs import VERBS
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.service.wrong_words import WRONG, problems


@pytest.mark.parametrize("kind", WRONG)
def test_each_verb_names_each_of_its_words_that_is_wrong(kind: str, sqlite_keeper: Keeper) -> None:
    told = (problems(sqlite_keeper, verb, WRONG[kind]) for verb in sorted(VERBS))
    check_golden(f"wrong_words/{kind}.txt", "\n".join((*(x for each in told for x in each), "")))
