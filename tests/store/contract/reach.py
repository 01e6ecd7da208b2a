"""What many lots are made of and how runs were found, asked at once."""

from datetime import timedelta

from ledger.store.read import queries, walk
from ledger.store.read.lots import all_lots
from ledger.store.read.reach import entries_of_lots, made_of
from ledger.store.read.runs import found, runs
from tests.keeper import Keeper


class ReachContract:
    """Asking of many lots at once tells what asking of each one tells."""

    def test_what_many_lots_are_made_of_is_what_each_is(self, walked: Keeper) -> None:
        with walked.reading() as connection:
            lots = all_lots(connection)
            one_by_one = {lot: frozenset(walk.back(connection, lot)[1:]) for lot in lots}
            assert made_of(connection, lots) == one_by_one
            assert any(one_by_one.values())

    def test_entries_of_many_lots_are_those_of_each(self, walked: Keeper) -> None:
        kinds = ("start", "add", "look", "receipt")
        with walked.reading() as connection:
            lots = all_lots(connection)
            many = entries_of_lots(connection, lots, kinds)
            assert {entry.kind for entries in many.values() for entry in entries} == set(kinds)
            for lot in lots:
                own = queries.entries_of_lot(connection, lot)
                assert many.get(lot, ()) == tuple(e for e in own if e.kind in kinds)

    def test_draws_on_a_lot_are_those_of_other_lots_up_to_a_moment(self, walked: Keeper) -> None:
        with walked.reading() as connection:
            lot = queries.lot_by_code(connection, "OE-001-5")
            assert lot is not None
            everything = queries.draws_on(connection, lot.seq, walked.clock())
            assert [entry.draft.lot for entry in everything] == ["OS-002-M"]
            first = everything[0].draft.happened.at
            assert queries.draws_on(connection, lot.seq, first) == everything
            assert queries.draws_on(connection, lot.seq, first - timedelta(seconds=1)) == ()

    def test_a_run_is_told_with_how_it_was_found(self, walked: Keeper) -> None:
        with walked.reading() as connection:
            made = {run.code: run for run in runs(connection)}
            known = found(connection)
        syrup = made["OS-002-M"]
        (packed,) = known.packed[syrup.lot]
        assert (syrup.product, syrup.product_kind, syrup.maker) == ("Orange syrup", "syrup", "AB")
        assert known.complaints[packed] == ["cloudy"]
        assert packed in known.sent
        assert [seen.grade for seen in known.looks[syrup.lot]] == ["cloudy"]
        assert known.finished_at[syrup.lot] > syrup.began_at
        # One trial was made by hand, and one by a plan.
        groups = [run.trial_group for run in made.values() if run.trial_group]
        assert (set(groups), groups.count("pores")) == ({"pores", "pores again"}, 1)
