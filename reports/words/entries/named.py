"""The lots that an entry draws on, called by what is in them, so that a wrong bottle is seen.

Guarantees: a name stands beside the code, never in place of it; what a name says already is not
said again.
"""

from collections.abc import Iterable

from msgspec.structs import replace

from ledger.domain.entries import Entry, Receipt
from ledger.domain.entries.fields import specs
from ledger.domain.lots.state import LotState, latest, name
from reports.kit.format import scaled
from reports.words.entries.sentence import sentence


def sentence_naming(entry: Entry, lots: Iterable[LotState]) -> str:
    """Return what an entry says, its lots called by what they are and by their codes."""
    codes = {lot.code: called(lot) for lot in lots}
    told = {
        spec.name: codes[code]
        for spec in specs(type(entry.facts))
        if spec.refers_to == "lot" and (code := getattr(entry.facts, spec.name)) in codes
    }
    draft = replace(entry.draft, facts=replace(entry.facts, **told))
    return sentence(replace(entry, draft=draft))


def called(lot: LotState) -> str:
    """Return a lot's name with its strength or how it was obtained, and its code."""
    material, receipt = lot.material, latest(lot, Receipt)
    # What a delivery's own papers say comes before what its material is in general.
    strength = (receipt and receipt.abv_mpct) or (material and material.abv_mpct)
    how = material and material.how_obtained
    told = name(lot)
    if strength:
        told = _with(told, scaled(strength, 1000, "%"), "{}")
    if how:
        told = _with(told, str(how), "({})")
    return f"{told}, {lot.code}"


def _with(told: str, kind: str, form: str) -> str:
    is_told = kind.replace(" ", "") in told.replace(" ", "").casefold()
    return told if is_told else f"{told} {form.format(kind)}"
