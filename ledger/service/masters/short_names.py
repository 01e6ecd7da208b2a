"""Short names of materials and limits, as they are typed at the prompt.

Guarantees: a short name is the same however its letters were typed. Refuses: blanks and signs that
a shell would read.
"""

import re

from ledger.errors import InputError

_CODE = re.compile(r"[a-z0-9][a-z0-9-]{0,29}", re.ASCII)


def read_code(text: str, what: str, such_as: str) -> str:
    """Return a short name as it is typed at the prompt.

    Raises:
        InputError: It is empty, too long, or holds other characters.
    """
    code = text.strip().lower()
    if not _CODE.fullmatch(code):
        raise InputError(
            f'"{text}" cannot be the short name of a {what}.',
            f"Use at most 30 letters a-z, digits and dashes, such as {such_as}.",
        )
    return code
