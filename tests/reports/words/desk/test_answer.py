"""Answers: what was recorded, what is there now, what is missing, and the next step."""

import pytest
from msgspec.structs import replace

from ledger.service.desk.book import Recorded
from ledger.service.lots.dossier import dossier
from reports.words.desk import answer as module
from reports.words.desk.answer import Answer, answer
from reports.words.desk.next_step import next_step, step_of_lot
from tests.keeper import Keeper
from tests.kept.said import check_said
from tests.path import receive_all, walk_main_path


def told(keeper: Keeper, done: Recorded) -> Answer:
    lot = done.code or done.entry.draft.lot
    found = dossier(keeper.book, lot) if lot else None
    return answer(done, found, next_step(done.entry, found))


def does(keeper: Keeper, verb: str, **words: str) -> Answer:
    return told(keeper, keeper.do(verb, **words))


def test_a_delivery_says_what_is_not_known_of_it_yet(sqlite_keeper: Keeper) -> None:
    found = does(sqlite_keeper, "receive", material="orange-oil", amount="500mL")
    assert found.lines == (
        "Recorded 9, received SOO-001-3: 500 mL of orange-oil.",
        "SOO-001-3, Sweet orange oil: 500 mL, in stock.",
        "Not known yet: the supplier, the supplier's lot, the cost, the best-before date, the "
        "certificate.",
        'Next: pottle start --product "NAME" --kind KIND --target VOLUME',
    )


