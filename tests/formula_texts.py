"""Files of a formula as a maker writes them, made of their keys; an orange essence for many tests.

Guarantees: each key stands on its own line, in the order given, with hyphens for underscores.
"""

import json

Key = str | int


def table(name: str, **keys: Key) -> str:
    """Return one of the tables of a formula."""
    return f"\n[[{name}]]\n{_lines(keys)}"


def line(material: str, amount: str, **more: Key) -> str:
    """Return the table of a material."""
    return table("line", material=material, amount=amount, **more)


def step(verb: str, **more: Key) -> str:
    """Return the table of a step."""
    return table("step", verb=verb, **more)


def orange(basis: str, *tables: str, **more: Key) -> str:
    """Return the formula of an orange essence that is wanted clear, with more keys and tables."""
    keys: dict[str, Key] = {
        "code": "orange-essence",
        "version": 1,
        "product": "Orange essence",
        "kind": "essence",
        "basis": basis,
        "wanted_clarity": "clear",
        "yield_min": "85%",
        "yield_max": "102%",
    }
    return _lines(keys | more) + "".join(tables)


def _lines(keys: dict[str, Key]) -> str:
    return "".join(
        f"{name.replace('_', '-')} = {json.dumps(value)}\n" for name, value in keys.items()
    )
