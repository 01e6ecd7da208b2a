"""The house on a screen or as JSON.

Guarantees: what is not known has no line. Refuses: a book without a house, which is damaged.
"""

from cli.kit.answer import say
from cli.kit.call import Call
from ledger.domain.entries.fields import specs
from ledger.errors import StorageError
from ledger.service.desk.book import Book
from ledger.service.desk.clock import house_of
from reports.json.masters.house import house_answer
from reports.kit.format import money
from reports.words.entries.masters import article_words
from reports.words.masters.house import keeping_of

LATER = ("hour_minor", "hour_digits", "keep_months", "articles")
"""Fields that are told in words of their own, after the others."""
CALLED = {"gln": "GLN", "company_prefix": "GS1 Company Prefix"}
"""Fields whose names are not written as they are said."""


def say_house(call: Call, book: Book) -> None:
    """Print what is known of the house.

    Raises:
        StorageError: The book has no house, so it is damaged.
    """
    house = house_of(book)
    if house is None:
        raise StorageError("The book has no house.", "See what is wrong: pottle verify")
    names = (spec.name for spec in specs(type(house)) if spec.name not in LATER)
    told = ((name, getattr(house, name)) for name in names)
    lines = [
        f"{CALLED.get(name, name.replace('_', ' '))}: {value}" for name, value in told if value
    ]
    if house.hour_minor is not None:
        hour = money(house.hour_minor, house.currency, house.hour_digits)
        lines.append(f"an hour of work: {hour}")
    if house.keep_months is not None:
        lines.append(f"records kept: {keeping_of(house)}")
    lines += (f"article: {article_words(article)}" for article in house.articles)
    say(call, lambda: house_answer(house), *lines)
