"""The batch from its start to its finish, but for the filter: start, add, rest, make up, finish.

Guarantees: amounts taken are those measured; what was used to make up is computed only where the
volumes say it. Refuses: nothing beyond the rules.
"""

from datetime import datetime

from ledger.domain.amounts.quantity import Measure, Quantity, show
from ledger.domain.entries import Add, Finish, Formula, MakeUp, Rest, Start
from ledger.domain.entries.bench import Factor
from ledger.domain.entries.choices import (
    AddedAs,
    LotType,
    ProductKind,
    Purpose,
    RestFor,
)
from ledger.domain.lots.state import open_rest
from ledger.errors import InputError, RefusedError
from ledger.service.desk.act import Desk, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.reader import read_text
from ledger.service.desk.scene import lot_state
from ledger.service.desk.times import read_when
from ledger.store.read import queries
from ledger.store.read.queries import Moment

_UNREAD: Formula | None = Formula("", 1, "lot", ProductKind.ESSENCE, Quantity(1, Measure.UL, ""))
"""Stands in for a formula that could not be read, so that what follows from it is not asked for."""


def start(
    book: Book,
    how: How,
    *,
    target: str,
    product: str | None = None,
    kind: str | None = None,
    formula: str | None = None,
    trial: str | None = None,
    factors: str | None = None,
    control: str | None = None,
    repeat: str | None = None,
    pour: str | None = None,
    best_before: str | None = None,
    vessel: str | None = None,
    purpose: str | None = None,
    version: str | None = None,
    code: str | None = None,
) -> Recorded:
    """Begin a batch; opens a made lot, counted by volume."""
    with at_desk(book, how) as desk:
        words = desk.words
        number = words.whole(version, "version")
        master = words.read(lambda: _formula(desk, formula, number), _UNREAD)
        name = words.text(product or (master.product if master else None), "product")
        told_kind = kind or (str(master.product_kind) if master else None)
        told_purpose = purpose or ("trial" if trial else "sale")
        facts = Start(
            product=name,
            product_kind=words.needed(told_kind, ProductKind, "kind of product"),
            target=words.needed_amount(target, "target"),
            formula=master.code if master else None,
            formula_version=master.version if master else None,
            purpose=words.needed(told_purpose, Purpose, "purpose"),
            trial_group=words.text_or_none(trial, "trial"),
            pour_parts=words.read(lambda: read_pour(pour), None)
            or (master.pour_parts if master else None),
            best_before=words.day(best_before),
            vessel=words.text_or_none(vessel, "vessel"),
            factors=words.read(lambda: _factors(factors), ()),
            is_control=True if control else None,
            repeat=words.whole(repeat, "number of the repeat"),
        )
        lot = desk.open_code(code, name or "lot")
        return desk.record(facts, opens=(lot, LotType.MADE, Measure.UL))


def _formula(desk: Desk, text: str | None, number: int | None) -> Formula | None:
    """Return the version asked for, else the newest that may be used, else the newest."""
    if not text:
        return None
    code = text.strip().lower()
    versions = queries.formulas(desk.connection, code)
    if not versions:
        known = ", ".join(dict.fromkeys(f.code for f in queries.formulas(desk.connection)))
        raise RefusedError(
            f"The formula {code} is not in the book; it knows {known or 'none yet'}.",
            "Load it with: pottle formula load FILE",
        )
    asked = [item for item in versions if number in (None, item.version)]
    if not asked:
        raise RefusedError(
            f"There is no version {number} of the formula {code} in the book.",
            "pottle formula list shows those that are.",
        )
    gone, day = queries.withdrawn(desk.connection), desk.happened.local().date()
    usable = [
        item
        for item in asked
        if (item.code, item.version) not in gone and (item.valid_from or day) <= day
    ]
    return (usable or asked)[-1]


def read_pour(text: str | None) -> int | None:
    """Return the parts of soda water to one part, from "7" or "1:7", or None when none is given.

    Raises:
        InputError: It is not of that form.
    """
    if not text:
        return None
    parts = text.strip().removeprefix("1:").strip()
    is_number = parts.isascii() and parts.isdecimal() and len(parts) <= len("1000")
    if not is_number or not 1 <= int(parts) <= 1000:
        raise InputError(
            f'"{text}" is not a way to pour.', "Write 1:7 for one part to seven of soda water."
        )
    return int(parts)


def _factors(text: str | None) -> tuple[Factor, ...]:
    found = []
    for part in (text or "").split(";"):
        if not part.strip():
            continue
        name, is_pair, level = part.partition("=")
        if not is_pair:
            raise InputError(f'"{part.strip()}" is not a factor.', "Write it as rest=48h.")
        found.append(Factor(read_text(name, "factor"), read_text(level, "level")))
    return tuple(found)


