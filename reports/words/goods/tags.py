"""What stands on labels for the shelf, the bench and the carton, by kind.

Guarantees: what a label says of a lot is what its record says; a case has a symbol of
GS1 only where the house gave it such a number, or the number of its article is given. Refuses: a
kind that the lot cannot have, and the label of a case that nobody told of.

References:
    GS1 General Specifications, 3: (01) number of the article, (15) best before, (10) lot,
        (00) number of a case, which (02) what stands in it and (37) how many stand beside.
    Regulation (EC) No 1272/2008 (CLP), Annex I, 2.6: signal word and statement by category (read,
    see tests/reference).
"""

from collections.abc import Callable, Collection, Mapping

from msgspec.structs import replace

from ledger.domain.entries import Bottle, Cases, entries_of
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.state import latest, name, opener
from ledger.domain.masters.articles import article_of
from ledger.domain.masters.gs1 import case_link, case_number, filled_case_link, read_gtin
from ledger.errors import InputError, RefusedError
from ledger.service.glass.card import ServingCard
from ledger.service.lots.dossier import Dossier
from reports.kit.format import day, tidy
from reports.kit.pages import case_address
from reports.views.goods import TagView

BOTTLE = "bottle"
"""The kind that is taken where none is named."""
FNC1 = "\xf1"
"""Marks a GS1 text in a Code 128."""
STATEMENTS = {
    "H224": "Extremely flammable liquid and vapour.",
    "H225": "Highly flammable liquid and vapour.",
    "H226": "Flammable liquid and vapour.",
}
"""Hazard statements by number (CLP, Annex III; from memory)."""
KEEP_AWAY = (
    "Keep away from heat, hot surfaces, sparks, open flames and other ignition sources. No smoking."
)
"""Precautionary statement P210 (CLP, Annex IV; from memory)."""


def tag_view(kind: str, dossier: Dossier, card: ServingCard | None, gtin: str | None) -> TagView:
    """Return a label of a kind for a lot.

    Raises:
        InputError: There is no such kind, or its number is wrong.
        RefusedError: The lot cannot have one.
    """
    if kind not in KINDS:
        raise InputError(
            f'There is no kind of label called "{kind}".',
            f"Give one of: {', '.join((BOTTLE, *KINDS))}.",
        )
    if gtin is not None and kind != "case":
        raise InputError("Only a case has a number of its article.", "Leave --gtin out.")
    if kind == "case":
        return _case(dossier, gtin)
    if kind == "flammable":
        return _flammable(dossier, card)
    return KINDS[kind](dossier)


def _received(dossier: Dossier) -> TagView:
    if dossier.state.opened.lot_type is not LotType.RECEIVED:
        raise _no_such(dossier, "was not received", "vessel")
    first = opener(dossier.state)
    rows = (
        ("From", dossier.lot.supplier or ""),
        ("Their lot", dossier.lot.supplier_lot or ""),
        ("Received", day(first.draft.happened) if first else ""),
        ("Best before", str(dossier.state.best_before or "not known")),
    )
    code = dossier.state.code
    return TagView(
        name(dossier.state), code, rows=_told(rows), blanks=("Opened",), symbol=code, bars=code
    )


def _vessel(dossier: Dossier) -> TagView:
    first = opener(dossier.state)
    rows = (("Begun", day(first.draft.happened) if first else ""),)
    blanks = ("In it now", "Since, by", "Next")
    code = dossier.state.code
    return TagView(name(dossier.state), code, rows=_told(rows), blanks=blanks, symbol=code)


def _sample(dossier: Dossier) -> TagView:
    first = opener(dossier.state)
    rows = (
        ("Taken from the lot of", day(first.draft.happened) if first else ""),
        ("Best before", str(dossier.state.best_before or "not known")),
    )
    code = dossier.state.code
    return TagView(
        f"Retained sample: {name(dossier.state)}",
        code,
        rows=_told(rows),
        blanks=("Taken on, by", "Looked at"),
        symbol=code,
    )


def _barred(word: str) -> Callable[[Dossier], TagView]:
    def told(dossier: Dossier) -> TagView:
        blanks = ("Why", "Since, by")
        return TagView(name(dossier.state), dossier.state.code, word, blanks=blanks, is_barred=True)

    return told


