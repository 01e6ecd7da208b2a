"""Answers of commands that record, and small lists.

Guarantees: plain lines or JSON, never both. Refuses: to choose words; they come from `reports`.
"""

from pathlib import Path
from typing import Any

from cli.call import Call
from cli.tables import print_json, print_lines, print_table
from ledger.domain.entries import Formula
from ledger.domain.fields import specs
from ledger.errors import RefusedError
from ledger.service.book import Book, Recorded
from ledger.service.looking import dossier, entries_of_kind, house_of, materials
from ledger.service.parties import parties
from reports.build.answers import answer
from reports.build.words_of_bench import pores
from reports.format import celsius, duration, scaled


def say(call: Call, plain: dict[str, Any], *lines: str) -> None:
    """Print lines, or their plain values as JSON."""
    if call.json:
        print_json(plain)
    else:
        print_lines(lines)


def recorded(call: Call, book: Book, done: Recorded, out: Path | None = None) -> None:
    """Print the answer to a recording, and where its paper is."""
    lot = done.code or done.entry.draft.lot
    said = answer(done, dossier(book, lot) if lot else None)
    if out is None:
        say(call, said.plain, *said.lines)
    else:
        paper = f"The {done.entry.kind} are in {out}."
        say(call, {**said.plain, "out": str(out)}, said.lines[0], paper, *said.lines[1:])


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


def list_formulas(call: Call) -> None:
    """List the formulas with their versions."""
    heads = ("formula", "version", "product", "kind", "basis")
    rows = [
        [item.code, str(item.version), item.product, str(item.product_kind), item.basis.written]
        for item in _versions(call)
    ]
    if call.json:
        print_json([dict(zip(heads, row, strict=True)) for row in rows])
    elif rows:
        print_table(heads, rows, right="version")
    else:
        print_lines(["There is no formula in the book yet."])


def show_formula(call: Call, code: str, version: int | None) -> None:
    """Show one version of a formula."""
    found = [
        item for item in _versions(call, code.strip().lower()) if version in (None, item.version)
    ]
    if not found:
        raise RefusedError(
            f"The formula {code}{f' version {version}' if version else ''} is not in the book.",
            "pottle formula list shows those that are.",
        )
    formula = found[-1]
    if call.json:
        from ledger.domain.plain import facts_to_plain

        print_json(facts_to_plain(formula))
        return
    print_lines(
        [
            f"{formula.code} version {formula.version}: {formula.product}, for "
            f"{formula.basis.written}."
        ]
    )
    print_table(
        ("material", "amount"), [[line.material, line.amount.written] for line in formula.lines]
    )
    print_table(
        ("step", "what to do", "limits"),
        [[step.verb, step.words or "", _limits(step)] for step in formula.steps],
    )


def _limits(step: Any) -> str:  # noqa: ANN401 - a formula's step
    parts = (
        f"at least {duration(step.minutes_min)}" if step.minutes_min is not None else "",
        f"at most {duration(step.minutes_max)}" if step.minutes_max is not None else "",
        f"from {celsius(step.temp_min_mdegc)}" if step.temp_min_mdegc is not None else "",
        f"to {celsius(step.temp_max_mdegc)}" if step.temp_max_mdegc is not None else "",
        f"at most {pores(None, step.pore_max_nm)}" if step.pore_max_nm is not None else "",
        f"{step.passes_min} passes or more" if step.passes_min is not None else "",
    )
    return ", ".join(part for part in parts if part)


def _versions(call: Call, code: str | None = None) -> tuple[Formula, ...]:
    from ledger.service.formulas import versions

    return versions(call.book(), code)
