"""Arrays have the bits of the float call: at every width of vector instructions, for any number of threads, however the
numbers lie in memory, in double and single precision."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Callable

import numpy as np
import pytest

from reckohm import _core, distribution, preferred, verdict
from reckohm.errors import RangeError
from reckohm.sensor import Thermistor

COUNT = 40_000
LIMITS = verdict.Limits.from_tolerance(4700, 0.05)
BY_B_VALUE = Thermistor.b_value(10_000, 25, 3977, (25, 85)).with_domain((-40, 125))
BY_COEFFICIENTS = Thermistor.steinhart_hart((1.129148e-3, 2.34125e-4, 8.76741e-8), 1, (-40, 125))


def conformance(value: Any, **options: Any) -> Any:
    return verdict.conformance_probability(value, LIMITS, u=3.0, rectangular=69.0, **options)


def general(value: Any, **options: Any) -> Any:
    return verdict.conformance_probability(value, LIMITS, u=3.0, dof=4, rectangular=69.0, **options)


def between(lower: float, upper: float) -> Callable[[Any, int], Any]:
    return lambda random, count: random.uniform(lower, upper, count)


# Function, arguments, how many, one that is refused.
FUNCTIONS: dict[str, tuple[Callable[..., Any], Callable[[Any, int], Any], int, float]] = {
    "nearest": (lambda x, **o: preferred.nearest(x, "E24", **o), lambda r, n: 10.0 ** r.uniform(-2, 7, n), COUNT, -1.0),
    "below": (lambda x, **o: preferred.below(x, "E96", **o), lambda r, n: 10.0 ** r.uniform(-2, 7, n), COUNT, 0.0),
    "above": (lambda x, **o: preferred.above(x, "E6", **o), lambda r, n: 10.0 ** r.uniform(-2, 7, n), COUNT, np.nan),
    "normal_below": (distribution.normal_below, between(-12, 12), 8 * COUNT, np.nan),
    "normal_above": (distribution.normal_above, between(-12, 12), 8 * COUNT, np.inf),
    "normal_quantile": (distribution.normal_quantile, between(1e-6, 1 - 1e-6), 4 * COUNT, 1.0),
    "normal_quantile_above": (distribution.normal_quantile_above, between(1e-6, 1 - 1e-6), 4 * COUNT, 0.0),
    "t_below": (lambda x, **o: distribution.t_below(x, 9, **o), between(-12, 12), COUNT, np.nan),
    "t_above": (lambda x, **o: distribution.t_above(x, 0.5, **o), between(-12, 12), COUNT, np.inf),
    "t_quantile": (lambda x, **o: distribution.t_quantile(x, 9, **o), between(1e-4, 1 - 1e-4), 2000, 2.0),
    "t_quantile_above": (lambda x, **o: distribution.t_quantile_above(x, 3, **o), between(1e-4, 1 - 1e-4), 2000, 0.0),
    "B-value, resistance": (BY_B_VALUE.resistance_ohm, between(-40, 125), 4 * COUNT, np.nan),
    "B-value, slope": (BY_B_VALUE.slope, between(-40, 125), 4 * COUNT, 125.5),
    "B-value, temperature": (BY_B_VALUE.temperature_c, between(500, 100_000), 4 * COUNT, -1.0),
    "Steinhart-Hart, resistance": (BY_COEFFICIENTS.resistance_ohm, between(-40, 125), 4 * COUNT, np.inf),
    "Steinhart-Hart, slope": (BY_COEFFICIENTS.slope, between(-40, 125), 4 * COUNT, np.nan),
    "Steinhart-Hart, temperature": (BY_COEFFICIENTS.temperature_c, between(500, 100_000), 4 * COUNT, np.nan),
    "conformance": (conformance, between(4350, 5050), COUNT, np.nan),
    "conformance, general shape": (general, between(4350, 5050), 2000, np.nan),
}


@pytest.fixture(params=FUNCTIONS)
def given(request: pytest.FixtureRequest) -> tuple[Callable[..., Any], Any, float]:
    function, draw, count, bad = FUNCTIONS[request.param]
    return function, draw(np.random.default_rng(20), count), bad


@pytest.fixture(autouse=True)
def unlimited() -> Iterator[None]:
    yield
    _core._limit_threads(0)
    _core._limit_vector_bits(512)


def bits(array: Any) -> list[int]:
    return np.ascontiguousarray(array).view(f"u{array.dtype.itemsize}").tolist()


def test_one_number_at_a_time(given: tuple[Callable[..., Any], Any, float]) -> None:
    function, x, _ = given
    x = x[:500]
    assert bits(function(x)) == bits(np.array([function(float(each)) for each in x]))
    single = x.astype(np.float32)
    alone = np.array([function(each) for each in single])
    assert alone.dtype == np.float32 and bits(function(single)) == bits(alone)
    np.testing.assert_allclose(function(single), function(single.astype(np.float64)), rtol=2e-3, atol=1e-5)


@pytest.mark.parametrize("kind", [np.float64, np.float32])
def test_widths_and_threads(given: tuple[Callable[..., Any], Any, float], kind: Any) -> None:
    function, x, bad = given
    x = x.astype(kind)
    _core._limit_threads(1)
    expected = function(x)
    assert expected.dtype == kind
    wanted = bits(expected)
    for width in (128, 256, 512):
        _core._limit_vector_bits(width)
        for threads in (1, 2, 3):
            _core._limit_threads(threads)
            assert bits(function(x)) == wanted, (width, threads)
    out = np.full_like(x, -7)
    assert function(x, out=out) is out and bits(out) == wanted
    wrong = x.copy()
    wrong[-5:-3] = bad
    out[:] = -7
    with pytest.raises(RangeError) as caught:
        function(wrong, out=out)
    assert (caught.value.index, caught.value.failed) == (x.size - 5, 2)
    assert (out == -7).all()
    with pytest.raises(RangeError):
        function(wrong)
    values = function(wrong, on_invalid="nan")
    assert np.flatnonzero(np.isnan(values)).tolist() == [x.size - 5, x.size - 4]
    assert bits(values[:-5]) == wanted[:-5] and bits(values[-3:]) == wanted[-3:]


def test_layouts(given: tuple[Callable[..., Any], Any, float]) -> None:
    function, x, _ = given
    wanted = bits(function(x))
    spread = np.zeros(3 * x.size)
    spread[1::3] = x
    assert bits(function(spread[1::3])) == wanted
    assert bits(function(x[::-1])) == wanted[::-1]
    assert bits(function(x.astype(">f8"))) == wanted
    table = x.reshape(4, -1)
    assert bits(function(table).ravel()) == wanted
    assert bits(function(np.asfortranarray(table)).ravel()) == wanted
    # By NumPy itself, as a lazy array's chunk would come: strided in and out, broadcast, and in place.
    out = np.zeros(2 * x.size)[::2]
    assert function(spread[1::3], out=out) is out and bits(out) == wanted
    assert bits(function(x, out=np.zeros_like(x), where=np.full(x.size, True))) == wanted
    in_place = x.copy()
    function(in_place, out=in_place)
    assert bits(in_place) == wanted


def test_numbers_for_each_element() -> None:
    random = np.random.default_rng(7)
    values, u = random.uniform(4350, 5050, 5000), random.choice([0.0, 0.5, 3.0, 20.0], 5000)
    clause, dof = random.choice([0.0, 69.0, 150.0], 5000), np.full(5000, np.inf)
    dof[::500] = 4
    result = verdict.conformance_probability(values, LIMITS, u=u, dof=dof, rectangular=clause)
    alone = [
        verdict.conformance_probability(float(v), LIMITS, u=float(s), dof=float(n), rectangular=float(a))
        for v, s, n, a in zip(values, u, dof, clause)
    ]
    assert bits(result) == bits(np.array(alone))
    dofs = random.choice([0.5, 4.0, np.inf], 5000)
    by_array = distribution.t_above(np.full(5000, 1.5), dofs)
    assert bits(by_array) == bits(np.array([distribution.t_above(1.5, float(n)) for n in dofs]))
    # The two shapes differ: NumPy broadcasts.
    table = distribution.t_above(np.array([[0.5], [1.5]]), dofs)
    assert table.shape == (2, 5000) and bits(table[1]) == bits(by_array)
