"""The serving card on a screen or as JSON.

Guarantees: figures first, then what to mind, then what is missing.
"""

from cli.kit.call import Call
from cli.kit.tables import print_json, print_lines, print_table
from ledger.service.glass.card import ServingCard
from reports.words.glass import serving as words
from reports.words.glass.declaration import declared_lines, exemption_lines, nutrition_table
from reports.words.glass.explain import explained
from reports.words.glass.limits import close_lines, limit_table


def show_card(call: Call, card: ServingCard, *, explain: bool) -> None:
    """Print a serving card."""
    if call.json:
        from reports.json.glass.serving import serving_answer

        print_json(serving_answer(card, explain=explain))
        return
    print_lines([*words.head(card), ""])
    glass, limits = words.glass_table(card), limit_table(card)
    print_table(glass.heads, glass.rows, right=",".join(glass.heads[1:]))
    if limits.rows:
        print_lines([""])
        print_table(limits.heads, limits.rows, right=",".join(limits.heads[1:-1]))
        print_lines([*limits.sources, *close_lines(card)])
    print_lines(["", *declared_lines(card), ""])
    facts = nutrition_table(card)
    print_table(facts.heads, facts.rows, right=",".join(facts.heads[1:]))
    print_lines(["", *words.louche_lines(card), *words.missing_lines(card)])
    print_lines(["", *words.caution_lines(card)])
    if explain:
        print_lines(["", "Where the figures come from", *explained(card)])
        print_lines(exemption_lines(card.declaration.listed.place))
    else:
        print_lines(["Next: pottle serving " + card.code + " --explain"])
