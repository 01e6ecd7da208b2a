"""What a maker may call a command of another name.

Guarantees: each word here is no command, and each answer is the words of one that there is.
"""

from ledger.errors import did_you_mean

OTHER_WORDS = {
    "batch": "start",
    "bottles": "stock",
    "buy": "receive",
    "cancel": "strike",
    "carton": "case",
    "cloudy": "look",
    "customer": "party",
    "delete": "strike",
    "delivery": "receive",
    "destroy": "send --as destroyed",
    "edit": "correct",
    "expired": "due",
    "fill": "bottle",
    "find": "journal",
    "history": "journal",
    "inventory": "stock",
    "log": "journal",
    "lots": "stock",
    "new": "start",
    "pack": "bottle or pottle case",
    "pour": "serving",
    "price": "cost",
    "print": "label or pottle record",
    "recipe": "formula",
    "sale": "send",
    "sales": "list sales",
    "save": "backup",
    "search": "journal",
    "sell": "send",
    "spirit": "stock --spirit",
    "staff": "person",
    "supplier": "party",
    "taste": "look",
    "today": "due",
    "undo": "strike",
    "weigh": "add",
}
"""Words for a job, and the command that does it."""


def question_after(word: str, commands: dict[str, tuple[str, str]]) -> str:
    """Return a question after the command that a word may mean, with a blank before it; or nothing.

    >>> question_after("Sell", {}), question_after("filtr", {"filter": ("bench", "")})
    (' Did you mean pottle send?', ' Did you mean filter?')
    """
    other = OTHER_WORDS.get(word.casefold())
    return f" Did you mean pottle {other}?" if other else did_you_mean(word, commands)
