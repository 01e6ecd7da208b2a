"""Files of two versions of a formula, as a maker types them."""

from pathlib import Path

FORMULA = """\
code = "orange"
version = 1
product = "Orange essence"
kind = "essence"
basis = "240mL"
wanted-clarity = "clear"
yield-min = "85%"

[[line]]
material = "orange-oil"
amount = "15mL"
tolerance = "2%"

[[line]]
material = "spirit"
amount = "220mL"

[[step]]
verb = "rest"
rest-for = "macerate"
at-least = "24h"

[[step]]
verb = "finish"
"""
SECOND = (
    FORMULA.replace("version = 1", "version = 2").replace('"15mL"', '"16mL"').replace("24h", "48h")
)
FILES = {"first.toml": FORMULA, "second.toml": SECOND}


def write_formulas() -> None:
    """Write both files into the folder where the commands run."""
    for name, text in FILES.items():
        Path(name).write_text(text, encoding="utf-8")
