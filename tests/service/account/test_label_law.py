"""What laws have a label say stands in files, each row with its source."""

from ledger.domain.masters.allergens import Place
from ledger.service.account.label_law import allergens, statements
from ledger.service.account.shipped import read_shipped


def test_the_lists_have_as_many_allergens_as_the_law() -> None:
    """14 by Regulation (EU) 1169/2011, Annex II, and wheat by its own name; 9 in the US."""
    by_place = {place: sum(place in item.places for item in allergens()) for place in Place}
    assert by_place == {Place.EU: 15, Place.UK: 15, Place.US: 9}


def test_every_statement_names_its_source_and_how_it_is_known() -> None:
    rows = read_shipped("statements.toml")["statement"]
    assert all(row["citation"] and row["known-by"] in {"read", "recalled"} for row in rows)
    assert [statement.numbers[0] for statement in statements()] == [
        *("E 102", "E 951", "E 951", "E 950"),
    ]
