"""How a lot was made, in figures."""

from datetime import UTC, datetime, timedelta
from fractions import Fraction

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import (
    Add,
    Draft,
    Entry,
    Facts,
    Filter,
    Material,
    Measurement,
    Receipt,
    Rest,
    When,
)
from ledger.domain.entries.choices import MaterialKind, Measured, RestFor
from ledger.domain.lots.process import Source, figures_of, source_of

NOON = datetime(2026, 3, 2, 12, tzinfo=UTC)
OIL = Source(MaterialKind.OIL, None, 845_000)
SOURCES = {
    "OIL": OIL,
    "SPIRIT": Source(MaterialKind.ETHANOL, 96_000, None),
    "WEAK": Source(MaterialKind.ETHANOL, 80_000, None),
    "CARB": Source(MaterialKind.CLARIFIER, None, None),
}


def said(*facts: Facts) -> list[Entry]:
    return [Entry(1, Draft(item, "L", When(NOON, 0), "AB"), NOON, 1) for item in facts]


def add(source: str, amount: str) -> Add:
    return Add(source, parse_quantity(amount))


def rest(purpose: RestFor, hours: int | None, temp_c: int | None = None) -> Rest:
    ended = None if hours is None else NOON + timedelta(hours=hours)
    return Rest(purpose, NOON, ended, temp_mdegc=None if temp_c is None else 1000 * temp_c)


def filtered(pore_nm: int | None, temp_c: int | None) -> Filter:
    volume = parse_quantity("100mL")
    temp = None if temp_c is None else 1000 * temp_c
    return Filter(1, "paper", volume, volume, pore_high_nm=pore_nm, temp_mdegc=temp)


def test_rests_add_up_and_one_that_goes_on_counts_for_nothing_yet() -> None:
    found = figures_of(
        said(
            add("OIL", "30mL"),
            rest(RestFor.MACERATE, 24),
            rest(RestFor.MACERATE, 12),
            rest(RestFor.MACERATE, None),
            rest(RestFor.CHILL, 5, 4),
            rest(RestFor.CHILL, 6, 7),
        ),
        SOURCES,
    )
    assert [found.contact_h, found.chill_h, found.chill_degc] == [36, 11, 7]


def test_the_finest_pore_and_the_warmest_filter_count() -> None:
    found = figures_of(
        said(filtered(20_000, -2), filtered(11_000, 9), filtered(None, None)), SOURCES
    )
    assert [found.passes, found.pore_um, found.filter_degc] == [3, 11, 9]
    assert found.is_filtered
    assert not found.is_oiled


def test_the_dose_is_grams_of_carbonate_to_a_millilitre_of_oil() -> None:
    by_volume = figures_of(said(add("OIL", "30mL"), add("CARB", "15g")), SOURCES)
    by_weight = figures_of(said(add("OIL", "84.5g"), add("CARB", "50g")), SOURCES)
    assert by_volume.carbonate_g_per_ml == Fraction(1, 2)
    assert by_weight.carbonate_g_per_ml == Fraction(1, 2)


def test_oil_weighed_without_a_density_leaves_the_dose_unknown() -> None:
    sources = {**SOURCES, "OIL": Source(MaterialKind.OIL, None, None)}
    found = figures_of(said(add("OIL", "84.5g"), add("CARB", "50g")), sources)
    assert found.carbonate_g_per_ml is None


def test_a_clarifier_measured_by_volume_counts_by_its_density_or_leaves_the_dose_unknown() -> None:
    """Not as none of it: it was added. Light carbonate, loose, is about 0.12 g/mL (from memory)."""
    added = said(add("OIL", "30mL"), add("CARB", "100mL"))
    assert figures_of(added, SOURCES).carbonate_g_per_ml is None
    weighed = {**SOURCES, "CARB": Source(MaterialKind.CLARIFIER, None, 120_000)}
    assert figures_of(added, weighed).carbonate_g_per_ml == Fraction(2, 5)


