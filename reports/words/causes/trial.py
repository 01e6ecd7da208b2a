"""A planned trial in words: what is tried, how large it is and why, what it came to.

Guarantees: what the plan promised and what was drawn stand beside what came of it; a jar that does
not count is named. Refuses: to say cause of what the draw could have done.
"""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from ledger.domain.entries import Plan
from ledger.domain.entries.trials import Decides
from ledger.domain.evidence.draws import mark, seed_of
from ledger.science.statistics.designs import design, is_aliased, is_whole, unit_size
from ledger.science.statistics.power import Size, chance_of, size_for
from ledger.science.statistics.randomisation import Shown
from ledger.science.statistics.trials import mean
from ledger.service.causes.layout import Planned
from ledger.service.causes.outcome import JarState, Outcome, TriedOne
from ledger.service.causes.plan import level_of, rates_of
from reports.kit.format import plural, tidy
from reports.words.causes.odds import chance, listed, p_words

HEADS = ("jar", "evening", "mark", "levels")
"""Heads of the table of jars."""
JUDGED_BY = {Decides.LOOK: "clear or cloudy", Decides.NTU: "NTU"}
"""What a trial is judged by, in words."""
USUAL = 0.9
"""The chance that sizes are told for."""
SCREEN = 8
"""Jars of one evening, which a maker makes before she asks for more."""
Names = Mapping[str, str]
"""What lots are, by their codes."""


def plan_lines(found: Planned, names: Names) -> list[str]:
    """Return what was planned, a paragraph each."""
    plan = found.plan
    return [
        _tries(plan, names),
        _size(plan),
        *_other_sizes(plan),
        *_again(found),
        drawn_line(plan),
    ]


def _tries(plan: Plan, names: Names) -> str:
    told = listed(
        f"{item.name} ({level_words(item.suspected, names)} against "
        f"{level_words(item.usual, names)})"
        for item in plan.factors
    )
    return f"It tries {told}, all at once and all else alike."


def level_words(level: str, names: Names) -> str:
    """Return a level; of a lot also what it is.

    >>> level_words("OIL-001-5", {"OIL-001-5": "Sweet orange oil"}), level_words("4 °C", {})
    ('OIL-001-5 Sweet orange oil', '4 °C')
    """
    return f"{level} {names[level]}" if level in names else level


def _size(plan: Plan) -> str:
    sizes = [evening.jars for evening in plan.evenings]
    evenings = "in one evening" if len(sizes) == 1 else f"on {len(sizes)} evenings"
    shared = f" ({listed(map(str, sizes))})" if len(sizes) > 1 else ""
    return (
        f"{sum(sizes)} jars of {tidy(plan.jar.written)} {evenings}{shared}: {_shape(plan)}. "
        f"Judged by {JUDGED_BY[plan.decides]} at {plan.age}, it names the cause with a chance of "
        f"{plan.chance_mpct // 1000} %, taken that {plan.fails_mpct / 1000:.3g} % of the jars fail "
        f"with it and {plan.else_mpct / 1000:.3g} % without."
    )


