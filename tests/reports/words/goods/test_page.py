"""The page of a lot says where it stands, and stands as it was written whatever is in it."""

from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from ledger.domain.lots.lot import BARRED, Status
from ledger.service.glass.serving import card
from ledger.service.lots.dossier import dossier
from reports.web.goods.page import html_page
from reports.words.goods import page as module
from reports.words.goods.page import STANDS, page_view, stands
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.path import Lots


def test_every_standing_that_bars_serving_says_not_to() -> None:
    for status in Status:
        said, is_barred = stands(status)
        assert is_barred is ("do not serve" in said)
    assert STANDS.keys() >= BARRED
    check_golden("page_stands.txt", "".join(f"{each}: {stands(each)[0]}\n" for each in Status))


def test_markup_in_a_name_stands_as_it_was_written(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    view = page_view(dossier(keeper.book, lots.packed), card(keeper.book, lots.packed))
    text = html_page(replace(view, product="<script>alert(1)</script> & Sons"))
    assert "<h1>&lt;script&gt;alert(1)&lt;/script&gt; &amp; Sons</h1>" in text
    assert "<script" not in text


def test_the_page_of_a_bottled_lot_is_the_kept_one(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    view = page_view(dossier(keeper.book, lots.packed), card(keeper.book, lots.packed))
    held = replace(view, is_barred=True, cautions=("Once & again.", "Contains quinine."))
    check_golden("page.txt", html_page(view) + html_page(held))


def test_an_article_is_told_by_its_number(
    walked: tuple[Keeper, Lots], monkeypatch: pytest.MonkeyPatch
) -> None:
    keeper, lots = walked
    monkeypatch.setattr(module, "article_of", lambda *_: SimpleNamespace(gtin="9521234543213"))
    view = page_view(dossier(keeper.book, lots.packed), card(keeper.book, lots.packed))
    assert ("Article", "GTIN 9521234543213") in view.facts


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
