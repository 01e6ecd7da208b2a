"""What a server finds is asked for, and kept, by the words of the question alone."""

from ledger.store.engine.found import asking, valued
from ledger.store.engine.turn import Found, Heard, Question, Rows

LOT = Found(3, "BIGINT")
LOTS = Rows(7, ("lot",), {"lot": "BIGINT", "found8": "TEXT"})
EACH, CODE = Found(7, "BIGINT", LOTS, "lot"), Found(8, "TEXT", LOTS, "found8")
KEPT = "NULLIF(current_setting('pottle.found{}', true), '')"
AS_EACH = (
    f"jsonb_to_recordset(CAST(COALESCE({KEPT.format(7)}, '[]') AS JSONB)) "
    "AS each(lot BIGINT, found8 TEXT)"
)


def test_what_was_found_stands_in_the_place_of_its_name_and_values_stay() -> None:
    asked = Question("SELECT :lot, :at WHERE :lot > 0 AND a::text = :lots", {"lot": LOT, "at": 1})
    known = f"CAST({KEPT.format(3)} AS BIGINT)"
    assert asking(Heard(asked)) == Question(
        f"SELECT {known}, :at WHERE {known} > 0 AND a::text = :lots", {"at": 1}
    )
    assert asking(Heard(Question("SELECT :all", {"all": [LOT, LOT]}))).statement == (
        f"SELECT ARRAY[{known}, {known}]"
    )


def test_a_value_is_told_and_kept_and_rows_are_only_kept() -> None:
    asked = Question("SELECT 1", {})
    assert asking(Heard(asked, LOT)).statement == (
        "SELECT one, set_config('pottle.found3', CAST(one AS TEXT), true) "
        "FROM (SELECT 1) AS told(one)"
    )
    assert asking(Heard(asked, LOTS)).statement == (
        "SELECT length(set_config('pottle.found7', CAST(jsonb_agg(told) AS TEXT), true)) "
        "FROM (SELECT 1) AS told(lot)"
    )
    assert asking(Heard(Question("SELECT :lot", {"lot": EACH}), CODE)).statement == (
        "SELECT length(set_config('pottle.found7', CAST(jsonb_agg(to_jsonb(each) || "
        "jsonb_build_object('found8', (SELECT one FROM (SELECT each.lot) AS told(one) LIMIT 1))) "
        f"AS TEXT), true)) FROM {AS_EACH}"
    )


def test_of_rows_a_question_is_asked_for_each_with_other_cells_or_once_of_all() -> None:
    asked = Question("SELECT :lot, :code, :at", {"lot": EACH, "code": [CODE], "at": 1})
    assert asked.keys == (EACH, CODE)
    assert asking(Heard(asked)) == Question(
        "SELECT each.question, each.lot, each.found8, told.* FROM (SELECT row_number() OVER () "
        f"AS question, lot, found8 FROM (SELECT DISTINCT lot, found8 FROM {AS_EACH}) AS once) "
        "AS each LEFT JOIN LATERAL (SELECT row_number() OVER () AS in_order, said.* "
        "FROM (SELECT each.lot, ARRAY[each.found8], :at) AS said) AS told ON TRUE "
        "ORDER BY each.question, told.in_order",
        {"at": 1},
    )
    of_all = Question("SELECT MAX(:lot) FROM :rows", {"lot": EACH, "rows": LOTS})
    assert of_all.keys == ()
    assert asking(Heard(of_all)).statement == f"SELECT MAX(each.lot) FROM {AS_EACH}"


def test_cells_are_told_with_the_values_of_what_was_found() -> None:
    values: dict[Found, object] = {LOT: 15}
    assert [valued(cell, values) for cell in (LOT, [LOT, 2], EACH, "B-1")] == [
        15,
        [15, 2],
        None,
        "B-1",
    ]
