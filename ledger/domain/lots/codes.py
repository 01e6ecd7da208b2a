"""Lot codes: a stem, a running number and a check character, as in ``OIL-007-1``.

Guarantees: a code made here has at most 20 characters of A-Z, 0-9 and "-". The dashes part it
into three breaths: the stem as letters, the number as digits, and the check character alone,
so that it is heard as the end of the code. Letters and digits without the dashes, check
character included, satisfy ISO/IEC 7064 MOD 37,36. Of slips in the letters and digits,
`check_code` catches

* every one that replaces a single character, whichever it is;
* every one that swaps two neighbouring characters (with or without a dash between them),
  save in one case: when the two follow each other in the order 0-9A-Z, Z being followed by 0
  (as 4 and 5, or 9 and A), the swap passes at 1 of the 36 remainders that the characters
  before them can leave.

A code that the book makes by itself (`next_code`) never ends in a character that is mistaken for
another when it is read aloud or copied by hand; codes that stand in a book already stay valid.

It does not promise to catch a dash that moved, nor two slips at once (it misses about 1 in 36).
Refuses: stems, numbers and texts that cannot be a code.

References:
    ISO/IEC 7064:2003, hybrid system MOD 37,36.
"""

import re
import unicodedata
from collections.abc import Callable, Iterable
from difflib import SequenceMatcher
from itertools import count

from ledger.errors import InputError, RefusedError, visible

LONGEST_CODE = 20
"""The most characters a lot code may have."""

_ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"
_STEM = re.compile(r"[A-Z0-9]{1,8}")
_FORM = re.compile(r"([A-Z0-9]{1,8})-(?=[A-Z0-9]{3})([0-9]*[A-Z]?[0-9]*)-([A-Z0-9])")
_MISTAKEN = frozenset("1IL0OQ")
_ALIKE = 0.6
_LEAST_SPAN = 3
_SMALL_WORDS = frozenset({"A", "AN", "AND", "FOR", "FROM", "IN", "OF", "ON", "THE", "TO", "WITH"})
# Letters that Unicode does not take apart into one and its accent, and signs that part no words.
_UNDECOMPOSED = str.maketrans(
    {"Æ": "AE", "Œ": "OE", "Ø": "O", "Ł": "L", "Đ": "D", "Þ": "TH", "'": None, "’": None}
)


def check_character(characters: str) -> str:
    """Compute the ISO/IEC 7064 MOD 37,36 check character.

    Args:
        characters: Characters of 0-9 and A-Z only, without dashes.

    >>> check_character("A12425GABC1234002")
    'M'
    """
    remainder = 36
    for character in characters:
        remainder = ((remainder + _ALPHABET.index(character)) % 36 or 36) * 2 % 37
    return _ALPHABET[(37 - remainder) % 36]


def make_code(stem: str, ordinal: int) -> str:
    """Make a lot code.

    Args:
        stem: 1 to 8 characters of A-Z and 0-9. A stem that ends in a digit is allowed, but
            ``A1`` with 2 and ``A`` with 1002 then differ by the place of a dash only.
        ordinal: The running number, at least 1; written with at least three digits.

    Raises:
        InputError: The stem has another form.
        RefusedError: The number is below 1, or too long for a code of 20 characters.

    >>> make_code("OIL", 7)
    'OIL-007-1'
    """
    if not _STEM.fullmatch(stem):
        raise InputError(
            f"The stem of a lot code must be 1 to 8 characters of A-Z and 0-9, "
            f'and "{visible(stem[:LONGEST_CODE])}" is not.',
            "Choose a short stem such as OIL.",
        )
    if ordinal < 1:
        raise RefusedError(
            f"The number of a lot code must be at least 1, and {ordinal} is not.",
            "Number lots from 1 upwards.",
        )
    code = f"{stem}-{ordinal:03d}-{check_character(f'{stem}{ordinal:03d}')}"
    if len(code) > LONGEST_CODE:
        raise RefusedError(
            f"The lot code {code} would have {len(code)} characters, "
            f"and a lot code has at most {LONGEST_CODE}.",
            "Choose a shorter stem.",
        )
    return code


def next_code(stem: str, begin: int, is_taken: Callable[[str], bool]) -> str:
    """Make the next free code of a stem, one that ends in no character taken for another.

    Numbers whose check character is 1, I, L, 0, O or Q are passed over. Where the numbers from
    `begin` on are taken without a gap, the code is the first after them; it is found in about
    twice the logarithm of their count.

    Args:
        stem: As `make_code` takes it.
        begin: A number at or before the wanted one, at least 1.
        is_taken: Whether a lot has that code already.

    Raises:
        InputError, RefusedError: As `make_code` raises them.

    >>> next_code("OIL", 7, lambda code: False)
    'OIL-009-Y'
    """

    def taken_from(number: int) -> bool:
        return is_taken(_clear_code(stem, number))

    if not taken_from(begin):
        return _clear_code(stem, begin)
    taken, step = begin, 1
    while taken_from(taken + step):
        taken, step = taken + step, step * 2
    free = taken + step
    while free - taken > 1:
        middle = (taken + free) // 2
        taken, free = (middle, free) if taken_from(middle) else (taken, middle)
    return _clear_code(stem, free)


def _clear_code(stem: str, begin: int) -> str:
    codes = (make_code(stem, number) for number in count(begin))
    return next(filter(is_clear, codes))


