"""All verbs that record, by their names.

Guarantees: a season file is named after its verb and its columns after the verb's words; a verb is
loaded when it is asked for, so that a command at the bench waits for its own verb alone.
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
    "forget": "recall.forget",
    "limit": "masters.limits",
    "formula": "masters.formula:load",
    "withdraw": "masters.formula",
    "receive": "bench.receive",
    "start": "bench.start",
    "add": "bench.add",
    "rest": "bench.rest",
    "filter": "bench.filter:filter_",
    "rinse": "bench.rinse",
    "decant": "bench.decant",
    "look": "bench.look",
    "measure": "bench.measure",
    "foretell": "glass.foretell",
    "makeup": "bench.makeup",
    "finish": "bench.finish",
    "bottle": "goods.bottle",
    "labels": "goods.label",
    "cases": "goods.case",
    "send": "goods.send",
    "judge": "verdicts.judge",
    "complain": "goods.complain",
    "answer": "goods.answer",
    "plan": "causes.plan",
    "jars": "bench.jars",
    "recall": "recall.order",
    "contact": "recall.contact",
    "close": "recall.order:close_recall",
    "check": "verdicts.check",
    "clean": "bench.clean",
    "equipment": "bench.equipment",
    "count": "goods.count",
    "note": "bench.note",
    "correct": "evidence.correct",
    "strike": "evidence.strike",
}
"""The module of each verb, with its name there where that is another."""


class _Verbs(Mapping[str, Verb]):
    def __getitem__(self, verb: str) -> Verb:
        module, _, name = _PLACES[verb].partition(":")
        function: Verb = getattr(import_module(f"ledger.service.{module}"), name or verb)
        return function

    def __iter__(self) -> Iterator[str]:
        return iter(_PLACES)

    def __len__(self) -> int:
        return len(_PLACES)


VERBS: Mapping[str, Verb] = _Verbs()
"""The verbs by their names."""
