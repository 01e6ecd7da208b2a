"""All verbs that record, by their names.

Guarantees: a season file is named after its verb and its columns after the verb's words; a verb is
loaded when it is asked for, so that a command at the bench waits for its own verb alone. Refuses:
nothing; it is a list.
"""

from collections.abc import Callable, Iterator, Mapping
from importlib import import_module

from ledger.service.desk.book import Recorded

Verb = Callable[..., Recorded]
_PLACES = {
    "house": "masters.house",
    "person": "masters.person",
    "material": "masters.material",
    "party": "masters.party",
    "limit": "masters.limits",
    "formula": "masters.formula:load",
    "withdraw": "masters.formula",
    "receive": "bench.receive",
    "start": "bench.start",
    "add": "bench.start",
    "rest": "bench.start",
    "filter": "bench.filter:filter_",
    "rinse": "bench.filter",
    "decant": "bench.filter",
    "look": "bench.filter",
    "measure": "bench.filter",
    "makeup": "bench.start",
    "finish": "bench.start",
    "bottle": "goods.bottle",
    "labels": "goods.bottle",
    "send": "goods.bottle",
    "judge": "goods.bottle",
    "complain": "goods.bottle",
    "recall": "recall.order",
    "contact": "recall.contact",
    "close": "recall.order:close_recall",
    "check": "bench.note",
    "clean": "bench.note",
    "equipment": "bench.note",
    "count": "goods.count",
    "note": "bench.note",
    "correct": "evidence.correct",
    "strike": "evidence.correct",
}
"""The module of each verb, with its name there where that is another."""


class _Verbs(Mapping[str, Verb]):
    def __getitem__(self, verb: str) -> Verb:
        module, _, name = _PLACES[verb].partition(":")
        found: Verb = getattr(import_module(f"ledger.service.{module}"), name or verb)
        return found

    def __iter__(self) -> Iterator[str]:
        return iter(_PLACES)

    def __len__(self) -> int:
        return len(_PLACES)


VERBS: Mapping[str, Verb] = _Verbs()
"""The verbs by their names."""