def _shape(plan: Plan) -> str:
    factors, jars = len(plan.factors), sum(evening.jars for evening in plan.evenings)
    rows = design(factors, jars // unit_size(factors))
    if not is_whole(rows):
        beware = "; two causes that only act together could pass for a third" * is_aliased(rows)
        return f"a fraction of the {2**factors} combinations{beware}"
    if factors == 1:
        return "half with the suspect and half without"
    times = jars / 2**factors
    often = "once" if times == 1 else f"{times:g} times"
    return f"every combination {often}"


def _other_sizes(plan: Plan) -> Iterator[str]:
    """Yield what a meter would save, and what one evening alone would find."""
    jars, factors = sum(evening.jars for evening in plan.evenings), len(plan.factors)
    other = Decides.LOOK if plan.decides is Decides.NTU else Decides.NTU
    size = size_of(plan, other)
    if size and size.jars < jars:
        yield (
            f"By {JUDGED_BY[other]} {size.jars} jars would do as much ({int(100 * size.chance)} %)."
        )
    elif size:
        yield f"By {JUDGED_BY[other]} it would take {size.jars} jars, so that saves none."
    if jars > SCREEN >= unit_size(factors):
        by_ntu = plan.decides is Decides.NTU
        few = chance_of((SCREEN,), factors, rates_of(plan), level_of(plan), by_ntu=by_ntu)
        yield f"{SCREEN} jars would screen, and find it in {int(100 * few)} of 100 trials."


def size_of(plan: Plan, decides: Decides) -> Size | None:
    """Return how large the trial would be, were it judged by that."""
    most = max(evening.jars for evening in plan.evenings)
    return size_for(
        len(plan.factors),
        rates_of(plan),
        level_of(plan),
        USUAL,
        most,
        by_ntu=decides is Decides.NTU,
    )


def _again(found: Planned) -> Iterator[str]:
    if found.earlier:
        before = listed(f'"{entry.facts.name}" (entry {entry.seq})' for entry in found.earlier)
        yield (
            f"This is plan {len(found.earlier) + 1} of the same question, after {before}; so it is "
            f"held to naming an innocent {chance(found.level)}, not once in 20."
        )


def drawn_line(plan: Plan) -> str:
    """Return from what the order and the marks were drawn."""
    return (
        f"Order and marks are drawn from the root of the book before it, {plan.root[:16]}… of "
        f'{plan.entries} entries: pottle trial prove "{plan.name}" draws them again.'
    )


def jar_rows(found: Planned) -> list[tuple[str, str, str, str]]:
    """Return the jars in the order in which they are made."""
    return [
        (
            str(jar.number),
            str(jar.evening),
            mark(jar.code),
            ", ".join(f"{name} {level}" for name, level in jar.levels),
        )
        for jar in found.jars
    ]


def outcome_lines(found: Outcome, names: Names) -> list[str]:
    """Return what a planned trial came to, a paragraph each; the causes shown first."""
    plan = found.planned.plan
    sizes = [evening.jars for evening in plan.evenings]
    head = (
        f"Planned before any jar was made, by entry {found.planned.entry.seq}: {sum(sizes)} jars, "
        f"judged by {JUDGED_BY[plan.decides]} at {plan.age}."
    )
    pairs = sorted(enumerate(found.tried), key=lambda pair: (pair[1].p_adjusted, pair[0]))
    return [
        head,
        *(["The plan was struck out."] if found.planned.is_struck else []),
        *_again(found.planned),
        *_not_counted(found.jars),
        *(verdict_line(found, place, names) for place, _ in pairs),
    ]


def _not_counted(jars: Sequence[TriedOne]) -> Iterator[str]:
    lost = [jar for jar in jars if jar.state is not JarState.KEPT]
    if not lost:
        return
    told = [
        f"{plural(len(group), 'jar')} {state} ({_marks(group)})"
        for state in (JarState.NOT_BEGUN, JarState.NOT_SEEN)
        if (group := [jar for jar in lost if jar.state is state])
    ]
    told += [
        f"{mark(jar.planned.code)} made in another way ({jar.why})"
        for jar in lost
        if jar.state is JarState.CHANGED
    ]
    yield f"Counted against every accusation: {listed(told)}."


def _marks(jars: Sequence[TriedOne]) -> str:
    shown = ", ".join(mark(jar.planned.code) for jar in jars[:4])
    return f"{shown} and more" if len(jars) > 4 else shown


def verdict_line(found: Outcome, place: int, names: Names) -> str:
    """Return what a trial says of one of the things it tried."""
    item, told = found.planned.plan.factors[place], found.tried[place]
    suspected, usual = level_words(item.suspected, names), level_words(item.usual, names)
    p = f"p {p_words(told.p_adjusted)}"
    if len(found.tried) > 1:
        p = f"allowing for {len(found.tried)} tried, {p}"
    if told.shown in (Shown.CAUSE, Shown.LEAD):
        p = f"the draw alone does as much {chance(told.p)} ({p})"
    is_whole = all(one.score is not None for one in found.jars)
    lead = {
        Shown.CAUSE: f"Cause shown: {item.name} {suspected}, against {usual}.",
        Shown.LEAD: f"A lead, not yet shown: {item.name} {suspected}, against {usual}.",
        Shown.INSEPARABLE: f"Not to be told apart by these jars: {item.name} {suspected}.",
        Shown.TOO_FEW: f"Too few jars to decide: {item.name} {suspected}.",
        Shown.NONE: f"{'Nothing' if is_whole else 'Nothing yet'} shown against {item.name} "
        f"{suspected}.",
    }[told.shown]
    return f"{lead} {_counts(found, place)}; {p}."


def _counts(found: Outcome, place: int) -> str:
    with_it = [one for one in found.jars if one.planned.row[place] and one.score is not None]
    without = [one for one in found.jars if not one.planned.row[place] and one.score is not None]
    if found.planned.plan.decides is Decides.NTU:
        means = [mean([one.score for one in jars]) for jars in (with_it, without)]
        return f"Mean NTU {_figure(means[0])} with it and {_figure(means[1])} without"
    failed = [sum(one.score == 1 for one in jars) for jars in (with_it, without)]
    return (
        f"It failed in {failed[0]} of the {plural(len(with_it), 'jar')} with it and in {failed[1]} "
        f"of the {len(without)} without"
    )


def _figure(value: Fraction | None) -> str:
    return "–" if value is None else f"{float(value):.3g}"


def proved_lines(found: Planned) -> list[str]:
    """Return how the draw of a plan is repeated."""
    plan = found.plan
    return [
        f"Entry {found.entry.seq} holds the root that the book had before it: {plan.root} of "
        f"{plan.entries} entries.",
        "The seed is SHA-256 of that root, the question and the sizes of the evenings: "
        f"{seed_of(plan).hex()}.",
        "Order and marks follow from the seed, as pottle guide machines says:",
    ]