def test_the_next_step_follows_the_work(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    lots = receive_all(keeper)
    code = keeper.opens("start", product="Orange essence", kind="essence", target="480mL")
    steps = [
        does(keeper, verb, lot=code, **words).step
        for verb, words in (
            ("add", {"source": lots.oil, "amount": "25g"}),
            ("rest", {"purpose": "macerate"}),
            ("add", {"source": lots.spirit, "amount": "400mL"}),
            ("rest", {"ended": "yes"}),
            ("filter", {"medium": "paper", "volume_out": "400mL"}),
            ("look", {"grade": "bright"}),
            ("makeup", {"volume": "450mL", "source": lots.spirit}),
            ("finish", {"volume": "448mL"}),
            ("look", {"grade": "bright"}),
            ("judge", {"verdict": "hold", "because": "a ring"}),
            ("look", {"grade": "bright"}),
            ("judge", {"verdict": "release", "because": "it was the neck"}),
        )
    ]
    assert steps == [
        f"pottle add {code} LOT AMOUNT",
        f"pottle rest {code} --end",
        f"pottle rest {code} --end",
        f"pottle filter {code} --medium paper --pore 20 --out VOLUME",
        f"pottle look {code} GRADE --of neat",
        f"pottle finish {code} VOLUME",
        f"pottle look {code} GRADE --of neat",
        f"pottle release {code}",
        f"pottle release {code}",
        f"pottle trace {code} --forward",
        f'pottle release {code} --because "WHY IT IS GONE"',
        'pottle start --product "NAME" --kind syrup --target VOLUME',
    ]


def test_bottled_goods_go_from_their_release_to_a_buyer(sqlite_keeper: Keeper) -> None:
    packed = walk_main_path(sqlite_keeper).packed
    for verb, words, step in (
        ("judge", {"verdict": "release"}, f"pottle label {packed} --out labels.pdf"),
        ("labels", {"printed": "2"}, f"pottle send {packed} COUNT --to WHO"),
        ("send", {"amount": "1", "moved_as": "sample", "party": "market"}, "pottle stock"),
        ("complain", {"symptom": "cloudy"}, f"pottle trace {packed}"),
    ):
        assert does(sqlite_keeper, verb, lot=packed, **words).step == step


def test_labels_of_goods_that_are_not_released_lead_to_their_release(
    sqlite_keeper: Keeper,
) -> None:
    packed = walk_main_path(sqlite_keeper).packed
    sqlite_keeper.do("judge", lot=packed, verdict="release")
    released = does(sqlite_keeper, "labels", lot=packed, printed="2")
    assert released.step == f"pottle send {packed} COUNT --to WHO"
    sqlite_keeper.do("judge", lot=packed, verdict="rework", because="dusty")
    waiting = does(sqlite_keeper, "labels", lot=packed, printed="2")
    assert waiting.step == f"pottle release {packed}"


@pytest.mark.parametrize(
    ("verb", "words"),
    [("check", {"words": "read it"}), ("note", {"text": "Smells well."})],
)
def test_what_changes_nothing_leaves_the_next_step_as_it_was(
    verb: str, words: dict[str, str], sqlite_keeper: Keeper
) -> None:
    keeper = sqlite_keeper
    lots = receive_all(keeper)
    code = keeper.opens("start", product="Orange essence", kind="essence", target="480mL")
    for act, told_of_it in (
        ("add", {"source": lots.spirit, "amount": "400mL"}),
        ("rest", {"purpose": "macerate"}),
        ("rest", {"ended": "yes"}),
        ("filter", {"medium": "paper", "volume_out": "390mL"}),
        ("finish", {"volume": "388mL"}),
        ("look", {"grade": "bright"}),
        ("judge", {"verdict": "release"}),
    ):
        step = does(keeper, act, lot=code, **told_of_it).step
        assert step == step_of_lot(dossier(keeper.book, code))
        assert does(keeper, verb, lot=code, **words).step == step


def test_a_lot_of_which_nothing_is_left_or_that_was_filled_leads_to_who_has_it(
    sqlite_keeper: Keeper,
) -> None:
    path = walk_main_path(sqlite_keeper)
    steps = {
        lot: step_of_lot(dossier(sqlite_keeper.book, lot))
        for lot in (path.essence, path.syrup, path.packed)
    }
    assert steps[path.syrup] == f"pottle trace {path.syrup} --forward"
    struck = sqlite_keeper.opens("start", product="Slip", kind="syrup", target="1L")
    assert step_of_lot(dossier(sqlite_keeper.book, struck)) == f"pottle add {struck} LOT AMOUNT"
    entry = dossier(sqlite_keeper.book, struck).state.seq
    sqlite_keeper.do("strike", entry=str(entry), because="a slip")
    assert step_of_lot(dossier(sqlite_keeper.book, struck)) == "pottle stock"


def test_a_note_about_no_lot_needs_no_next_step(sqlite_keeper: Keeper) -> None:
    found = does(sqlite_keeper, "note", text="The still is out of order.")
    assert found.lines == ("Recorded 9, note: The still is out of order.",)


def test_a_correction_stands_in_place_of_the_old_entry(sqlite_keeper: Keeper) -> None:
    first = sqlite_keeper.do("note", text="Cold.")
    done = sqlite_keeper.do(
        "correct", entry=str(first.seq), changes="text=Very cold.", because="misread"
    )
    assert told(sqlite_keeper, done).lines == (
        "Recorded 10 in place of 9, note: Very cold.",
        "Next: pottle journal --entry 9",
    )


def test_a_strike_says_which_entry_is_struck_and_never_that_the_lot_is(
    sqlite_keeper: Keeper,
) -> None:
    lots = receive_all(sqlite_keeper)
    looked = sqlite_keeper.do("look", lot=lots.oil, grade="bright")
    done = sqlite_keeper.do("strike", entry=str(looked.seq), because="the wrong lot")
    assert told(sqlite_keeper, done).lines == (
        f"Recorded {done.seq}: entry {looked.seq} of {lots.oil} is struck out.",
        f"{lots.oil}, Sweet orange oil: 500 mL, in stock.",
        f"Next: pottle journal --entry {looked.seq}",
    )


def test_a_deviation_is_told_with_its_number(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    code = sqlite_keeper.opens("start", product="Orange", kind="syrup", target="1L")
    sqlite_keeper.do("judge", lot=lots.spirit, verdict="hold", because="no papers")
    done = sqlite_keeper.do(
        "add", lot=code, source=lots.spirit, amount="10mL", because="the only one left"
    )
    assert f"Deviation {done.seq + 1}: {lots.spirit} is on hold." in told(sqlite_keeper, done).lines


@pytest.mark.parametrize(
    ("amount", "says"),
    [("2.4kg", "about 1.52 L, reckoned"), ("300g", "about 190 mL, reckoned")],
)
def test_solids_have_the_volume_that_is_reckoned(
    sqlite_keeper: Keeper, amount: str, says: str
) -> None:
    lots = receive_all(sqlite_keeper)
    code = sqlite_keeper.opens("start", product="Orange syrup", kind="syrup", target="4L")
    found = does(sqlite_keeper, "add", lot=code, source=lots.sugar, amount=amount)
    assert found.lines[1] == f"{code}, Orange syrup: {says}, being made."


def test_a_call_leads_to_the_recall_and_before_one_to_a_drill(sqlite_keeper: Keeper) -> None:
    packed = walk_main_path(sqlite_keeper).packed
    call = {"lot": packed, "party": "Bridge Street Stall", "reached": "no-answer"}
    assert does(sqlite_keeper, "contact", **call).step == f"pottle recall {packed} --drill"
    sqlite_keeper.do("recall", lot=packed, because="cloudy")
    assert does(sqlite_keeper, "contact", **call).step == f"pottle recall {packed}"


def test_released_bottles_with_labels_are_sent(sqlite_keeper: Keeper) -> None:
    """The bottles of the main path have no labels yet."""
    packed = walk_main_path(sqlite_keeper).packed
    release = {"lot": packed, "verdict": "release"}
    print_them = f"pottle label {packed} --out labels.pdf"
    assert does(sqlite_keeper, "judge", **release).step == print_them
    sqlite_keeper.do("labels", lot=packed, printed="6")
    step = does(sqlite_keeper, "judge", **release).step
    assert step == f"pottle send {packed} COUNT --to WHO"


def test_what_the_book_has_already_is_said_to_be_there(sqlite_keeper: Keeper) -> None:
    done = replace(sqlite_keeper.do("note", text="It rains."), is_new=False)
    assert answer(done, None, None).done == (
        f"In the book already, unchanged, as entry {done.seq}, note: It rains."
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
