"""A jar that would hold more than it can is remarked on; nobody is kept from recording it."""

import pytest

from tests.keeper import Keeper

TO_DO = (
    "Check the amounts; where it stands in another vessel, say so with its next rest: "
    "pottle rest BLN-001-J --vessel NAME"
)


def remarks(keeper: Keeper, vessel: str, *amounts: str) -> list[tuple[tuple[str, str], ...]]:
    water = keeper.opens("receive", material="water", amount="50L")
    batch = keeper.opens("start", product="Blend", kind="blend", target="2L", vessel=vessel)
    done = [keeper.do("add", lot=batch, source=water, amount=amount) for amount in amounts]
    return [entry.remarks for entry in done]


@pytest.mark.parametrize("name", ["jar 3", "Jar 3"])
def test_a_vessel_holds_what_the_book_was_told_last(sqlite_keeper: Keeper, name: str) -> None:
    sqlite_keeper.do("equipment", name="Jar 3", words="new", holds="1L")
    sqlite_keeper.do("equipment", name="Jar 3", words="the mark was wrong", holds="2L")
    sqlite_keeper.do("equipment", name="Jar 3", words="washed")
    assert remarks(sqlite_keeper, name, "1.5L", "0.5L", "0.5L") == [
        (),
        (),
        (
            (
                f"With this about 2.5 L are in BLN-001-J, more than the 2 L that {name} holds.",
                TO_DO,
            ),
        ),
    ]


def test_a_size_in_the_name_of_a_vessel_counts(sqlite_keeper: Keeper) -> None:
    assert remarks(sqlite_keeper, "5 L jar", "5L", "1L") == [
        (),
        (("With this about 6 L are in BLN-001-J, more than the 5 L that 5 L jar holds.", TO_DO),),
    ]


def test_a_vessel_of_no_known_size_holds_anything(sqlite_keeper: Keeper) -> None:
    assert remarks(sqlite_keeper, "Jar 3", "20L", "20L") == [(), ()]


def test_what_mixing_takes_is_seen_and_a_rest_says_what_it_stands_in(
    sqlite_keeper: Keeper,
) -> None:
    """OIML R 22: 600 mL of 96 % spirit and 450 mL of water are 1.02 L, within a mark's reading."""
    keeper = sqlite_keeper
    spirit = keeper.opens("receive", material="spirit", amount="5L")
    assert remarks(keeper, "Jar 9", "450mL") == [()]
    keeper.do("equipment", name="Jar 1", words="new", holds="1L")
    keeper.do("rest", lot="BLN-001-J", purpose="settle", vessel="Jar 1")
    assert not keeper.do("add", lot="BLN-001-J", source=spirit, amount="600mL").remarks
    (told,) = keeper.do(
        "makeup", lot="BLN-001-J", volume="1.2L", source=spirit, used="190mL"
    ).remarks
    assert told[0] == "With this about 1.2 L are in BLN-001-J, more than the 1 L that Jar 1 holds."


def test_only_what_puts_something_in_is_held_to_the_vessel(sqlite_keeper: Keeper) -> None:
    """A jar that is too full already is not told of again with each look at it."""
    keeper = sqlite_keeper
    assert [bool(told) for told in remarks(keeper, "2 L jar", "1.9L", "0.5L")] == [False, True]
    lot = "BLN-001-J"
    assert keeper.do("note", lot=lot, text="Very full.").remarks == ()
    assert keeper.do("look", lot=lot, grade="clear").remarks == ()
    assert keeper.do("rest", lot=lot, purpose="settle").remarks == ()
    keeper.do("rest", lot=lot, ended="yes")
    assert keeper.do("decant", lot=lot, drawn="2.3L", heel="50mL").remarks == ()
