"""What is asked of a syrup, by its parts or by a measure of its strength."""

import pytest

from ledger.errors import LedgerError
from ledger.science.liquids.syrup_asked import syrup_asked


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
