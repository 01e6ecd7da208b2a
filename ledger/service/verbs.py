"""All verbs that record, by their names.

Guarantees: a season file is named after its verb and its columns after the verb's words; a verb is
loaded when it is asked for, so that a command at the bench waits for its own verb alone. Refuses:
nothing; it is a list.
"""

from collections.abc import Callable, Iterator, Mapping
from importlib import import_module

from ledger.service.book import Recorded

Verb = Callable[..., Recorded]
_PLACES = {
    "house": "setting_up",
    "person": "people",
    "material": "materials",
    "party": "parties",
    "limit": "limits",
    "formula": "formulas:load",
    "withdraw": "formulas",
    "receive": "receiving",
    "start": "batches",
    "add": "batches",
    "rest": "batches",
    "filter": "clarifying:filter_",
    "rinse": "clarifying",
    "decant": "clarifying",
    "look": "clarifying",
    "measure": "clarifying",
    "makeup": "batches",
    "finish": "batches",
    "bottle": "selling",
    "labels": "selling",
    "send": "selling",
    "judge": "selling",
    "complain": "selling",
    "recall": "recalling",
    "contact": "calling",
    "close": "recalling:close_recall",
    "check": "keeping",
    "clean": "keeping",
    "equipment": "keeping",
    "count": "counting",
    "note": "keeping",
    "correct": "correcting",
    "strike": "correcting",
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
