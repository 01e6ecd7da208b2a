"""Files of a formula, loaded into a book."""

from pathlib import Path

from tests.formula_texts import line, orange, step, table
from tests.keeper import Keeper

GOOD = orange(
    "480mL",
    line("orange-oil", "30mL", tolerance="2%", overage="1%"),
    step("rest", rest_for="macerate", at_least="24h"),
    step("filter", precoat_min="4g", passes_min=2),
    step("look", looked_at="as-poured", dilution="1:7", worst="clear", age="7d"),
    table("keeping", storage="cool and dark", days=540, opened_days=180, brix_min="60"),
    abv_min="80%",
    abv_max="90%",
    claim="not for drinking as it is",
    prepared_by="ab",
)


def load(keeper: Keeper, folder: Path, text: str) -> bool:
    file = folder / "orange.toml"
    file.write_text(text, encoding="utf-8")
    return keeper.do("formula", file=str(file)).is_new
