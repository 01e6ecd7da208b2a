"""Small lists: the house, the people, the materials, the parties.

Guarantees: plain lines or JSON, never both. Refuses: to read anything itself.
"""

from cli.call import Call
from cli.out import say
from cli.tables import print_json, print_lines, print_table
from ledger.domain.fields import specs
from ledger.service.book import Book
from ledger.service.looking import entries_of_kind, house_of, materials
from ledger.service.parties import parties
from reports.format import scaled


def say_house(call: Call, book: Book) -> None:
    """Print what is known of the house."""
    house = house_of(book)
    plain = {spec.name: getattr(house, spec.name) for spec in specs(type(house))}
    lines = (f"{name.replace('_', ' ')}: {value}" for name, value in plain.items() if value)
    say(call, plain, *lines)


def list_kind(call: Call, kind: str, names: tuple[str, ...]) -> None:
    """List the entries in force of a kind by some of their fields."""
    facts = [entry.draft.facts for entry in entries_of_kind(call.book(), kind)]
    rows = [[str(getattr(item, name) or "") for name in names] for item in facts]
    if call.json:
        print_json([dict(zip(names, row, strict=True)) for row in rows])
    elif rows:
        print_table(names, rows)
    else:
        print_lines([f"There is no {kind} in the book yet."])


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
    if call.json:
        print_json([dict(zip(names, row, strict=True)) for row in rows])
    elif rows:
        print_table(heads, rows, right="g/mL,%vol")
    else:
        print_lines(["There is no material in the book yet."])


def list_parties(call: Call) -> None:
    """List the suppliers and customers."""
    heads = ("name", "phone", "email", "address", "words")
    rows = [[getattr(item, head) or "" for head in heads] for item in parties(call.book())]
    if call.json:
        print_json([dict(zip(heads, row, strict=True)) for row in rows])
    elif rows:
        print_table(heads, rows)
    else:
        print_lines(
            [
                "The book knows nobody's telephone number yet.",
                'Next: pottle party add "NAME" --phone NUMBER',
            ]
        )
