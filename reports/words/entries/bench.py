"""Bench work in words: from the start of a batch to its finish.

Guarantees: all that was recorded is told, in the order in which a maker would say it.
"""

from ledger.domain.entries.bench import (
    Add,
    Decant,
    Filter,
    Finish,
    Look,
    MakeUp,
    Measurement,
    Rest,
    Rinse,
    Start,
)
from ledger.domain.entries.choices import AddedAs, LookedAt, Medium, Purpose
from ledger.domain.entries.trials import Plan
from reports.kit.format import duration, poured, scaled, tidy
from reports.words.entries.parts import Parts, at, before


def start(facts: Start) -> Parts:
    """Return what is told of a batch begun."""
    return (
        f"{facts.product} ({facts.product_kind})",
        f"target {tidy(facts.target.written)}",
        f"formula {facts.formula} version {facts.formula_version}" if facts.formula else None,
        before("trial", facts.trial_group),
        before("jar", facts.jar),
        before("planned by entry", facts.planned_by),
        "the control" if facts.is_control else None,
        before("repeat", facts.repeat),
        "not for sale" if facts.purpose is Purpose.TRIAL else None,
        *(f"{factor.name} = {factor.planned}" for factor in facts.factors),
        f"to be poured {poured(facts.pour_parts)}" if facts.pour_parts else None,
        before("in", facts.vessel),
        before("best before", facts.best_before),
    )


def plan(facts: Plan) -> Parts:
    """Return what is told of a trial planned."""
    jars = [str(evening.jars) for evening in facts.evenings]
    return (
        f'"{facts.name}"',
        f"{facts.product} ({facts.product_kind})",
        before("formula", facts.formula),
        before("version", facts.formula_version),
        f"{' and '.join(jars)} jars of {tidy(facts.jar.written)}",
        *(f"{item.name} {item.usual} or {item.suspected}" for item in facts.factors),
        f"judged by {facts.decides} at {facts.age}, worse than {facts.worst} fails",
        f"an innocent named in at most {scaled(facts.level_mpct, 1000, '%')}",
        f"the cause in {scaled(facts.chance_mpct, 1000, '%')}, where "
        f"{scaled(facts.fails_mpct, 1000, '%')} fail with it and "
        f"{scaled(facts.else_mpct, 1000, '%')} without",
        f"drawn from the root {facts.root} of {facts.entries} entries",
    )


def add(facts: Add) -> Parts:
    """Return what is told of an addition."""
    return (
        f"{tidy(facts.amount.written)} of {facts.source}",
        None if facts.added_as is AddedAs.INGREDIENT else f"as {facts.added_as}",
        at(facts.temp_mdegc),
        f"over {duration(facts.minutes)}" if facts.minutes else None,
        f"triturated {duration(facts.triturated_minutes)}" if facts.triturated_minutes else None,
        before("on", facts.instrument),
    )


def rest(facts: Rest) -> Parts:
    """Return what is told of a rest."""
    lasted = None
    if facts.ended_at:
        lasted = duration(round((facts.ended_at - facts.started_at).total_seconds() / 60))
    state = "begun" if facts.ended_at is None else f"ended after {lasted}"
    return (
        f"to {facts.purpose}, {state}",
        at(facts.temp_mdegc),
        f"shaken {facts.times_shaken} times" if facts.times_shaken is not None else None,
        before("in", facts.vessel),
    )


def pores(low_nm: int | None, high_nm: int | None) -> str | None:
    """Return a pore size in µm, or None when none is stated."""
    ends = [scaled(end, 1000) for end in dict.fromkeys((low_nm, high_nm)) if end is not None]
    return f"{'–'.join(ends)} µm" if ends else None


_MEDIUM = {str(Medium.UNSAID): "a medium that is not said"}


def filter_(facts: Filter) -> Parts:
    """Return what is told of a pass through a filter."""
    vacuum = scaled(facts.vacuum_pa, 1000, "kPa") if facts.vacuum_pa is not None else None
    reference = facts.vacuum_reference
    return (
        f"pass {facts.pass_no} through {_MEDIUM.get(facts.medium, facts.medium)}",
        pores(facts.pore_low_nm, facts.pore_high_nm),
        f"{tidy(facts.volume_in.written)} in, {tidy(facts.volume_out.written)} out",
        f"{facts.cake} cake" if facts.cake else None,
        before("through the cake of", facts.cake_of),
        f"precoat {tidy(facts.precoat.written)}" if facts.precoat else None,
        f"vacuum {vacuum} {str(reference).replace('-', ' ')}" if vacuum else None,
        before("liquid", at(facts.temp_mdegc)),
        f"first {tidy(facts.first_runnings.written)} returned" if facts.first_runnings else None,
        duration(facts.minutes) if facts.minutes else None,
        f"{tidy(facts.in_cake.written)} held in the cake" if facts.in_cake else None,
        before("paper of", facts.paper),
        before("wetted with", facts.wetted_with),
    )


def rinse(facts: Rinse) -> Parts:
    """Return what is told of a rinse of the cake."""
    where = {"batch": "into the batch", "apart": "kept apart", "waste": "to waste"}
    return (
        f"with {tidy(facts.volume_in.written)} of {facts.source}",
        f"{tidy(facts.volume_out.written)} ran through",
        where[facts.went_to],
    )


def decant(facts: Decant) -> Parts:
    """Return what is told of a decanting."""
    return (
        f"{tidy(facts.drawn.written)} drawn off",
        f"{tidy(facts.heel.written)} heel left" if facts.heel else None,
    )


def looked_at_words(looked_at: LookedAt) -> str:
    """Return what was looked at.

    >>> looked_at_words(LookedAt.AS_POURED)
    'as poured'
    """
    return str(looked_at).replace("-", " ")


def look(facts: Look) -> Parts:
    """Return what is told of a look."""
    return (
        f"{facts.grade}, {looked_at_words(facts.looked_at)}",
        facts.dilution,
        *(
            flag
            for flag in ("ring", "louche", "sediment", "floc", "crystals")
            if getattr(facts, flag)
        ),
        scaled(facts.ntu_milli, 1000, "NTU") if facts.ntu_milli is not None else None,
        before("on", facts.instrument),
        before("zeroed on", facts.zeroed_on),
        f"aged {duration(facts.age_minutes)}" if facts.age_minutes is not None else None,
        at(facts.temp_mdegc),
        facts.words,
    )


def measurement(facts: Measurement) -> Parts:
    """Return what is told of a reading."""
    # As it was written, but for its unit, which may stand close to it and is told in our words.
    figure = facts.written.split()[0].rstrip("°%BxCgmL/").replace("-", "−")
    return (
        f"{facts.what} {figure} {'' if facts.unit == 'pH' else facts.unit}".strip(),
        at(facts.temp_mdegc),
        before("on", facts.instrument),
    )


def makeup(facts: MakeUp) -> Parts:
    """Return what is told of a making up."""
    return (
        f"to {tidy(facts.volume.written)} with {tidy(facts.used.written)} of {facts.source}",
        at(facts.temp_mdegc),
    )


def finish(facts: Finish) -> Parts:
    """Return what is told of the end of a batch."""
    return (
        f"{tidy(facts.volume.written)} came out",
        at(facts.temp_mdegc),
        f"{tidy(facts.waste.written)} spilt or thrown away" if facts.waste else None,
        f"{duration(facts.labour_minutes)} of work" if facts.labour_minutes else None,
    )
