"""Single calls from Python: ours against the formula in pure Python with `math`, and against NumPy and SciPy on a float."""

from __future__ import annotations

import math
import statistics
from bisect import bisect_left
from collections.abc import Callable
from typing import Any

import numpy as np
import scipy.special as sp
from pairs import Pair, in_turn
from table import answer, figures, table

from reckohm import distribution, preferred
from reckohm.meter import Meter
from reckohm.sensor import Thermistor
from reckohm.uncertainty import Estimate
from reckohm.verdict import Limits, Rule, conformance_probability, judge

# A float call is to take no more than this part of the time of the formula in pure Python.
GOAL = 0.6

_DECADE = [*preferred.decade("E24"), 10.0]
_MIDDLES = [0.5 * (a + b) for a, b in zip(_DECADE, _DECADE[1:])]
_ROOT_HALF = math.sqrt(0.5)
_DENSITY = 1 / math.sqrt(2 * math.pi)
_U, _CLAUSE = 3.0, 69.0
_LIMITS = Limits.from_tolerance(4700, 0.05)
_LOWER, _UPPER = _LIMITS.lower_ohm, _LIMITS.upper_ohm
_ESTIMATE = Estimate(4880, _U).with_rectangular(_CLAUSE)
_RULE = Rule.guarded(0.05)
_SPAN = Meter.example_hand_held().spans[2]
_NORMAL = statistics.NormalDist()
_R25, _B, _T25 = 10_000.0, 3977.0, 298.15
_THERMISTOR = Thermistor.b_value(_R25, 25.0, _B, (25.0, 85.0)).with_domain((-40.0, 125.0))


def _temperature(ohm: float) -> float:
    return _B / (math.log(ohm / _R25) + _B / _T25) - 273.15


def _nearest(ohm: float) -> float:
    power = 10.0 ** math.floor(math.log10(ohm))
    return _DECADE[bisect_left(_MIDDLES, ohm / power)] * power


def _above(z: float) -> float:
    return 0.5 * math.erfc(z * _ROOT_HALF)


def _g(z: float) -> float:
    return 0.5 * z * math.erfc(-z * _ROOT_HALF) + _DENSITY * math.exp(-0.5 * z * z)


def _below(x: float) -> float:
    return _U / (2 * _CLAUSE) * (_g((x + _CLAUSE) / _U) - _g((x - _CLAUSE) / _U))


def _within(x: float) -> float:
    return _below(_UPPER - x) - _below(_LOWER - x)


def _guard_band(risk: float) -> float:
    # Newton's method from the left, where the tail is convex.
    w = _CLAUSE * (1 - 2 * risk)
    for _ in range(8):
        density = (_above((w - _CLAUSE) / _U) - _above((w + _CLAUSE) / _U)) / (2 * _CLAUSE)
        w += (1 - _below(w) - risk) / density
    return w


def _judged(x: float) -> tuple[str, float, float, float, float]:
    w = _guard_band(0.05)
    inside, outside = _LOWER + w <= x <= _UPPER - w, x >= _UPPER + w or x <= _LOWER - w
    answer = "conforms" if inside else "does not conform" if outside else "undecided"
    return answer, _within(x), w, (_UPPER - _LOWER) / (2 * _guard_band(0.025)), min(abs(x - _LOWER), abs(_UPPER - x))


def _read(text: str) -> float | None:
    if text in ("1", "OL"):
        return None
    kilohm = float(text)
    if len(text) - text.find(".") != 3 or not abs(kilohm) < 20:
        raise ValueError(text)
    return 10.0 * round(100 * kilohm)


def _contests() -> list[tuple[str, str, Callable[[], Any], Callable[[], Any], float | None]]:
    """What, against what, ours, theirs, the goal if it is the formula in pure Python."""
    ohm, z, p, x = 4900.0, 1.3, 0.9, 4880.0
    return [
        (
            "preferred value, E24",
            "math.log10 and bisect",
            lambda: preferred.nearest(ohm, "E24"),
            lambda: _nearest(ohm),
            GOAL,
        ),
        (
            "thermistor by its B-value, temperature",
            "math.log",
            lambda: _THERMISTOR.temperature_c(ohm),
            lambda: _temperature(ohm),
            GOAL,
        ),
        (
            "thermistor by its B-value, temperature",
            "np.log",
            lambda: _THERMISTOR.temperature_c(ohm),
            lambda: _B / (np.log(ohm / _R25) + _B / _T25) - 273.15,
            None,
        ),
        ("normal distribution, upper tail", "math.erfc", lambda: distribution.normal_above(z), lambda: _above(z), GOAL),
        (
            "normal distribution, upper tail",
            "scipy.special.ndtr",
            lambda: distribution.normal_above(z),
            lambda: sp.ndtr(-z),
            None,
        ),
        (
            "normal distribution, quantile",
            "statistics.NormalDist().inv_cdf",
            lambda: distribution.normal_quantile(p),
            lambda: _NORMAL.inv_cdf(p),
            GOAL,
        ),
        (
            "conformance probability",
            "closed form, math.erfc",
            lambda: conformance_probability(_ESTIMATE, _LIMITS),
            lambda: _within(x),
            GOAL,
        ),
        ("verdict", "Newton's method, math.erfc", lambda: judge(_ESTIMATE, _LIMITS, _RULE), lambda: _judged(x), GOAL),
        ("display read", "float(text), checks", lambda: _SPAN.read("4.88"), lambda: _read("4.88"), GOAL),
    ]


def _agree() -> None:
    """What does not agree is no contest."""
    verdict = judge(_ESTIMATE, _LIMITS, _RULE)
    answer, probability, guard, tur, distance = _judged(4880.0)
    assert answer == verdict.answer
    np.testing.assert_allclose(
        [probability, guard, tur, distance],
        [verdict.conformance_probability, verdict.guard_band_ohm, verdict.tur, verdict.distance_ohm],
        rtol=1e-9,
    )
    assert _read("4.88") == _SPAN.read("4.88").ohm
    for _, _, ours, theirs, _ in _contests()[:-2]:
        np.testing.assert_allclose(ours(), theirs(), rtol=1e-9)


def run(rounds: int) -> None:
    """The table."""
    _agree()
    rows = []
    for what, against, ours, theirs, goal in _contests():
        times = in_turn([ours, theirs, lambda: None], rounds, least=0.01)
        pair = Pair.of(times[0], times[1])
        share = 1 / pair.ratio
        spread = f"{figures(1 / pair.upper)} to {figures(1 / pair.lower)}"
        nanoseconds = [figures(1e9 * time) for time in (pair.ours, pair.theirs)]
        rows.append([what, against, *nanoseconds, figures(share), spread, *answer(share, goal, at_least=False)])
    table(
        "Single calls in Python",
        ["call", "against", "ours, ns", "theirs, ns", "ours/theirs", "quartiles", "goal", ""],
        rows,
    )
