"""Which command usually comes next.

Guarantees: every step is a command of ours with the code filled in; words in capitals are for the
maker to fill in. Refuses: steps that would be refused as things stand.
"""

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from ledger.domain.entries import (
    Add,
    Check,
    Clean,
    Count,
    Entry,
    Equipment,
    Finish,
    Formula,
    House,
    Labels,
    Limit,
    Look,
    Material,
    Note,
    Party,
    Person,
    Rest,
    Start,
    Withdrawal,
)
from ledger.domain.entries.choices import LotType, MaterialKind
from ledger.domain.lots.lot import BARRED, Status
from ledger.domain.lots.state import is_finished, is_trial, latest, open_rest
from ledger.domain.rules.finding import Finding
from ledger.domain.rules.release.barriers import unseen, unseen_since_hold
from ledger.domain.rules.usual.measures import SPIRITUOUS
from reports.words.bench.draws import commands
from reports.words.desk.next_in_formula import by_formula, end_of_rest
from reports.words.desk.next_when_hazy import (
    LIQUIDS_CLEARED,
    UNDER_WAY,
    clearing_of,
    pass_of,
)

if TYPE_CHECKING:
    from ledger.service.bench.draws import Proposed
    from ledger.service.lots.dossier import Dossier
    from ledger.service.lots.journal import Said

NOT_AN_INGREDIENT = frozenset({MaterialKind.BOTTLE, MaterialKind.CLOSURE, MaterialKind.LABEL})
"""Kinds of material that no batch begins with."""
AT_THE_BENCH = frozenset(
    {"add", "rest", "filter", "rinse", "decant", "makeup", "look", "measure", "finish"}
)
"""Kinds of entry after which a batch goes on with the next step of its formula."""
FIRST_MATERIAL = 'pottle material add CODE --name "NAME" --kind KIND'
DUE = "pottle due"
START = 'pottle start --product "NAME" --kind KIND --target VOLUME'
ENDS = ("pottle finish", "pottle release")
"""How commands begin that end a making; what is not clear is cleared before."""
SEND = "pottle send {} COUNT --to WHO"
LOOK = "pottle look {} GRADE --of neat"


def next_step(
    entry: Entry, dossier: "Dossier | None", lacking: tuple["Proposed", ...] = ()
) -> str | None:
    """Return the command that usually comes next, or None.

    Args:
        entry: What was recorded.
        dossier: Of the lot it is about, if any.
        lacking: What is still to be put into that lot by its formula.
    """
    if entry.draft.corrects is not None:
        return f"pottle journal --entry {entry.draft.corrects}"
    if dossier is None:
        return _without_lot(entry)
    if dossier.lot.status is Status.STRUCK:
        return "pottle stock"
    if isinstance(entry.facts, Check | Count | Note):
        return step_of_lot(dossier, lacking)
    return _after(entry, dossier, lacking)


def step_of_lot(dossier: "Dossier", lacking: tuple["Proposed", ...] = ()) -> str:
    """Return the command that comes next for a lot as it stands: as after its last act."""
    lot = dossier.lot
    if lot.status is Status.STRUCK:
        return "pottle stock"
    is_filled = lot.status is Status.FINISHED and dossier.outputs
    if is_filled or (lot.on_hand <= 0 and (dossier.outputs or dossier.holders)):
        return f"pottle trace {lot.code} --forward"
    for entry in reversed(dossier.state.entries):
        step = None if entry.kind in ("move", "cases") else _after(entry, dossier, lacking)
        if step:
            return step
    return "pottle stock"


def step_of_journal(said: Sequence["Said"], *, is_all: bool) -> str:
    """Return what comes after the journal.

    Args:
        said: What it showed.
        is_all: Whether it was of the whole book: its last entry is looked at next; else of one lot
            or entry: the lot is.
    """
    if is_all:
        return f"pottle journal --entry {said[-1].entry.seq}"
    lot = said[-1].entry.draft.lot
    return f"pottle lot {lot}" if lot else "pottle journal"


def _after(entry: Entry, dossier: "Dossier", lacking: tuple["Proposed", ...]) -> str | None:
    """Return what comes after an entry that stands, with its lot as it is now."""
    code = dossier.state.code
    again = clearing_of(dossier) if entry.kind == "look" else None
    if entry.kind in AT_THE_BENCH and (step := _by_formula(dossier, lacking)):
        return again if again and step.startswith(ENDS) else step
    match entry.kind:
        case "receipt":
            return _after_receipt(dossier)
        case "start" | "add" if lacking:
            return _next_line(code, lacking)
        case "start":
            return f"pottle add {code} LOT AMOUNT"
        case "rest" | "add":
            return _at_the_bench(entry, dossier)
        case "filter" | "rinse" | "decant" | "makeup":
            return LOOK.format(code)
        case "look" if again:
            return again
        case "look" | "measure" | "finish" | "judge" | "bottle":
            return _towards_release(dossier)
        case "cases":
            return f"pottle label {code} --kind case --out cases.pdf"
        case "labels" if dossier.lot.status is not Status.RELEASED:
            return _towards_release(dossier)
        case "labels":
            return SEND.format(code)
        case "complaint":
            return f"pottle trace {code}"
        case "move":
            return "pottle stock"
        case "contact" | "closing":
            return _in_recall(dossier)
        case _:
            return None


