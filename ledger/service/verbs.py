"""All verbs that record, by their names.

Guarantees: a season file is named after its verb and its columns after the verb's words. Refuses:
nothing; it is a list.
"""

from collections.abc import Callable

from ledger.service.batches import add, finish, makeup, rest, start
from ledger.service.book import Recorded
from ledger.service.calling import contact
from ledger.service.clarifying import decant, filter_, look, measure, rinse
from ledger.service.formulas import load, withdraw
from ledger.service.keeping import check, clean, correct, count, equipment, note, strike
from ledger.service.limits import limit
from ledger.service.parties import party
from ledger.service.recalling import close_recall, recall
from ledger.service.receiving import receive
from ledger.service.selling import bottle, complain, judge, labels, send
from ledger.service.setting_up import house, material, person

VERBS: dict[str, Callable[..., Recorded]] = {
    "house": house,
    "person": person,
    "material": material,
    "party": party,
    "limit": limit,
    "formula": load,
    "withdraw": withdraw,
    "receive": receive,
    "start": start,
    "add": add,
    "rest": rest,
    "filter": filter_,
    "rinse": rinse,
    "decant": decant,
    "look": look,
    "measure": measure,
    "makeup": makeup,
    "finish": finish,
    "bottle": bottle,
    "labels": labels,
    "send": send,
    "judge": judge,
    "complain": complain,
    "recall": recall,
    "contact": contact,
    "close": close_recall,
    "check": check,
    "clean": clean,
    "equipment": equipment,
    "count": count,
    "note": note,
    "correct": correct,
    "strike": strike,
}
