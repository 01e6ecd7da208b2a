"""What is said at once when a complaint may mean that somebody can be harmed.

Guarantees: words for pressure, for something sharp and for illness in what a customer says are met
with the caution that goes with them (common practice, no source). Refuses: to judge what is the
matter; words can mislead both ways, and local law and the food authority decide.
"""

import re
from collections.abc import Iterator

from ledger.domain.entries import Complaint, Draft
from ledger.domain.lots.scene import Scene
from ledger.domain.rules.finding import Finding, Rule, remark

PRESSURE = re.compile(
    r"\b(?:gas|gassy|fizz(?:es|ed|y|ing)|hiss\w*|pressure|burst\w*|explod\w*"
    r"|bulg\w*|ferment\w*|swollen bottle)\b"
)
"""Words that speak of gas in a bottle that should hold none (common practice, no source)."""
HARM = re.compile(
    r"\b(?:sick\w*|ill|illness|vomit\w*|poison\w*|allerg\w*|rash|hives|swelling|choked|choking"
    r"|(?:something|piece|edge|thing) sharp|sharp (?:thing|piece|edge|bit)|shards?|splinters?"
    r"|broken glass|glass in|bit of glass|pieces? of glass|cut (?:his|her|my|their|a))\b"
)
"""Words that speak of something sharp or of somebody unwell (common practice, no source)."""


def complaint_may_mean_harm(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """What a customer says may mean that somebody can be harmed: then nobody waits."""
    facts = draft.facts
    if not isinstance(facts, Complaint):
        return
    said = f"{facts.symptom}. {facts.words or ''}".lower()
    hold = f'pottle hold {draft.lot} --because "WHY"'
    if pressure := PRESSURE.search(said):
        yield remark(
            "pressure",
            f'The complaint says "{pressure[0]}": a bottle that ferments stands under pressure and '
            "may burst.",
            "Have bottles of it kept cold, apart from people and children, and opened by nobody "
            f"without shelter for eyes and hands; hold the rest: {hold}",
        )
    if harm := HARM.search(said):
        yield remark(
            "harm",
            f'The complaint says "{harm[0]}": somebody may be harmed, or may have been.',
            "Do not wait: ask your food authority today what is to be done, as local law says, and "
            f"hold the rest: {hold}",
        )


RULES: tuple[Rule, ...] = (complaint_may_mean_harm,)
"""What a complaint may mean for people."""
