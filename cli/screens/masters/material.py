"""The materials on a screen or as JSON.

Guarantees: every material once, as it is now; where there is none, how one is added is said.
"""

from cli.kit.call import Call
from cli.kit.listing import Listing
from ledger.service.masters.material import materials
from reports.json.masters.material import material_row
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
    heads = ["material", "name", "kind", "how", "g/mL", "%vol"]
    if any(item.names for item in found):
        heads.append("names in")
        rows = [
            [*row, " ".join(told.language for told in item.names)]
            for row, item in zip(rows, found, strict=True)
        ]
    nothing = (
        "There is no material in the book yet.",
        'Next: pottle material add CODE --name "NAME" --kind KIND',
    )
    Listing(heads, rows, nothing, lambda: list(map(material_row, found)), right="g/mL,%vol").say(
        call
    )
