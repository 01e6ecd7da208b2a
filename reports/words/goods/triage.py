"""What a complaint points to, in words, and what comes next.

Guarantees: says which questions are still open and how old the last look is. Refuses: to name a
cause; a bright or a cloudy kept-back bottle only points one way (common practice, no source).
"""

from ledger.service.goods.triage import Triage
from reports.kit.format import clock, day, plural
from reports.words.entries.sentence import sentence

MOST_SHARED = 5
"""How many shared inputs are told."""


def triage_lines(triage: Triage) -> list[str]:
    """Return what a complaint points to, a sentence a line."""
    lines = []
    if triage.still_open:
        field = triage.still_open[0].name.lower()
        lines.append(
            f"Still to ask: {', '.join(triage.still_open)}. When it is known: pottle correct "
            f'{triage.complaint.seq} --set {field}=ANSWER --because "asked later"'
        )
    lines.append(_look_line(triage))
    lines += _pointing(triage)
    lines.append(_others_line(triage))
    lines += _shared_lines(triage)
    return lines


def _look_line(triage: Triage) -> str:
    if triage.look is None:
        return f"Nobody has looked at {triage.lot.code} or what it was filled from."
    of = triage.lot.code if triage.is_of_the_lot else "what it was filled from"
    when = clock(triage.look.draft.happened)
    kept = "" if triage.kept_back else " No bottle was kept back."
    return f"Last look at {of}, {when}: {sentence(triage.look)}.{kept}"


def _pointing(triage: Triage) -> list[str]:
    if not (triage.is_about_clarity and triage.look):
        return []
    bottle = "the bottle kept back" if triage.kept_back else "a bottle of it"
    if not triage.is_of_the_lot:
        return [f"No bottle of it was looked at: look at {bottle} today."]
    if not triage.is_fresh:
        return [f"That was before the complaint: look at {bottle} today."]
    if triage.is_unclear_here:
        return [f"So {bottle} is not clear either: that points to the lot."]
    return [
        f"So {bottle} is {triage.grade}: that points to how theirs was stored or mixed, not to the "
        "lot."
    ]


def _others_line(triage: Triage) -> str:
    if not triage.others:
        return f"No other complaint of {triage.lot.code}."
    told = "; ".join(f"{day(e.draft.happened)} {sentence(e)}" for e in triage.others)
    return f"{plural(len(triage.others), 'other complaint')} of {triage.lot.code}: {told}."


def _shared_lines(triage: Triage) -> list[str]:
    if not triage.shared:
        return ["No other lot made of the same inputs is complained of."]
    lines = ["Other lots complained of are made of the same inputs:"]
    for source in triage.shared[:MOST_SHARED]:
        complaints = plural(source.complaints, "complaint")
        lots = plural(source.lots, "other lot")
        lines.append(f"  {source.brief.code} {source.brief.name}: {complaints} of {lots}")
    more = len(triage.shared) - MOST_SHARED
    return lines + ([f"  and {plural(more, 'more input', 'more inputs')}"] if more > 0 else [])


def triage_step(triage: Triage) -> str:
    """Return the command that comes next: look, hold, suspects, recall, or a note."""
    code = triage.lot.code
    if triage.is_barred:
        if any(source.lots for source in triage.shared):
            return f"pottle suspects {code}"
        return f"pottle recall {code} --drill"
    if triage.is_unclear_here or triage.others:
        return f'pottle hold {code} --because "WHY"'
    if not (triage.is_fresh and triage.is_of_the_lot):
        return f"pottle look {code} GRADE --of neat"
    return f'pottle note {code} "WHAT THE CUSTOMER WAS TOLD"'
