"""The house on a screen or as JSON."""

from cli.kit.answer import say
from cli.kit.call import Call
from ledger.domain.entries import House
from ledger.domain.entries.fields import specs
from ledger.service.desk.book import Book
from ledger.service.desk.clock import house_of
from reports.kit.format import money


def say_house(call: Call, book: Book) -> None:
    """Print what is known of the house."""
    house = house_of(book)
    plain = {spec.name: getattr(house, spec.name, None) for spec in specs(House)}
    told = {**plain, "hour_minor": None}
    lines = [f"{name.replace('_', ' ')}: {value}" for name, value in told.items() if value]
    if house and house.hour_minor is not None:
        lines.append(f"an hour of work: {money(house.hour_minor, house.currency)}")
    say(call, plain, *lines)
