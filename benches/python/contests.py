"""What is compared: our call, and the expression that a careful user of NumPy and SciPy would write for the same numbers.

Each is given in the forms that somebody would use: a fresh result, and in place into an array that is there already, then
with every constant folded and no array but the two (`out=` on our side as well). Before anything is timed, both sides'
results are compared: what does not agree is no contest.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
import scipy.special as sp
from numpy.typing import NDArray

from reckohm import distribution, preferred
from reckohm.verdict import Limits, conformance_probability

Array = NDArray[Any]
FRESH, IN_PLACE = "fresh result", "in place"


@dataclass(frozen=True)
class Contest:
    """One conversion, ours and theirs; `forms` has for each form our call and theirs, of the inputs and an output."""

    what: str
    inputs: Callable[[np.random.Generator, int], tuple[Array, ...]]
    forms: dict[str, tuple[Callable[..., Any], Callable[..., Any]]]
    expression: str
    goal: str = ""
    agree: float = 1e-12
    agree_single: float = 1e-5


def _between(lower: float, upper: float) -> Callable[[np.random.Generator, int], tuple[Array, ...]]:
    return lambda random, count: (random.uniform(lower, upper, count),)


def _ohms(random: np.random.Generator, count: int) -> tuple[Array, ...]:
    return (10.0 ** random.uniform(0.0, 7.0, count),)


# Preferred values: every value of the series from 1 ohm to 10 Mohm in one table with the middles between them, searched
# once. It beats the way by logarithm, floor and power (three transcendental passes) wherever the decades are known.
_VALUES = np.array([float(f"{value}e{decade}") for decade in range(8) for value in preferred.decade("E24")])
_MIDDLES = 0.5 * (_VALUES[1:] + _VALUES[:-1])


def _nearest(ohm: Array, out: Array | None = None) -> Array:
    return np.take(_VALUES.astype(ohm.dtype, copy=False), np.searchsorted(_MIDDLES.astype(ohm.dtype), ohm), out=out)


# The probability of being within limits for a rectangular and a normal part: with G(z) = z Phi(z) + phi(z) the cumulative
# distribution is s/(2a) (G((x + a)/s) - G((x - a)/s)).
_LIMITS = Limits.from_tolerance(4700, 0.05)
_U, _CLAUSE = 3.0, 69.0
_ROOT = float(np.sqrt(2 * np.pi))


def _measured(random: np.random.Generator, count: int) -> tuple[Array, ...]:
    return (random.uniform(4350.0, 5050.0, count),)


def _g(z: Array) -> Array:
    # In place where it can be: one array for the exponential, one for the result.
    density = np.multiply(z, z)
    density *= -0.5
    np.exp(density, out=density)
    density *= 1 / _ROOT
    result = sp.ndtr(z)
    result *= z
    result += density
    return result


def _within(x: Array, out: Array | None = None) -> Array:
    def below(limit: float) -> Array:
        z = np.subtract(limit + _CLAUSE, x)
        z *= 1 / _U
        result = _g(z)
        z -= 2 * _CLAUSE / _U
        result -= _g(z)
        return result

    result = np.subtract(below(_LIMITS.upper_ohm), below(_LIMITS.lower_ohm), out=out)
    result *= _U / (2 * _CLAUSE)
    return result


def contests() -> list[Contest]:
    """All of them."""
    return [
        Contest(
            "preferred value, E24",
            _ohms,
            {
                FRESH: (lambda ohm, out: preferred.nearest(ohm, "E24"), lambda ohm, out: _nearest(ohm)),
                IN_PLACE: (lambda ohm, out: preferred.nearest(ohm, "E24", out=out), _nearest),
            },
            "values[np.searchsorted(middles, ohm)], one table over all decades",
        ),
        Contest(
            "normal distribution, upper tail",
            _between(-5.0, 5.0),
            {
                FRESH: (lambda z, out: distribution.normal_above(z), lambda z, out: sp.ndtr(-z)),
                IN_PLACE: (
                    lambda z, out: distribution.normal_above(z, out=out),
                    lambda z, out: sp.ndtr(np.negative(z, out=out), out=out),
                ),
            },
            "scipy.special.ndtr(-z)",
        ),
        Contest(
            "normal distribution, quantile",
            _between(1e-6, 1 - 1e-6),
            {
                FRESH: (lambda p, out: distribution.normal_quantile(p), lambda p, out: sp.ndtri(p)),
                IN_PLACE: (
                    lambda p, out: distribution.normal_quantile(p, out=out),
                    lambda p, out: sp.ndtri(p, out=out),
                ),
            },
            "scipy.special.ndtri(p)",
        ),
        Contest(
            "Student's t, upper tail, 9 degrees of freedom",
            _between(-5.0, 5.0),
            {
                FRESH: (lambda t, out: distribution.t_above(t, 9.0), lambda t, out: sp.stdtr(9.0, -t)),
                IN_PLACE: (
                    lambda t, out: distribution.t_above(t, 9.0, out=out),
                    lambda t, out: sp.stdtr(9.0, np.negative(t, out=out), out=out),
                ),
            },
            "scipy.special.stdtr(9, -t)",
        ),
        Contest(
            "conformance probability, rectangular and normal part",
            _measured,
            {
                FRESH: (
                    lambda x, out: conformance_probability(x, _LIMITS, u=_U, rectangular=_CLAUSE),
                    lambda x, out: _within(x),
                ),
                IN_PLACE: (
                    lambda x, out: conformance_probability(x, _LIMITS, u=_U, rectangular=_CLAUSE, out=out),
                    _within,
                ),
            },
            "closed form of scipy.special.ndtr and np.exp, in place inside",
            goal="conformance",
            agree=1e-9,  # absolute: the differences of the closed form cancel in its tails, and ours do not
        ),
    ]
