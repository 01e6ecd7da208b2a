"""The oils of a liquid as one oil, with what is not known of them.

Guarantees: each counts by its share of the mass; an oil of which nothing is known is named and
stays an unknown share. Refuses: to leave an unknown oil out of the whole.
"""

from msgspec import Struct

from ledger.domain.entries import Material
from ledger.science.contents.composition import Contents
from ledger.science.haze.strength import Oil, Share, oil_of
from ledger.service.account.oils import known_oil
from ledger.service.account.shipped import solubilities
from ledger.store.engine.connections import Connection
from ledger.store.read.received import materials


class Mixed(Struct, frozen=True):
    """The oils of a liquid as one, and what is not known of them."""

    oil: Oil
    """All of them, each by its share of the mass."""
    mass_mg: float
    """Mass of all of them."""
    volume_ul: float
    """Their volume."""
    kinds: tuple[str, ...]
    """What kinds they are."""
    rests_on: tuple[str, ...]
    """By what each is known."""
    gaps: tuple[tuple[str, str], ...]
    """What is not known, and what to do about it."""


def mixed_of(connection: Connection, made: Contents) -> Mixed:
    """Return the oils of a liquid as one oil."""
    shares: list[Share] = []
    kinds, rests, gaps = [], [], []
    oils = made.oils()
    whole = sum(part.mass_mg for part in oils.values())
    told = materials(connection, oils)
    for code, part in sorted(oils.items(), key=lambda item: -item[1].mass_mg):
        material = told.get(code)
        known = known_oil(material) if material else None
        if known is None:
            gaps.append(_unknown(code, material))
            continue
        kinds.append(known.kind)
        rests.append(known.rests_on)
        weight = part.mass_mg / whole if whole else 0.0
        shares += [Share(s.solute, s.low * weight, s.high * weight) for s in known.oil.shares]
    return Mixed(
        oil_of(shares, solubilities()),
        whole,
        sum(part.volume_ul for part in oils.values()),
        tuple(dict.fromkeys(kinds)),
        tuple(dict.fromkeys(rests)),
        tuple(gaps),
    )


def _unknown(code: str, material: Material | None) -> tuple[str, str]:
    called = material.name if material else code
    return (
        f"What {called} is made of is not recorded, and nothing published is kept of such an oil: "
        "it cannot be foretold.",
        f'Record it: pottle material change {code} --constituents "NAME SHARE%"',
    )
