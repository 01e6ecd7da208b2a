"""What a lot was held to, in words: its formula, who checked it, how it was released.

Guarantees: a release by the only person at work on a lot, an override, and a change of what a
release stands on, are said plainly.
Refuses: to hide a check by the person who did the work.
"""

from ledger.domain.entries import Check, Deviation, Entry, Judge
from ledger.domain.entries.choices import Verdict
from ledger.domain.lots.lot import Status
from ledger.domain.lots.makers import is_self_released, makers_of
from ledger.domain.masters.formulas import version_of
from ledger.service.lots.dossier import Dossier
from reports.kit.format import clock, initials, plural

UNDER_WAY = (Status.MAKING, Status.FINISHED)
"""Where a lot stands whose release no longer counts."""
MOST_TOLD = 3
"""How many changes are told one by one."""


def control_facts(dossier: Dossier, *, on_paper: bool = False) -> tuple[tuple[str, str], ...]:
    """Return what is told of a lot's control, label and value; on paper without commands."""
    state, formula = dossier.state, dossier.formula
    barred = ", ".join(state.barred_inputs)
    rows = (
        ("Formula", version_of(formula) if formula else ""),
        ("Checked by", _checked(dossier)),
        ("Released", _released(dossier)),
        ("Changed since its release", _changed(dossier, on_paper=on_paper)),
        ("Beware", f"made of {barred}, now held, rejected or recalled" if barred else ""),
    )
    return tuple((label, value) for label, value in rows if value)


def _checked(dossier: Dossier) -> str:
    checks = [e for e in dossier.state.entries if isinstance(e.facts, Check)]
    authors = {entry.seq: entry.draft.by for entry in dossier.state.entries}
    makers = makers_of(dossier.state)
    told = []
    for entry in checks:
        facts = entry.facts
        about = facts.about if isinstance(facts, Check) else None
        did_it = {authors.get(about)} if about else makers
        same = ", who did it too" if entry.draft.by in did_it else ""
        told.append(f"{initials(entry)}{f' (entry {about})' if about else ''}{same}")
    return "; ".join(dict.fromkeys(told))


def _released(dossier: Dossier) -> str:
    releases = [entry for entry in dossier.state.entries if _is_release(entry)]
    if not releases:
        return ""
    last = releases[-1]
    overridden = [
        entry
        for entry in dossier.state.entries
        if isinstance(entry.facts, Deviation) and entry.facts.about == last.seq
    ]
    told = f"by {initials(last)} on {clock(last.draft.happened)}"
    if overridden:
        told += f", over {plural(len(overridden), 'finding')}: {last.draft.reason}"
    is_own = is_self_released(dossier.state, last.draft.by)
    told = f"{told}; self-released" if is_own else told
    # What goes in ends a release, which the last verdict then no longer tells.
    is_over = isinstance(_judged(dossier), Judge) and dossier.lot.status in UNDER_WAY
    return f"{told}; released no longer, since something went in" if is_over else told


def _changed(dossier: Dossier, *, on_paper: bool) -> str:
    """Return what was changed of that on which a release stands, and what to do about it."""
    told = [
        f"entry {item.entry} of {item.lot}, {'struck' if item.is_struck else 'corrected'} by "
        f"entry {item.by}"
        for item in dossier.changed
    ]
    if not told:
        return ""
    more = f"; and {len(told) - MOST_TOLD} more" if len(told) > MOST_TOLD else ""
    what, code = f"{'; '.join(told[:MOST_TOLD])}{more}", dossier.state.code
    if on_paper:
        return f"{what}; to be decided about anew"
    return f"{what}. Decide about it anew: pottle hold {code}, or pottle release {code}"


def _judged(dossier: Dossier) -> object:
    facts = (entry.facts for entry in reversed(dossier.state.entries))
    last = next((item for item in facts if isinstance(item, Judge)), None)
    return last if last and last.verdict is Verdict.RELEASE else None


def _is_release(entry: Entry) -> bool:
    facts = entry.facts
    return isinstance(facts, Judge) and facts.verdict is Verdict.RELEASE
