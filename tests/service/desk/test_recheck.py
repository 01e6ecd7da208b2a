"""A correction is recorded, and tells what stood on the old entry and fits no longer."""

import pytest

from ledger.errors import RefusedError
from ledger.service.desk.book import Recorded
from ledger.service.evidence.verify import verify
from ledger.service.lots.dossier import dossier
from tests.keeper import Keeper
from tests.service.engines import ON_EACH_ENGINE

MEND = "If that entry is wrong too, correct it; else this one may be: pottle journal shows both."


def correct(keeper: Keeper, entry: int, changes: str = "", at: str | None = None) -> Recorded:
    return keeper.do("correct", entry=str(entry), changes=changes, at=at, because="misread")


def remarks(done: Recorded) -> list[str]:
    assert all(todo == MEND for _, todo in done.remarks)
    return [what for what, _ in done.remarks]


def received(keeper: Keeper, amount: str = "1L") -> tuple[int, str]:
    done = keeper.do("receive", material="spirit", amount=amount)
    return done.seq, done.code or ""


def begun(keeper: Keeper) -> str:
    return keeper.opens("start", product="Orange essence", kind="essence", target="480mL")


def is_whole(keeper: Keeper, lot: str) -> None:
    assert verify(keeper.book).faults == ()
    assert dossier(keeper.book, lot).state.code == lot


@ON_EACH_ENGINE
def test_a_receipt_mended_to_less_than_was_drawn_tells_the_draws(keeper: Keeper) -> None:
    receipt, spirit = received(keeper)
    batch = begun(keeper)
    first = keeper.do("add", lot=batch, source=spirit, amount="400mL").seq
    second = keeper.do("add", lot=batch, source=spirit, amount="300mL").seq
    assert remarks(correct(keeper, receipt, "amount=900mL")) == []
    assert remarks(correct(keeper, second + 1, "amount=500mL")) == [
        f"Entry {second}: 300 mL of {spirit} was drawn, but by the book it now held 100 mL."
    ]
    assert remarks(correct(keeper, second + 2, "amount=100mL")) == [
        f"Entry {first}: 400 mL of {spirit} was drawn, but by the book it now held 100 mL."
    ]
    assert keeper.on_hand(spirit) == 100_000 - 700_000
    is_whole(keeper, spirit)


def test_an_addition_mended_to_less_than_went_on_tells_where_it_went(keeper: Keeper) -> None:
    _, spirit = received(keeper)
    essence = begun(keeper)
    addition = keeper.do("add", lot=essence, source=spirit, amount="400mL").seq
    syrup = keeper.opens("start", product="Orange syrup", kind="syrup", target="1L")
    use = keeper.do("add", lot=syrup, source=essence, amount="30mL").seq
    assert remarks(correct(keeper, addition, "amount=20mL")) == [
        f"Entry {use}: 30 mL of {essence} was drawn, but by the book it now held 20 mL."
    ]
    is_whole(keeper, syrup)


def test_a_measured_level_parts_what_came_before_from_what_comes_after(keeper: Keeper) -> None:
    _, spirit = received(keeper)
    essence = begun(keeper)
    addition = keeper.do("add", lot=essence, source=spirit, amount="400mL").seq
    finish = keeper.do("finish", lot=essence, volume="390mL").seq
    syrup = keeper.opens("start", product="Orange syrup", kind="syrup", target="1L")
    use = keeper.do("add", lot=syrup, source=essence, amount="380mL").seq
    assert remarks(correct(keeper, addition, "amount=395mL")) == []
    assert remarks(correct(keeper, finish, "volume=370mL")) == [
        f"Entry {use}: 380 mL of {essence} was drawn, but by the book it now held 370 mL."
    ]


def test_a_receipt_moved_after_its_use_tells_the_first_use(keeper: Keeper) -> None:
    receipt, spirit = received(keeper)
    batch = begun(keeper)
    use = keeper.do("add", lot=batch, source=spirit, amount="400mL").seq
    keeper.clock.forward(hours=5)
    keeper.do("add", lot=batch, source=spirit, amount="20mL")
    done = correct(keeper, receipt, at="12:00")
    assert remarks(done) == [
        f"Entry {use} is of 2026-03-02 09:15, but {spirit} is now in the book only from "
        "2026-03-02 12:00."
    ]
    is_whole(keeper, spirit)


def test_a_start_moved_after_its_additions_tells_them(keeper: Keeper) -> None:
    _, spirit = received(keeper)
    batch = begun(keeper)
    start = keeper.entries()[-1].seq
    use = keeper.do("add", lot=batch, source=spirit, amount="400mL").seq
    keeper.clock.forward(hours=5)
    assert remarks(correct(keeper, start, at="12:00")) == [
        f"Entry {use} is of 2026-03-02 09:15, but {batch} is now in the book only from "
        "2026-03-02 12:00."
    ]
    is_whole(keeper, batch)


def test_a_struck_addition_tells_what_was_drawn_of_it(keeper: Keeper) -> None:
    _, spirit = received(keeper)
    essence = begun(keeper)
    addition = keeper.do("add", lot=essence, source=spirit, amount="400mL").seq
    syrup = keeper.opens("start", product="Orange syrup", kind="syrup", target="1L")
    use = keeper.do("add", lot=syrup, source=essence, amount="30mL").seq
    done = keeper.do("strike", entry=str(addition), because="another batch")
    assert remarks(done) == [
        f"Entry {use}: 30 mL of {essence} was drawn, but by the book it now held 0 mL."
    ]


def test_what_did_not_fit_before_is_not_told_again(keeper: Keeper) -> None:
    receipt, spirit = received(keeper, "100mL")
    batch = begun(keeper)
    keeper.do("add", lot=batch, source=spirit, amount="400mL", because="the cylinder says so")
    assert remarks(correct(keeper, receipt, "amount=50mL")) == []


@ON_EACH_ENGINE
def test_an_addition_moved_to_another_lot_tells_what_that_lot_lacks(keeper: Keeper) -> None:
    _, one = received(keeper)
    _, other = received(keeper, "50mL")
    batch = begun(keeper)
    addition = keeper.do("add", lot=batch, source=one, amount="40mL").seq
    use = keeper.do("add", lot=batch, source=other, amount="30mL").seq
    done = correct(keeper, addition, f"source={other}", at=None)
    assert [item.draft.reason for item in done.deviations] == ["misread"]
    assert remarks(done) == [
        f"Entry {use}: 30 mL of {other} was drawn, but by the book it now held 10 mL."
    ]


@pytest.mark.parametrize("amount", ["1kg", "3"])
def test_what_a_lot_is_counted_in_cannot_be_corrected(keeper: Keeper, amount: str) -> None:
    receipt, spirit = received(keeper)
    batch = begun(keeper)
    keeper.do("add", lot=batch, source=spirit, amount="400mL")
    before = keeper.bodies()
    with pytest.raises(RefusedError) as raised:
        correct(keeper, receipt, f"amount={amount}")
    assert raised.value.problems == (
        (
            f"{spirit} is counted in the measure of 1L, so it cannot become {amount}.",
            f"Strike entry {receipt} and receive it again.",
        ),
    )
    assert keeper.bodies() == before
