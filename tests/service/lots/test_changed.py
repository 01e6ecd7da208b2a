"""A release is shown as standing on what was corrected or struck since."""

from ledger.service.lots.dossier import dossier
from reports.json.lots.lot import lot_answer
from reports.words.verdicts.control import control_facts
from tests.keeper import Keeper


def released(keeper: Keeper) -> tuple[str, dict[str, int]]:
    """Return a released essence with the numbers of the entries it was made by."""
    oil = keeper.do("receive", material="orange-oil", amount="500mL")
    spirit = keeper.do("receive", material="spirit", amount="2L")
    code = keeper.opens("start", product="Orange essence", kind="essence", target="480mL")
    of_oil = keeper.do("add", lot=code, source=oil.code, amount="30mL").seq
    of_spirit = keeper.do("add", lot=code, source=spirit.code, amount="450mL").seq
    note = keeper.do("note", lot=code, text="smells fine").seq
    keeper.do("look", lot=code, grade="clear")
    keeper.do("finish", lot=code, volume="470mL")
    keeper.do("judge", lot=code, verdict="release", because="alone here")
    return code, {"delivery": spirit.seq, "oil": of_oil, "spirit": of_spirit, "note": note}


def told(keeper: Keeper, code: str) -> str | None:
    return dict(control_facts(dossier(keeper.book, code))).get("Changed since its release")


def correct(keeper: Keeper, entry: int, changes: str) -> int:
    return keeper.do("correct", entry=str(entry), changes=changes, because="misread").seq


def test_what_a_release_stands_on_is_named_once_it_is_changed(sqlite_keeper: Keeper) -> None:
    code, entries = released(sqlite_keeper)
    assert told(sqlite_keeper, code) is None
    one = correct(sqlite_keeper, entries["spirit"], "amount=448mL")
    two = sqlite_keeper.do("strike", entry=str(entries["oil"]), because="never went in").seq
    assert told(sqlite_keeper, code) == (
        f"entry {entries['spirit']} of {code}, corrected by entry {one}; "
        f"entry {entries['oil']} of {code}, struck by entry {two}. "
        f"Decide about it anew: pottle hold {code}, or pottle release {code}"
    )
    answer = lot_answer(dossier(sqlite_keeper.book, code), None, None)
    assert [
        (item.entry, item.lot, item.by, item.is_struck) for item in answer.changed_since_release
    ] == [(entries["spirit"], code, one, False), (entries["oil"], code, two, True)]


def test_a_delivery_behind_a_release_counts_and_a_note_does_not(sqlite_keeper: Keeper) -> None:
    code, entries = released(sqlite_keeper)
    correct(sqlite_keeper, entries["note"], "text=smells sharp")
    assert told(sqlite_keeper, code) is None
    by = correct(sqlite_keeper, entries["delivery"], "supplier-lot=88-3")
    found = told(sqlite_keeper, code)
    assert found is not None
    assert f"entry {entries['delivery']} of NS-001-J, corrected by entry {by}." in found


def test_a_new_release_stands_on_what_is_there_now(sqlite_keeper: Keeper) -> None:
    code, entries = released(sqlite_keeper)
    correct(sqlite_keeper, entries["spirit"], "amount=448mL")
    sqlite_keeper.do("judge", lot=code, verdict="hold", because="the book changed")
    assert told(sqlite_keeper, code) is None
    sqlite_keeper.do("look", lot=code, grade="clear")
    sqlite_keeper.do("judge", lot=code, verdict="release", because="2 mL are nothing")
    assert told(sqlite_keeper, code) is None


def test_more_than_three_changes_are_counted(sqlite_keeper: Keeper) -> None:
    code, entries = released(sqlite_keeper)
    last = entries["spirit"]
    for amount in (449, 448, 447, 446):
        last = correct(sqlite_keeper, last, f"amount={amount}mL")
    found = told(sqlite_keeper, code)
    assert found is not None
    assert "; and 1 more. Decide" in found
