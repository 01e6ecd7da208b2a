"""On a server an act is two journeys: all that it asks, and all that it writes."""

from collections.abc import Iterator, Mapping
from concurrent.futures import ThreadPoolExecutor
from typing import Any

import pytest

from ledger.errors import InputError, ReasonNeededError, RefusedError
from ledger.service.bench.add import add
from ledger.service.desk.book import How, open_book
from ledger.service.goods.label import labels_together
from tests.benchmarks.slow_line import SlowLine, slow_line, through
from tests.conftest import Server, opened
from tests.keeper import LATER, Keeper, SetClock

LOT, SPIRIT, BOTTLES = "OE-001-5", "NS-001-J", "BOS-001-S"
RINSED = {
    "lot": LOT,
    "source": SPIRIT,
    "volume_in": "20 mL",
    "volume_out": "15 mL",
    "went_to": "apart",
    "because": "to see",
}


@pytest.fixture
def delay_s() -> float:
    """How long a journey takes: it changes nothing of how many are made."""
    return 0.0


@pytest.fixture
def far(
    server: Server, server_walked_template: str, delay_s: float
) -> Iterator[tuple[Keeper, SlowLine]]:
    """A book with a row in every table on a server by a line that counts, called already."""
    where = server.where(server.new_database(server_walked_template))
    with (
        slow_line(server, delay_s) as line,
        opened(through(line, where), SetClock(LATER)) as keeper,
    ):
        keeper.do("note", text="Here.")
        yield keeper, line


def test_what_bench_commands_ask_is_foretold(far: tuple[Keeper, SlowLine]) -> None:
    keeper, line = far
    acts = (
        ("note", {"text": "Quiet."}),
        ("add", {"lot": LOT, "source": SPIRIT, "amount": "3 mL"}),
        ("look", {"lot": ".", "grade": "bright"}),
        ("measure", {"lot": LOT, "what": "brix", "reading": "60"}),
        ("rest", {"lot": ".", "purpose": "settle"}),
    )
    told = {}
    for verb, words in acts:
        before = line.trips
        keeper.do(verb, **words)
        told[verb] = line.trips - before
    assert told == dict.fromkeys(told, 2)


def test_a_time_that_was_typed_is_foretold_too(far: tuple[Keeper, SlowLine]) -> None:
    """On the house's clock, that the server knows, or as an instant."""
    keeper, line = far
    into = {"lot": LOT, "source": SPIRIT, "amount": "3 mL"}
    acts: tuple[tuple[str, int, Mapping[str, Any]], ...] = (
        ("add", 2, {**into, "at": "2026-03-05 09:30"}),
        ("add", 2, {**into, "at": "2026-03-05T10:30+01:00"}),
        ("correct", 3, {"entry": "29", "changes": "", "at": "2026-03-04 10:46"}),
        ("strike", 3, {"entry": "23", "at": "yesterday 12:00"}),
    )
    told = []
    for verb, _, words in acts:
        before = line.trips
        keeper.do(verb, because="to see", **words)
        told.append((verb, line.trips - before, words))
    assert told == list(acts)