def _case(dossier: Dossier, gtin: str | None) -> TagView:
    filled = latest(dossier.state, Bottle)
    if filled is None:
        raise _no_such(dossier, "is not bottled", "vessel")
    code, best = dossier.state.code, dossier.state.best_before
    rows = (
        ("Bottles of", tidy(filled.size.written)),
        ("Best before", str(best or "not known")),
    )
    if gtin is None:
        return TagView(
            name(dossier.state),
            code,
            rows=_told(rows),
            blanks=("How many",),
            symbol=code,
            bars=code,
        )
    number = read_gtin(gtin)
    dated = f"15{best:%y%m%d}" if best else ""
    under = f"(01){number}{f'(15){best:%y%m%d}' if best else ''}(10){code}"
    return TagView(
        name(dossier.state),
        code,
        rows=_told(rows),
        blanks=("How many",),
        bars=f"{FNC1}01{number}{dated}10{code}",
        under=under,
    )


def case_views(dossier: Dossier, only: Collection[int] = ()) -> tuple[TagView, ...]:
    """Return a label for each case of a lot that was told of, or for some of them.

    Args:
        dossier: Of the lot.
        only: Numbers of the cases; all where there are none.

    Raises:
        RefusedError: One of them is no case of the lot.
    """
    told = {
        number: facts
        for facts in (entry.facts for entry in entries_of(dossier.state.entries, Cases))
        for number in range(facts.first_case, facts.first_case + facts.count)
    }
    if strange := sorted(set(only) - told.keys()):
        raise RefusedError(
            f"The book knows of no case {strange[0]} of {dossier.state.code}.",
            f"pottle journal {dossier.state.code} tells which there are.",
        )
    return tuple(
        _numbered(dossier, number, facts)
        for number, facts in told.items()
        if not only or number in only
    )


def _numbered(dossier: Dossier, number: int, facts: Cases) -> TagView:
    plain = _case(dossier, None)
    code, house, what = dossier.state.code, dossier.house, name(dossier.state)
    rows = (("Case", str(number)), ("Holds", str(facts.holds)), *plain.rows)
    if facts.company_prefix is None:
        symbol = case_address(house, number) or code
        return replace(plain, rows=rows, blanks=(), symbol=symbol)
    sscc, article = case_number(facts.company_prefix, number), article_of(house, what)
    symbol = filled_case_link(sscc, article.gtin, facts.holds, code) if article else case_link(sscc)
    return replace(
        plain,
        rows=rows,
        blanks=(),
        symbol=symbol,
        bars=f"{FNC1}00{sscc}",
        under=f"(00){sscc}",
    )


def _flammable(dossier: Dossier, card: ServingCard | None) -> TagView:
    found = card.flammable if card else None
    if found is None:
        raise RefusedError(
            f"{dossier.state.code} has no class of flammable liquids by what the book knows of it.",
            "pottle serving says how its flash point is reckoned.",
        )
    return TagView(
        f"{found.signal}: {name(dossier.state)}",
        dossier.state.code,
        has_flame=True,
        statements=(
            f"{found.statement} {STATEMENTS.get(found.statement, '')}".strip(),
            f"P210 {KEEP_AWAY}",
            "Reckoned from its strength; the carrier and local law decide.",
        ),
    )


KINDS: Mapping[str, Callable[[Dossier], TagView]] = {
    "received": _received,
    "vessel": _vessel,
    "sample": _sample,
    "case": lambda dossier: _case(dossier, None),
    "hold": _barred("HOLD"),
    "reject": _barred("REJECT"),
    "flammable": lambda dossier: _flammable(dossier, None),
}
"""Every kind besides that of a bottle."""


def _told(rows: tuple[tuple[str, str], ...]) -> tuple[tuple[str, str], ...]:
    return tuple((label, value) for label, value in rows if value)


def _no_such(dossier: Dossier, why: str, instead: str) -> RefusedError:
    return RefusedError(
        f"{dossier.state.code} {why}, so it has no such label.", f"Take --kind {instead}."
    )
