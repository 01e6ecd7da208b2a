"""One lot on a screen.

Guarantees: codes are never cut.
"""

from collections.abc import Mapping, Sequence

from cli.kit.answer import step_for
from cli.kit.call import Call
from cli.kit.tables import print_json, print_lines, print_table
from cli.screens.lots.journal import print_said
from ledger.domain.amounts.quantity import show
from ledger.service.glass.cost import cost
from ledger.service.glass.serving import card
from ledger.service.lots.dossier import Dossier, dossier
from reports.words.desk.answer import what_is_there
from reports.words.entries.goods import gone
from reports.words.glass.cost import price_lines
from reports.words.lots.balance import balance
from reports.words.lots.dates import date_lines
from reports.words.lots.strength import content_facts
from reports.words.verdicts.control import control_facts


def show_lot(call: Call, text: str) -> None:
    """Show one lot."""
    book = call.book()
    found = dossier(book, text, call.writer)
    served = card(book, found.state.code)
    step = step_for(book, found)
    if call.json:
        from reports.json.lots.lot import lot_answer

        print_json(lot_answer(found, served, step))
        return
    print_lines([what_is_there(found), *date_lines(found.state.dates)])
    if served:
        print_lines([f"{label}: {value}." for label, value in content_facts(served)])
        print_lines(price_lines(cost(book, found.state.code)))
    print_lines([f"{label}: {value}" for label, value in control_facts(found)])
    names = {node.brief.code: node.brief.name for node in found.trace.nodes}
    made_of = [[edge.source, names[edge.source], edge.words] for edge in found.inputs]
    _print_part("Made of", ("lot", "what", "amount"), made_of)
    print_lines(["", "What was done"])
    print_said(found.said, with_lot=False)
    lost = balance(found.state, found.inputs, found.formula)
    _print_part("Yield and loss", ("part", "amount"), lost)
    _print_part("Where it went", ("to", "what", "amount"), _went(found, names))
    print_lines([f"Next: {step}"])


def _went(found: Dossier, names: Mapping[str, str]) -> list[list[str]]:
    """Return the lots something of a lot went into, and what left the house."""
    lots = [[edge.target, names[edge.target], edge.words] for edge in found.outputs]
    return lots + [
        [
            item.party or "–",
            f"{gone(item.moved_as, None)} {item.on}",
            show(abs(item.amount), item.measure),
        ]
        for item in found.holders
    ]


def _print_part(title: str, heads: Sequence[str], rows: Sequence[Sequence[str]]) -> None:
    if rows:
        print_lines(["", title])
        print_table(heads, rows)
