"""What stood around a lot: people by their names, vessels cleaned before, instruments checked."""

from ledger.service.lots.around import Around, around
from ledger.service.lots.dossier import dossier
from tests.keeper import Keeper
from tests.path import Lots, receive_all


def of(keeper: Keeper, code: str) -> Around:
    return around(keeper.book, dossier(keeper.book, code).state)


def start(keeper: Keeper, lots: Lots) -> str:
    code = keeper.opens("start", product="Lime", kind="essence", target="1L", vessel="demijohn 2")
    keeper.do("add", lot=code, source=lots.oil, amount="25g", instrument="Scale 1")
    keeper.do("measure", lot=code, what="ph", reading="7", instrument="pH meter")
    return code


def test_the_last_cleaning_and_check_before_the_first_use_are_told(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    lots = receive_all(keeper)
    keeper.do("clean", vessel="Demijohn 2", method="cold water")
    cleaned = keeper.do("clean", vessel="Demijohn 2", method="hot water")
    checked = keeper.do("equipment", name="scale 1", words="200 g read 200.0 g")
    code = start(keeper, lots)
    keeper.do("clean", vessel="Demijohn 2", method="after it all")
    found = of(keeper, code)
    assert [(seen.name, seen.last and seen.last.seq) for seen in found.vessels] == [
        ("demijohn 2", cleaned.seq)
    ]
    assert [(seen.name, seen.last and seen.last.seq) for seen in found.instruments] == [
        ("Scale 1", checked.seq),
        ("pH meter", None),
    ]


def test_people_are_those_who_wrote_of_it_or_of_its_bulk(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    keeper.do("person", initials="CD", name="Cleo Dunn", role="bottles")
    keeper.do("person", initials="EF", name="Edda Fell")
    lots = receive_all(keeper)
    code = start(keeper, lots)
    keeper.by = "CD"
    packed = keeper.opens("bottle", source=code, pack="2 x 10mL", because="to try the bottles")
    assert [person.name for person in of(keeper, packed).people] == ["Anna Bell", "Cleo Dunn"]


def test_a_vessel_counts_from_its_first_use_and_what_is_cleaned_as_it_begins_is_clean(
    sqlite_keeper: Keeper,
) -> None:
    """It may be told late: what counts is when it happened; a rest tells of a vessel too."""
    keeper = sqlite_keeper
    lots = receive_all(keeper)
    code = keeper.opens("start", product="Lime", kind="essence", target="1L", vessel="Jar 1")
    began = keeper.entries()[-1].draft.happened
    same = f"{began.at:%Y-%m-%d %H:%M}"
    keeper.do("add", lot=code, source=lots.spirit, amount="200mL")
    keeper.do("rest", lot=code, purpose="settle", vessel="jar 2")
    keeper.do("rest", lot=code, ended="yes")
    keeper.do("rest", lot=code, purpose="chill", vessel="JAR 1")
    keeper.do("look", lot=code, grade="clear", instrument="Lamp")
    kept = keeper.do("clean", vessel="jar 1", method="hot water", at=same)
    keeper.do("clean", vessel="jar 1", method="cold water", at="2026-03-02 08:30")
    keeper.do("clean", vessel="Jar 2", method="steam")
    found = of(keeper, code)
    assert [(seen.name, seen.last and seen.last.seq) for seen in found.vessels] == [
        ("Jar 1", kept.seq),
        ("jar 2", None),
    ]
    assert [seen.name for seen in found.instruments] == ["Lamp"]
