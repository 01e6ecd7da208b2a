"""A dilution in words: what to measure, how much it shrinks, that it checks, what to mind.

Guarantees: the volumes shown add up as shown, and every one says its temperature.
"""

from ledger.science.liquids.alcohol import us_proof_from_abv
from ledger.science.liquids.dilution import Dilution, Warmed
from ledger.science.ranges import figure
from reports.kit.amounts import decimal_amount

BASIS = "Strengths and volumes are at 20 °C (OIML R 22); they hold for spirit and water alone."


METHOD = (
    "Measure the spirit, add most of the water, mix, let it cool to 20 °C, then make up with "
    "water to the volume."
)


CAUTION = (
    "Ethanol vapour catches fire from a flame or spark some way off; air the room, and "
    "follow local law and licensed practice."
)


def dilution_lines(found: Dilution) -> tuple[str, ...]:
    """Return a dilution as lines for people."""
    strong, wanted = _percent(found.stock_abv), _percent(found.target_abv)
    lines = [
        f"{_ml(found.stock_ul)} of spirit of {strong} and {_ml(found.water_ul)} of water make "
        f"{_ml(found.final_ul)} of {wanted}.",
        BASIS,
        f"In US proof, twice the % vol at 60 °F: {proof_words(found.stock_abv)} diluted to "
        f"{proof_words(found.target_abv)}.",
        _contraction(found),
        f"By weight, the same at any temperature: {decimal_amount(found.stock_mg)} g of spirit and "
        f"{decimal_amount(found.water_mg)} g of water make {decimal_amount(found.final_mg)} g.",
    ]
    if found.warmed:
        lines += _warmed(found.warmed)
    lines += [
        f"Rounded to {_ml(found.step)}; checked back, these volumes mix to "
        f"{found.check_abv:.2f} % vol and {_ml(_rounded(found))}.",
        METHOD,
        f"Caution: {CAUTION[0].lower()}{CAUTION[1:]}",
    ]
    return tuple(lines)


def _contraction(found: Dilution) -> str:
    difference = found.contraction_ul
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


def _rounded(found: Dilution) -> int:
    return round(found.check_ul / found.step) * found.step


def proof_words(abv: float) -> str:
    """Return a strength in US proof, to a tenth, and below one to a hundredth.

    >>> proof_words(95), proof_words(0.1), proof_words(0.01)
    ('190', '0.2', '0.02')
    """
    proof = us_proof_from_abv(abv)
    return figure(proof, 1 if proof >= 1 else 2)


def _percent(abv: float) -> str:
    return f"{figure(abv, 3)} % vol"


def _ml(volume_ul: int) -> str:
    return f"{decimal_amount(volume_ul)} mL"
