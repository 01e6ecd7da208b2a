"""Materials: what is bought and used, and what is known of each.

Guarantees: a change says anew what is given; the rest stays as it was. Refuses: to add a material
that is there, and to change one that is not.
"""

from contextlib import suppress
from typing import Any

from msgspec.structs import replace

from ledger.domain.amounts.scaled import read_scaled
from ledger.domain.entries import Material
from ledger.domain.entries.choices import FoodGrade, HowObtained, MaterialKind
from ledger.domain.entries.masters import Constituent
from ledger.domain.masters.allergens import read_allergens
from ledger.domain.masters.constituents import read_constituents
from ledger.domain.masters.languages import read_names
from ledger.domain.masters.nutrients import read_nutrients
from ledger.errors import LedgerError, RefusedError
from ledger.service.account.shipped import substances
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.masters.short_names import read_code
from ledger.store.read import queries
from ledger.store.write import recorder


@act
def material(
    book: Book,
    how: How,
    *,
    code: str,
    name: str | None = None,
    kind: str | None = None,
    obtained: str | None = None,
    density: str | None = None,
    density_temp: str | None = None,
    abv: str | None = None,
    food_grade: str | None = None,
    allergens: str | None = None,
    ingredient_name: str | None = None,
    caution: str | None = None,
    constituents: str | None = None,
    additive: str | None = None,
    nutrition: str | None = None,
    names: str | None = None,
    change: bool = False,
) -> Recorded:
    """Add a material, or say anew what is known of one; what is not given stays as it was."""
    with at_desk(book, how, Ahead(material=code, also=_asked_of(code))) as desk:
        words = desk.words
        key = words.read(lambda: _material_code(desk, code, change), "")
        old = queries.material(desk.connection, key) if change and key else None
        sort = words.one_of(kind, MaterialKind, "kind of material")
        if old is None and not kind:
            sort = words.needed(kind, MaterialKind, "kind of material")
        told = {
            "name": words.text_or_none(name, "name"),
            "sort": sort,
            "how_obtained": words.one_of(obtained, HowObtained, "way of obtaining"),
            "density_mg_per_l": words.scaled(density, 1_000_000, "g/mL", "density") or None,
            "density_temp_mdegc": words.scaled(density_temp, 1000, "°C", "temperature"),
            "abv_mpct": words.read(lambda: read_strength(abv), None) or None,
            "food_grade": words.one_of(food_grade, FoodGrade, "food grade"),
            "allergens": words.read(
                lambda: _allergens(words.text_or_none(allergens, "allergens")), None
            ),
            "ingredient_name": words.text_or_none(ingredient_name, "name on the ingredient list"),
            "caution": words.text_or_none(caution, "caution"),
            "additive": words.text_or_none(additive, "class and number of the additive"),
            "nutrition": words.read(lambda: read_nutrients(nutrition) if nutrition else None, None),
            "names": words.read(
                lambda: read_names(names, old.names if old else ()) if names else None, None
            ),
            "constituents": words.read(lambda: _constituents(constituents), None),
        }
        before = old or Material(code=key, name=code, sort=MaterialKind.OTHER)
        return desk.record(_said_anew(before, told))


def _asked_of(code: str) -> tuple[tuple[Any, ...], ...]:
    """Return what is read beside a material, where the code can be one."""
    with suppress(LedgerError):
        key = read_code(code, "material", "orange-oil")
        return (queries.limits,), (recorder.first_of, Material.KIND, key)
    return ()


def _said_anew(before: Material, told: dict[str, Any]) -> Material:
    # None alone is nothing said: a temperature may be 0 °C.
    return replace(before, **{name: value for name, value in told.items() if value is not None})


def _material_code(desk: Desk, text: str, change: bool) -> str:
    code = read_code(text, "material", "orange-oil")
    known = queries.material(desk.connection, code) is not None
    if known and not change:
        raise RefusedError(
            f"The material {code} is in the book already.",
            f"Say what is new about it with: pottle material change {code} ...",
        )
    if change and not known:
        raise RefusedError(
            f"The material {code} is not in the book.", f"Add it with: pottle material add {code}"
        )
    return code


def read_strength(text: str | None) -> int | None:
    """Return a strength in thousandths of a per cent by volume, or None when none is given.

    Raises:
        InputError: It is no number.
        RefusedError: It is above 100 %.
    """
    if not text:
        return None
    value = read_scaled(text, 1000, "%", "strength")
    if not 0 <= value <= 100_000:
        raise RefusedError(
            f"A strength of {text} % cannot be: it lies between 0 and 100 % by volume.",
            "Read the label again; US proof is twice the per cent.",
        )
    return value


def _allergens(text: str | None) -> str | None:
    return None if text is None else read_allergens(text)


def _constituents(text: str | None) -> tuple[Constituent, ...] | None:
    return (text and read_constituents(text, substances())) or None


def materials(book: Book) -> tuple[Material, ...]:
    """Return the materials in the book, by code."""
    with book.reading() as connection:
        known = [queries.material(connection, code) for code in queries.material_codes(connection)]
    return tuple(material for material in known if material)
