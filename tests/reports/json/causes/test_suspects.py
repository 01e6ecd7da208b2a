"""Suspects for machines: figures add up, and none is infinite."""

from reports.json.causes.suspects import suspicion_plain
from tests.reports.words.causes.suspicions import lots, suspicion


def test_figures_for_machines_add_up_and_have_no_infinity() -> None:
    plain = suspicion_plain(suspicion(lots("A", "")))
    (one,) = plain["suspects"]
    assert one["failed_with"] + one["failed_without"] == len(plain["failed"])
    assert one["clear_with"] + one["clear_without"] == len(plain["comparable"])
    assert one["odds"]["ratio"] is one["odds"]["high"] is None
    assert (one["p"], one["p_adjusted"]) == ("0.00793651", "0.00793651")
