"""A dilution in words: what to measure, how much it shrinks, that it checks, what to mind.

Guarantees: the volumes shown add up as shown, and every one says its temperature.
"""

from ledger.science.liquids.alcohol import us_proof_from_abv
from ledger.science.liquids.dilution import Dilution, Warmed
from ledger.science.ranges import figure

BASIS = "Strengths and volumes are at 20 °C (OIML R 22); they hold for spirit and water alone."


METHOD = (
    "Measure the spirit, add most of the water, mix, let it cool to 20 °C, then make up with "
    "water to the volume."
)


CAUTION = (
    "Ethanol vapour catches fire from a flame or spark some way off; air the room, and "
    "follow local law and licensed practice."
)


def dilution_lines(dilution: Dilution) -> tuple[str, ...]:
    """Return a dilution as lines for people."""
    strong, wanted = _percent(dilution.stock_abv), _percent(dilution.target_abv)
    lines = [
        f"{_ml(dilution.stock_ul)} of spirit of {strong} and {_ml(dilution.water_ul)} of water "
        f"make {_ml(dilution.final_ul)} of {wanted}.",
        BASIS,
        f"In US proof, twice the % vol at 60 °F: {proof_words(dilution.stock_abv)} diluted to "
        f"{proof_words(dilution.target_abv)}.",
        _contraction(dilution),
        f"By weight, the same at any temperature: {thousandth(dilution.stock_mg)} g of spirit and "
        f"{thousandth(dilution.water_mg)} g of water make {thousandth(dilution.final_mg)} g.",
    ]
    if dilution.warmed:
        lines += _warmed(dilution.warmed)
    lines += [
        f"Rounded to {_ml(dilution.step)}; checked back, these volumes mix to "
        f"{dilution.check_abv:.2f} % vol and {_ml(_rounded(dilution))}.",
        METHOD,
        f"Caution: {CAUTION[0].lower()}{CAUTION[1:]}",
    ]
    return tuple(lines)


def _contraction(dilution: Dilution) -> str:
    difference = dilution.contraction_ul
    if difference == 0:
        return "Volumes of spirit and water do not add, though here by less than the rounding."
    moved = "shrink" if difference > 0 else "grow"
    named = "contraction" if difference > 0 else "weak spirit does; strong spirit shrinks"
    return (
        f"Volumes of spirit and water do not add: together these {moved} by "
        f"{_ml(abs(difference))} ({named})."
    )


def _warmed(warmed: Warmed) -> list[str]:
    temp = f"{figure(warmed.temp_c)} °C"
    lines = [
        f"With everything at {temp} measure {_ml(warmed.stock_ul)} of spirit and "
        f"{_ml(warmed.water_ul)} of water; they make {_ml(warmed.final_ul)} there, the same "
        "amount by weight."
    ]
    if warmed.shown_abv is not None:
        lines.append(
            f"At {temp} a glass alcoholmeter for 20 °C shows {figure(warmed.shown_abv, 1)} % vol "
            "in what they make."
        )
    return lines


def _rounded(dilution: Dilution) -> int:
    return round(dilution.check_ul / dilution.step) * dilution.step


def proof_words(abv: float) -> str:
    """Return a strength in US proof, to a tenth."""
    return figure(us_proof_from_abv(abv), 1)


def _percent(abv: float) -> str:
    return f"{figure(abv, 3)} % vol"


def _ml(volume_ul: int) -> str:
    return f"{thousandth(volume_ul)} mL"


def thousandth(amount: int) -> str:
    """Return a thousandth of an amount as a decimal with a plain minus sign."""
    return figure(amount / 1000, 3).replace("−", "-")
