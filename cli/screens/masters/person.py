"""The people on a screen or as JSON.

Guarantees: everybody once, as they are now; where there is nobody, how one is added is said.
"""

from cli.kit.call import Call
from cli.kit.listing import Listing
from ledger.domain.entries import Person
from ledger.service.lots.journal import entries_of_kind
from reports.json.masters.person import person_row


def list_people(call: Call) -> None:
    """List the people who write in the book."""
    names = ("initials", "name", "role")
    facts = [entry.facts for entry in entries_of_kind(call.book(), Person)]
    rows = [[str(getattr(item, name) or "") for name in names] for item in facts]
    nothing = ("There is nobody in the book yet.", 'Next: pottle person add INITIALS "NAME"')
    Listing(names, rows, nothing, lambda: list(map(person_row, facts))).say(call)
