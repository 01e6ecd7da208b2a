"""Answers of the commands of formulas.

Guarantees: plain tables or JSON, never both.
"""

from pathlib import Path

from cli.kit.call import Call
from cli.kit.files import check_place
from cli.kit.listing import Listing
from cli.kit.tables import print_json, print_lines, print_table
from ledger.domain.amounts.quantity import Measure, parse_quantity
from ledger.domain.masters.formulas import version_of
from ledger.errors import InputError
from ledger.service.desk.clock import house_of
from ledger.service.masters.formula import version as find_version
from ledger.service.masters.formula import versions, withdrawn
from reports.json.masters.formula import (
    FormulaRow,
    difference_rows,
    formula_answer,
    formula_row,
    scaled_answer,
)
from reports.kit.card import Card
from reports.kit.format import tidy
from reports.kit.frame import Frame
from reports.words.masters.formula import differences, facts_of, formula_paper, line_rows, step_rows

LINE_HEADS = ("what", "amount", "overage", "tolerance", "within")


def list_formulas(call: Call) -> None:
    """List the formulas with their versions."""
    heads = ("formula", "version", "product", "kind", "basis", "state")
    book = call.book()
    gone, known = withdrawn(book), versions(book)
    rows = [
        [
            item.code,
            str(item.version),
            item.product,
            str(item.product_kind),
            tidy(item.basis.written),
            "withdrawn" if (item.code, item.version) in gone else "",
        ]
        for item in known
    ]
    nothing = ("There is no formula in the book yet.", "Next: pottle formula load FILE")

    def plain() -> list[FormulaRow]:
        return [formula_row(item, withdrawn=(item.code, item.version) in gone) for item in known]

    Listing(heads, rows, nothing, plain, right="version").say(call)


def show_formula(
    call: Call, code: str, version: int | None, out: Path | None = None, *, force: bool = False
) -> None:
    """Show one version of a formula, or write it as a paper."""
    if out:
        check_place(out, force=force)
    book = call.book()
    formula = find_version(book, code, version)
    is_withdrawn = (formula.code, formula.version) in withdrawn(book)
    if out:
        from cli.kit.papers import put_card

        def card_of(frame: Frame) -> Card:
            return formula_paper(formula, frame, is_withdrawn=is_withdrawn)

        put_card(call, book, card_of, out, force=force)
        return
    if call.json:
        print_json(formula_answer(formula, withdrawn=is_withdrawn))
        return
    state = ", withdrawn" if is_withdrawn else ""
    print_lines([f"{version_of(formula)}{state}"])
    print_table(("formula", "says"), [list(row) for row in facts_of(formula)])
    if formula.lines:
        print_lines([""])
        print_table(LINE_HEADS, line_rows(formula, formula.basis.amount), right="amount")
    if formula.steps:
        print_lines([""])
        print_table(("step", "act", "what to do", "limits"), step_rows(formula), right="step")


def compare_formulas(call: Call, code: str, old: int, new: int) -> None:
    """Say what differs between two versions."""
    book = call.book()
    rows = differences(find_version(book, code, old), find_version(book, code, new))
    if call.json:
        print_json(difference_rows(rows))
    elif rows:
        print_table(("what", f"version {old}", f"version {new}"), rows)
    else:
        print_lines([f"Versions {old} and {new} of {code} say the same."])


def scale_formula(call: Call, code: str, volume: str, version: int | None) -> None:
    """Say how much of everything a volume calls for."""
    book = call.book()
    formula = find_version(book, code, version)
    house = house_of(book)
    target = parse_quantity(volume, fluid_ounce=house.fluid_ounce if house else "US")
    if target.measure is not Measure.UL:
        raise InputError(f"{volume} is not a volume.", "Give a volume, such as 480mL.")
    if call.json:
        print_json(scaled_answer(formula, target))
        return
    print_lines([f"{version_of(formula)}, {formula.product}, {tidy(target.written)}"])
    print_table(LINE_HEADS, line_rows(formula, target.amount), right="amount")
    print_lines([f"Next: pottle start {formula.code} {target.written}"])
