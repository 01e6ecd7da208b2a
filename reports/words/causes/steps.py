"""What comes after suspects were told: a hold, a trial, or what one that was planned came to.

Guarantees: a command that can be given as it stands; levels of a setting are those of the book.
Refuses: to propose a hold of what is held, and a trial of what was tried.
"""

from ledger.domain.lots.lot import BARRED
from ledger.science.statistics.suspects import Cause, Judgement, Sort
from ledger.service.causes.suspects import Suspicion
from reports.words.causes.odds import Lots


def next_step(suspicion: Suspicion) -> str:
    """Return the command that usually comes next."""
    judgement = suspicion.judgement
    if judgement.named and judgement.named[0].cause.sort is Sort.LOT:
        code = judgement.named[0].cause.name
        # What is on hold already is not to be put on hold.
        if is_barred(code, suspicion.lots):
            return f"pottle trace {code} --forward"
        return f"{hold_step(code, suspicion)}"
    causes = trial_causes(suspicion)
    if suspicion.tried_in:
        return f'pottle compare "{suspicion.tried_in}"'
    if causes:
        wanted = " ".join(dict.fromkeys(f"--try {_tried(cause, judgement)}" for cause in causes))
        return f'pottle trial plan "{suspicion.compared}" {wanted}'
    if not suspicion.failed:
        return "pottle stock"
    if len(suspicion.failed) == 1 and suspicion.sorted.otherwise_failed:
        return "pottle suspects"
    return f"pottle trace {suspicion.failed[0].code} --back"


def trial_factors(suspicion: Suspicion) -> tuple[str, ...]:
    """Return what a trial should try: the lots and settings that cannot be told apart."""
    return tuple(dict.fromkeys(cause.name for cause in trial_causes(suspicion)))


def trial_causes(suspicion: Suspicion) -> tuple[Cause, ...]:
    """Return the causes that a trial should try; time is none of them."""
    judgement = suspicion.judgement
    found = judgement.named[0] if judgement.named else judgement.lead
    causes = found.causes if found else ()
    return tuple(cause for cause in causes if cause.sort is not Sort.TIME)


def _tried(cause: Cause, judgement: Judgement) -> str:
    """Return a cause as a plan of a trial takes it: of a setting its other level is the usual."""
    if cause.sort is Sort.LOT:
        return cause.name
    every = (other for suspect in judgement.suspects for other in suspect.causes)
    levels = (other.level for other in every if other.name == cause.name)
    usual = next((level for level in levels if level != cause.level), "otherwise")
    # A level may hold a stroke of its own, as 2 g/mL does; then spaces part the two.
    between = " / " if "/" in f"{usual}{cause.level}" else "/"
    return f'"{cause.name}={usual}{between}{cause.level}"'


def hold_step(code: str, suspicion: Suspicion) -> str:
    """Return the command that holds a suspected lot."""
    return f'pottle hold {code} --because "suspected in {len(suspicion.failed)} failed lots"'


def is_barred(code: str, lots: Lots) -> bool:
    """Return whether a lot is on hold already, or worse."""
    brief = lots.get(code)
    return bool(brief and brief.status in BARRED)
