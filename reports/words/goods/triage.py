"""What a complaint points to, in words, and what comes next.

Guarantees: says which questions are still open and how old the last look is. Refuses: to name a
cause; a bright or a cloudy kept-back bottle only points one way (common practice, no source).
"""

from ledger.service.goods.triage import Triage
from reports.kit.format import clock, day, plural
from reports.words.entries.sentence import sentence

MOST_SHARED = 5
"""How many shared inputs are told."""


def triage_lines(found: Triage) -> list[str]:
    """Return what a complaint points to, a sentence a line."""
    lines = []
    if found.still_open:
        field = found.still_open[0].name.lower()
        lines.append(
            f"Still to ask: {', '.join(found.still_open)}. When it is known: pottle correct "
            f'{found.complaint.seq} --set {field}=ANSWER --because "asked later"'
        )
    lines.append(_look_line(found))
    lines += _pointing(found)
    lines.append(_others_line(found))
    lines += _shared_lines(found)
    return lines


def _look_line(found: Triage) -> str:
    if found.look is None:
        return f"Nobody has looked at {found.lot.code} or what it was filled from."
    of = found.lot.code if found.is_of_the_lot else "what it was filled from"
    when = clock(found.look.draft.happened)
    kept = "" if found.kept_back else " No bottle was kept back."
    return f"Last look at {of}, {when}: {sentence(found.look)}.{kept}"


def _pointing(found: Triage) -> list[str]:
    if not (found.is_about_clarity and found.look):
        return []
    bottle = "the bottle kept back" if found.kept_back else "a bottle of it"
    if not found.is_of_the_lot:
        return [f"No bottle of it was looked at: look at {bottle} today."]
    if not found.is_fresh:
        return [f"That was before the complaint: look at {bottle} today."]
    if found.is_unclear_here:
        return [f"So {bottle} is not clear either: that points to the lot."]
    return [
        f"So {bottle} is {found.grade}: that points to how theirs was stored or mixed, not to the "
        "lot."
    ]


def _others_line(found: Triage) -> str:
    if not found.others:
        return f"No other complaint of {found.lot.code}."
    told = "; ".join(f"{day(e.draft.happened)} {sentence(e)}" for e in found.others)
    return f"{plural(len(found.others), 'other complaint')} of {found.lot.code}: {told}."


def _shared_lines(found: Triage) -> list[str]:
    if not found.shared:
        return ["No other lot made of the same inputs is complained of."]
    lines = ["Other lots complained of are made of the same inputs:"]
    for item in found.shared[:MOST_SHARED]:
        complaints = plural(item.complaints, "complaint")
        lots = plural(item.lots, "other lot")
        lines.append(f"  {item.brief.code} {item.brief.name}: {complaints} of {lots}")
    more = len(found.shared) - MOST_SHARED
    return lines + ([f"  and {plural(more, 'more input', 'more inputs')}"] if more > 0 else [])


def triage_step(found: Triage) -> str:
    """Return the command that comes next: look, hold, suspects, recall, or a note."""
    code = found.lot.code
    if found.is_barred:
        if any(item.lots for item in found.shared):
            return f"pottle suspects {code}"
        return f"pottle recall {code} --drill"
    if found.is_unclear_here or found.others:
        return f'pottle hold {code} --because "WHY"'
    if not (found.is_fresh and found.is_of_the_lot):
        return f"pottle look {code} GRADE --of neat"
    return f'pottle note {code} "WHAT THE CUSTOMER WAS TOLD"'
