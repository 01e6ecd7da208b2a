"""Numbers of GS1: each has a right check digit, and is of one article.

Guarantees: a number that is wrong does not come into the book by a correction either. Refuses: one
number for two articles.
"""

from collections.abc import Callable, Iterator

from ledger.domain.entries import Draft, House, Party
from ledger.domain.entries.house import Article
from ledger.domain.lots.scene import Scene
from ledger.domain.masters.articles import product_and_size
from ledger.domain.masters.gs1 import read_gln, read_gtin, read_prefix
from ledger.domain.rules.finding import Finding, Rule, impossible
from ledger.errors import LedgerError


def numbers_are_whole(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """Every number has all its digits, and the last of them is right."""
    match draft.facts:
        case House(gln=gln, company_prefix=prefix, articles=articles):
            told = [(gln, read_gln), (prefix, read_prefix)]
            told += [(article.gtin, read_gtin) for article in articles]
        case Party(gln=gln):
            told = [(gln, read_gln)]
        case _:
            return
    for number, read in told:
        yield from _wrong(number, read) if number else ()


def _wrong(number: str, read: Callable[[str], str]) -> Iterator[Finding]:
    try:
        right = read(number)
    except LedgerError as error:
        for what, todo in error.problems:
            yield impossible("number", what, todo)
    else:
        if right != number:
            yield impossible("number", f"{number} is written {right} in full.", "Write it so.")


def numbers_are_of_one_article(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """No two articles have one number."""
    if not isinstance(draft.facts, House):
        return
    of: dict[str, list[Article]] = {}
    for article in draft.facts.articles:
        of.setdefault(article.gtin, []).append(article)
    for gtin, articles in of.items():
        if len(articles) > 1:
            told = " and for ".join(product_and_size(each.product, each.size) for each in articles)
            yield impossible(
                "number", f"{gtin} is given for {told}.", "Each article has a number of its own."
            )


RULES: tuple[Rule, ...] = (numbers_are_whole, numbers_are_of_one_article)
