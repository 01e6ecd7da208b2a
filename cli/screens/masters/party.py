"""The parties on a screen or as JSON.

Guarantees: every party once, as it is now; where there is none, how one is added is said.
"""

from cli.kit.call import Call
from cli.kit.listing import Listing
from ledger.service.masters.party import parties
from reports.json.masters.party import party_row


def list_parties(call: Call) -> None:
    """List the suppliers and customers."""
    found = parties(call.book())
    has_numbers = any(item.gln for item in found)
    heads = ("name", "phone", "email", "address", "words", *(["gln"] if has_numbers else []))
    rows = [[getattr(item, head) or "" for head in heads] for item in found]
    nothing = (
        "The book knows nobody's telephone number yet.",
        'Next: pottle party add "NAME" --phone NUMBER',
    )
    Listing(heads, rows, nothing, lambda: list(map(party_row, found))).say(call)
