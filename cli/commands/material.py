"""Commands about materials: material add, material change, material list.

Guarantees: adding and changing take the same words.
"""

from collections.abc import Callable
from typing import Annotated

import typer

from cli.kit.call import Call, reads, writes
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.record import record
from cli.kit.schema import Kinds

MaterialName = Annotated[Text, typer.Option(help="Name for people.")]
MaterialKindOption = Annotated[
    Text,
    typer.Option(
        help="oil, ethanol, clarifier, sugar, water, acid, preservative, gum, colour, bottle, "
        "closure, label, filter or other."
    ),
]
How = Annotated[
    Text,
    typer.Option(help="expressed, distilled, folded, terpeneless, extracted or synthetic."),
]
Density = Annotated[Text, typer.Option(help="Density in g/mL.")]
DensityTemp = Annotated[Text, typer.Option(help="Temperature of that density in °C.")]
Abv = Annotated[Text, typer.Option(help="Strength in % vol at 20 °C.")]
Grade = Annotated[Text, typer.Option("--food-grade", help="yes, no or unknown.")]
Allergens = Annotated[Text, typer.Option(help="Allergens it carries.")]
Ingredient = Annotated[Text, typer.Option("--ingredient-name", help="Name on ingredient lists.")]
Caution = Annotated[Text, typer.Option(help="What to be careful of.")]
Constituents = Annotated[
    Text, typer.Option(help='Constituents of concern: "NAME SHARE%; NAME SHARE%; ...".')
]

Additive = Annotated[Text, typer.Option(help='Class and number as an additive: "acid E 330".')]
Nutrition = Annotated[
    Text, typer.Option(help='What 100 g hold, in g: "carbohydrate 80; sugars 78", or none.')
]
NameIn = Annotated[
    list[str] | None,
    typer.Option("--name-in", help='Name on ingredient lists in a language: "de=Orangenöl".'),
]


def _saying(text: str, *, change: bool) -> Callable[..., None]:
    def command(
        call: Call,
        code: Annotated[str, typer.Argument(help="Short name, such as orange-oil.")],
        name: MaterialName = None,
        kind: MaterialKindOption = None,
        how: How = None,
        density: Density = None,
        density_temp: DensityTemp = None,
        abv: Abv = None,
        food_grade: Grade = None,
        allergens: Allergens = None,
        ingredient_name: Ingredient = None,
        caution: Caution = None,
        constituents: Constituents = None,
        additive: Additive = None,
        nutrition: Nutrition = None,
        name_in: NameIn = None,
    ) -> None:
        from ledger.service.masters.material import material as verb

        record(
            call,
            verb,
            code=code,
            change=change,
            name=name,
            kind=kind,
            obtained=how,
            density=density,
            density_temp=density_temp,
            abv=abv,
            food_grade=food_grade,
            allergens=allergens,
            ingredient_name=ingredient_name,
            caution=caution,
            constituents=constituents,
            additive=additive,
            nutrition=nutrition,
            names="; ".join(name_in or []) or None,
        )

    command.__doc__ = text
    return command


material_add = _saying("Add a material that is bought and used.", change=False)
material_change = _saying(
    "Say anew what is known of a material; what is not given stays.", change=True
)


def material_list(call: Call) -> None:
    """List the materials in the book."""
    from cli.screens.masters.material import list_materials

    list_materials(call)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.masters.material import MaterialRow

    return (list[MaterialRow],)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    group = typer.Typer(
        help="Materials that are bought and used.", no_args_is_help=True, rich_markup_mode=None
    )
    group.command("add", cls=Verb)(writes(material_add))
    group.command("change", cls=Verb)(writes(material_change))
    group.command("list", cls=Verb)(reads(material_list, answers))
    app.add_typer(group, name="material")
