"""What a material is called in other languages, as it is typed: "de=Orangenöl; fr=huile d'orange".

Guarantees: one name a language, by language; a language that is not told keeps its name. Refuses:
what is no code of a language, and the same language twice.
"""

import re
from collections.abc import Sequence
from functools import partial

from ledger.domain.entries.masters import NameIn
from ledger.domain.entries.texts import read_text
from ledger.errors import InputError, LedgerError, attempt, together

_LANGUAGE = re.compile(r"[a-z]{2}")
HOW = 'Write each as LANGUAGE=NAME, as in "de=Orangenöl", with ; between them.'
"""How names are written."""


def read_names(text: str, before: Sequence[NameIn] = ()) -> tuple[NameIn, ...]:
    """Return names by language: those of a text, and those of before that it does not tell.

    A language with nothing behind its sign of equality loses its name.

    Raises:
        InputError: Something is no name in a language; all that is wrong is told.

    >>> [f"{item.language} {item.name}" for item in read_names("fr=sucre; de=Zucker")]
    ['de Zucker', 'fr sucre']
    """
    errors: list[LedgerError] = []
    told: dict[str, str] = {}
    for part in filter(None, (piece.strip() for piece in text.split(";"))):
        language, name = attempt(errors, partial(_name, part), ("", ""))
        if language and language in told:
            errors.append(InputError(f"The name in {language} is given twice.", "Give it once."))
        told[language] = name
    if errors:
        raise together(errors)
    names = {item.language: item.name for item in before} | told
    return tuple(NameIn(language, names[language]) for language in sorted(names) if names[language])


def _name(part: str) -> tuple[str, str]:
    language, is_pair, name = part.partition("=")
    code = language.strip().lower()
    if not is_pair or not _LANGUAGE.fullmatch(code):
        raise InputError(f'"{part}" is no name in a language.', HOW)
    return code, read_text(name, f"name in {code}") if name.strip() else ""
