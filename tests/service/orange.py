"""A book in which a batch follows a formula."""

from pathlib import Path

from tests.formula_texts import line, orange, step
from tests.keeper import Keeper

FORMULA = orange(
    "480mL",
    line("orange-oil", "30mL", tolerance="2%"),
    line("carb", "20g", tolerance="10%"),
    line("spirit", "450mL"),
    step("rest", rest_for="macerate", words="Shaken now and then.", at_least="24h"),
    step("filter", pore_max="25", precoat_min="4g", passes_min=2),
    step("look", looked_at="neat", worst="clear"),
    step("finish"),
    step("bottle"),
    step("look", looked_at="neat", age="7d"),
    caution="Highly flammable.",
    prepared_by="AB",
)


def start_orange(keeper: Keeper, folder: Path) -> str:
    """Load the formula, receive oil in three lots and little carbonate, and begin a batch."""
    file = folder / "orange.toml"
    file.write_text(FORMULA, encoding="utf-8")
    keeper.do("formula", file=str(file))
    keeper.do("receive", material="orange-oil", amount="500mL", best_before="2027-06-30")
    keeper.do("receive", material="orange-oil", amount="20mL", best_before="2026-12-31")
    keeper.do("receive", material="orange-oil", amount="90mL", best_before="2026-01-31")
    keeper.do("receive", material="carb", amount="15g")
    keeper.do("receive", material="spirit", amount="1L", hold="yes", because="no papers")
    keeper.do("receive", material="spirit", amount="2kg")
    return keeper.opens("start", formula="orange-essence", target="480mL", vessel="jar 2")


def make_orange(keeper: Keeper, folder: Path) -> str:
    """Make a batch by the formula up to its finish, a day and a half later."""
    code = start_orange(keeper, folder)
    keeper.do("add", lot=code, source="SOO-001-3", amount="30mL")
    keeper.do("add", lot=code, source="LMC-001-F", amount="15g")
    keeper.do("receive", material="carb", amount="100g")
    keeper.do("add", lot=code, source="LMC-002-D", amount="5g")
    keeper.do("add", lot=code, source="NS-001-J", amount="450mL", because="the papers came")
    keeper.do("rest", lot=code, purpose="macerate")
    keeper.clock.forward(hours=30)
    keeper.do("rest", lot=code, ended="yes")
    words = {"medium": "paper", "pore": "20-25", "precoat": "4g", "first_runnings": "20mL"}
    keeper.do("filter", lot=code, volume_in="470mL", volume_out="440mL", **words)
    keeper.do("filter", lot=code, volume_in="440mL", volume_out="434mL", **words)
    keeper.do("look", lot=code, grade="clear")
    keeper.do("finish", lot=code, volume="430mL", waste="3mL")
    return code
