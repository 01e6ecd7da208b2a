"""Salts of preservative acids count as the acid in them."""

import pytest

from ledger.science.contents.salts import SALTS, C, H, O, salts_of, with_acids


@pytest.mark.parametrize(
    ("salt", "g_per_mol", "acid", "acid_g_per_mol"),
    [
        ("sodium benzoate", 144.10, "benzoic acid", 122.12),
        ("potassium benzoate", 160.21, "benzoic acid", 122.12),
        ("calcium benzoate", 282.31, "benzoic acid", 2 * 122.12),
        ("sodium sorbate", 134.11, "sorbic acid", 112.13),
        ("potassium sorbate", 150.22, "sorbic acid", 112.13),
        ("calcium sorbate", 262.32, "sorbic acid", 2 * 112.13),
    ],
)
def test_a_salt_counts_by_its_molar_mass(
    salt: str, g_per_mol: float, acid: str, acid_g_per_mol: float
) -> None:
    """Molar masses as handbooks print them (from memory)."""
    found = SALTS[salt]
    assert found.acid == acid
    assert found.g_per_mol == pytest.approx(g_per_mol, abs=0.011)
    assert found.acid_g_per_mol == pytest.approx(acid_g_per_mol, abs=0.011)
    assert found.factor == pytest.approx(acid_g_per_mol / g_per_mol, abs=1e-4)


@pytest.mark.parametrize(
    ("salt", "factor"), [("sodium benzoate", 0.847), ("potassium sorbate", 0.746)]
)
def test_the_factors_are_those_of_the_trade(salt: str, factor: float) -> None:
    """The factors that food additive officers use, to three figures (from memory)."""
    assert SALTS[salt].factor == pytest.approx(factor, abs=0.0006)


@pytest.mark.parametrize(
    ("fluid", "g_per_mol"),
    [("Water", 2 * H + O), ("CarbonDioxide", C + 2 * O), ("Benzene", 6 * C + 6 * H)],
)
def test_the_atomic_weights_give_the_molar_masses_of_coolprop(fluid: str, g_per_mol: float) -> None:
    from CoolProp.CoolProp import PropsSI  # takes a second to load

    assert g_per_mol == pytest.approx(1000 * PropsSI("M", fluid), rel=5e-5)


def test_acid_and_salts_of_it_are_summed_and_others_left_alone() -> None:
    found = with_acids({"benzoic acid": 10.0, "sodium benzoate": 100.0, "safrole": 1.0})
    assert found["benzoic acid"] == pytest.approx(10 + 100 * 122.12 / 144.10, abs=0.01)
    assert (found["sodium benzoate"], found["safrole"]) == (100.0, 1.0)
    assert "sorbic acid" not in found


def test_the_salts_of_an_acid_are_told_by_name() -> None:
    masses = {"sodium benzoate": 2.0, "potassium sorbate": 3.0, "safrole": 1.0}
    assert salts_of("benzoic acid", masses) == ((SALTS["sodium benzoate"], 2.0),)
    assert salts_of("safrole", masses) == ()
