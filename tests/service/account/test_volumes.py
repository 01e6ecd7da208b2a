"""Mixtures hold what physics gives them, however their parts were bought."""

import pytest

from ledger.domain.amounts.quantity import Measure, reckoned, show
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.lots.steps import Act, Step
from ledger.errors import InputError, RefusedError
from ledger.science.contents.composition import Contents, Part, PartKey
from ledger.science.contents.received import ReceivedLot
from ledger.science.contents.replay import Happening, Replay
from ledger.service.account.replay import Replayed
from ledger.service.account.state import lot_state
from ledger.service.account.volumes import Volume, _overdrawn_ul, _unplaced_mg, _volume
from ledger.service.lots.stock import stock
from ledger.store.read.amounts import Held
from ledger.store.read.steps import Steps
from tests.keeper import Keeper
from tests.service.glass.vanilla import problems


def received(keeper: Keeper, material: str, amount: str) -> str:
    return keeper.opens("receive", material=material, amount=amount)


def there(keeper: Keeper, code: str) -> tuple[int, bool]:
    with keeper.reading() as connection:
        state = lot_state(connection, code)
    return state.on_hand // 1000, state.is_reckoned


@pytest.fixture
def batch(sqlite_keeper: Keeper) -> str:
    return sqlite_keeper.opens("start", product="Blend", kind="blend", target="4L")


def test_half_a_litre_of_spirit_and_of_water_are_no_litre(
    sqlite_keeper: Keeper, batch: str
) -> None:
    """OIML R 22: 500 mL of 96 % spirit (403.7 g) and 499.1 g of water, 931 kg/m³ together."""
    for material in ("spirit", "water"):
        lot = received(sqlite_keeper, material, "1L")
        sqlite_keeper.do("add", lot=batch, source=lot, amount="500mL")
    assert there(sqlite_keeper, batch) == (969, True)
    sqlite_keeper.do("finish", lot=batch, volume="960mL")
    assert there(sqlite_keeper, batch) == (960, False)


def test_sugar_fills_space_and_no_more_than_it_does(sqlite_keeper: Keeper, batch: str) -> None:
    """ICUMSA SPS-4: 2 kg of sugar in 2.5 kg of water are 44.4 °Bx, 1.1998 kg/L: 3.75 L."""
    sugar, water = received(sqlite_keeper, "sugar", "5kg"), received(sqlite_keeper, "water", "9L")
    sqlite_keeper.do("add", lot=batch, source=sugar, amount="2kg")
    sqlite_keeper.do("add", lot=batch, source=water, amount="2.5L")
    assert there(sqlite_keeper, batch) == (3746, True)
    with pytest.raises(RefusedError) as raised:
        sqlite_keeper.do("finish", lot=batch, volume="4L")
    assert problems(raised.value) == (
        (
            f"4L came out, but {batch} held less: the book reckons about 3.75 L.",
            "Record what else went in first: pottle add ...",
        ),
    )
    sqlite_keeper.do("finish", lot=batch, volume="3.7L")


def test_spirit_and_oil_by_weight_are_liquids(sqlite_keeper: Keeper, batch: str) -> None:
    """400 g of 96 % spirit are 495 mL (OIML R 22), 25 g of oil of 0.845 g/mL 30 mL."""
    spirit = received(sqlite_keeper, "spirit", "5kg")
    oil = received(sqlite_keeper, "orange-oil", "200g")
    sqlite_keeper.do("add", lot=batch, source=spirit, amount="400g")
    sqlite_keeper.do("add", lot=batch, source=oil, amount="25g")
    assert there(sqlite_keeper, batch) == (524, True)
    sqlite_keeper.do("finish", lot=batch, volume="515mL")
    assert there(sqlite_keeper, batch) == (515, False)


