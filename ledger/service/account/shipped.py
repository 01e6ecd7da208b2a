"""Figures that come with pottle: limits, solubilities, and what goods are known to carry.

Guarantees: every figure stands in a file beside its source. Refuses: to be the base of a sum where
the book has a fact; these are for forecasts and reminders.
"""

import re
import tomllib
from collections.abc import Iterator
from datetime import date
from functools import cache
from importlib.resources import files
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.amounts.scaled import read_scaled
from ledger.domain.entries import Limit, Material
from ledger.domain.entries.choices import (
    Bound,
    HowObtained,
    KnownBy,
    LimitBasis,
    LimitUnit,
    MaterialKind,
)
from ledger.domain.masters.limits import in_force_on
from ledger.domain.masters.substances import Substance, Substances, counted
from ledger.science.contents.louche import Solubility
from ledger.science.contents.salts import SALTS
from ledger.store.engine.connections import Connection
from ledger.store.read import queries

TELLING = frozenset({MaterialKind.OIL, MaterialKind.PRESERVATIVE})
"""Kinds of material of which it is asked what of concern they carry."""


@cache
def read_shipped(name: str) -> dict[str, Any]:
    """Return what stands in a file of figures that comes with pottle."""
    return tomllib.loads(files("ledger").joinpath(name).read_text(encoding="utf-8"))


@cache
def solubilities() -> dict[str, Solubility]:
    """Return the solubilities that come with pottle, by substance."""
    return {
        row["substance"]: Solubility(
            row["substance"],
            float(row["low_mg_per_l"]),
            float(row["high_mg_per_l"]),
            row["citation"],
            float(row["log_kow"]),
            float(row["density_g_per_ml"]),
            float(row["refractive_index"]),
        )
        for row in read_shipped("solubility.toml")["solubility"]
    }


class _Usual(Struct, frozen=True):
    """What goods by certain names are known to carry."""

    words: tuple[str, ...]
    substances: tuple[str, ...]
    caution: str


@cache
def _usual() -> tuple[_Usual, ...]:
    return tuple(
        _Usual(tuple(row["words"]), tuple(row["substances"]), row.get("caution", ""))
        for row in read_shipped("usual_concerns.toml")["goods"]
    )


def _called(called: str) -> Iterator[_Usual]:
    """Yield what is known of goods that have a word for it in their name."""
    words = re.findall(r"\w+", called.lower())
    said = f" {' '.join(words)} "
    return (usual for usual in _usual() if any(f" {word} " in said for word in usual.words))


def usual_concerns(called: str) -> tuple[str, ...]:
    """Return what goods of such a name are known to carry; only a reminder to look.

    >>> usual_concerns("Sweet birch oil"), usual_concerns("birch-oil"), usual_concerns("Lemon oil")
    (('methyl salicylate',), ('methyl salicylate',), ())
    """
    return tuple(
        dict.fromkeys(substance for usual in _called(called) for substance in usual.substances)
    )


def not_told(material: Material) -> tuple[str, ...]:
    """Return what a material is known to carry by its names and does not tell the share of."""
    if material.sort not in TELLING:
        return ()
    told = {item.substance for item in counted(material, substances()).constituents}
    return tuple(usual for usual in usual_concerns(_names(material)) if usual not in told)


def usual_caution(material: Material) -> str:
    """Return the caution for a material neat: its own, else the usual one; empty without any."""
    if material.caution or material.sort not in TELLING:
        return material.caution or ""
    return next((usual.caution for usual in _called(_names(material)) if usual.caution), "")


def _names(material: Material) -> str:
    return " ; ".join(filter(None, (material.name, material.code, material.ingredient_name)))


@cache
def substances() -> Substances:
    """Return the substances that limits and reminders speak of, by all that they are called."""
    return Substances(
        Substance(row["name"], (*row["cas"], *row.get("also", ())), tuple(row.get("forms", ())))
        for row in read_shipped("substances.toml")["substance"]
    )


def shipped() -> tuple[Limit, ...]:
    """Return the limits that come with pottle, by code."""
    return tuple(
        sorted(map(_shipped, read_shipped("limits.toml")["limit"]), key=lambda limit: limit.code)
    )


def _shipped(row: dict[str, str]) -> Limit:
    since = row.get("since")
    return Limit(
        code=row["code"],
        substance=row["substance"],
        bound=Bound(row["bound"]),
        value_micro=read_scaled(row["value"], 1_000_000, "", "value"),
        unit=LimitUnit(row["unit"]),
        basis=LimitBasis(row["basis"]),
        place=row["place"],
        citation=row["citation"],
        known_by=KnownBy(row["known-by"]),
        says=row["says"],
        since=date.fromisoformat(since) if since else None,
    )


@cache
def _limit_rows() -> dict[str, dict[str, Any]]:
    return {row["code"]: row for row in read_shipped("limits.toml")["limit"]}


def beside(code: str) -> str | None:
    """Return the substance without which a limit does not count; None for most.

    >>> beside("eu-sorbate-with-benzoate"), beside("eu-sorbate")
    ('benzoic acid', None)
    """
    return _limit_rows().get(code, {}).get("beside")


def label_words(code: str) -> str | None:
    """Return the words that a limit has a label of its place say; None for most.

    >>> label_words("eu-liquorice"), label_words("eu-safrole")
    ('Contains liquorice.', None)
    """
    return _limit_rows().get(code, {}).get("label")


def counts(limit: Limit, material: Material) -> bool:
    """Return whether what a material carries counts for a limit.

    A limit of what is added as such lets be what is in a plant's oil by nature: it counts only the
    substance itself, a synthetic material, and goods that the rule names.
    """
    words = _limit_rows().get(limit.code, {}).get("added")
    if words is None or material.how_obtained is HowObtained.SYNTHETIC:
        return True
    names = f"{material.name} {material.code.replace('-', ' ')}".lower()
    is_itself = substances().counted_as(material.name) == limit.substance
    return is_itself or any(word in names for word in words)


def limit_versions(connection: Connection) -> dict[str, tuple[Limit, ...]]:
    """Return what is said of each limit by code, in order: what came with pottle, then the book."""
    said: dict[str, tuple[Limit, ...]] = {limit.code: (limit,) for limit in shipped()}
    for limit in queries.limits(connection):
        said[limit.code] = (*said.get(limit.code, ()), limit)
    return dict(sorted(said.items()))


def limits_on(connection: Connection, on: date) -> tuple[Limit, ...]:
    """Return the limits in force on a day, by code: the book's own before those that came."""
    return tuple(
        replace(item, substance=substances().counted_as(item.substance))
        for item in in_force_on(limit_versions(connection).values(), on)
    )


def limited_on(connection: Connection, on: date) -> frozenset[str]:
    """Return the substances that limits in force on a day speak of, salts of theirs among them."""
    named = {item.substance for item in limits_on(connection, on)}
    return frozenset(named | {salt.name for salt in SALTS.values() if salt.acid in named})
