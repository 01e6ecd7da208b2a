"""Suppliers and customers, for machines."""

from ledger.domain.entries import Party
from reports.json.kit.answer import Answer


class PartyRow(Answer, frozen=True):
    """A supplier or a customer, and how to reach them."""

    party: str
    """Name as it stands in receipts and deliveries."""
    phone: str | None
    """Telephone number."""
    email: str | None
    """Electronic mail address."""
    address: str | None
    """Postal address in one line."""
    words: str | None
    """Whom to ask for, when they are there."""
    gln: str | None
    """Its number as a party (GLN)."""


def party_row(party: Party) -> PartyRow:
    """Return a supplier or a customer."""
    return PartyRow(party.name, party.phone, party.email, party.address, party.words, party.gln)
