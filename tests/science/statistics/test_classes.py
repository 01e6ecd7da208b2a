"""Figures are divided at the formula's limit, else at their median."""

from fractions import Fraction

from ledger.science.statistics.classes import NOT_RECORDED, classed


def figures(*values: int | None) -> dict[str, Fraction | None]:
    return {
        str(place): None if value is None else Fraction(value) for place, value in enumerate(values)
    }


def test_figures_lie_on_both_sides_of_the_median_whatever_they_are() -> None:
    assert list(classed(figures(1, 2, 3, 4, 4), "h").values()) == [
        *["up to 3 h"] * 3,
        *["above 3 h"] * 2,
    ]
    assert [*classed(figures(1, 2, 3, 4, 5), "h").values()] == [
        *["up to 3 h"] * 3,
        *["above 3 h"] * 2,
    ]
    assert list(classed(figures(1, 2, 9, 9, 9), "h").values()) == [
        *["up to 2 h"] * 2,
        *["above 2 h"] * 3,
    ]
    assert list(classed(figures(1, 2, 3, 9, 9, 9, 9), "h").values()) == [
        *["up to 3 h"] * 3,
        *["above 3 h"] * 4,
    ]


def test_a_limit_that_divides_nothing_gives_way_to_the_median() -> None:
    assert classed(figures(1, 2, 3), "°C", Fraction(8)) == classed(figures(1, 2, 3), "°C")


def test_a_most_limit_divides_what_keeps_it_from_what_is_above_it() -> None:
    for limit, kept in ((1, 1), (5, 2), (9, 3)):
        found = classed(figures(1, 2, 9, 10), "h", Fraction(limit))
        assert list(found.values()) == [f"up to {limit} h"] * kept + [f"above {limit} h"] * (
            4 - kept
        )
    at_the_end = classed(figures(1, 2, 9, 10), "h", Fraction(10))
    assert at_the_end == classed(figures(1, 2, 9, 10), "h")


def test_a_least_limit_is_kept_by_what_reaches_it() -> None:
    found = classed(figures(12, 24, 48), "h", Fraction(24), is_least=True)
    assert list(found.values()) == ["under 24 h", "24 h or more", "24 h or more"]


def test_below_zero_reads_as_people_write_it() -> None:
    assert classed(figures(-9, -9), "°C") == {"0": "−9 °C", "1": "−9 °C"}


def test_what_was_not_recorded_is_a_class_of_its_own() -> None:
    found = classed(figures(None, 1, 2, 3), "", Fraction(2), is_least=True)
    assert list(found.values()) == [NOT_RECORDED, "under 2", "2 or more", "2 or more"]
    assert classed(figures(None, None), "h") == {"0": NOT_RECORDED, "1": NOT_RECORDED}


def test_figures_are_told_without_an_exponent_and_whole_ones_whole() -> None:
    tiny = {"0": Fraction(2, 100_000), "1": Fraction(1234), "2": Fraction(100)}
    assert list(classed(tiny, "µm").values()) == ["up to 100 µm", "above 100 µm", "up to 100 µm"]
    pair = {"0": Fraction(2, 100_000), "1": Fraction(123_456, 100)}
    assert list(classed(pair, "µm").values()) == ["0.00002 µm", "1235 µm"]