def test_an_amount_as_shown_can_be_drawn(sqlite_keeper: Keeper, batch: str) -> None:
    for material in ("spirit", "water"):
        lot = received(sqlite_keeper, material, "1L")
        sqlite_keeper.do("add", lot=batch, source=lot, amount="500mL")
    other = sqlite_keeper.opens("start", product="Other", kind="blend", target="1L")
    with sqlite_keeper.reading() as connection:
        amount = show(reckoned(lot_state(connection, batch).on_hand), Measure.UL)
    assert amount == "970 mL"
    sqlite_keeper.do("add", lot=other, source=batch, amount=amount)
    assert there(sqlite_keeper, batch)[0] == 0


def test_all_draws_what_is_there(sqlite_keeper: Keeper, batch: str) -> None:
    for material in ("spirit", "water"):
        lot = received(sqlite_keeper, material, "500mL")
        sqlite_keeper.do("add", lot=batch, source=lot, amount="all")
        assert there(sqlite_keeper, lot)[0] == 0
    other = sqlite_keeper.opens("start", product="Other", kind="blend", target="1L")
    sqlite_keeper.do("add", lot=other, source=batch, amount="ALL")
    assert there(sqlite_keeper, batch) == (0, False)
    assert there(sqlite_keeper, other)[0] == 969
    packed = sqlite_keeper.opens("bottle", source=other, pack="4 x 240mL", drawn="all")
    assert there(sqlite_keeper, other)[0] == 0
    sqlite_keeper.do("send", lot=packed, amount="all", moved_as="destroyed")
    assert there(sqlite_keeper, packed)[0] == 0


def test_all_of_nothing_is_no_amount_nor_is_all_of_what_came_back(
    sqlite_keeper: Keeper, batch: str
) -> None:
    water = received(sqlite_keeper, "water", "1L")
    sqlite_keeper.do("add", lot=batch, source=water, amount="all")
    with pytest.raises(RefusedError) as refused:
        sqlite_keeper.do("add", lot=batch, source=water, amount="all")
    assert problems(refused.value) == (
        (
            f"By the book nothing is left of {water}, so all of it is no amount.",
            f"Write how much it was, or count what is there: pottle count {water} AMOUNT.",
        ),
    )
    with pytest.raises(InputError):
        sqlite_keeper.do("send", lot=batch, amount="all", moved_as="returned")


def test_oil_and_spirit_add_up_as_they_are_poured_and_are_said_so(
    sqlite_keeper: Keeper, batch: str
) -> None:
    for material, amount in (("spirit", "450mL"), ("orange-oil", "30mL")):
        lot = received(sqlite_keeper, material, "1L")
        sqlite_keeper.do("add", lot=batch, source=lot, amount=amount)
    assert there(sqlite_keeper, batch) == (480, False)


def test_more_duty_than_cost_is_refused(sqlite_keeper: Keeper) -> None:
    with pytest.raises(RefusedError) as raised:
        sqlite_keeper.do("receive", material="spirit", amount="1L", cost="10.00", duty="11.00")
    assert problems(raised.value) == (
        (
            "A duty of 11.00 cannot be part of a cost of 10.00.",
            "Give the cost with the duty in it.",
        ),
    )


def test_stock_and_lot_tell_one_volume_of_a_jar_into_which_bulk_came_back(
    sqlite_keeper: Keeper,
) -> None:
    """What comes back is another mixture than what is there by then, and together they shrink."""
    spirit, water = (
        sqlite_keeper.do("receive", material=material, amount="2L").code
        for material in ("spirit", "water")
    )
    batch = sqlite_keeper.opens("start", product="Orange essence", kind="essence", target="1L")
    sqlite_keeper.do("add", lot=batch, source=spirit, amount="400mL")
    sqlite_keeper.do(
        "send",
        lot=batch,
        amount="200mL",
        moved_as="sale",
        party="Notreal Bar",
        because="as a trial",
    )
    sqlite_keeper.do("makeup", lot=batch, volume="400mL", source=water)
    sqlite_keeper.do(
        "send",
        lot=batch,
        amount="200mL",
        moved_as="returned",
        party="Notreal Bar",
        because="too much",
    )
    with sqlite_keeper.reading() as connection:
        by_lot = lot_state(connection, batch).on_hand
    (by_stock,) = (lot for lot in stock(sqlite_keeper.book) if lot.code == batch)
    assert by_stock.on_hand == by_lot < 600_000
    assert by_stock.is_reckoned