def _in_recall(dossier: "Dossier") -> str:
    """Return what comes after a call or the end of a recall: once it is closed, what is left goes.

    A recall that is closed shows its lot next, so the lot does not show the recall again.
    """
    if (lot := dossier.lot).status is not Status.RECALLED:
        return f"pottle recall {lot.code} --drill"
    kinds = (entry.kind for entry in reversed(dossier.state.entries))
    if next(kind for kind in kinds if kind in ("judge", "closing")) == "judge":
        return f"pottle recall {lot.code}"
    return f"pottle send {lot.code} AMOUNT --as destroyed" if lot.on_hand > 0 else "pottle stock"


def _by_formula(dossier: "Dossier", lacking: tuple["Proposed", ...]) -> str | None:
    """Return what comes next of a formula: what goes in, then its steps; None without steps."""
    formula, state = dossier.formula, dossier.state
    is_made = state.opened.lot_type is LotType.MADE and dossier.lot.status in UNDER_WAY
    if formula is None or not formula.steps or not is_made:
        return None
    # Lines and steps of a formula have no order among each other; what goes in is asked for first.
    if lacking:
        return _next_line(state.code, lacking)
    if going_on := open_rest(state):
        return end_of_rest(going_on, formula, state.code)
    return by_formula(formula, state) or _towards_release(dossier)


def _next_line(code: str, lacking: tuple["Proposed", ...]) -> str:
    """Return the command that puts in the next line there is a lot for, or brings one in."""
    ready, called = commands(code, lacking), lacking[0].wanted.called
    if ready:
        return ready[0]
    return (
        f"pottle receive {called.code} AMOUNT"
        if called.material
        else f"pottle start {called.code} VOLUME"
    )


def release_of(code: str) -> str:
    """Return the command that releases a lot."""
    return f"pottle release {code}"


def before_release(release: str, in_the_way: Iterable[Finding]) -> str:
    """Return what to do first where a release is next and something stands in its way.

    Args:
        release: The command that releases the lot.
        in_the_way: What stands in the way, in order; where no command does anything about it,
            the release stays, since it lists it all.
    """
    return next((finding.command for finding in in_the_way if finding.command), release)


def _without_lot(entry: Entry) -> str | None:
    match entry.facts:
        case Person():
            return FIRST_MATERIAL
        case Material(code=code):
            return f'pottle receive {code} AMOUNT --from "SUPPLIER"'
        case Check(about=int() as about):
            return f"pottle journal --entry {about}"
        case Clean():
            return START
        case Equipment():
            return DUE
        case Formula(code=code):
            return f"pottle start {code} VOLUME"
        case Withdrawal(code=code):
            return f"pottle formula show {code}"
        case Party():
            return "pottle party list"
        case Limit(code=code):
            return f"pottle limits {code}"
        case House():
            return "pottle house"
        case _:
            return None


def _after_receipt(dossier: "Dossier") -> str:
    if dossier.lot.sort in NOT_AN_INGREDIENT:
        return "pottle stock"
    return START


def _at_the_bench(entry: Entry, dossier: "Dossier") -> str:
    code, facts = dossier.state.code, entry.facts
    if open_rest(dossier.state):
        return f"pottle rest {code} --end"
    is_cleared = dossier.lot.product_kind in LIQUIDS_CLEARED
    if isinstance(facts, Rest) and is_cleared:
        return pass_of(dossier.state)
    # What was finished before and is topped up is looked at, and finished again.
    if not is_cleared or latest(dossier.state, Finish):
        return LOOK.format(code)
    if isinstance(facts, Add) and not _has_menstruum(dossier):
        return f"pottle add {code} LOT AMOUNT"
    return f"pottle rest {code} --for macerate"


def _has_menstruum(dossier: "Dossier") -> bool:
    """Return whether a liquid that dissolves oil is in a batch: spirit, or what was made of it."""
    into = {edge.source for edge in dossier.inputs}
    lots = [node.brief for node in dossier.trace.nodes if node.brief.code in into]
    return any(lot.sort is MaterialKind.ETHANOL or lot.product_kind in SPIRITUOUS for lot in lots)


def _towards_release(dossier: "Dossier") -> str | None:
    state, code = dossier.state, dossier.state.code
    status, lot_type = dossier.lot.status, state.opened.lot_type
    if status is Status.RELEASED:
        return _after_release(dossier)
    if status is Status.HELD and _is_seen_since_hold(dossier):
        return f'{release_of(code)} --because "WHY IT IS GONE"'
    if status in BARRED:
        return f"pottle trace {code} --forward"
    if lot_type is not LotType.PACKED and unseen(state):
        return LOOK.format(code)
    if lot_type is LotType.MADE and not is_finished(state):
        return f"pottle finish {code} VOLUME"
    if is_trial(state):
        return _of_trial(dossier)
    return release_of(code)


def _is_seen_since_hold(dossier: "Dossier") -> bool:
    return latest(dossier.state, Look) is not None and not unseen_since_hold(dossier.state)


def _of_trial(dossier: "Dossier") -> str:
    """Return what comes after the making of a trial, which is compared and never leaves."""
    start = latest(dossier.state.bulk or dossier.state, Start)
    group = start.trial_group if start else None
    return f'pottle compare "{group}"' if group else "pottle due"


def _after_release(dossier: "Dossier") -> str:
    code = dossier.state.code
    if dossier.state.opened.lot_type is LotType.PACKED:
        has_labels = latest(dossier.state, Labels) is not None
        return SEND.format(code) if has_labels else f"pottle label {code} --out labels.pdf"
    if dossier.lot.product_kind in LIQUIDS_CLEARED:
        return 'pottle start --product "NAME" --kind syrup --target VOLUME'
    if dossier.state.opened.lot_type is LotType.MADE:
        return f"pottle bottle {code} COUNT x SIZE"
    return START
