"""The house: said when the book is made, and said anew where something changed."""

from pathlib import Path

import pytest

from ledger.errors import InputError, RefusedError
from ledger.service.desk.book import How
from ledger.service.desk.clock import house_of
from ledger.service.masters.house import check_house, house, init
from tests.keeper import Keeper
from tests.service.cases import UL, amount
from tests.service.masters.said_anew import check_each_alone
from tests.service.wrong_words import check_wrong_words


def test_what_is_not_said_anew_stays_as_it_was(sqlite_keeper: Keeper) -> None:
    house(sqlite_keeper.book, How("AB"), phone="01 555 0100", hour="18.50")
    house(sqlite_keeper.book, How("AB"), address="1 Quay")
    found = house_of(sqlite_keeper.book)
    assert found is not None
    assert (found.name, found.currency, found.time_zone) == (
        "Quayside Essences",
        "EUR",
        "Europe/Dublin",
    )
    assert (found.phone, found.hour_minor, found.address) == ("01 555 0100", 1850, "1 Quay")


def test_all_that_is_wrong_is_told_at_once_and_no_book_is_made(tmp_path: Path) -> None:
    where = tmp_path / "book.db"
    with pytest.raises(InputError) as raised:
        init(str(where), name=" ", currency="money", time_zone="Nowhere", fluid_ounce="metric")
    assert raised.value.problems == (
        ("The name of the house is missing.", "Give the name of the house in words."),
        ('"money" is not a currency code.', "Write three letters, such as EUR."),
        (
            '"Nowhere" is not a time zone.',
            "Write one such as Europe/Dublin or America/Chicago.",
        ),
        ('"metric" is not a fluid ounce.', "Choose US or imperial."),
    )
    assert not where.exists()


def test_what_is_of_an_earlier_time_than_what_counts_says_so(sqlite_keeper: Keeper) -> None:
    done = sqlite_keeper.do("house", at="2026-03-01 10:00", country="IE")
    assert done.remarks == (
        (
            "The book goes on by what entry 1 says of the house, which is of a later time, "
            "2026-03-02 08:00.",
            "If this is to count, enter it again without --at.",
        ),
    )
    assert sqlite_keeper.do("house", country="IE").remarks == ()


def test_a_country_is_told_by_its_two_letters(sqlite_keeper: Keeper) -> None:
    with pytest.raises(InputError) as raised:
        sqlite_keeper.do("house", country="Ireland")
    assert raised.value.problems == (
        (
            '"Ireland" is not the code of a country.',
            "Write its two letters by ISO 3166, such as IE for Ireland.",
        ),
    )
    for said in ({"country": " ie "}, {"phone": "555 0100"}):
        sqlite_keeper.do("house", **said)
        known = house_of(sqlite_keeper.book)
        assert known is not None
        assert known.country == "IE"


def test_numbers_of_gs1_are_kept_told_anew_and_taken_away(keeper: Keeper) -> None:
    keeper.do(
        "house",
        gln="9521234000006",
        company_prefix="9521234",
        gtin="Orange syrup, 250 mL=9521234543213; Orange syrup 1L=9521234543206",
    )
    keeper.do("house", gtin="orange syrup 0.25 L=")
    found = house_of(keeper.book)
    assert found is not None
    assert (found.gln, found.company_prefix) == ("9521234000006", "9521234")
    assert [(article.product, article.gtin) for article in found.articles] == [
        ("Orange syrup", "09521234543206")
    ]
    with pytest.raises(RefusedError) as raised:
        keeper.do(
            "correct",
            entry=str(keeper.entries()[-1].seq),
            changes="gln=9521234000007",
            because="typed",
        )
    assert raised.value.problems == (
        ("9521234000007 ends in 7, and its check digit is 6.", "Copy the number again."),
    )


def test_what_the_house_is_told_by_can_be_taken_away_and_a_strange_article_is_told(
    sqlite_keeper: Keeper,
) -> None:
    told = sqlite_keeper.do(
        "house",
        gln="9521234000006",
        company_prefix="9521234",
        web="https://example.com/lots",
        gtin="Sweet orange oil=9521234543206; Orange surup 1L=9521234543213",
    )
    assert told.remarks == (
        (
            'Nothing in this book is called "Orange surup" so far, so no lot has the number '
            "09521234543213.",
            'If it is called otherwise, take this away: pottle house --gtin "Orange surup, 1 L="',
        ),
    )
    told = sqlite_keeper.do("house", gln="none", company_prefix="None", web="none")
    found = house_of(sqlite_keeper.book)
    assert found is not None
    assert (found.gln, found.company_prefix, found.web, len(found.articles)) == (
        None,
        None,
        None,
        2,
    )
    assert told.remarks == ()