def test_the_weakest_spirit_counts() -> None:
    found = figures_of(said(add("SPIRIT", "400mL"), add("WEAK", "10mL")), SOURCES)
    assert found.spirit_abv == 80
    assert found.contact_h is None


def test_a_lot_made_here_brings_no_figures_of_its_own() -> None:
    found = figures_of(said(add("ESSENCE", "30mL")), SOURCES)
    assert (found.is_oiled, found.spirit_abv, found.carbonate_g_per_ml) == (False, None, None)


def test_a_reading_of_the_lot_goes_before_its_papers_and_these_before_the_material() -> None:
    spirit = Material("spirit", "Spirit", MaterialKind.ETHANOL, abv_mpct=96_000)
    receipt = Receipt("spirit", parse_quantity("5L"))
    measured = Measurement(Measured.ABV, 95_500_000, "% vol", "95.5")
    known = {"spirit": spirit}
    assert source_of(said(receipt), known).abv_mpct == 96_000
    papers = Receipt("spirit", parse_quantity("5L"), abv_mpct=96_300)
    assert source_of(said(papers), known).abv_mpct == 96_300
    assert source_of(said(papers, measured), known) == Source(MaterialKind.ETHANOL, 95_500, None)
    assert source_of(said(receipt), {}) == Source(None, None, None)
    assert source_of((), known) == Source(None, None, None)


def test_a_density_is_that_of_the_reading_of_the_papers_or_of_the_material() -> None:
    oil = Material("oil", "Oil", MaterialKind.OIL, density_mg_per_l=850_000)
    receipt = Receipt("oil", parse_quantity("5L"))
    papers = Receipt("oil", parse_quantity("5L"), density_mg_per_l=845_000)
    measured = Measurement(Measured.DENSITY, 846_000, "g/mL", "0.846")
    sweet = Measurement(Measured.BRIX, 60_000_000, "°Bx", "60")
    told = [(receipt,), (papers,), (papers, measured), (papers, measured, sweet)]
    found = [source_of(said(*facts), {"oil": oil}) for facts in told]
    assert [one.density_mg_per_l for one in found] == [850_000, 845_000, 846_000, 846_000]
    assert [one.abv_mpct for one in found] == [None] * 4


def test_a_freezing_chill_and_a_pore_that_is_told_by_its_finer_end_count_too() -> None:
    volume = parse_quantity("100mL")
    pass_by_low = Filter(1, "paper", volume, volume, pore_low_nm=8_000)
    made = said(
        rest(RestFor.CHILL, 1, 0),
        rest(RestFor.CHILL, 1),
        rest(RestFor.SETTLE, 9, 30),
        pass_by_low,
        filtered(11_000, 0),
    )
    found = figures_of(made, SOURCES)
    assert [found.chill_h, found.chill_degc, found.filter_degc, found.pore_um] == [2, 0, 0, 8]
    ended = NOON + timedelta(minutes=90, seconds=18)
    half = figures_of(said(Rest(RestFor.CHILL, NOON, ended)), SOURCES)
    assert half.chill_h == Fraction(5418, 3600)
    assert half.chill_degc is None
    nothing = figures_of((), SOURCES)
    assert [nothing.chill_h, nothing.passes] == [0, 0]
    assert nothing.pore_um is None
    assert not nothing.is_filtered


def test_what_is_neither_oil_nor_clarifier_is_no_part_of_the_dose() -> None:
    sugar = {**SOURCES, "SUGAR": Source(MaterialKind.SUGAR, None, None)}
    added = (add("SUGAR", "3 kg"), add("SPIRIT", "1L"), add("OIL", "30mL"))
    found = figures_of(said(*added, add("CARB", "15g")), sugar)
    assert found.carbonate_g_per_ml == Fraction(1, 2)
    assert figures_of(said(*added), sugar).carbonate_g_per_ml == 0
    assert figures_of(said(add("CARB", "15g")), sugar).carbonate_g_per_ml is None
