"""The demo season, played into a real book, is a book as it is really kept."""

import re
from calendar import month_name
from collections import Counter
from datetime import timedelta
from pathlib import Path

from msgspec.structs import asdict
from sqlalchemy import text

from ledger.domain.entries import (
    Add,
    Clean,
    Deviation,
    Entry,
    Look,
    Material,
    Receipt,
    Start,
)
from ledger.domain.entries.choices import AddedAs, LotType, MaterialKind, Origin, ProductKind
from ledger.domain.lots.lot import Lot
from ledger.domain.lots.state import in_brief
from ledger.service.account.state import lot_state
from ledger.service.desk.book import Book
from ledger.service.desk.doubted import doubted, is_asked
from ledger.service.evidence.verify import verify
from ledger.service.glass.scores import scores
from ledger.service.lots.journal import entries_of_kind, journal
from ledger.service.lots.stock import stock
from ledger.service.masters.material import materials
from ledger.store.read import amounts, queries
from tests.demonstration import Demonstration
from tests.model.agree import disagreements

FOLDER = Path(__file__).parents[3] / "sample_data" / "season"


def in_force(book: Book) -> list[Entry]:
    """Return the entries that nothing corrects or strikes."""
    return [
        said.entry
        for said in journal(book).said
        if said.corrected_by is None and said.entry.kind != "strike"
    ]


def received(book: Book, sort: MaterialKind) -> list[Material]:
    """Return the material of each delivery of a kind of material."""
    known = {material.code: material for material in materials(book)}
    facts = (entry.facts for entry in entries_of_kind(book, Receipt))
    codes = (item.material for item in facts if isinstance(item, Receipt))
    return [known[code] for code in codes if known[code].sort is sort]


def test_the_season_verifies(season: tuple[Book, Demonstration]) -> None:
    audit = verify(season[0])
    assert audit.faults == ()
    assert audit.entries == len(journal(season[0]).said)


def test_trace_contents_cost_and_stock_tell_one_story_of_every_lot(
    season: tuple[Book, Demonstration],
) -> None:
    assert list(disagreements(season[0])) == []


def test_it_has_the_materials_of_a_real_shelf(season: tuple[Book, Demonstration]) -> None:
    book, _ = season
    assert len({oil.code for oil in received(book, MaterialKind.OIL)}) >= 6
    assert len({oil.how_obtained for oil in received(book, MaterialKind.OIL)}) >= 2
    assert len({spirit.abv_mpct for spirit in received(book, MaterialKind.ETHANOL)}) >= 2
    assert len(received(book, MaterialKind.CLARIFIER)) >= 2


def test_it_makes_essences_and_syrups(season: tuple[Book, Demonstration]) -> None:
    facts = (entry.facts for entry in entries_of_kind(season[0], Start))
    kinds = Counter(item.product_kind for item in facts if isinstance(item, Start))
    assert kinds[ProductKind.ESSENCE] >= 12
    assert kinds[ProductKind.SYRUP] >= 20


def test_its_syrups_have_both_doses(season: tuple[Book, Demonstration]) -> None:
    """30 mL of essence to a litre and 30 mL to a US gallon (common practice, no source)."""
    book, _ = season
    starts = {entry.draft.lot: entry.facts for entry in entries_of_kind(book, Start)}
    doses: Counter[int] = Counter()
    for entry in entries_of_kind(book, Add):
        facts, syrup = entry.facts, starts.get(entry.draft.lot)
        assert isinstance(facts, Add)
        essence = starts.get(facts.source)
        if (
            isinstance(syrup, Start) and syrup.product_kind is ProductKind.SYRUP
            and isinstance(essence, Start) and essence.product_kind is not ProductKind.BASE_SYRUP
        ):  # fmt: skip
            doses[round(1000 * facts.amount.amount / syrup.target.amount)] += 1
    assert doses[30] >= 5
    assert doses[8] >= 5


def test_it_has_what_a_book_that_is_really_kept_has(season: tuple[Book, Demonstration]) -> None:
    book, _ = season
    said = journal(book).said
    changed = [item.entry for item in said if item.entry.draft.corrects is not None]
    assert sum(entry.kind != "strike" for entry in changed) >= 2
    assert sum(entry.kind == "strike" for entry in changed) == 1
    assert all(entry.draft.reason for entry in changed)
    late = [item.entry for item in said if item.entry.is_late]
    assert any(e.draft.origin is Origin.PAPER and e.draft.sheet for e in late)
    ways = Counter(entry.facts.added_as for entry in in_force(book) if isinstance(entry.facts, Add))
    assert ways[AddedAs.RINSE_LIQUOR] >= 1
    assert ways[AddedAs.REWORK] >= 1


def test_entries_are_recorded_in_order_and_never_before_they_happened(
    season: tuple[Book, Demonstration],
) -> None:
    entries = [said.entry for said in journal(season[0]).said]
    assert [entry.seq for entry in entries] == list(range(1, len(entries) + 1))
    recorded = [entry.recorded_at for entry in entries]
    assert recorded == sorted(recorded)
    assert all(entry.recorded_at >= entry.draft.happened.at for entry in entries)
    assert max(recorded) - min(recorded) > timedelta(days=200)


