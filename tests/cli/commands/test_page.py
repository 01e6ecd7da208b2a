"""`pottle page`: small pages of lots, which labels lead to."""

from html.parser import HTMLParser
from pathlib import Path

import pytest

from tests.cli.asked import check_asked
from tests.cli.cases import Refused, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.reports.pdf.readback import images_of, symbols_of


class Reader(HTMLParser):
    """Reads a page: its words, and what it would load or run."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.words: list[str] = []
        self.tags: list[str] = []
        self.links: list[str] = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.links += [value or "" for name, value in attrs if name in ("src", "href", "action")]

    def handle_data(self, data: str) -> None:
        if data.strip() and self.tags[-1:] != ["style"]:
            self.words.append(data.strip())


def page_of(code: str) -> Reader:
    return Reader((Path("pages") / code / "index.html").read_text(encoding="utf-8"))


def test_a_page_says_what_the_label_says_and_loads_and_runs_nothing(shell: Shell) -> None:
    packed = shell.codes["packed"]
    said = shell.run("page", packed, "--out", "pages")
    assert said.lines == [
        "1 page in pages: put that folder where it can be read.",
        "Next: pottle house --web URL, so that labels lead there",
    ]
    page = page_of(packed)
    assert page.words[1:5] == ["Orange syrup", f"Lot {packed}", "Released by the maker.", "Pour"]
    assert page.words[5].startswith("1 part syrup to 7 parts soda water")
    assert [word for word in page.words if word.startswith("Root ")]
    assert (page.links, {"script", "img", "iframe"} & set(page.tags)) == ([], set())
    # Neither whom it went to nor what it cost.
    assert "Bridge Street" not in " ".join(page.words)


def test_a_lot_that_is_held_or_recalled_says_so_in_words(shell: Shell) -> None:
    packed = shell.codes["packed"]
    shell.run("hold", packed, "--because", "smells of <b>pine</b>")
    shell.run("page", "--all", "--out", "pages")
    words = page_of(packed).words
    assert "Held back by the maker: do not serve it, and ask." in words
    assert not any("pine" in word for word in words)
    shell.run("recall", packed, "--because", "a splinter")
    shell.run("page", packed, "--out", "pages")
    words = page_of(packed).words
    assert "Recalled by the maker: do not serve it, keep it apart, and call." in words


def test_the_symbol_of_a_label_leads_to_the_page_of_its_lot(shell: Shell) -> None:
    packed = shell.codes["packed"]
    assert shell.run("house", "--web", "https://example.com/l/").exit_code == 0
    shell.run("label", packed, "--out", "labels2.pdf", "--count", "1", "--specimen")
    symbols = {
        text for image in images_of(Path("labels2.pdf").read_bytes()) for text in symbols_of(image)
    }
    assert f"https://example.com/l/{packed}/" in symbols
    said = shell.run("page", packed, "--out", "pages")
    assert said.lines[-1] == f"A label's symbol leads to https://example.com/l/{packed}/"
    shell.run("house", "--gtin", "Orange syrup, 250 mL=9521234543213")
    said = shell.run("page", packed, "--out", "pages")
    link = f"https://example.com/l/01/09521234543213/10/{packed}"
    assert said.lines[-1].startswith(f"A label's symbol leads to {link}?15=")
    assert page_of(f"01/09521234543213/10/{packed}").words == page_of(packed).words
    assert "GTIN 09521234543213" in page_of(packed).words


@pytest.mark.parametrize(
    "case",
    [
        (
            "page",
            2,
            ("A page is of one lot or of all.", "Name a lot, or give --all for every bottled one."),
        ),
        (
            "house --web 'javascript:alert(1)'",
            2,
            (
                '"javascript:alert(1)" is no address on the web that fits a symbol of a label.',
                "Write it as https://example.com/lots, in at most 60 characters.",
            ),
        ),
        (
            "page {oil}",
            3,
            (
                "SOO-001-3 is not a packed lot, so it has no bottles to label.",
                'Fill it first: pottle bottle SOO-001-3 "15 x 250mL"',
            ),
        ),
    ],
)
def test_what_is_no_page_and_no_address_is_refused(case: Refused, shell: Shell) -> None:
    check_refused(case, shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("page")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("page", still)