def is_clear(code: str) -> bool:
    """Tell whether a code ends in no character that is taken for another.

    >>> is_clear("OIL-009-Y"), is_clear("OIL-007-1")
    (True, False)
    """
    return code[-1] not in _MISTAKEN


def stem_for(words: str) -> str:
    """Choose a stem of 2 to 4 letters for a product or material.

    Several words give the initials of the first four, small words ("of", "and") left out.
    One word of up to four letters is its own stem; a longer one gives its first letter and
    the next two consonants. Accents are dropped; where no two letters are left, it is "LOT".

    >>> stem_for("Sweet orange oil"), stem_for("Crème de vanille"), stem_for("Lemon")
    ('SOO', 'CDV', 'LMN')
    """
    apart = unicodedata.normalize("NFKD", words).upper().translate(_UNDECOMPOSED)
    plain = "".join(letter for letter in apart if not unicodedata.combining(letter))
    every = re.findall("[A-Z]+", plain)
    telling = [word for word in every if word not in _SMALL_WORDS] or every
    stem = "".join(word[0] for word in telling[:4]) if len(telling) > 1 else _short(*telling[:1])
    return stem if len(stem) > 1 else "LOT"


def _short(word: str = "") -> str:
    consonants = re.sub("[AEIOU]", "", word[1:])
    if len(word) <= 4:
        return word
    return word[0] + consonants[:2] if len(consonants) > 1 else word[:3]


def check_code(code: str) -> str | None:
    """Say what is wrong with a code of the book's form, or None.

    The form is a stem, three or more digits and one last character, parted by dashes. One
    letter among the digits is still of the form, so that a slip there is caught and not
    taken for a maker's own code. Any other code is a maker's own, of which nothing is said.
    A maker's own code of this very form cannot be told from a slip: ask this of codes that
    are not in the book, and never refuse a code for it alone.

    Args:
        code: A code as `clean_code` gives it.

    >>> check_code("OIL-007-1") is None and check_code("BATCH 7") is None
    True
    """
    match = _FORM.fullmatch(code) if len(code) <= LONGEST_CODE else None
    if not match:
        return None
    expected = check_character(match[1] + match[2])
    if match[3] == expected:
        return None
    return (
        f"The lot code {code} ends in {match[3]}, but {match[1]}-{match[2]} calls for {expected}, "
        "so at least one character is wrong: read the code again."
    )


def clean_code(text: str) -> str:
    """Bring a code to upper case without white space around it.

    Raises:
        InputError: It is empty, too long, or holds other characters than A-Z, 0-9 and "-";
            all that is wrong is said at once.

    >>> clean_code(" oil-007-1 ")
    'OIL-007-1'
    """
    stripped = text.strip()
    if not stripped.strip("-"):
        raise InputError("No lot code was given.", "Write the code of a lot, such as OIL-001-D.")
    strange = dict.fromkeys(c for c in stripped if not re.fullmatch("[A-Za-z0-9-]", c))
    problems = []
    if strange:
        shown = ", ".join(f'"{visible(c)}"' for c in list(strange)[:5])
        problems.append(f"A lot code holds only A-Z, 0-9 and -, and this one holds {shown}.")
    if len(stripped) > LONGEST_CODE:
        problems.append(
            f"A lot code has at most {LONGEST_CODE} characters, and this one has {len(stripped)}."
        )
    if problems:
        raise InputError(" ".join(problems), "Read the code again and write it so.")
    return stripped.upper()


def nearest(code: str, known: Iterable[str], most: int = 3) -> tuple[str, ...]:
    """Find the known codes most like this one, the likest first.

    Args:
        code: The code that was not found.
        known: The codes to choose from; repeats count once.
        most: How many to give at most.

    Returns:
        Codes that share at least 0.6 of their characters in order (difflib's ratio); ties
        in alphabetical order; empty where none is near.
    """
    # It looks into its second text once, so the many codes are set as the first.
    matcher = SequenceMatcher(b=code)
    ranked = []
    for candidate in set(known):
        matcher.set_seq1(candidate)
        if matcher.real_quick_ratio() >= _ALIKE and matcher.quick_ratio() >= _ALIKE:
            ranked.append((-matcher.ratio(), candidate))
    return tuple(candidate for ratio, candidate in sorted(ranked)[:most] if -ratio >= _ALIKE)


def spans(codes: Iterable[str]) -> list[str]:
    """Return codes in their order; three or more of one stem in a row are the first to the last.

    >>> spans(["PEM-002-M", "PEM-003-K", "PEM-005-G", "OE-001-5"])
    ['PEM-002-M to PEM-005-G', 'OE-001-5']
    """
    runs = list[list[str]]()
    for code in codes:
        if runs and _follows(runs[-1][-1], code):
            runs[-1].append(code)
        else:
            runs.append([code])
    return [
        told
        for run in runs
        for told in ([f"{run[0]} to {run[-1]}"] if len(run) >= _LEAST_SPAN else run)
    ]


def _follows(one: str, other: str) -> bool:
    stem, number, _ = one.split("-")
    # Unwanted check characters are passed over, but not in old codes.
    return number.isdecimal() and other in (
        make_code(stem, int(number) + 1),
        _clear_code(stem, int(number) + 1),
    )