def test_all_numbers_that_are_wrong_are_told_at_once(sqlite_keeper: Keeper) -> None:
    with pytest.raises(InputError) as raised:
        sqlite_keeper.do("house", gln="1", company_prefix="2", gtin="Syrup=3; 9521234543213")
    assert [what for what, _ in raised.value.problems] == [
        "1 is no number of a place.",
        "2 is no GS1 Company Prefix.",
        "3 is no number of an article.",
        "9521234543213 does not say of what it is the number.",
    ]


def article(product: str, volume_ul: int, size: str, gtin: str) -> dict[str, object]:
    return {"product": product, "gtin": gtin, "size": amount(volume_ul, UL, size)}


def test_a_fact_of_the_house_that_is_said_anew_alone_keeps_the_rest(sqlite_keeper: Keeper) -> None:
    check_each_alone(
        sqlite_keeper,
        "house",
        {},
        {
            "name": "Old House",
            "currency": "USD",
            "address": "1 Quay",
            "country": "IE",
            "time_zone": "UTC",
            "fluid_ounce": "US",
            "hour": "20",
            "phone": "01 555 0100",
            "doubt": "scale=1",
            "keep": "24",
            "web": "https://example.com/old",
            "gln": "9521234000006",
            "company_prefix": "9521234",
            "gtin": "Syrup, 250 mL=9521234543213",
        },
        [
            ("name", "New House", {"name": "New House"}),
            ("currency", "eur", {"currency": "EUR"}),
            ("address", "2 Quay", {"address": "2 Quay"}),
            ("country", "gb", {"country": "GB"}),
            ("time_zone", "Europe/London", {"time_zone": "Europe/London"}),
            ("fluid_ounce", "Imperial", {"fluid_ounce": "imperial"}),
            ("hour", "21.50", {"hour_minor": 2150}),
            ("phone", "01 555 0200", {"phone": "01 555 0200"}),
            ("doubt", "cylinder=2", {"doubts": "cylinder=2"}),
            ("keep", "36", {"keep_months": 36}),
            ("web", "http://example.com:80/new/", {"web": "http://example.com:80/new"}),
            ("gln", "9521234000013", {"gln": "9521234000013"}),
            ("company_prefix", "952123", {"company_prefix": "952123"}),
            (
                "gtin",
                "; Syrup, 1 L=9521234543206 ;",
                {
                    "articles": [
                        article("Syrup", 250_000, "250 mL", "09521234543213"),
                        article("Syrup", 1_000_000, "1 L", "09521234543206"),
                    ]
                },
            ),
        ],
    )


@pytest.mark.parametrize(
    "value",
    [
        "example.com",
        "https://example.com/a b",
        "https://example.com/" + "x" * 41,
        "ftp://example.com",
    ],
)
def test_an_address_of_pages_is_one_that_a_symbol_can_carry(
    value: str, sqlite_keeper: Keeper
) -> None:
    with pytest.raises(InputError) as raised:
        sqlite_keeper.do("house", web=value)
    assert raised.value.problems == (
        (
            f'"{value}" is no address on the web that fits a symbol of a label.',
            "Write it as https://example.com/lots, in at most 60 characters.",
        ),
    )
    sqlite_keeper.do("house", web="https://example.com/" + "x" * 40)


def test_a_zone_and_an_ounce_are_usual_where_none_is_told(tmp_path: Path) -> None:
    with init(str(tmp_path / "new.db"), name="A House", currency=" eur ") as book:
        found = house_of(book)
    assert found is not None
    assert (found.time_zone, found.fluid_ounce, found.currency) == ("UTC", "US", "EUR")
    check_house("A House")
    with pytest.raises(InputError) as raised:
        check_house("A House", "E", country="X", time_zone="Moon")
    assert len(raised.value.problems) == 3


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "house")
