"""A trial compared, for machines: figures as text, and no levels where factors moved together."""

from reports.json.causes.compare import comparison_plain
from tests.reports.words.causes.trials import CONFOUNDED, CROSSED


def test_every_batch_has_its_factors_looks_and_figures() -> None:
    plain = comparison_plain(CROSSED)
    first, control = plain["batches"][0], plain["batches"][-1]
    assert first["factors"] == [{"factor": "rest", "level": "24h"}]
    assert first["looks"] == [
        {"age": "at once", "grade": "opalescent"},
        {"age": "7 d", "grade": "hazy"},
    ]
    assert (first["ntu"], first["yield_pct"]) == ("3.4", "90")
    assert (control["lot"], control["is_control"], plain["control"]) == ("A-5", True, ["A-5"])


def test_levels_have_means_of_as_many_batches_as_are_named() -> None:
    (rest,) = comparison_plain(CROSSED)["factors"]
    assert [(level["level"], level["n"], level["batches"]) for level in rest["levels"]] == [
        ("24h", 2, ["A-1", "A-2"]),
        ("96h", 2, ["A-3", "A-4"]),
    ]
    assert [level["ntu"] for level in rest["levels"]] == ["3.1", "0.8"]


def test_factors_that_moved_together_name_each_other_and_have_no_levels() -> None:
    told = comparison_plain(CONFOUNDED)["factors"]
    assert [(item["factor"], item["confounded_with"], item["levels"]) for item in told] == [
        ("rest", ["dose"], []),
        ("dose", ["rest"], []),
    ]
