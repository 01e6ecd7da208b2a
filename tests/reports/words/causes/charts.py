"""Charts made of figures, for tests of words and papers."""

from fractions import Fraction
from math import inf

from ledger.domain.evidence.seals import Seal
from ledger.science.statistics.charts import chart
from ledger.science.statistics.intervals import ahead, share_interval
from ledger.science.statistics.survival import Part
from ledger.service.causes.chart import Charts, Figure, Point, Series

FLOW = ("49.6", "47.6", "49.9", "51.3", "47.8", "51.2", "52.6", "52.4", "53.6", "52.1")
"""Flow rates of ten batches: NIST/SEMATECH e-Handbook 6.3.2.2 (from memory), as yields here."""


def series(figure: Figure, figures: tuple[str, ...], pass_no: int = 0) -> Series:
    values = [float(told) for told in figures]
    points = tuple(
        Point(f"E-{place}", f"2026-03-{place:02}", Fraction(told))
        for place, told in enumerate(figures, 1)
    )
    return Series(figure, pass_no, points, chart(values), ahead(values))


def charts(*every: Series, haze: tuple[Part, ...] = ()) -> Charts:
    return Charts(
        of="Orange essence",
        kind="essence",
        batches=12,
        series=every,
        failed=3,
        seen=12,
        share=share_interval(3, 12),
        turned=5 if haze else 2,
        haze=tuple((part, 9 - place) for place, part in enumerate(haze)),
        house=None,
        seal=Seal("", 12, "00" * 32),
    )


FULL = charts(
    series(Figure.YIELD, FLOW),
    series(Figure.LOSS, (*FLOW[:4], *FLOW[:4], *FLOW[:4], "90"), 1),
    series(Figure.NTU, FLOW[:4]),
    haze=(Part(0.0, 18.1, 0.25), Part(26.0, 45.5, 0.5), Part(60.0, inf, 0.25)),
)
