"""A release is held to the strength as made: the formula's limits, and what the label claims."""

import pytest

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula, Measurement
from ledger.domain.entries.choices import ProductKind
from ledger.domain.lots.lot import Status
from ledger.domain.lots.readings import Taken
from ledger.errors import FindingError
from ledger.service.desk.claims import claimed_limit, readings_beside, strength_as_made
from ledger.service.lots.dossier import brief_of
from tests.keeper import MORNING, Keeper
from tests.path import receive_all
from tests.service.engines import ON_EACH_ENGINE


def made_by(keeper: Keeper, **limits: object) -> str:
    """Return a finished batch of 96 % spirit alone, made by a formula with some limits."""
    lots = receive_all(keeper)
    keeper.record(
        Formula("test", 1, "Test", ProductKind.BLEND, parse_quantity("100mL"), **limits)  # type: ignore[arg-type]
    )
    code = keeper.opens("start", formula="test", target="100mL")
    keeper.do("add", lot=code, source=lots.spirit, amount="100mL")
    keeper.do("finish", lot=code, volume="100mL")
    keeper.do("look", lot=code, grade="bright")
    return code


def what_stands_in_the_way(keeper: Keeper, code: str) -> list[str]:
    with pytest.raises(FindingError) as raised:
        keeper.do("judge", lot=code, verdict="release")
    return [what for what, _ in raised.value.problems]


def test_a_strength_outside_the_formula_stands_in_the_way(keeper: Keeper) -> None:
    code = made_by(keeper, abv_min_mpct=80_000, abv_max_mpct=90_000)
    assert what_stands_in_the_way(keeper, code) == [
        f"{code} has 96 % vol; test version 1 asks for 80 % to 90 % vol."
    ]


def test_a_strength_inside_the_formula_does_not(keeper: Keeper) -> None:
    code = made_by(keeper, abv_min_mpct=95_000, abv_max_mpct=97_000)
    keeper.do("judge", lot=code, verdict="release")
    assert brief_of(keeper.book, code).status is Status.RELEASED


def test_a_claim_that_the_strength_breaks_stands_in_the_way_with_its_source(
    keeper: Keeper,
) -> None:
    code = made_by(keeper, claim="uk-alcohol-free")
    assert what_stands_in_the_way(keeper, code) == [
        f"{code} has 96 % vol; its label claims the words alcohol free (UK), for at most 0.05 % "
        "vol."
    ]


@ON_EACH_ENGINE
def test_a_claim_is_held_to_the_limit_in_force_on_the_day_of_the_release(keeper: Keeper) -> None:
    code = made_by(keeper, claim="uk-alcohol-free")
    keeper.do("limit", code="uk-alcohol-free", until="2026-03-01")
    done = keeper.do("judge", lot=code, verdict="release")
    assert done.remarks[0] == (
        f"The strength of {code} is not compared on 2026-03-02: its label claims the words alcohol "
        "free (UK), for at most 0.05 % vol, which holds until 2026-03-01.",
        "Look at the limit: pottle limits uk-alcohol-free",
    )


def test_a_strength_decides_as_it_was_reckoned_and_not_rounded(keeper: Keeper) -> None:
    """By hand: 96 mL of ethanol in 100.1 mL are 95.904 095 9 % vol; the claim ends at 95.904 0."""
    code = made_by(keeper, claim="strong")
    keeper.do("finish", lot=code, volume="100.1mL")
    told = {"substance": "alcohol", "unit": "% vol", "basis": "as-sold", "place": "here"}
    keeper.do("limit", code="strong", value="95.904", says="strong", citation="ours", **told)
    assert what_stands_in_the_way(keeper, code) == [
        f"{code} has 95.9041 % vol; its label claims strong (here), for at most 95.904 % vol."
    ]


def test_a_strength_is_reckoned_only_where_a_formula_asks_for_it(sqlite_keeper: Keeper) -> None:
    code = made_by(sqlite_keeper, abv_min_mpct=80_000)
    unasked, claimed = (
        Formula("test", 1, "Test", ProductKind.BLEND, parse_quantity("100mL"), claim=claim)
        for claim in (None, "contains alcohol")
    )
    with sqlite_keeper.reading() as connection:
        assert strength_as_made(connection, code, unasked) is None
        assert strength_as_made(connection, code, claimed) == pytest.approx(96_000, abs=1)
        assert claimed_limit(connection, claimed, MORNING.date()) is None


def test_a_reading_is_beside_what_is_reckoned_as_far_as_the_house_knows_its_instruments(
    sqlite_keeper: Keeper,
) -> None:
    keeper = sqlite_keeper
    code = made_by(keeper, claim="strong")
    keeper.do("measure", lot=code, what="abv", reading="95", temp="20")
    entry = keeper.entries()[-1]
    assert isinstance(entry.facts, Measurement)
    taken = Taken(code, entry.facts, entry.draft.happened.at, entry.seq)

    def doubt() -> float:
        with keeper.reading() as connection:
            (found,) = readings_beside(connection, [taken])
        return found.beside.measured_doubt

    usual = doubt()
    keeper.do("house", doubt="alcoholmeter=3")
    assert doubt() > usual
