"""Limits that come with pottle have the value, the place and the standing of the published table.

`tests/reference/limits.csv` says of each row where its value was seen, or that it is from memory.
"""

import pytest

from ledger.domain.entries.choices import KnownBy
from ledger.service.account.shipped import shipped
from tests.science.published import rows

ROWS = {
    "us-quinine": ("quinine", "US", "83"),
    "eu-quinine": ("quinine", "EU", "100"),
    "eu-quinine-alcoholic": ("quinine", "EU", "250"),
    "au-quinine": ("quinine", "AU/NZ", "100"),
    "eu-caffeine-statement": ("caffeine statement", "EU", ">150"),
    "eu-caffeine-intake": ("caffeine, of no concern", "EU", "3"),
    "ca-caffeine": ("caffeine", "CA", "150"),
    "au-caffeine": ("caffeine", "AU/NZ", "145"),
    "eu-liquorice": ("glycyrrhizinic acid: 'contains liquorice'", "EU", "10"),
    "eu-liquorice-pressure": ("glycyrrhizinic acid: hypertension statement", "EU", "50"),
    "eu-liquorice-pressure-alcoholic": (
        "glycyrrhizinic acid: hypertension statement",
        "EU",
        "300",
    ),
    "us-glycyrrhizin": ("glycyrrhizin", "US", "0.15"),
    "eu-benzoate": ("benzoic acid (E 210-213)", "EU", "150"),
    "eu-sorbate": ("sorbic acid (E 200-202)", "EU", "300"),
    "us-benzoate": ("sodium benzoate", "US", "0.1"),
    "eu-sulphites-named": ("sulphites, allergen declaration", "EU/UK", "10"),
    "us-sulfites-named": ("sulphites, declaration", "US", "10"),
    "us-ester-gum": ("glycerol ester of rosin", "US", "100"),
    "eu-ester-gum": ("ester gum E 445", "EU", "100"),
    "eu-ester-gum-adi": ("ester gum E 445 ADI", "EU", "12.5"),
    "us-saib": ("SAIB", "US", "300"),
    "eu-saib": ("SAIB E 444", "EU", "300"),
    "us-bvo": ("brominated vegetable oil", "US", "0"),
    "us-prussic-acid": ("prussic acid", "US", "25"),
    "eu-coumarin-tdi": ("coumarin TDI", "EU", "0.1"),
    "menthol-adi": ("menthol ADI", "JECFA", "0-4"),
    "anethole-adi": ("trans-anethole ADI", "JECFA", "0-2"),
    "eugenol-adi": ("eugenol ADI", "JECFA", "0-2.5"),
    "saib-adi": ("SAIB ADI", "JECFA", "0-20"),
}
"""For each limit its row of the table: what, where, and the value there."""
PUBLISHED = {(row["quantity"], row["place"], row["value"]): row for row in rows("limits.csv")}


@pytest.mark.parametrize("code", ROWS)
def test_a_limit_is_the_one_of_the_published_table(code: str) -> None:
    """The value, in millionths of its unit; what was seen is read, the rest recalled."""
    row = PUBLISHED[ROWS[code]]
    (limit,) = (item for item in shipped() if item.code == code)
    most = row["value"].lstrip(">").rpartition("-")[2]
    assert limit.value_micro == round(float(most) * 1_000_000)
    was_seen = row["how"].startswith("seen")
    assert limit.known_by is (KnownBy.READ if was_seen else KnownBy.RECALLED)