CAKE, OIL, SPIRIT, GUM = (
    ReceivedLot(code, code.lower(), code, sort, measure, density_kg_per_m3=density)
    for code, sort, measure, density in (
        ("CAKE", MaterialKind.ACID, Measure.MG, None),
        ("OIL", MaterialKind.OIL, Measure.MG, 850.0),
        ("SPIRIT", MaterialKind.ETHANOL, Measure.MG, None),
        ("GUM", MaterialKind.GUM, Measure.UL, None),
    )
)


def step(
    source: str | None,
    mass_mg: float = 0.0,
    act: Act = Act.INTO,
    *,
    fills_ul: float = 0.0,
    solvent_mg: float = 0.0,
    there_ul: float = 1000.0,
    is_vague: bool = False,
) -> Happening:
    """Return a step that moves so much of one part, which fills a volume or is dissolved."""
    part = Part(mass_mg, fills_ul, solvent_mg)
    moved = Contents(parts={PartKey("rest", source or ""): part})
    told = Step(act, 700, source, taken=100)
    return Happening(told, moved, 400.0, Contents(there_ul), there_ul, is_vague=is_vague)


def replay_of(*lots: ReceivedLot) -> Replayed:
    return Replayed(Replay({}, {}), Steps({}, {}, {}), {}, {lot.code: lot for lot in lots})


def test_what_fills_nobody_knows_what_is_told_by_its_mass_else_by_a_ml_a_gram() -> None:
    """By hand: of 100 mg of spirit of no known strength at most 127 µL, by a mL a gram 127 mg."""
    found = replay_of(CAKE, OIL, SPIRIT, GUM)
    told = [
        _unplaced_mg(found, [one])
        for one in (
            step("CAKE", 40.0),
            step("CAKE", 40.0, solvent_mg=9.0),
            step("OIL", 40.0, fills_ul=47.0),
            step("SPIRIT", 0.0),
            step("GUM", 40.0),
            step("E-1", 40.0),
            step("CAKE", 40.0, Act.OUT),
            step("SPIRIT", 40.0, Act.SPENT),
            step(None, 40.0, Act.WORK),
        )
    ]
    assert told == [40, 0, 0, 127, 0, 0, 0, 0, 0]
    assert _unplaced_mg(found, [step("CAKE", 40.4), step("SPIRIT"), step("CAKE", 3.3)]) == 171


def test_what_was_drawn_beyond_what_was_there_is_missing_unless_reading_alone_explains_it() -> None:
    vague, plain = (step(None, act=Act.OUT, is_vague=is_vague) for is_vague in (True, False))
    assert _overdrawn_ul([vague, plain, step("CAKE", is_vague=True), vague]) == 600
    emptied = step("CAKE", 40.0, there_ul=0.4)
    told = _volume(replay_of(CAKE), [emptied, vague, emptied], Held(5, 0))
    assert told == Volume(-300, 80, is_reckoned=False)


def test_a_volume_is_reckoned_where_more_than_two_microlitres_lie_between_it_and_the_sums() -> None:
    """Of what went in before the last measure nothing is told."""
    level = step(None, act=Act.LEVEL)
    since = [step("CAKE", 9.0), level, step("CAKE", 40.0)]
    found = replay_of(CAKE)
    told = [_volume(found, since, Held(summed, 7)) for summed in (998, 997, 1002, 1003)]
    assert told == [
        Volume(998, 40, is_reckoned=False),
        Volume(1000, 40, is_reckoned=True),
        Volume(1002, 40, is_reckoned=False),
        Volume(1000, 40, is_reckoned=True),
    ]
    assert _volume(found, [*since, level], Held(5, 7)) == Volume(5, 7, is_reckoned=False)
    first = [step("CAKE", 9.0), step("CAKE", 40.0)]
    assert _volume(found, first, Held(1, 7)) == Volume(1000, 49, is_reckoned=True)
