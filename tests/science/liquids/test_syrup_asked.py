"""What is asked of a syrup, by its parts or by a measure of its strength."""

import pytest

from ledger.errors import LedgerError
from ledger.science.liquids.sucrose import density, true_from_indicated
from ledger.science.liquids.syrup_asked import syrup_asked
from ledger.science.liquids.syrups import solubility_warning


def test_parts_by_weight_are_plain_arithmetic_and_by_volume_take_a_bulk_density() -> None:
    """1:1 by weight is 50 °Bx; at 0.85 g/mL against 0.998 g/mL of water, 46 by volume."""
    assert syrup_asked("1:1", "weight").brix == pytest.approx(50)
    by_volume = syrup_asked("1:1", "volume")
    assert by_volume.bulk_g_per_ml == 0.85
    assert by_volume.brix == pytest.approx(100 * 0.85 / (0.85 + 0.9982), abs=0.01)


def test_every_measure_of_one_strength_is_the_same_syrup() -> None:
    told = syrup_asked("65 Bx")
    for asked in (f"{told.sugar_g_per_l:.3f} g/L", f"{told.specific_gravity:.6f} SG"):
        assert syrup_asked(asked).brix == pytest.approx(65, abs=1e-3)


def test_all_that_is_wrong_is_told_at_once() -> None:
    with pytest.raises(LedgerError) as raised:
        syrup_asked("3:2", read_at="warm")
    assert [what for what, _ in raised.value.problems] == [
        '"warm" is not a temperature.',
        "Parts are by weight or by volume, and neither was said.",
        "Parts are not read with a hydrometer.",
    ]


@pytest.mark.parametrize(
    ("read_at", "problem"),
    [
        ("warm", '"warm" is not a temperature.'),
        (
            "200",
            "The table of sugar and water (ICUMSA SPS-4) runs from 0 to 80 °C, and 200 °C is "
            "outside.",
        ),
    ],
)
def test_a_reading_at_no_temperature_is_not_taken_for_one_at_any_other(
    read_at: str, problem: str
) -> None:
    """0.2 °Bx is shown at 20 °C, and by nothing at 1 °C: so no more than the warmth is wrong."""
    with pytest.raises(LedgerError) as raised:
        syrup_asked("0.2 Bx", read_at=read_at)
    assert [what for what, _ in raised.value.problems] == [problem]


@pytest.mark.parametrize(
    ("bulk", "told"), [("0.8", 0.8), ("0.8 g/mL", 0.8), ("0,9", 0.9), (None, 0.85)]
)
def test_a_bulk_density_is_taken_as_it_is_told(bulk: str | None, told: float) -> None:
    """By hand: one measure each of sugar and of water at 0.9982 g/mL."""
    found = syrup_asked("1:1", "volume", bulk)
    assert found.bulk_g_per_ml == told
    assert found.brix == pytest.approx(100 * told / (told + 0.9982), abs=0.01)
    assert found.made is not None
    assert (found.kept_at_c, found.read_at_c) == (20.0, None)


def test_a_reading_is_corrected_and_the_place_where_it_is_kept_decides_on_crystals() -> None:
    found = syrup_asked("64.8 Bx", read_at="25C", kept_at="4C")
    assert (found.kept_at_c, found.read_at_c) == (4.0, 25.0)
    assert found.brix == true_from_indicated(64.8, 25.0)
    assert (found.made, found.bulk_g_per_ml) == (None, None)
    assert found.warning == solubility_warning(found.brix, 4.0)
    assert found.density_g_per_l == pytest.approx(density(found.brix))


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        (
            ("1:1", "volume", "800 g/L"),
            '"800 g/L" is not a bulk density. Write it in g/mL, such as 0.85.',
        ),
        (
            ("1:1", "volume", "loose"),
            '"loose" is not a bulk density. Write it in g/mL, such as 0.85.',
        ),
        (
            ("1:1", "weight", "0.8"),
            "A bulk density counts for parts by volume only. "
            "Leave --bulk away, or write --by volume.",
        ),
        (
            ("1:1", "spoon"),
            'Parts are by weight or by volume, and "spoon" was said. '
            "Write --by weight or --by volume: 1:1 is 50 °Bx by weight, about 46 by volume.",
        ),
        (("65 Bx", "weight"), "Only parts are by weight or by volume. Leave --by away."),
        (
            ("sweet",),
            '"sweet" is neither parts nor a strength of syrup. Write parts of sugar to water, '
            '3:2; or 65 Bx, "850 g/L" or "1.33 SG".',
        ),
        (
            ("850 g/L", None, None, "25C"),
            "Only a reading in °Bx is corrected for its temperature. "
            "Leave --read-at away, or write the reading as 65 Bx.",
        ),
        (
            ("3:2", "weight", None, "25C"),
            "Parts are not read with a hydrometer. Leave --read-at away.",
        ),
    ],
)
def test_what_cannot_be_asked_is_said_with_what_to_do(
    asked: tuple[str | None, ...], sentence: str
) -> None:
    with pytest.raises(LedgerError) as raised:
        syrup_asked(*asked)  # type: ignore[arg-type]
    assert str(raised.value) == sentence
