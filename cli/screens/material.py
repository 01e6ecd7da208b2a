"""The materials on a screen or as JSON."""

from cli.kit.call import Call
from cli.kit.listing import Listing
from ledger.service.masters.material import materials
from reports.kit.format import scaled


def list_materials(call: Call) -> None:
    """List the materials."""
    found = materials(call.book())
    rows = [
        [
            item.code,
            item.name,
            str(item.sort),
            str(item.how_obtained or ""),
            scaled(item.density_mg_per_l, 1_000_000) if item.density_mg_per_l else "",
            scaled(item.abv_mpct, 1000) if item.abv_mpct is not None else "",
        ]
        for item in found
    ]
    heads = ("material", "name", "kind", "how", "g/mL", "%vol")
    names = ("code", "name", "kind", "how", "density_g_per_ml", "abv_pct")
    nothing = (
        "There is no material in the book yet.",
        'Next: pottle material add CODE --name "NAME" --kind KIND',
    )
    Listing(heads, rows, nothing, names, right="g/mL,%vol").say(call)
