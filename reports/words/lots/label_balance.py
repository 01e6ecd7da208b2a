"""What became of the labels of a packed lot, in words.

Guarantees: what nobody told is said to be so, and is not taken for none; labels with a word across
are told apart from those for bottles.
"""

from collections import Counter
from collections.abc import Iterable, Sequence

from ledger.domain.entries import Labels


def labels_balance(told: Sequence[Labels]) -> str:
    """Return what was printed for a lot and what became of it; what nobody told is not reckoned.

    >>> from ledger.domain.entries.choices import Across
    >>> labels_balance([Labels(printed=8), Labels(printed=0, used=6, spoiled=2)])
    '8 printed = 6 used + 2 spoiled + 0 left'
    >>> labels_balance([Labels(printed=8), Labels(printed=1, across=Across.HOLD)])
    '8 printed; nobody told how many were used; 1 with HOLD across'
    """
    printed = sum(facts.for_bottles for facts in told)
    used, spoiled = _sum(facts.used for facts in told), _sum(facts.spoiled for facts in told)
    spoilt = "" if spoiled is None else f"{spoiled} spoiled"
    words = f"{printed} printed{f', {spoilt}' if spoilt else ''}; nobody told how many were used"
    if used is not None:
        left = printed - used - (spoiled or 0)
        rest = f"{left} left" if left >= 0 else f"{-left} more than were printed"
        parts = [f"{used} used", spoilt, rest if spoilt or left < 0 else f"{rest} or spoiled"]
        words = f"{printed} printed = {' + '.join(part for part in parts if part)}"
    marked = Counter[str]()
    for facts in told:
        marked[facts.across.upper() if facts.across else ""] += facts.printed
    return "; ".join([words, *(f"{n} with {word} across" for word, n in marked.items() if word)])


def _sum(told: Iterable[int | None]) -> int | None:
    """Return how many in all; None where nobody told any."""
    known = [count for count in told if count is not None]
    return sum(known) if known else None
