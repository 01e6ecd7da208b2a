"""Reading how a syrup is poured: so many parts of soda water to one.

Guarantees: from 1 to 1000 whole parts, told alone or as a proportion. Refuses: every other text.
"""

from ledger.errors import InputError


def read_pour(text: str | None) -> int | None:
    """Return the parts of soda water to one part, from "7" or "1:7", or None when none is given.

    Raises:
        InputError: It is not of that form.
    """
    if not text:
        return None
    parts = text.strip().removeprefix("1:").strip()
    # The length before the number, for Python refuses to read a very long one.
    is_number = parts.isascii() and parts.isdecimal() and len(parts) <= len("1000")
    if not is_number or not 1 <= int(parts) <= 1000:
        raise InputError(
            f'"{text}" is not a way to pour.', "Write 1:7 for one part to seven of soda water."
        )
    return int(parts)
