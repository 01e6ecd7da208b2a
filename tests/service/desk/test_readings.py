"""What was measured beside what is reckoned: said at entry, and in the way of a release."""

import pytest

from ledger.domain.lots.lot import Status
from ledger.errors import FindingError
from ledger.service.lots.dossier import brief_of
from tests.keeper import Keeper
from tests.path import Lots, receive_all


@pytest.fixture
def lots(sqlite_keeper: Keeper) -> Lots:
    return receive_all(sqlite_keeper)


def essence(keeper: Keeper, lots: Lots, spirit: str = "") -> str:
    """Return an essence of one part of oil to fifteen of spirit of 96 %: 90.0 % vol."""
    code = keeper.opens("start", product="Orange essence", kind="essence", target="480mL")
    keeper.do("add", lot=code, source=lots.oil, amount="30mL")
    keeper.do("add", lot=code, source=spirit or lots.spirit, amount="450mL")
    return code


def base(keeper: Keeper, lots: Lots) -> str:
    """Return a base syrup of 600 g of sugar and 400 g of water."""
    code = keeper.opens("start", product="Base", kind="base-syrup", target="800mL")
    keeper.do("add", lot=code, source=lots.sugar, amount="600g")
    keeper.do("add", lot=code, source=lots.water, amount="400.7mL")
    return code


def said(
    keeper: Keeper, code: str, what: str, reading: str, temp: str | None = "20"
) -> tuple[tuple[str, str], ...]:
    return keeper.do("measure", lot=code, what=what, reading=reading, temp=temp).remarks


def test_a_strength_far_from_what_went_in_is_said_at_once(
    sqlite_keeper: Keeper, lots: Lots
) -> None:
    # 25.35 g of oil and 363.3 g of spirit in 480 mL are 0.8098 g/mL, which OIML R 22 gives spirit
    # of 95.4 % vol.
    code = essence(sqlite_keeper, lots)
    assert said(sqlite_keeper, code, "abv", "70%") == (
        (
            f"{code} was measured at 70.0 % vol, and the book reckons 90.0 % vol, which an "
            "instrument may show as 90.0 to 95.4; for the doubt of both they may differ by 2.1.",
            "Read it again; if it stays so, something else or another amount went in: "
            f"pottle journal {code}",
        ),
    )


@pytest.mark.parametrize("reading", ["88.5", "90", "93", "95.5"])
def test_a_strength_that_oil_and_doubt_explain_is_not_remarked_on(
    sqlite_keeper: Keeper, lots: Lots, reading: str
) -> None:
    assert said(sqlite_keeper, essence(sqlite_keeper, lots), "abv", reading) == ()


def test_the_wrong_bottle_of_spirit_is_found_by_a_reading(
    sqlite_keeper: Keeper, lots: Lots
) -> None:
    sqlite_keeper.do("material", code="weak", name="Spirit 80", kind="ethanol", abv="80")
    weak = sqlite_keeper.opens("receive", material="weak", amount="5L")
    # Fifteen parts in sixteen of 80 % are 75 % vol; the oil lets an alcoholmeter show more.
    right, wrong = essence(sqlite_keeper, lots, weak), essence(sqlite_keeper, lots)
    assert said(sqlite_keeper, right, "abv", "78") == ()
    assert len(said(sqlite_keeper, wrong, "abv", "78")) == 1


def test_a_warm_reading_is_brought_to_twenty_degrees_before_it_is_compared(
    sqlite_keeper: Keeper, lots: Lots
) -> None:
    # A liquid truly of 90 % reads about 92.7 at 80 °F on the scale of 60 °F (trade.md, S43).
    code = sqlite_keeper.opens("start", product="Spirit", kind="blend", target="1L")
    sqlite_keeper.do("add", lot=code, source=lots.spirit, amount="500mL")
    assert said(sqlite_keeper, code, "abv", "98", "29") == ()
    assert len(said(sqlite_keeper, code, "abv", "92", "29")) == 1
    assert said(sqlite_keeper, code, "abv", "93.5", None) == ()