def add(
    book: Book,
    how: How,
    *,
    lot: str,
    source: str,
    amount: str,
    added_as: str | None = None,
    temp: str | None = None,
    minutes: str | None = None,
) -> Recorded:
    """Put some of a lot into a batch."""
    with at_desk(book, how) as desk:
        words = desk.words
        facts = Add(
            source=words.lot(source),
            amount=words.amount(amount),
            added_as=words.needed(added_as or "ingredient", AddedAs, "way of adding"),
            temp_mdegc=words.scaled(temp, 1000, "°C", "temperature"),
            minutes=words.minutes(minutes),
        )
        return desk.record(facts, words.lot(lot))


def rest(
    book: Book,
    how: How,
    *,
    lot: str,
    purpose: str | None = None,
    ended: str | None = None,
    started: str | None = None,
    until: str | None = None,
    temp: str | None = None,
    shaken: str | None = None,
    vessel: str | None = None,
) -> Recorded:
    """Begin a rest, end the one that goes on, or tell a whole one at once."""
    with at_desk(book, how) as desk:
        words = desk.words
        code = words.lot(lot)
        words.done()
        began, for_, start_at, end_at = _span(desk, code, purpose, ended, started, until)
        facts = Rest(
            purpose=for_,
            started_at=start_at,
            ended_at=end_at,
            began=began,
            temp_mdegc=words.scaled(temp, 1000, "°C", "temperature"),
            times_shaken=words.whole(shaken, "number of times"),
            vessel=words.text_or_none(vessel, "vessel"),
        )
        return desk.record(facts, code)


def _span(
    desk: Desk,
    code: str,
    purpose: str | None,
    ended: str | None,
    started: str | None,
    until: str | None,
) -> tuple[int | None, RestFor, datetime, datetime | None]:
    words, here = desk.words, desk.happened.at
    if ended:
        going_on = open_rest(lot_state(desk.connection, code, is_whole=False))
        if going_on is None or not isinstance(going_on.draft.facts, Rest):
            raise RefusedError(
                f"{code} is not resting, so no rest can end.",
                f"Begin one with: pottle rest {code} --for macerate",
            )
        facts = going_on.draft.facts
        return going_on.stands_for, facts.purpose, facts.started_at, here
    for_ = words.needed(purpose, RestFor, "purpose of the rest")
    begin = (
        words.read(lambda: read_when(started, desk.now, desk.zone).at, here) if started else here
    )
    if until is None:
        return None, for_, begin, None
    return None, for_, begin, words.read(lambda: read_when(until, desk.now, desk.zone).at, here)


def makeup(
    book: Book,
    how: How,
    *,
    lot: str,
    volume: str,
    source: str,
    used: str | None = None,
    temp: str | None = None,
) -> Recorded:
    """Make a batch up to a volume with another lot."""
    with at_desk(book, how) as desk:
        words = desk.words
        code, to = words.lot(lot), words.amount(volume)
        source_code = words.lot(source)
        took = words.amount_or_none(used)
        words.done()
        facts = MakeUp(
            volume=to,
            source=source_code,
            used=took or _used(desk, code, to),
            temp_mdegc=words.scaled(temp, 1000, "°C", "temperature"),
        )
        return desk.record(facts, code)


def _used(desk: Desk, code: str, to: Quantity) -> Quantity:
    state = lot_state(desk.connection, code, Moment(desk.happened.at), is_whole=False)
    if state.solids_mg:
        raise RefusedError(
            f"{show(state.solids_mg, Measure.MG)} of solids went into {code} since its volume "
            "was last measured, so the book cannot tell how much it took.",
            "Say how much you used with --used.",
        )
    needed = max(to.amount - state.on_hand_then, 1)
    return Quantity(needed, Measure.UL, show(needed, Measure.UL))


def finish(
    book: Book,
    how: How,
    *,
    lot: str,
    volume: str,
    temp: str | None = None,
    waste: str | None = None,
    labour: str | None = None,
) -> Recorded:
    """End the making of a batch with the volume that came out."""
    with at_desk(book, how) as desk:
        facts = Finish(
            volume=desk.words.amount(volume),
            temp_mdegc=desk.words.scaled(temp, 1000, "°C", "temperature"),
            waste=desk.words.amount_or_none(waste),
            labour_minutes=desk.words.minutes(labour),
        )
        return desk.record(facts, desk.words.lot(lot))
