"""Small lists: the house, the people, the materials, the parties.

Guarantees: plain lines or JSON, never both; an empty list says what comes next. Refuses: to read
anything itself.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from cli.kit.answer import say
from cli.kit.call import Call
from cli.kit.tables import print_json, print_lines, print_table
from ledger.domain.entries import House
from ledger.domain.entries.fields import specs
from ledger.service.desk.book import Book
from ledger.service.lots.dossier import entries_of_kind, house_of, materials
from ledger.service.masters.party import parties
from reports.kit.format import money, scaled


def say_house(call: Call, book: Book) -> None:
    """Print what is known of the house."""
    house = house_of(book)
    plain = {spec.name: getattr(house, spec.name, None) for spec in specs(House)}
    told = {**plain, "hour_minor": None}
    lines = [f"{name.replace('_', ' ')}: {value}" for name, value in told.items() if value]
    if house and house.hour_minor is not None:
        lines.append(f"an hour of work: {money(house.hour_minor, house.currency)}")
    say(call, plain, *lines)


@dataclass(frozen=True, slots=True)
class Listing:
    """A list as a table, as JSON, or as words when there is nothing to list."""

    heads: Sequence[str]
    """Column heads."""
    rows: Sequence[Sequence[str]]
    """Cells."""
    nothing: Sequence[str]
    """What is said when there is no row: that there is none, and the next step."""
    keys: Sequence[str] = ()
    """Keys of the JSON; none: the heads."""
    right: str = ""
    """Heads of the columns set to the right, with commas between."""

    def say(self, call: Call) -> None:
        """Print it."""
        if call.json:
            keys = self.keys or self.heads
            print_json([dict(zip(keys, row, strict=True)) for row in self.rows])
        elif self.rows:
            print_table(self.heads, self.rows, self.right)
        else:
            print_lines(self.nothing)


def list_people(call: Call) -> None:
    """List the people who write in the book."""
    names = ("initials", "name", "role")
    facts = [entry.draft.facts for entry in entries_of_kind(call.book(), "person")]
    rows = [[str(getattr(item, name) or "") for name in names] for item in facts]
    nothing = ("There is nobody in the book yet.", 'Next: pottle person add INITIALS "NAME"')
    Listing(names, rows, nothing).say(call)


def list_materials(call: Call) -> None:
    """List the materials."""
    found = materials(call.book())
    rows = [
        [
            item.code,
            item.name,
            str(item.sort),
            str(item.how_obtained or ""),
            scaled(item.density_mg_per_l, 1_000_000) if item.density_mg_per_l else "",
            scaled(item.abv_mpct, 1000) if item.abv_mpct is not None else "",
        ]
        for item in found
    ]
    heads = ("material", "name", "kind", "how", "g/mL", "%vol")
    names = ("code", "name", "kind", "how", "density_g_per_ml", "abv_pct")
    nothing = (
        "There is no material in the book yet.",
        'Next: pottle material add CODE --name "NAME" --kind KIND',
    )
    Listing(heads, rows, nothing, names, right="g/mL,%vol").say(call)


def list_parties(call: Call) -> None:
    """List the suppliers and customers."""
    heads = ("name", "phone", "email", "address", "words")
    rows = [[getattr(item, head) or "" for head in heads] for item in parties(call.book())]
    nothing = (
        "The book knows nobody's telephone number yet.",
        'Next: pottle party add "NAME" --phone NUMBER',
    )
    Listing(heads, rows, nothing).say(call)
