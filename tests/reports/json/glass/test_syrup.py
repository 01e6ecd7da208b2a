"""A simple syrup, for machines."""

from ledger.science.liquids.syrup_asked import syrup_asked
from reports.json.glass.syrup import syrup_told
from tests.reports.json.kept import check


def test_a_syrup_by_parts_says_by_what_and_how_much_it_makes() -> None:
    told = syrup_told(syrup_asked("3:2", "weight"))
    assert (told.brix, told.basis, told.litres_per_kg_water) == ("60", "by weight", "1.943")
    assert (told.sugar_g_per_l, told.density_g_per_l) == ("772", "1286.61")
    assert (told.specific_gravity, told.warning) == ("1.2889", None)


def test_a_syrup_by_its_strength_has_no_parts() -> None:
    told = syrup_told(syrup_asked("65 Bx", read_at="20C"))
    assert (told.basis, told.litres_per_kg_water, told.bulk_g_per_ml) == (None, None, None)
    assert (told.brix, told.read_at_c) == ("65", "20")


def test_every_figure_of_a_syrup_is_the_kept_one() -> None:
    check(
        "syrup",
        syrup_told(syrup_asked("3:2", "volume", bulk="0.8537 g/mL", kept_at="4.25C")),
        syrup_told(syrup_asked("7:4", "weight")),
        syrup_told(syrup_asked("66.12345 Bx", read_at="27.123C", kept_at="2C")),
    )
