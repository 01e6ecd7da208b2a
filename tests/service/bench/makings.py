"""Making many small runs in a test, one line each."""

from tests.keeper import Keeper
from tests.path import Lots


def essence(
    keeper: Keeper,
    lots: Lots,
    oil: str,
    *looks: str,
    product: str = "Orange essence",
    kind: str = "essence",
    factors: str | None = None,
    trial: str | None = None,
    rest_h: int = 0,
    filter_c: str | None = None,
    out: str = "85mL",
    ntu: str | None = None,
) -> str:
    """Make a jar of essence with an oil and look at it after it is finished, a week between."""
    words = {"trial": trial, "factors": factors} if trial else {}
    code = keeper.opens("start", product=product, kind=kind, target="90mL", **_told(words))
    keeper.do("add", lot=code, source=oil, amount="6mL")
    keeper.do("add", lot=code, source=lots.carb, amount="4g")
    keeper.do("add", lot=code, source=lots.spirit, amount="90mL")
    if rest_h:
        keeper.do("rest", lot=code, purpose="macerate")
        keeper.clock.forward(hours=rest_h)
        keeper.do("rest", lot=code, ended="yes")
    if filter_c:
        keeper.do(
            "filter", lot=code, medium="paper", pore="11", volume_out="88mL", temp=filter_c
        )  # fmt: skip
    keeper.do("finish", lot=code, volume=out)
    for number, grade in enumerate(looks):
        keeper.clock.forward(days=7 * bool(number))
        keeper.do("look", lot=code, grade=grade, **_told({"ntu": ntu}))
    return code


def _told(words: dict[str, str | None]) -> dict[str, str]:
    return {name: word for name, word in words.items() if word is not None}


def oil_lots(keeper: Keeper, number: int) -> list[str]:
    """Receive some lots of orange oil."""
    return [
        keeper.opens("receive", material="orange-oil", amount="500mL", supplier_lot=f"N{place}")
        for place in range(number)
    ]
