"""What oils are made of: by the certificate in the book, else as such oils usually are.

Guarantees: a certificate wins; what is typical is called so, with its source. Refuses: to take an
oil for another that shares a word with it, or a terpeneless one for a whole one.
"""

import re
from functools import cache
from typing import Any

from msgspec import Struct

from ledger.domain.entries import Material
from ledger.domain.entries.choices import HowObtained
from ledger.domain.masters.substances import counted
from ledger.science.haze.strength import LEAST_KNOWN, Calibration, Oil, Share, oil_of
from ledger.service.account.shipped import read_shipped, solubilities, substances

CHANGED = frozenset({HowObtained.FOLDED, HowObtained.TERPENELESS, HowObtained.EXTRACTED})
"""Ways to obtain an oil after which it is not made as such oils usually are."""


class Known(Struct, frozen=True):
    """An oil, and by what it is known."""

    oil: Oil
    """What it is made of."""
    rests_on: str
    """By what that is known, a whole sentence."""
    is_typical: bool
    """Whether that is usual of such oils, and not this one's certificate."""
    kind: str
    """What kind of oil it is, as such oils are called; by its own name where no kind is known."""


def known_oil(material: Material) -> Known | None:
    """Return what an oil is made of; None where neither the book nor a publication says."""
    certificate = _certificate(material)
    kind = _kind(material.name) or _kind(material.code)
    if certificate:
        rests = f"{material.name}: constituents as recorded in the book."
        return Known(certificate, rests, False, kind or material.name)
    if kind is None or material.how_obtained in CHANGED:
        return None
    return typical(kind)


def typical(kind: str) -> Known:
    """Return an oil of a kind as it usually is."""
    row = _oils()[kind]
    shares = (
        Share(solubilities()[name], float(low) / 100, float(high) / 100)
        for name, low, high in row["shares"]
    )
    known_by = "" if row["known-by"] == "read" else ", from memory"
    rests = f"{kind}: typical, not this lot's certificate ({row['citation']}{known_by})."
    return Known(oil_of(shares, solubilities()), rests[0].upper() + rests[1:], True, kind)


def oil_called(name: str) -> Known | None:
    """Return an oil by the name that a publication gives it; None where nothing says what is in it.

    A name that is a substance's alone is that substance.

    >>> oil_called("lemon, expressed").kind, oil_called("safrole").kind, oil_called("bay")
    ('lemon', 'safrole', None)
    """
    substance = _PURE.get(name.lower(), name.lower())
    if substance in solubilities():
        oil = oil_of([Share(solubilities()[substance], 1.0, 1.0)], solubilities())
        return Known(oil, f"{name}: the substance alone.", False, substance)
    kind = _kind(name)
    return typical(kind) if kind else None


_PURE = {"terpineol": "alpha-terpineol", "anethole": "trans-anethole", "cineole": "eucalyptol"}
"""Names of trade for substances."""


def _certificate(material: Material) -> Oil | None:
    constituents = counted(material, substances()).constituents
    shares = [
        Share(solubilities()[item.substance], item.fraction_ppm / 1e6, item.fraction_ppm / 1e6)
        for item in constituents
        if item.substance in solubilities()
    ]
    told = sum(share.low for share in shares)
    return oil_of(shares, solubilities()) if told >= LEAST_KNOWN else None


def _kind(called: str) -> str | None:
    """Return the kind of oil that a name speaks of; the longest name of a kind counts."""
    words = re.findall(r"\w+", called.lower())
    said = f" {' '.join(words)} "
    found = [
        (len(word), word, kind)
        for kind, row in _oils().items()
        for word in row["words"]
        if f" {word} " in said
    ]
    if not found:
        return None
    _, word, kind = max(found)
    rest = said.replace(f" {word} ", " ", 1)
    return (
        None
        if any(f" {other} " in rest for other in read_shipped("compositions.toml")["other"])
        else kind
    )


@cache
def calibration() -> Calibration:
    """Return what published statements say of cosolvency by ethanol, as it was calibrated."""
    row = read_shipped("cosolvency.toml")
    return Calibration(float(row["slope"]), float(row["constant"]), float(row["reach"]))


@cache
def _oils() -> dict[str, dict[str, Any]]:
    return {row["name"]: row for row in read_shipped("compositions.toml")["oil"]}
