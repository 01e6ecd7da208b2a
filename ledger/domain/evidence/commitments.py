"""Commitments: an entry says that it knows who somebody is, and not who.

Guarantees: who has the details and their salt can show that they are those of the entry, and that
no other details fit it; who has the entry alone can try no list of names on it, for the salt has
256 bits that are kept with the details and erased with them. Refuses: a salt of another length.

The commitment is SHA-256(0x02 || salt || details), the details as canonical text. The salt has one
length, so that it cannot be told from the details in two ways; the first byte keeps it apart from
the leaves (0x00) and the nodes (0x01) of the tree of hashes.

References:
    FIPS 180-4 (SHA-256); RFC 6962, section 2.1 (a byte before what is hashed, against reading one
    kind of hash as another); RFC 8785 (the canonical text); RFC 9901, section 4.2.4 (salted
    hashes of single facts in a signed text, of a salt of at least 128 bits).
"""

from collections.abc import Mapping
from hashlib import sha256

from ledger.domain.entries.canonical import canonical_text
from ledger.domain.entries.fields import specs
from ledger.domain.entries.spine import Facts

SALT_SIZE = 32
"""How many bytes a salt has."""
PREFIX = b"\x02"
"""What stands before salt and details in what is hashed."""
Details = Mapping[str, str]
"""What stands beside an entry: the field and what it says; what is absent is left out."""


def details_of(facts: Facts) -> dict[str, str]:
    """Return what facts say that can be forgotten.

    >>> from ledger.domain.entries import Person
    >>> details_of(Person("AB", "Anna Bell"))
    {'name': 'Anna Bell'}
    """
    told = {spec.name: getattr(facts, spec.name) for spec in specs(type(facts)) if spec.is_beside}
    return {name: words for name, words in told.items() if words}


def commitment(salt: bytes, details: Details) -> str:
    """Return the commitment to details, 64 hexadecimal digits.

    Raises:
        ValueError: The salt has another length.
    """
    if len(salt) != SALT_SIZE:
        raise ValueError(f"A salt has {SALT_SIZE} bytes, and this one {len(salt)}.")
    return sha256(PREFIX + salt + canonical_text(details).encode()).hexdigest()