@pytest.mark.parametrize(("reading", "remarks"), [("60", 0), ("61.5", 0), ("50.2", 1), ("65", 1)])
def test_a_base_is_read_at_the_sugar_that_was_weighed_in(
    sqlite_keeper: Keeper, lots: Lots, reading: str, remarks: int
) -> None:
    assert len(said(sqlite_keeper, base(sqlite_keeper, lots), "brix", reading)) == remarks


def test_a_density_is_compared_with_that_of_what_went_in(sqlite_keeper: Keeper, lots: Lots) -> None:
    # ICUMSA SPS-4 gives 1.28661 g/mL for 60 % of sucrose at 20 °C (reference/sucrose_density.csv).
    code = base(sqlite_keeper, lots)
    assert said(sqlite_keeper, code, "density", "1.2866") == ()
    assert said(sqlite_keeper, code, "density", "1.23")[0][0] == (
        f"{code} was measured at 1.230 g/mL, and the book reckons 1.287 g/mL; for the doubt of "
        "both they may differ by 0.007."
    )


def test_a_reading_is_compared_with_what_was_there_when_it_was_taken(
    sqlite_keeper: Keeper, lots: Lots
) -> None:
    code = base(sqlite_keeper, lots)
    sqlite_keeper.clock.forward(hours=1)
    sqlite_keeper.do("add", lot=code, source=lots.water, amount="400mL")
    late = sqlite_keeper.do(
        "measure", lot=code, what="brix", reading="60", temp="20", at="2026-03-02T09:45+00:00"
    )
    assert late.remarks == ()
    assert len(said(sqlite_keeper, code, "brix", "60")) == 1


def test_what_is_in_part_not_known_is_not_compared(sqlite_keeper: Keeper, lots: Lots) -> None:
    sqlite_keeper.do("material", code="gin", kind="ethanol")
    gin = sqlite_keeper.opens("receive", material="gin", amount="1L")
    code = essence(sqlite_keeper, lots, gin)
    assert said(sqlite_keeper, code, "abv", "40") == ()


def finished(keeper: Keeper, code: str) -> None:
    keeper.do("finish", lot=code, volume="470mL")
    keeper.do("look", lot=code, grade="bright")


def test_a_last_reading_that_does_not_fit_stands_in_the_way_without_a_formula(
    sqlite_keeper: Keeper, lots: Lots
) -> None:
    code = essence(sqlite_keeper, lots)
    ((what, _),) = said(sqlite_keeper, code, "abv", "70%")
    finished(sqlite_keeper, code)
    with pytest.raises(FindingError) as raised:
        sqlite_keeper.do("judge", lot=code, verdict="release")
    assert raised.value.problems == (
        (
            what,
            "Correct what went in where the book is wrong, or measure it again: "
            f"pottle measure {code} abv READING --temp TEMP",
        ),
    )


def test_a_reading_taken_again_that_fits_clears_the_way(sqlite_keeper: Keeper, lots: Lots) -> None:
    code = essence(sqlite_keeper, lots)
    said(sqlite_keeper, code, "abv", "70%")
    said(sqlite_keeper, code, "abv", "91%")
    finished(sqlite_keeper, code)
    sqlite_keeper.do("judge", lot=code, verdict="release")
    assert brief_of(sqlite_keeper.book, code).status is Status.RELEASED


def test_bottles_stand_on_the_readings_of_what_they_were_filled_from(
    sqlite_keeper: Keeper, lots: Lots
) -> None:
    code = essence(sqlite_keeper, lots)
    said(sqlite_keeper, code, "abv", "70%")
    finished(sqlite_keeper, code)
    packed = sqlite_keeper.opens("bottle", source=code, pack="1 x 250mL", bottles=lots.bottles)
    with pytest.raises(FindingError) as raised:
        sqlite_keeper.do("judge", lot=packed, verdict="release")
    assert any(f"{code} was measured at 70.0 % vol" in what for what, _ in raised.value.problems)
    said(sqlite_keeper, packed, "abv", "91%")
    sqlite_keeper.do("judge", lot=packed, verdict="release")