def test_a_further_journey_is_made_where_one_answer_says_what_to_ask_next(
    far: tuple[Keeper, SlowLine],
) -> None:
    """After a filling it is asked what is left to fill, after a strike what stands no longer."""
    keeper, line = far
    acts: dict[tuple[str, int], Mapping[str, Any]] = {
        ("count", 2): {"lot": BOTTLES, "amount": "8", "because": "one broke"},
        ("look", 3): {"lot": BOTTLES, "grade": "cloudy"},
        ("complain", 2): {"lot": BOTTLES, "symptom": "cloudy", "party": "Bridge Street Stall"},
        ("makeup", 2): {"lot": LOT, "source": SPIRIT, "volume": "600 mL", "because": "thin"},
        ("labels", 2): {"lot": BOTTLES, "printed": "3", "because": "to keep"},
        ("start", 2): {"product": "Orange essence", "kind": "essence", "target": "1 L"},
        ("receive", 2): {"material": "spirit", "amount": "1 L", "supplier": "Harbour Oils"},
        ("rinse", 2): RINSED,
        ("limit", 2): {"code": "us-safrole", "citation": "21 CFR 189.180, seen"},
        ("withdraw", 2): {"code": "orange-essence", "version": "1"},
        ("material", 2): {"code": "sugar", "change": True, "names": "fr=Sucre"},
        ("check", 2): {"entry": "20"},
        ("answer", 2): {"complaint": "35", "outcome": "replaced", "words": "again"},
        ("contact", 2): {"lot": BOTTLES, "party": "Bridge Street Stall", "reached": "spoken"},
        ("foretell", 3): {"lot": LOT},
        ("plan", 2): {"name": "pores anew", "tries": "pore=5/20"},
        ("house", 2): {"gtin": "Orange syrup, 250 mL=9521234543213"},
        ("strike", 3): {"entry": "50", "because": "to see"},
        ("bottle", 3): {"source": LOT, "pack": "2 x 30 mL", "because": "to see"},
    }
    told = []
    for (verb, _), words in acts.items():
        before = line.trips
        keeper.do(verb, **words)
        told.append((verb, line.trips - before))
    assert told == list(acts)


def test_an_act_of_many_entries_makes_as_many_as_one_of_few(far: tuple[Keeper, SlowLine]) -> None:
    """Somebody is forgotten once more while three recalls are open, one of them of five lots."""
    keeper, line = far
    keeper.do("party", name="Mill Bar", phone="01 555 0177")
    keeper.do("party", name="Weir Bar", phone="01 555 0178")
    acts: tuple[tuple[str, int, Mapping[str, Any]], ...] = (
        ("receive", 2, {"material": "orange-oil", "amount": "1 L"}),
        ("plan", 3, {"name": "oils", "tries": "SOO-001-3"}),
        ("jars", 3, {"trial": "pores again"}),
        ("forget", 3, {"who": "Mill Bar", "because": "asked for it"}),
        ("recall", 3, {"lot": "SOO-001-3", "because": "throws haze"}),
        ("recall", 3, {"lot": "LOT-001-X", "because": "chipped"}),
        ("recall", 3, {"lot": SPIRIT, "because": "smells"}),
        ("forget", 3, {"who": "Weir Bar", "because": "asked for it"}),
        ("contact", 2, {"lot": SPIRIT, "party": "Bridge Street Stall", "reached": "spoken"}),
    )
    told = []
    for verb, _, words in acts:
        before = line.trips
        keeper.do(verb, **words)
        told.append((verb, line.trips - before, words))
    assert told == list(acts)


def test_labels_of_several_lots_are_two_journeys(far: tuple[Keeper, SlowLine]) -> None:
    keeper, line = far
    other = keeper.opens("bottle", source=LOT, pack="2 x 30 mL", because="to see")
    how, printed, before = How("AB", because="to see"), {BOTTLES: 2, other: 1}, line.trips
    done = labels_together(keeper.book, how, printed=printed)
    assert line.trips - before == 2
    assert [(one.entry.draft.lot, one.entry.facts.printed) for one in done] == [*printed.items()]


def test_of_a_lot_by_a_formula_what_it_asks_for_is_foretold_too(
    far: tuple[Keeper, SlowLine],
) -> None:
    """Also where the act departs from it, of which an entry of its own is written."""
    keeper, line = far
    vessel = {"vessel": "Demijohn 2", "because": "to see"}
    acts: tuple[tuple[str, int, Mapping[str, Any]], ...] = (
        ("start", 3, {"formula": "orange-essence", "target": "1 L", **vessel}),
        ("add", 2, {"lot": ".", "source": "SOO-001-3", "amount": "9 mL", "because": "to see"}),
        ("rest", 3, {"lot": ".", "purpose": "settle", **vessel}),
        ("judge", 2, {"lot": ".", "verdict": "release", "because": "to see"}),
    )
    told = []
    for verb, _, words in acts:
        before = line.trips
        done = keeper.do(verb, **words)
        told.append((verb, line.trips - before, words))
    assert told == list(acts)
    assert done.deviations


