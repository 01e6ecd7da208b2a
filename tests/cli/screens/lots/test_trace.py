"""A trace on a screen: branches carry their rules."""

from cli.screens.lots.trace import fold


def test_a_folded_branch_carries_its_rules_and_keeps_codes_whole() -> None:
    folded = fold("│  ├─ 30 mL  OE-001-5  Orange essence, from a supplier, in stock", 24)
    assert folded.splitlines() == [
        "│  ├─ 30 mL  OE-001-5",
        "│  │    Orange essence,",
        "│  │    from a supplier,",
        "│  │    in stock",
    ]
