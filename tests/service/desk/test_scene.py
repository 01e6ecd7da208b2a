"""The scene around a draft: read in the transaction that will append it."""

from ledger.domain.entries import Add, Draft, Entry, Note, Strike, When
from ledger.service.desk.scene import build_scene, source_codes
from tests.domain.builders import make
from tests.keeper import Keeper
from tests.path import Lots


def told(keeper: Keeper, facts: Add | Note | Strike, lot: str, **more: object) -> Draft:
    cells = {"facts": facts, "lot": lot, "happened": When(keeper.clock.now, 0), "by": "AB", **more}
    return Draft(**cells)  # type: ignore[arg-type]


def test_an_addition_has_its_lot_and_its_source_and_whether_that_is_made_of_the_lot(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    draft = told(keeper, make(Add, source=lots.packed), lots.essence)
    with keeper.reading() as connection:
        found = build_scene(connection, draft, keeper.clock.now)
    assert source_codes(draft) == (lots.packed,)
    assert found.lot is not None
    assert (found.lot.code, [state.code for state in found.sources]) == (
        lots.essence,
        [lots.packed],
    )
    assert found.made_from_lot == {lots.packed}
    assert found.has_house
    assert found.people == {"AB"}


def test_a_strike_knows_what_it_strikes_and_what_stands_on_the_lot_it_opened(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    opener = next(entry for entry in keeper.entries() if _opens(entry, lots.packed))
    draft = told(keeper, Strike(), lots.packed, corrects=opener.seq)
    with keeper.reading() as connection:
        found = build_scene(connection, draft, keeper.clock.now)
    assert found.corrected == opener
    assert found.corrected_is_in_force
    assert found.uses_of_opened == 3


def test_an_entry_that_was_corrected_is_not_in_force(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    draft = told(keeper, make(Note), lots.essence, corrects=16)
    with keeper.reading() as connection:
        assert not build_scene(connection, draft, keeper.clock.now).corrected_is_in_force


def _opens(entry: Entry, code: str) -> bool:
    return entry.draft.opens is not None and entry.draft.opens.code == code
