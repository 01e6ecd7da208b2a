"""Numbers of entries, as people write them.

Guarantees: a number may have its sign (#) before it. Refuses: to guess an entry.
"""

from ledger.errors import InputError


def entry_number(text: str) -> int:
    """Return the number of an entry.

    Raises:
        InputError: It is no whole number.
    """
    plain = text.strip().removeprefix("#")
    # 15 digits are surely below 2**53, to which numbers of the canonical text go.
    if not (plain.isascii() and plain.isdecimal()) or len(plain) > 15:
        raise InputError(
            f'"{text}" is not the number of an entry.',
            "pottle journal lists the entries with their numbers.",
        )
    return int(plain)
