"""Times taken in turn: each call once a round, so that whatever else the machine does harms all of them alike."""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Pair:
    """Our time and another's for the same work, in seconds, and how they compare round by round."""

    ours: float
    theirs: float
    ratio: float
    lower: float
    upper: float

    @classmethod
    def of(cls, ours: Sequence[float], theirs: Sequence[float]) -> Pair:
        """From the times of the same rounds: medians, and the quartiles of theirs over ours."""
        ratios = [b / a for a, b in zip(ours, theirs, strict=True)]
        lower, middle, upper = statistics.quantiles(ratios, n=4) if len(ratios) > 1 else ratios * 3
        return cls(statistics.median(ours), statistics.median(theirs), middle, lower, upper)


def in_turn(calls: Sequence[Callable[[], object]], rounds: int, least: float = 0.0) -> list[list[float]]:
    """Seconds a call, a list for each call with one entry a round. A call is repeated until `least` seconds are full."""
    repeats = []
    for call in calls:
        took = _timed(call, 1)  # warms up as well
        took = min(took, _timed(call, 1))
        repeats.append(max(1, round(least / max(took, 1e-9))))
    times: list[list[float]] = [[] for _ in calls]
    for _ in range(rounds):
        for call, count, kept in zip(calls, repeats, times, strict=True):
            kept.append(_timed(call, count))
    return times


def _timed(call: Callable[[], object], count: int) -> float:
    start = time.perf_counter()
    for _ in range(count):
        call()
    return (time.perf_counter() - start) / count
