"""What an act asks of a lot and of what it draws on is foretold in the readers' own words."""

from collections.abc import Callable

import pytest
from sqlalchemy import Connection

from ledger.service.desk.book import open_book
from ledger.store.ahead import foreseen
from ledger.store.engine import statements
from ledger.store.engine.acts import acting
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.turn import Question, turn_of
from ledger.store.read import amounts, inputs, made, parties, people, queries
from ledger.store.read.lots import codes_of_stem
from tests.keeper import Keeper

BOTTLES, SYRUP, ESSENCE = "BOS-001-S", "OS-002-M", "OE-001-5"


@pytest.fixture
def asked_late(monkeypatch: pytest.MonkeyPatch) -> list[Question]:
    """Questions that were asked by themselves, since nobody foretold them."""
    found: list[Question] = []
    straight = statements._ask

    def heard(connection: Connection, asked: Question) -> list[object]:
        if turn_of(connection):
            found.append(asked)
        return straight(connection, asked)

    monkeypatch.setattr(statements, "_ask", heard)
    return found


@pytest.mark.parametrize("source", ["OE-001-5", "NS-001-J"])
def test_nothing_is_asked_late_for_what_was_made_here_or_came(
    source: str, postgres_walked: Keeper, asked_late: list[Question]
) -> None:
    lot = postgres_walked.opens("start", product="Cordial", kind="syrup", target="2L")
    postgres_walked.do("add", lot=lot, source="NS-001-J", amount="30 mL")
    asked_late.clear()
    postgres_walked.do("add", lot=lot, source=source, amount="20 mL", because="to see")
    assert [asked.statement for asked in asked_late] == []


def test_acts_about_bottles_people_and_materials_ask_late_only_what_others_answer(
    postgres_walked: Keeper, asked_late: list[Question]
) -> None:
    """That is whether a party is there already."""
    stall, names = "Bridge Street Stall", {"code": "Mill Lane Bar"}
    acts: tuple[tuple[str, dict[str, str], list[dict[str, object]]], ...] = (
        ("complain", {"lot": BOTTLES, "symptom": "cloudy", "party": stall}, []),
        ("send", {"lot": BOTTLES, "amount": "1", "party": stall, "because": "asked"}, []),
        ("cases", {"lot": BOTTLES, "pack": "1x2", "because": "to keep"}, []),
        ("judge", {"lot": ".", "verdict": "hold", "because": "to see"}, []),
        ("labels", {"lot": BOTTLES, "printed": "3", "because": "to keep"}, []),
        ("receive", {"material": "carb", "amount": "1 kg"}, []),
        (
            "party",
            {"name": names["code"]},
            [{**names, "name": names["code"], "old": names["code"]}],
        ),
    )
    told = []
    for verb, words, _ in acts:
        asked_late.clear()
        postgres_walked.do(verb, **words)
        told.append((verb, words, [asked.cells for asked in asked_late]))
    assert told == list(acts)


def test_an_act_by_the_servers_clock_asks_nothing_late(
    postgres_walked: Keeper, asked_late: list[Question]
) -> None:
    with open_book(postgres_walked.book.where) as book:
        keeper = Keeper(book, postgres_walked.clock)
        keeper.do("note", text="Here.", lot=ESSENCE)
        keeper.do("add", lot=ESSENCE, source="NS-001-J", amount="1 mL")
    assert asked_late == []


def test_a_time_that_was_typed_is_found_by_the_house_s_clock(
    postgres_walked: Keeper, asked_late: list[Question]
) -> None:
    """It stands in Dublin, where it is an hour later in summer."""
    then = "SELECT seq FROM entry WHERE happened_at = :at"

    def foretell(foretold: Foreseen) -> None:
        for clock in ("2026-03-02T09:40:00Z", "2026-07-02T09:40:00Z"):
            foretold.asks_for(then, at=foreseen.second_at_home(foretold, clock))

    with acting(postgres_walked.book.engine, foretell) as connection:
        assert statements.ask_column(connection, then, at="2026-03-02T09:40:00Z") == [16, 36]
        assert statements.ask_column(connection, then, at="2026-07-02T08:40:00Z") == []
    assert asked_late == []


def packed(foretold: Foreseen) -> None:
    foreseen.foresee_packed(foretold, foreseen.foresee_lot(foretold, BOTTLES, (), None))


def packed_reads(connection: Connection) -> object:
    return (
        made.next_case(connection),
        queries.chain(connection, 32),
        queries.lot_by_code(connection, SYRUP),
        queries.entries_of_lot(connection, 26, 0),
        amounts.held(connection, 26),
        amounts.held(connection, 32),
        inputs.inputs(connection, inputs.numbers_into(connection, 26)),
        people.shown_rows(connection),
        people.every_code(connection),
    )


def party(foretold: Foreseen) -> None:
    foreseen.foresee_party(foretold, "P1")


def party_reads(connection: Connection) -> object:
    named = [reader(connection) for reader in parties.EACH_NAMED]
    known = people.shown_rows(connection), people.every_code(connection)
    return parties.is_named(connection, "P1"), known, named


def material(foretold: Foreseen) -> None:
    foreseen.foresee_material(foretold, "sugar")


def material_reads(connection: Connection) -> object:
    return queries.material(connection, "sugar"), codes_of_stem(connection, "SGR-")


@pytest.mark.parametrize(
    ("foretell", "reads"),
    [
        (packed, packed_reads),
        (party, party_reads),
        (material, material_reads),
    ],
    ids=["packed", "party", "material"],
)
def test_what_was_foretold_is_not_asked_again_and_answers_the_same(
    foretell: Callable[[Foreseen], None],
    reads: Callable[[Connection], object],
    postgres_walked: Keeper,
    asked_late: list[Question],
) -> None:
    with acting(postgres_walked.book.engine, foretell) as connection:
        told = reads(connection)
    assert [(asked.statement, asked.cells) for asked in asked_late] == []
    with postgres_walked.reading() as connection:
        assert told == reads(connection)


def test_acts_at_the_bench_and_about_what_is_made_ask_nothing_late(
    postgres_walked: Keeper, asked_late: list[Question]
) -> None:
    acts: tuple[tuple[str, dict[str, str]], ...] = (
        ("judge", {"lot": SYRUP, "verdict": "hold"}),
        ("look", {"lot": SYRUP, "grade": "bright"}),
        ("judge", {"lot": SYRUP, "verdict": "release"}),
        ("look", {"lot": ESSENCE, "grade": "bright"}),
        ("rest", {"lot": ESSENCE, "purpose": "settle"}),
        ("filter", {"lot": ESSENCE, "medium": "paper", "volume_out": "390mL"}),
        ("measure", {"lot": SYRUP, "what": "brix", "reading": "50"}),
        ("makeup", {"lot": ESSENCE, "volume": "600mL", "source": "NS-001-J"}),
        ("count", {"lot": ESSENCE, "amount": "500mL"}),
        ("finish", {"lot": ESSENCE, "volume": "499mL"}),
        ("decant", {"lot": ESSENCE, "drawn": "480mL", "heel": "10mL"}),
        ("bottle", {"source": SYRUP, "pack": "2 x 30mL"}),
        ("contact", {"lot": BOTTLES, "party": "Bridge Street Stall", "reached": "spoken"}),
        ("answer", {"complaint": "35", "outcome": "explained"}),
        ("check", {"entry": "20"}),
    )
    told = {}
    for verb, words in acts:
        asked_late.clear()
        postgres_walked.do(verb, because="to see", **words)
        told[verb] = [asked.statement for asked in asked_late]
    assert told == {verb: [] for verb, _ in acts}
