"""A list of ingredients that stands in a formula's text, beside the one that the book reckons.

Guarantees: a label has one list, that of the lot as it was made; an allergen that only the typed
one names stands on it all the same. Refuses: to leave anything off unsaid.
"""

from ledger.domain.masters.allergens import named_in
from ledger.domain.masters.formulas import version_of
from ledger.domain.masters.typed_list import Parted, parted
from ledger.science.contents.ingredients import Listed
from ledger.service.account.label_law import allergens
from ledger.service.glass.card import ServingCard
from ledger.service.lots.dossier import Dossier


def formula_text(dossier: Dossier, card: ServingCard | None) -> Parted:
    """Return a formula's text without its list, and the list, where the book reckons one."""
    text = (dossier.formula.label_text if dossier.formula else None) or ""
    if card is None or not card.declaration.listed.ingredients:
        return Parted(text, "")
    return parted(text)


def only_typed(listed: Listed, typed: str) -> tuple[str, ...]:
    """Return the allergens that a typed list names and the reckoned one does not."""
    found = named_in(typed, allergens(), listed.place)
    return tuple(name for name in found if name not in listed.allergens)


def typed_list_lines(dossier: Dossier, card: ServingCard | None) -> tuple[str, ...]:
    """Return what is said of a list that was left off a label; nothing where none was."""
    typed = formula_text(dossier, card).typed
    if not typed or card is None or dossier.formula is None:
        return ()
    told = (
        f'Left off: "{typed}", in the text of {version_of(dossier.formula)}. A label has one list, '
        "that of the lot as it was made. Take it out of the formula, and load that as a new "
        "version.",
    )
    hidden = only_typed(card.declaration.listed, typed)
    if not hidden:
        return told
    names = ", ".join(name.upper() for name in hidden)
    return (
        *told,
        f"It names {names}, of which no material of {card.code} tells: the label says it too. "
        f'Record it: pottle material change CODE --allergens "{", ".join(hidden)}"',
    )
