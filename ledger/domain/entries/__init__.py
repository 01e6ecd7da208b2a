"""Every kind of entry the book can hold, a frozen class each.

Guarantees: `FACTS` lists all kinds by their name, and a kind's name, table and JSON key are the
same word. Refuses: kinds that are not listed; a new kind needs a class here and a migration.
"""

from ledger.domain.entries.bench import (
    Add,
    Decant,
    Filter,
    Finish,
    Look,
    MakeUp,
    Measurement,
    Rest,
    Rinse,
    Start,
)
from ledger.domain.entries.evidence import Forget, Strike
from ledger.domain.entries.forecasts import Foretold
from ledger.domain.entries.goods import Answer, Bottle, Cases, Complaint, Labels, Move
from ledger.domain.entries.house import House, Party, Person
from ledger.domain.entries.masters import Formula, Limit, Material, Withdrawal
from ledger.domain.entries.recall import Closing, Contact
from ledger.domain.entries.receipt import Receipt
from ledger.domain.entries.spine import (
    Draft,
    Entry,
    Facts,
    FactsT,
    Level,
    Opened,
    Posting,
    When,
    entries_of,
    is_of,
)
from ledger.domain.entries.trials import Plan
from ledger.domain.entries.upkeep import Clean, Count, Equipment, Note
from ledger.domain.entries.verdicts import Check, Deviation, Judge

FACTS: dict[str, type[Facts]] = {
    facts.KIND: facts
    for facts in (
        House,
        Person,
        Material,
        Formula,
        Receipt,
        Start,
        Add,
        Rest,
        Filter,
        Rinse,
        Decant,
        Look,
        Measurement,
        MakeUp,
        Finish,
        Bottle,
        Labels,
        Move,
        Judge,
        Check,
        Complaint,
        Count,
        Note,
        Deviation,
        Clean,
        Equipment,
        Strike,
        Party,
        Limit,
        Withdrawal,
        Contact,
        Closing,
        Answer,
        Foretold,
        Plan,
        Forget,
        Cases,
    )
}

__all__ = [
    "FACTS",
    "Add",
    "Answer",
    "Bottle",
    "Cases",
    "Check",
    "Clean",
    "Closing",
    "Complaint",
    "Contact",
    "Count",
    "Decant",
    "Deviation",
    "Draft",
    "Entry",
    "Equipment",
    "Facts",
    "FactsT",
    "Filter",
    "Finish",
    "Foretold",
    "Forget",
    "Formula",
    "House",
    "Judge",
    "Labels",
    "Level",
    "Limit",
    "Look",
    "MakeUp",
    "Material",
    "Measurement",
    "Move",
    "Note",
    "Opened",
    "Party",
    "Person",
    "Plan",
    "Posting",
    "Receipt",
    "Rest",
    "Rinse",
    "Start",
    "Strike",
    "When",
    "Withdrawal",
    "entries_of",
    "is_of",
]
