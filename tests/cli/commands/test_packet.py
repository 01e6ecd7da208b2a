"""`pottle packet`: one PDF of a lot or of a period, or a sentence."""

from pathlib import Path

from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.reports.pdf.readback import text_of


def test_the_packet_of_a_lot_is_written_with_its_seal(shell: Shell) -> None:
    done = shell.line("packet {packed} --out packet.pdf")
    assert done.lines[0].startswith("The packet of BOS-001-S is in packet.pdf: 3 records, ")
    assert done.lines[-1] == "Next: pottle verify"
    text = text_of(Path("packet.pdf").read_bytes())
    for words in ("Contents", "Batch record OE-001-5", "All entries as written", "Spirit account"):
        assert words in text
    same = shell.line("packet {packed} --out again.pdf --json")
    assert same.json["codes"][0] == "BOS-001-S"
    assert Path("packet.pdf").read_bytes() == Path("again.pdf").read_bytes()


def test_a_packet_is_of_a_lot_or_of_a_period(shell: Shell) -> None:
    whole = shell.line("packet --from 2026-03-01 --to 2026-03-31 --out march.pdf")
    assert whole.lines[0].startswith("The packet of 2026-03-01 to 2026-03-31 is in march.pdf: ")
    for line in ("packet --out a.pdf", "packet {packed} --from 2026-03-01 --out a.pdf"):
        found = shell.line(line)
        assert found.exit_code == 2
        assert "A packet is of one lot or of a period." in found.err
    assert shell.line("packet {packed} --out march.pdf").exit_code == 5


def test_the_spirit_account_is_a_paper_too(shell: Shell) -> None:
    done = shell.line("stock --spirit --from 2026-01-01 --to 2026-12-31 --out spirit.pdf")
    assert done.lines == ["The spirit account of 2026-01-01 to 2026-12-31 is in spirit.pdf."]
    assert "Spirit account" in text_of(Path("spirit.pdf").read_bytes())


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("packet")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("packet", still)
