"""Plan: a trial that decides among suspects, drawn from the book before it.

Guarantees: sized for the chance that is asked for, by the failing seen so far; the root is read in
the transaction that records the plan, so nobody knew the draw before. Refuses: a name that a trial
has, and more jars than anybody makes.
"""

from collections.abc import Sequence
from contextlib import suppress
from fractions import Fraction
from typing import NamedTuple

from msgspec.structs import replace

from ledger.domain.entries import Formula, Plan
from ledger.domain.entries.choices import Grade, ProductKind
from ledger.domain.entries.texts import read_text
from ledger.domain.entries.trials import Decides, Evening, TrialAge, TwoLevels
from ledger.domain.evidence.draws import CLEAR, question_of
from ledger.domain.lots.codes import clean_code
from ledger.errors import LedgerError, RefusedError
from ledger.science.statistics.power import MOST_JARS, Rates, Size, size_for
from ledger.science.statistics.suspects import LEVEL
from ledger.service.account.codes import whole_code
from ledger.service.causes.rates import seen_on
from ledger.service.causes.tries import named_in, read_tries
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.reader import Words
from ledger.store.ahead.traced import foresee_on_hand
from ledger.store.engine.connections import Connection
from ledger.store.engine.foretold import Foreseen
from ledger.store.read import queries
from ledger.store.read.planned import made_with, plans
from ledger.store.read.runs import OF_ANY, runs
from ledger.store.write import recorder

USUAL_JAR = "50mL"
"""The volume of a jar where none is said (30 to 50 mL; common practice, no source)."""
USUAL_EVENING = "8"
"""Most jars of an evening: six to eight, one page of a notebook (common practice, no source)."""
USUAL_CHANCE = "90"
"""The chance to find the cause, in per cent."""
NO_TRIES: tuple[TwoLevels, ...] = ()
WHOLE = 100_000
"""Thousandths of a per cent in all."""


class Wishes(NamedTuple):
    """What is asked of the size of a trial, in thousandths of a per cent but for the last."""

    fails: int | None
    """The share said to fail with the cause; None: as seen so far."""
    otherwise: int | None
    """The share said to fail without."""
    chance: int
    """The chance to name the cause."""
    evening: int
    """Most jars of an evening."""


@act
def plan(
    book: Book,
    how: How,
    *,
    name: str,
    tries: str,
    product: str | None = None,
    kind: str | None = None,
    formula: str | None = None,
    jar: str | None = None,
    decides: str | None = None,
    age: str | None = None,
    worst: str | None = None,
    fails: str | None = None,
    otherwise: str | None = None,
    chance: str | None = None,
    evening: str | None = None,
) -> Recorded[Plan]:
    """Plan a trial; its order and marks are drawn from the root of the book as it is now.

    Args:
        book: The book.
        how: Who plans it.
        name: Name of the trial.
        tries: What it tries, with semicolons between: a lot that is suspected, or
            `name=usual/suspected`.
        product: Name of what is made in the jars; by default the formula's, else that of the last
            batch a suspected lot was put into, else the trial's.
        kind: What kind of thing it is; by default as the product, else an essence.
        formula: Code of the formula that the jars follow.
        jar: Volume of a jar.
        decides: look or ntu.
        age: Age of the look that decides.
        worst: The worst grade that counts as clear; by default what the formula wants, else clear.
        fails: Per cent of jars that fail with the cause; by default as seen so far.
        otherwise: Per cent that fail without.
        chance: Chance to name the cause, in per cent.
        evening: Most jars of an evening.
    """
    ahead = Ahead(also=((plans,),), besides=lambda foreseen: _ahead(foreseen, tries, formula))
    with at_desk(book, how, ahead) as desk:
        words, connection = desk.words, desk.connection
        master = words.read(lambda: _formula(connection, formula), None)
        factors = words.read(lambda: read_tries(connection, tries, desk.by), NO_TRIES)
        made, made_kind = _made(connection, master, factors)
        wishes = Wishes(
            fails=_share(words, fails, "share that fails with the cause"),
            otherwise=_share(words, otherwise, "share that fails without it"),
            chance=_share(words, chance or USUAL_CHANCE, "chance") or 0,
            evening=words.whole(evening or USUAL_EVENING, "number of jars of an evening") or 0,
        )
        facts = Plan(
            name=words.read(lambda: _name(connection, name), ""),
            number=len(plans(connection)) + 1,
            product=words.text(product or made or name, "product"),
            product_kind=words.needed(kind or made_kind, ProductKind, "kind of product"),
            jar=words.amount(jar or USUAL_JAR),
            decides=words.one_of(decides, Decides, "thing that decides") or Decides.LOOK,
            worst=words.one_of(worst, Grade, "clarity") or _wanted(master),
            age=words.one_of(age, TrialAge, "age of the look that decides") or TrialAge.WEEK,
            level_mpct=0,
            fails_mpct=0,
            else_mpct=0,
            chance_mpct=0,
            entries=recorder.size(connection),
            root=recorder.root(connection).hex(),
            formula=master.code if master else None,
            formula_version=master.version if master else None,
            factors=factors,
            draw=CLEAR,
        )
        words.done()
        return desk.record(_sized(desk, facts, wishes))