@pytest.mark.parametrize(("source", "most"), [("spirit", 3), ("001-J", 2)])
def test_an_ending_is_foretold_and_of_a_material_what_tells_which_lot_is_taken(
    source: str, most: int, far: tuple[Keeper, SlowLine]
) -> None:
    keeper, line = far
    before = line.trips
    done = keeper.do("add", lot="001-5", source=source, amount="4 mL")
    assert (done.entry.draft.lot, [lot.code for lot in done.draws_on]) == (LOT, [SPIRIT])
    assert line.trips - before == most


def test_a_correction_is_one_look_one_write_with_what_is_read_after_it_and_a_commit(
    far: tuple[Keeper, SlowLine],
) -> None:
    """However much stands on it: lots made of it, bottles that were filled, sent and labelled."""
    keeper, line = far
    corrections: tuple[tuple[int, str, str], ...] = (
        (3, "36", "amount=20 g"),  # the oil of an essence, of which a syrup and bottles were made
        (3, "18", "source=WTR-002-Y"),
        (3, "31", "volume=3.7 L"),  # of which bottles were filled
        (3, "9", "amount=450 mL"),
        (3, "25", "verdict=hold"),
        (3, "23", "grade=clear"),
        (3, "20", "purpose=chill"),
        (3, "26", "target=3 L"),
        (3, "49", "reading=11"),
        (3, "32", "count=14"),
        (3, "34", "amount=5"),
        (3, "33", "verdict=hold"),
        (3, "60", "about=20"),
        (2, "65", "name=Bridge Street Stand"),
        (2, "68", "name=Cream"),
        (2, "2", "name=Anna Bellamy"),
        (3, "50", ""),
    )
    told, said = [], {}
    for _, entry, changes in corrections:
        words = {"changes": changes} if changes else {}
        before = line.trips
        done = keeper.do("correct" if changes else "strike", entry=entry, because="no", **words)
        said[entry] = [what for what, _ in done.remarks]
        told.append((line.trips - before, entry, changes))
    assert told == list(corrections)
    assert said["36"][0] == (
        "What is in OE-001-5 is another by the book now, and it was released by entry 25."
    )


def test_a_lot_that_nobody_has_yet_is_asked_for_when_its_time_comes(
    far: tuple[Keeper, SlowLine],
) -> None:
    keeper, _ = far
    with pytest.raises(RefusedError) as raised:
        keeper.do("add", lot="T7-9", source="sprit", amount="4 mL")
    sources = "sprit is neither a lot nor a material of the book. Did you mean spirit?"
    assert raised.value.problems[0][0] == sources


@pytest.mark.parametrize("delay_s", [0.02])
def test_of_two_who_draw_the_last_of_a_lot_at_once_the_second_is_asked_why(
    far: tuple[Keeper, SlowLine],
) -> None:
    keeper, _ = far
    last = keeper.opens("receive", material="spirit", amount="10 mL")

    def draw(_: int) -> str:
        with open_book(keeper.book.where, SetClock(keeper.clock.now)) as book:
            try:
                return add(book, How("AB"), lot=LOT, source=last, amount="10 mL").entry.kind
            except ReasonNeededError as error:
                return error.what

    with ThreadPoolExecutor(2) as both:
        told = sorted(both.map(draw, range(2)))
    assert told[1] == "add"
    assert told[0] != "add"
    assert keeper.on_hand(last) == 0


def test_words_that_no_server_can_be_asked_for_are_refused_as_they_are_of_a_file(
    postgres_walked: Keeper,
) -> None:
    with pytest.raises(InputError) as raised:
        postgres_walked.do("receive", material="spirit", amount="1 L", supplier="a\x00b")
    assert str(raised.value) == (
        "The supplier holds the invisible character U+0000. Type it again without it."
    )
    # Of a time that is told it is not known yet by which clock.
    told = postgres_walked.do("add", lot=LOT, source=SPIRIT, amount="1 mL", at="2026-03-08 10:00")
    assert f"{told.entry.draft.happened.at:%F %H:%M}" == "2026-03-08 10:00"
    with pytest.raises(InputError) as raised:
        postgres_walked.do("strike", entry="9" * 30)
    assert str(raised.value) == (
        f'"{"9" * 30}" is not the number of an entry. '
        "pottle journal lists the entries with their numbers."
    )
