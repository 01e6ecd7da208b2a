"""Substances go by one name each, whatever a certificate calls them."""

import pytest

from ledger.domain.entries import Material
from ledger.domain.entries.masters import Constituent
from ledger.domain.masters.substances import Substance, Substances, counted
from tests.domain.builders import make

KNOWN = Substances(
    (
        Substance("estragole", ("methyl chavicol", "140-67-0")),
        Substance("thujone", ("546-80-5",), forms=("alpha-thujone", "beta-thujone")),
    )
)


@pytest.mark.parametrize(
    ("name", "same", "counts_as"),
    [
        ("Methyl-Chavicol", "estragole", "estragole"),
        ("140-67-0", "estragole", "estragole"),
        ("α-Thujone", None, "thujone"),
        ("Limonene", None, "limonene"),
    ],
)
def test_a_substance_is_known_by_any_of_its_names(
    name: str, same: str | None, counts_as: str
) -> None:
    assert (KNOWN.same(name), KNOWN.counted_as(name)) == (same, counts_as)
    assert KNOWN.knows(name) is (counts_as != "limonene")


def test_a_slip_of_spelling_is_told_from_another_thing() -> None:
    assert KNOWN.like("estragol") == "estragole"
    assert KNOWN.like("eugenol") is None


def test_a_material_counts_by_the_names_of_its_substances() -> None:
    told = (Constituent("methyl chavicol", 700_000), Constituent("beta-thujone", 1_000))
    found = counted(make(Material, constituents=told), KNOWN)
    assert [(item.substance, item.fraction_ppm) for item in found.constituents] == [
        ("estragole", 700_000),
        ("thujone", 1_000),
    ]