def _ahead(foreseen: Foreseen, tries: str, formula: str | None) -> None:
    """Foretell what is asked of what a trial tries, and of how all lots turned out."""
    for statement in OF_ANY:
        foreseen.asks_for(statement)
    foreseen.asks(queries.formulas)
    if formula:
        foreseen.asks(queries.formulas, formula.strip().lower())
    for level in named_in(tries):
        foreseen.asks(whole_code, level)
        with suppress(LedgerError):
            foreseen.asks(made_with, clean_code(level))
    if not all("=" in one for one in tries.split(";") if one.strip()):
        foresee_on_hand(foreseen)  # for a lot to compare one with


def _share(words: Words, text: str | None, what: str) -> int | None:
    return words.scaled(text.rstrip(" %"), 1000, "%", what) if text else None


def _wanted(master: Formula | None) -> Grade:
    return (master.wanted_clarity if master else None) or Grade.CLEAR


def _made(
    connection: Connection, master: Formula | None, factors: Sequence[TwoLevels]
) -> tuple[str, str]:
    """Return what is made in the jars, and its kind: the formula's, or what has the suspect."""
    if master:
        return master.product, str(master.product_kind)
    for item in factors:
        # What an oil lot is suspected in may be a syrup; what it is put into is the essence.
        if found := made_with(connection, item.suspected):
            return found[0], str(found[1])
    return "", str(ProductKind.ESSENCE)


def _formula(connection: Connection, text: str | None) -> Formula | None:
    """Return the newest version of a formula."""
    if not text:
        return None
    versions = queries.formulas(connection, text.strip().lower())
    if not versions:
        raise RefusedError(
            f"The formula {text.strip().lower()} is not in the book.",
            "pottle formula list shows those that are.",
        )
    return versions[-1]


def _name(connection: Connection, text: str) -> str:
    name = read_text(text, "name of the trial")
    taken = {entry.facts.name.lower() for entry, _ in plans(connection)}
    taken |= {run.trial_group.lower() for run in runs(connection) if run.trial_group}
    if name.lower() in taken:
        raise RefusedError(
            f'There is a trial "{name}" in the book already.',
            f'Give another name; pottle compare "{name}" tells what came of that one.',
        )
    return name


def _sized(desk: Desk, facts: Plan, wishes: Wishes) -> Plan:
    """Return a plan with its level, its rates and its evenings."""
    question = question_of(facts)
    again = sum(question_of(entry.facts) == question for entry, _ in plans(desk.connection))
    # Half the level for every time the question was planned before: whoever asks until the answer
    # pleases names an innocent in no more than twice the level of such rows of trials.
    level = round(WHOLE * LEVEL / 2**again)
    seen = seen_on(desk.connection, {item.suspected for item in facts.factors})
    fails = round(WHOLE * seen.fails) if wishes.fails is None else wishes.fails
    otherwise = round(WHOLE * seen.otherwise) if wishes.otherwise is None else wishes.otherwise
    sized = replace(facts, level_mpct=level, fails_mpct=fails, else_mpct=otherwise)
    size = _size(sized, wishes)
    return replace(
        sized,
        # In whole per cent, rounded down: no more is promised than it is.
        chance_mpct=int(100 * size.chance) * 1000,
        evenings=tuple(Evening(jars) for jars in size.evenings),
    )


def _size(facts: Plan, wishes: Wishes) -> Size:
    rates = rates_of(facts)
    told = f"{facts.fails_mpct / 1000:g} % with the cause and {facts.else_mpct / 1000:g} % without"
    is_told_apart = 0 < rates.without < rates.with_cause < 1
    size = (
        size_for(
            len(facts.factors),
            rates,
            level_of(facts),
            wishes.chance / WHOLE,
            wishes.evening,
            by_ntu=facts.decides is Decides.NTU,
        )
        if is_told_apart
        else None
    )
    if size is None:
        raise RefusedError(
            f"No trial of up to {MOST_JARS} jars names the cause with a chance of "
            f"{wishes.chance / 1000:g} %, where {told} of the jars fail.",
            "Try fewer things at once, or ask for less: --chance 80",
        )
    return size


def rates_of(facts: Plan) -> Rates:
    """Return the shares of jars that a plan takes to fail."""
    return Rates(facts.fails_mpct / WHOLE, facts.else_mpct / WHOLE)


def level_of(facts: Plan) -> Fraction:
    """Return how often at most a plan names an innocent."""
    return Fraction(facts.level_mpct, WHOLE)
