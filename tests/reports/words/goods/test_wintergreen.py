"""The label of a wintergreen essence of 30 mL: every caution that its contents call for."""

from io import BytesIO

from msgspec.structs import replace

from ledger.service.glass.serving import card
from ledger.service.lots.dossier import dossier
from reports.pdf.goods.label import label_sheet, with_panels
from reports.pdf.goods.label_block import LEAST_SMALL
from reports.pdf.goods.label_fit import fit_label
from reports.pdf.goods.layouts import shipped_layouts
from reports.pdf.kit.marks import Words
from reports.words.goods.label import label_sheet_view
from tests.keeper import Keeper
from tests.path import receive_all
from tests.reports.pdf.readback import text_of


def wintergreen(keeper: Keeper) -> str:
    lots = receive_all(keeper)
    keeper.do("house", address="3 Pretend Lane, Madeupton", country="IE")
    keeper.do(
        "material",
        code="wintergreen",
        name="Wintergreen oil",
        kind="oil",
        density="1.18",
        constituents="methyl salicylate 98%",
    )
    oil = keeper.opens("receive", material="wintergreen", amount="500mL")
    essence = keeper.opens("start", product="Wintergreen essence", kind="essence", target="1L")
    keeper.do("add", lot=essence, source=oil, amount="60mL")
    keeper.do("add", lot=essence, source=lots.spirit, amount="940mL")
    keeper.do("finish", lot=essence, volume="990mL")
    return keeper.opens("bottle", source=essence, pack="20 x 30mL")


def test_a_wintergreen_essence_of_30_ml_has_its_label_with_every_caution(
    sqlite_keeper: Keeper,
) -> None:
    """Sized as Regulation (EU) 1169/2011, Article 13(3), and Directive 76/211/EEC allow 30 mL."""
    code = wintergreen(sqlite_keeper)
    found, served = dossier(sqlite_keeper.book, code), card(sqlite_keeper.book, code)
    view = label_sheet_view(found, 1, served)
    told = " ".join(view.label.cautions)
    for words in (
        "highly flammable",
        "A teaspoon (5 mL) of this essence holds",
        "locked away from children",
        "poison centre",
        "allergic to aspirin",
        "daily ceiling of methyl salicylate for a child of 20 kg",
    ):
        assert words in told, words
    small = with_panels(shipped_layouts()["3x7"], 2)
    for layout in (None, small, replace(small, width=66.0, height=36.0)):
        out = BytesIO()
        label_sheet(view, out, layout)
        text = " ".join(text_of(out.getvalue()).split())
        for caution in view.label.cautions:
            assert caution in text, caution
        for words in ("Wintergreen essence", f"Lot {code}", "30 mL", "% vol", "Madeupton, IE"):
            assert words in text, words
    fitted = fit_label(view.label)
    assert fitted.left_out == ()
    sizes = [mark.face.size for mark in fitted.marks if isinstance(mark, Words)]
    assert min(sizes) >= LEAST_SMALL
    assert "Made with" not in told
