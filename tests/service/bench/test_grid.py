"""The jars of a trial in the order in which they were begun, with what was set in them."""

from ledger.service.bench.grid import trial_jars
from tests.keeper import Keeper


def test_the_jars_of_a_trial_are_told_with_their_factors(bench: Keeper) -> None:
    words = {"product": "Orange essence", "kind": "essence", "target": "50mL", "trial": "Two rests"}
    codes = [
        bench.opens("start", **words, factors="rest=24h"),
        bench.opens("start", **words, control="yes"),
    ]
    bench.do("add", lot=codes[0], source="NS-001-J", amount="45mL")
    found = trial_jars(bench.book, "two  RESTS")
    assert [jar.lot.code for jar in found] == codes
    assert found[0].factors == {"rest": "24h"}
    assert [jar.lot.on_hand for jar in found] == [45_000, 0]
    assert found[1].factors == {}
    bench.do("start", **{**words, "trial": "Three rests"})
    assert len(trial_jars(bench.book, "Two rests")) == 2
    assert trial_jars(bench.book, "none") == ()
