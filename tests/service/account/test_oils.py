"""What oils are made of: the certificate first, the usual next, and no oil for another."""

import pytest

from ledger.domain.entries import Material
from ledger.domain.entries.choices import HowObtained, MaterialKind
from ledger.domain.entries.masters import Constituent
from ledger.science.haze.strength import Calibration
from ledger.service.account.oils import calibration, known_oil, oil_called, typical
from ledger.service.account.shipped import read_shipped, solubilities


def oil(name: str, *told: tuple[str, int], how: HowObtained | None = None) -> Material:
    constituents = tuple(Constituent(*item) for item in told)
    return Material("some-oil", name, MaterialKind.OIL, how, constituents=constituents)


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("Sweet orange oil", "orange"),
        ("Lime oil, distilled", "lime, distilled"),
        ("Cinnamon leaf oil", "cinnamon leaf"),
        ("Sweet birch oil", "wintergreen or sweet birch"),
        ("star anise", "star anise"),
        ("Petitgrain, bitter orange", None),
        ("Orange leaf oil", None),
        ("Orange flower oil", None),
        ("Terpeneless lemon oil", None),
        ("Lavender oil", None),
    ],
)
def test_an_oil_is_known_by_its_name_and_not_by_a_word_in_it(name: str, kind: str | None) -> None:
    known = known_oil(oil(name))
    assert (known.kind if known else None) == kind
    assert known is None or known.is_typical


def test_a_certificate_wins() -> None:
    known = known_oil(oil("Lemon oil", ("d-limonene", 900_000), ("citral", 50_000)))
    assert known
    assert not known.is_typical
    assert known.rests_on == "Lemon oil: constituents as recorded in the book."
    shares = [(round(share.low, 3), round(share.high, 3)) for share in known.oil.shares]
    assert shares == [(0.9, 0.9), (0.05, 0.05)]


def test_a_constituent_of_concern_alone_is_no_certificate() -> None:
    known = known_oil(oil("Nutmeg oil", ("safrole", 20_000)))
    assert known
    assert known.rests_on == (
        "Nutmeg: typical, not this lot's certificate (Nutmeg Oil, Ph. Eur., from memory)."
    )


@pytest.mark.parametrize("how", [None, *HowObtained])
def test_an_oil_that_was_changed_is_not_as_such_oils_usually_are(how: HowObtained | None) -> None:
    """Pressed or distilled it has all of its parts; a certificate tells of a changed one too."""
    changed = {HowObtained.FOLDED, HowObtained.TERPENELESS, HowObtained.EXTRACTED}
    assert (known_oil(oil("Orange oil", how=how)) is None) == (how in changed)
    certified = known_oil(oil("Orange oil", ("d-limonene", 900_000), how=how))
    assert certified
    assert (certified.is_typical, certified.kind) == (False, "orange")


@pytest.mark.parametrize(
    ("named", "substance"),
    [
        ("terpineol", "alpha-terpineol"),
        ("Anethole", "trans-anethole"),
        ("cineole", "eucalyptol"),
        ("Safrole", "safrole"),
    ],
)
def test_a_substance_is_itself_whole_and_nothing_typical(named: str, substance: str) -> None:
    known = oil_called(named)
    assert known
    assert (known.rests_on, known.is_typical) == (f"{named}: the substance alone.", False)
    assert known.kind == substance
    (share,) = known.oil.shares
    assert (share.solute.substance, share.low, share.high) == (substance, 1.0, 1.0)


def test_what_nobody_publishes_stays_unknown() -> None:
    assert oil_called("bois de rose (linalool)") is None


def test_a_certificate_counts_when_it_tells_of_most_of_an_oil_and_names_one_of_no_kind() -> None:
    known = known_oil(oil("House blend", ("d-limonene", 900_000), ("no such substance", 50_000)))
    assert known
    assert (known.kind, len(known.oil.shares)) == ("House blend", 1)
    assert known_oil(oil("House blend", ("d-limonene", 20_000))) is None
    named = known_oil(Material("lemon-oil", "House blend", MaterialKind.OIL))
    assert named
    assert named.kind == "lemon"


def test_an_oil_of_a_kind_is_as_its_publication_has_it() -> None:
    for row in read_shipped("compositions.toml")["oil"]:
        known, shares = typical(row["name"]), row["shares"]
        assert (known.kind, known.is_typical) == (row["name"], True)
        found = [(each.solute.substance, each.low, each.high) for each in known.oil.shares]
        assert found == [(name, float(low) / 100, float(high) / 100) for name, low, high in shares]
        rests = f"{row['name']}: typical, not this lot's certificate ({row['citation']}"
        assert known.rests_on[1:] in {f"{rests[1:]}).", f"{rests[1:]}, from memory)."}
        assert known.rests_on.endswith(", from memory).") == (row["known-by"] == "recalled")


def test_every_composition_is_of_known_substances_and_adds_up() -> None:
    for row in read_shipped("compositions.toml")["oil"]:
        shares = [(name, float(low), float(high)) for name, low, high in row["shares"]]
        assert {name for name, _, _ in shares} <= solubilities().keys(), row["name"]
        assert all(0 <= low <= high <= 100 for _, low, high in shares), row["name"]
        assert 50 <= sum((low + high) / 2 for _, low, high in shares) <= 115, row["name"]
        assert row["citation"]
        assert row["known-by"] in {"read", "recalled"}


def test_what_is_said_of_cosolvency_is_read_from_its_file() -> None:
    row = read_shipped("cosolvency.toml")
    calibration.cache_clear()
    told = calibration()
    assert told == Calibration(float(row["slope"]), float(row["constant"]), float(row["reach"]))
