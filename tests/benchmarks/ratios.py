"""Timing helpers: medians, or the best, of repeated runs, printed as ratios."""

import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Sequence


def seconds_of(work: Callable[[], object], times: int = 5) -> float:
    """Return the median time of some runs of `work`, in seconds."""
    taken = []
    for _ in range(times):
        began = time.perf_counter()
        work()
        taken.append(time.perf_counter() - began)
    return statistics.median(taken)


def best_seconds(
    works: Sequence[Callable[[], object]],
    times: int = 5,
    clock: Callable[[], float] = time.perf_counter,
) -> list[float]:
    """Return the least time of each of some works, run in turns, in seconds.

    In turns, so that what else the machine does meanwhile slows all of them alike. Works that wait
    for nothing outside their process are better told by `time.process_time`.
    """
    return [best for (best,) in best_by([clock], works, times)]


def best_by(
    clocks: Sequence[Callable[[], float]], works: Sequence[Callable[[], object]], times: int = 5
) -> list[list[float]]:
    """Return the least time of each of some works by each of some clocks, as `best_seconds`."""
    taken: list[list[list[float]]] = [[] for _ in works]
    for _ in range(times):
        for spent, work in zip(taken, works, strict=True):
            began = [clock() for clock in clocks]
            work()
            spent.append([clock() - was for clock, was in zip(clocks, began, strict=True)])
    return [[min(by_clock) for by_clock in zip(*spent, strict=True)] for spent in taken]


def process_seconds(code: list[str], times: int = 9, **kwargs: object) -> float:
    """Return the median time of a Python process, in seconds."""
    return seconds_of(
        lambda: subprocess.run([sys.executable, *code], check=True, capture_output=True, **kwargs),  # type: ignore[call-overload]
        times,
    )


def line(what: str, ratio: float, goal: str) -> None:
    """Print one measured ratio with its goal."""
    print(f"{what:<58} {ratio:6.2f}   goal {goal}")
