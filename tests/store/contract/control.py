"""What a lot is held to, what waits and what a vessel held, alike on every engine."""

from pathlib import Path

from ledger.domain.entries.choices import MaterialKind, ProductKind
from ledger.domain.lots.lot import Status
from ledger.domain.masters.formulas import Called
from ledger.service.bench.draws import propose
from ledger.service.lots.dossier import dossier
from ledger.service.lots.due import due
from ledger.store.read import inputs, queries
from ledger.store.read.dependents import Changed
from tests.formula_texts import orange
from tests.keeper import Keeper
from tests.service.lots.test_changed import correct, released
from tests.service.orange import make_orange, start_orange


class ControlContract:
    """Its tests need the fixture `keeper`: a book with people and materials."""

    def test_inputs_are_told_with_their_kind_and_where_they_stand(
        self, keeper: Keeper, tmp_path: Path
    ) -> None:
        code = make_orange(keeper, tmp_path)
        keeper.do("judge", lot="LMC-001-F", verdict="reject", because="grey")
        with keeper.reading() as connection:
            lot = queries.lot_by_code(connection, code)
            assert lot is not None
            numbers = [*inputs.numbers_into(connection, lot.seq), lot.seq]
            found = {item.code: item for item in inputs.inputs(connection, numbers)}
        assert {name: item.status for name, item in found.items()} == {
            "SOO-001-3": Status.IN_STOCK,
            "LMC-001-F": Status.REJECTED,
            "LMC-002-D": Status.IN_STOCK,
            "NS-001-J": Status.HELD,
            code: Status.FINISHED,
        }
        assert found["LMC-001-F"].sort is MaterialKind.CLARIFIER
        assert found["NS-001-J"].called == ("spirit", None)
        assert found[code].called == (None, "orange-essence")

    def test_what_a_release_stands_on_is_told_once_it_is_changed(self, keeper: Keeper) -> None:
        code, entries = released(keeper)
        by = correct(keeper, entries["oil"], "amount=31mL")
        changed = dossier(keeper.book, code).changed
        assert changed == (Changed(by, False, entries["oil"], code),)

    def test_a_bottled_input_is_of_the_formula_of_its_bulk(
        self, keeper: Keeper, tmp_path: Path
    ) -> None:
        code = make_orange(keeper, tmp_path)
        keeper.do("judge", lot=code, verdict="release", because="tried")
        packed = keeper.opens("bottle", source=code, pack="4 x 100mL", because="tried")
        with keeper.reading() as connection:
            lot = queries.lot_by_code(connection, packed)
            assert lot is not None
            (found,) = inputs.inputs(connection, [lot.seq])
        assert found.called == (None, "orange-essence")
        assert found.product_kind is ProductKind.ESSENCE

    def test_a_product_is_of_the_formula_of_its_name_whatever_its_capitals(
        self, keeper: Keeper, tmp_path: Path
    ) -> None:
        """A name with an accent, typed as one sign, as two, and in capitals."""
        file = tmp_path / "creme.toml"
        text = orange("480mL", code="creme-essence", product="Cr\u00e8me d'orange")
        file.write_text(text, encoding="utf-8")
        keeper.do("formula", file=str(file))
        named = [
            keeper.opens("start", product=product, kind="essence", target="480mL")
            for product in ("CR\u00c8ME D'ORANGE", "cre\u0300me d'Orange", "Creme d'orange")
        ]
        by_formula = keeper.opens("start", formula="creme-essence", target="480mL")
        with keeper.reading() as connection:
            lots = [queries.lot_by_code(connection, code) for code in (*named, by_formula)]
            found = {lot.opened.code: lot.seq for lot in lots if lot}
            told = inputs.inputs(connection, list(found.values()))
            called = inputs.lots_called(connection, Called(None, "creme-essence"))
        of_it = {*named[:2], by_formula}
        assert {item.code for item in told if item.formula == "creme-essence"} == of_it
        assert called == [found[code] for code in (*named[:2], by_formula)]

    def test_a_struck_addition_is_no_input(self, keeper: Keeper, tmp_path: Path) -> None:
        code = start_orange(keeper, tmp_path)
        added = keeper.do("add", lot=code, source="SOO-001-3", amount="30mL")
        keeper.do("strike", entry=str(added.seq), because="the wrong lot")
        with keeper.reading() as connection:
            lot = queries.lot_by_code(connection, code)
            assert lot is not None
            assert inputs.numbers_into(connection, lot.seq) == []

    def test_a_vessel_holds_its_last_batch_until_it_is_cleaned(
        self, keeper: Keeper, tmp_path: Path
    ) -> None:
        code = start_orange(keeper, tmp_path)

        def held(vessel: str) -> str | None:
            with keeper.reading() as connection:
                found = inputs.last_held(connection, vessel, keeper.clock.now)
            return found.lot if found else None

        assert (held("Jar 2"), held("jar 3")) == (code, None)
        keeper.do("rest", lot=code, purpose="chill", vessel="jar 3")
        assert held("jar 3") == code
        keeper.do("clean", vessel="JAR 2", method="hot water")
        assert (held("jar 2"), held("jar 3")) == (None, code)

    def test_what_waits_and_what_to_draw_are_told(self, keeper: Keeper, tmp_path: Path) -> None:
        code = start_orange(keeper, tmp_path)
        keeper.do("rest", lot=code, purpose="macerate")
        told = {(str(item.waits), item.lot) for item in due(keeper.book).items}
        assert told == {("rest", code), ("date", "SOO-005-W"), ("hold", "NS-001-J")}
        assert [item.short for item in propose(keeper.book, code)] == [0, 5000, 0]
        keeper.do("rest", lot=code, ended="yes", because="only to see")
        told = {(str(item.waits), item.lot) for item in due(keeper.book).items}
        assert told == {("date", "SOO-005-W"), ("hold", "NS-001-J")}