def test_no_look_in_force_contradicts_what_water_dissolves_and_one_was_put_right(
    season: tuple[Book, Demonstration],
) -> None:
    book, made = season
    starts = {entry.draft.lot: entry.facts for entry in entries_of_kind(book, Start)}
    wrong = []
    with book.reading() as connection:
        for said in journal(book).said:
            look, lot = said.entry.facts, said.entry.draft.lot or ""
            start = starts.get(lot)
            if not isinstance(look, Look) or not isinstance(start, Start):
                continue
            if is_asked(look, start) and doubted(connection, lot, look, start):
                wrong.append((lot, said.corrected_by is None))
    assert wrong == [(made.played.codes["s-orange-1"], False)]


def test_forecasts_are_recorded_before_the_looks_and_most_looks_fall_inside(
    season: tuple[Book, Demonstration],
) -> None:
    every, *kinds = scores(season[0])
    assert 0.8 * every.looks < every.inside < every.looks
    assert every.looks > 50
    assert {"Orange", "Lemon"} <= {str(score.oils).capitalize() for score in kinds}


def test_no_text_tells_a_month_which_would_be_wrong_once_the_days_are_moved() -> None:
    told = " ".join(path.read_text("utf-8") for path in sorted(FOLDER.glob("*.csv")))
    months = {month for month in month_name if month}
    # A verb may be a month's name in English.
    assert not (months - {"May"}) & set(re.findall(r"[A-Z][a-z]+", told))


def test_no_vessel_is_used_again_before_a_cleaning_of_it_is_in_the_book(
    season: tuple[Book, Demonstration],
) -> None:
    entries = sorted(in_force(season[0]), key=lambda entry: entry.draft.happened.at)
    is_clean: dict[str, bool] = {}
    for facts in (entry.facts for entry in entries):
        if isinstance(facts, Clean):
            is_clean[facts.vessel] = True
        elif isinstance(facts, Start) and facts.vessel:
            assert is_clean.get(facts.vessel), facts.vessel
            is_clean[facts.vessel] = False
    assert {"jar 2", "pan 1", "tube 3"} <= is_clean.keys()


def test_the_view_of_what_is_on_hand_agrees_with_the_reckoning(
    season: tuple[Book, Demonstration],
) -> None:
    book, _ = season
    with book.reading() as connection:
        found = connection.execute(text("SELECT code, amount FROM on_hand")).all()
        seen: dict[str, int] = {row.code: row.amount for row in found}
        lots = [queries.lot_by_code(connection, code) for code in queries.all_codes(connection)]
        reckoned = {
            lot.opened.code: amounts.held(connection, lot.seq).amount for lot in lots if lot
        }
    assert seen == reckoned
    assert {brief.code: brief.on_hand for brief in stock(book, everything=True)} == seen


def test_a_lot_read_with_many_is_the_lot_that_its_state_tells(
    season: tuple[Book, Demonstration],
) -> None:
    book, _ = season
    many = {lot.code: lot for lot in stock(book, everything=True)}
    with book.reading() as connection:
        alone = {code: in_brief(lot_state(connection, code)) for code in many}
        assert list(many) == list(queries.all_codes(connection))
    assert {code: asdict(lot) for code, lot in many.items()} == {
        code: asdict(lot) for code, lot in alone.items()
    }
    # Whose volume was measured nowhere and is reckoned: the season has none such.
    for field in set(Lot.__struct_fields__) - {"is_reckoned"}:
        told = {getattr(lot, field) for lot in many.values()}
        assert len(told) > 1, f"the season tells nothing of {field}"
    assert {lot.lot_type for lot in many.values()} == set(LotType)


def test_no_lot_is_below_nothing_for_what_was_drawn_too_much_was_counted(
    season: tuple[Book, Demonstration],
) -> None:
    """A pouch held more than its label says: a deviation tells the draw, a count what is left."""
    book, made = season
    assert [brief.code for brief in stock(book, everything=True) if brief.on_hand < 0] == []
    told = [
        entry.facts.text
        for entry in entries_of_kind(book, Deviation)
        if isinstance(entry.facts, Deviation)
    ]
    assert any(made.played.codes["citric-1"] in sentence for sentence in told)


def test_every_nickname_that_opened_a_lot_names_one(season: tuple[Book, Demonstration]) -> None:
    book, made = season
    assert set(made.played.codes.values()) <= {brief.code for brief in stock(book, everything=True)}
    # The first of several jars has the nickname of its row, and its own with a number.
    alone = [code for nickname, code in made.played.codes.items() if not nickname.endswith("/1")]
    assert len(set(alone)) == len(alone)


def test_it_runs_on_formulas_with_three_deviations_of_different_kinds_and_an_override(
    season: tuple[Book, Demonstration],
) -> None:
    book, made = season
    starts = [entry.facts for entry in entries_of_kind(book, Start)]
    followed = [facts.formula for facts in starts if isinstance(facts, Start) and facts.formula]
    assert len(followed) >= 15
    assert len(set(followed)) == 5
    departed = (entry.facts for entry in entries_of_kind(book, Deviation))
    texts = [facts.text for facts in departed if isinstance(facts, Deviation)]
    for words in ("rest to macerate took 10 min", "spirit96 420 mL", "Pass 3 was at 18 °C"):
        assert any(words in text for text in texts), words
    overrides = [
        entry.draft
        for entry in entries_of_kind(book, Deviation)
        if isinstance(entry.facts, Deviation) and entry.facts.rule == "release"
    ]
    assert made.played.codes["e-lime-1"] in {draft.lot for draft in overrides}
    assert all(draft.reason and draft.by for draft in overrides)
