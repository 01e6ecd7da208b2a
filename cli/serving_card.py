"""The serving card on a screen or as JSON.

Guarantees: figures first, then what to mind, then what is missing. Refuses: to choose words; they
come from `reports`.
"""

from cli.call import Call
from cli.tables import print_json, print_lines, print_table
from ledger.service.serving_card import ServingCard
from reports.build import serving as words
from reports.build.explaining import explained
from reports.build.limit_table import limit_table
from reports.build.serving_plain import serving_plain


def show_card(call: Call, card: ServingCard, *, explain: bool) -> None:
    """Print a serving card."""
    if call.json:
        told = {"explained": explained(card)} if explain else {}
        print_json({**serving_plain(card), **told})
        return
    print_lines([*words.head(card), ""])
    glass, limits = words.glass_table(card), limit_table(card)
    print_table(glass.heads, glass.rows, right=",".join(glass.heads[1:]))
    if limits.rows:
        print_lines([""])
        print_table(limits.heads, limits.rows, right=",".join(limits.heads[1:-1]))
        print_lines(limits.sources)
    print_lines(["", *words.louche_lines(card), *words.missing_lines(card)])
    print_lines(["", *words.caution_lines(card)])
    if explain:
        print_lines(["", "Where the figures come from", *explained(card)])
    else:
        print_lines(["Next: pottle serving " + card.code + " --explain"])
