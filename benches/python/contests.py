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
from reckohm.sensor import Thermistor
from reckohm.uncertainty import Estimate
from reckohm.verdict import Limits, Rule, conformance_probability, judge

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


# Verdicts: the guard band is one number for all, found beforehand; what is left is the probability and two comparisons.
_RULE = Rule.guarded(0.05)
_VERDICT = judge(Estimate(4700.0, _U).with_rectangular(_CLAUSE), _LIMITS, _RULE)
_GUARD = float(_VERDICT.guard_band_ohm)


def _judged(x: Array, out: Array | None = None) -> tuple[Array, Array]:
    codes = np.full(x.shape, 3, dtype=np.uint8)
    codes[(x >= _LIMITS.lower_ohm + _GUARD) & (x <= _LIMITS.upper_ohm - _GUARD)] = 1
    codes[(x <= _LIMITS.lower_ohm - _GUARD) | (x >= _LIMITS.upper_ohm + _GUARD)] = 2
    return _within(x, out), codes


def _same_answers() -> None:
    x = _measured(np.random.default_rng(2), 10_000)[0]
    ours = judge(x, _LIMITS, _RULE, u=_U, rectangular=_CLAUSE)
    codes = np.where(ours.conforms, 1, np.where(ours.does_not_conform, 2, 3))
    np.testing.assert_array_equal(codes, _judged(x)[1], err_msg="verdicts")


# Thermistors, from resistance to temperature: by the B-value, and by Steinhart and Hart with three terms.
_R25, _B, _T25 = 10_000.0, 3977.0, 298.15
_BY_B = Thermistor.b_value(_R25, 25.0, _B, (25.0, 85.0)).with_domain((-40.0, 125.0))
_S = (1.129148e-3, 2.34125e-4, 8.76741e-8)
_BY_S = Thermistor.steinhart_hart(_S, 1.0, (-40.0, 125.0))
_C = _B / _T25 - float(np.log(_R25))


def _thermistor_ohms(random: np.random.Generator, count: int) -> tuple[Array, ...]:
    return (np.exp(random.uniform(np.log(400.0), np.log(200_000.0), count)),)


def _by_b_in_place(ohm: Array, out: Array) -> Array:
    np.log(ohm, out=out)
    out += _C
    np.divide(_B, out, out=out)
    out -= 273.15
    return out


def _by_s(ohm: Array) -> Array:
    log = np.log(ohm)
    return 1 / (_S[0] + log * (_S[1] + _S[2] * log * log)) - 273.15


def _by_s_in_place(ohm: Array, out: Array) -> Array:
    np.log(ohm, out=out)
    square = out * out
    square *= _S[2]
    square += _S[1]
    out *= square
    out += _S[0]
    np.divide(1, out, out=out)
    out -= 273.15
    return out


def contests() -> list[Contest]:
    """All of them."""
    _same_answers()
    return [
        Contest(
            "thermistor by its B-value, temperature",
            _thermistor_ohms,
            {
                FRESH: (
                    lambda ohm, out: _BY_B.temperature_c(ohm),
                    lambda ohm, out: _B / (np.log(ohm / _R25) + _B / _T25) - 273.15,
                ),
                IN_PLACE: (lambda ohm, out: _BY_B.temperature_c(ohm, out=out), _by_b_in_place),
            },
            "B / (np.log(ohm / R25) + B / T25) - 273.15",
            goal="conversion",
            agree=1e-10,
            agree_single=2e-3,  # absolute, in kelvin
        ),
        Contest(
            "thermistor by Steinhart and Hart, temperature",
            _thermistor_ohms,
            {
                FRESH: (lambda ohm, out: _BY_S.temperature_c(ohm), lambda ohm, out: _by_s(ohm)),
                IN_PLACE: (lambda ohm, out: _BY_S.temperature_c(ohm, out=out), _by_s_in_place),
            },
            "1 / (a + log * (b + c * log**2)) - 273.15, log = np.log(ohm)",
            goal="conversion",
            agree=1e-10,
            agree_single=2e-3,  # absolute, in kelvin
        ),
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
        Contest(
            "verdicts, rectangular and normal part, guarded",
            _measured,
            {
                FRESH: (
                    lambda x, out: judge(x, _LIMITS, _RULE, u=_U, rectangular=_CLAUSE).conformance_probability,
                    lambda x, out: _judged(x)[0],
                ),
            },
            "the closed form, and comparisons with the acceptance limits",
            goal="judge",
            agree=1e-9,
        ),
    ]
