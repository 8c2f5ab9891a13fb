"""Thermistors in Python: what a notebook does with them, and what it is told when it goes wrong."""

from __future__ import annotations

import numpy as np
import pandas as pd
import pytest

from reckohm.errors import ContradictionError, InputTypeError, RangeError
from reckohm.sensor import Thermistor
from reckohm.uncertainty import Estimate

FROST = Thermistor.b_value(10_000, 25, 3977, (25, 85)).with_domain((-25, 85))
EXACT = Thermistor.steinhart_hart([1.129148e-3, 2.34125e-4, 8.76741e-8], 1.0, (-40, 125))


@pytest.mark.parametrize("thermistor", [FROST, EXACT], ids=lambda thermistor: thermistor.formula)
@pytest.mark.parametrize("dtype", [np.float32, np.float64])
def test_there_and_back(thermistor: Thermistor, dtype: type) -> None:
    temperatures = np.linspace(*thermistor.domain_c, 1001).astype(dtype)
    back = thermistor.temperature_c(thermistor.resistance_ohm(temperatures))
    assert back.dtype == dtype
    assert np.abs(back - temperatures).max() < (1e-11 if dtype is np.float64 else 1e-3)


@pytest.mark.parametrize("thermistor", [FROST, EXACT], ids=lambda thermistor: thermistor.formula)
def test_slope_is_that_of_the_curve(thermistor: Thermistor) -> None:
    temperatures, step = np.linspace(-20, 80, 41), 1e-4
    ends = [thermistor.resistance_ohm(temperatures + sign * step) for sign in (-1, 1)]
    assert thermistor.slope(temperatures) == pytest.approx((ends[1] - ends[0]) / (2 * step), rel=1e-7)


def test_arrays_are_the_scalars_in_any_form() -> None:
    ohm = np.linspace(2000.0, 40_000.0, 24).reshape(2, 3, 4)
    expected = [[[FROST.temperature_c(float(x)) for x in row] for row in block] for block in ohm]
    assert (FROST.temperature_c(ohm) == expected).all()
    assert (FROST.temperature_c(ohm[:, ::-1, ::2]) == np.array(expected)[:, ::-1, ::2]).all()
    assert (FROST.temperature_c(ohm.astype(">f8")) == expected).all()
    series = pd.Series([10_000.0, 20_000.0], index=["vent", "door"], name="ohm")
    found = FROST.temperature_c(series)
    assert list(found.index) == ["vent", "door"] and found["vent"] == 25.0
    out = np.zeros(2)
    assert FROST.temperature_c([10_000.0, 1100.0], out=out) is out and out[0] == 25.0


def test_bad_elements() -> None:
    ohm = [10_000.0, 5.0, float("nan")]
    with pytest.raises(RangeError) as caught:
        FROST.temperature_c(ohm)
    assert (caught.value.index, caught.value.failed) == (1, 2) and "5 ohm given" in str(caught.value)
    values, valid = FROST.temperature_c(ohm, on_invalid="mask")
    assert valid.tolist() == [True, False, False] and values[0] == 25.0
    found = FROST.temperature_c(ohm, on_invalid="nan")
    assert found[0] == 25.0 and np.isnan(found[1:]).all()


@pytest.mark.parametrize("given", [0.0, -1.0, float("nan"), float("inf")])
def test_what_was_given_and_what_is_allowed(given: float) -> None:
    for x in (given, np.array([10_000.0, given])):
        with pytest.raises(RangeError) as caught:
            FROST.temperature_c(x)
        assert repr(caught.value.given) == repr(given) and caught.value.allowed == FROST.ends_ohm


def test_no_model_in_single_precision() -> None:
    narrow = FROST.with_domain((20.0, np.nextafter(20.0, 21.0)))
    assert narrow.resistance_ohm(20.0) == FROST.resistance_ohm(20.0)
    with pytest.raises(ContradictionError, match="the lower one first"):
        narrow.resistance_ohm(np.array([20.0], dtype=np.float32))


def test_an_estimate_in_gives_one_out() -> None:
    given = Estimate(10_000).with_rectangular(100).with_one_sided(0, 50)
    found = FROST.temperature_c(given)
    assert found.value == 25.0 and found.rectangular[0] == pytest.approx(100 / abs(FROST.slope(25)))
    # A higher resistance is a lower temperature: the one-sided part changes sides.
    assert found.below == pytest.approx(50 / abs(FROST.slope(25))) and found.above == 0.0
    back = FROST.resistance_ohm(found)
    assert back.value == 10_000.0 and back.rectangular[0] == pytest.approx(100)
    with pytest.raises(InputTypeError, match="options given beside an Estimate"):
        FROST.temperature_c(given, on_invalid="nan")


def test_what_each_formula_knows() -> None:
    assert (FROST.formula, FROST.rated_ohm, FROST.b_temperatures_c) == ("B-value", 10_000.0, (25.0, 85.0))
    assert FROST.coefficients is None and FROST.reference_ohm is None
    assert (EXACT.formula, EXACT.reference_ohm, EXACT.rated_ohm) == ("Steinhart-Hart", 1.0, None)
    assert EXACT.coefficients == (1.129148e-3, 2.34125e-4, 0.0, 8.76741e-8)
    lowest, highest = FROST.ends_ohm
    assert FROST.resistance_ohm(85.0) == lowest and FROST.resistance_ohm(-25.0) == highest
    assert FROST != EXACT and FROST != FROST.with_domain((-25, 84))


def test_mistakes_are_told() -> None:
    with pytest.raises(ContradictionError, match="both of its temperatures"):
        Thermistor.b_value(10_000, 25, 3977, (25, 25))
    with pytest.raises(ContradictionError, match="check the order"):
        Thermistor.steinhart_hart([1.129148e-3, 8.76741e-8, 2.34125e-4], 1.0, (-40, 125))
    with pytest.raises(ContradictionError, match="the lower one first"):
        FROST.with_domain((85, -25))
    for coefficients in ([1e-3, 2e-4], [1e-3] * 5, 1e-3, "abc", None, {1e-3, 2e-4, 9e-8}, {1e-3: 1, 2e-4: 2, 9e-8: 3}):
        with pytest.raises(InputTypeError):
            Thermistor.steinhart_hart(coefficients, 1.0, (-40, 125))  # type: ignore[arg-type]
    with pytest.raises(TypeError):
        Thermistor(1)  # type: ignore[call-arg]


def test_the_table_of_a_notebook() -> None:
    table = FROST._repr_html_()
    assert "B25/85 = 3977 K" in table and "<td>-25</td>" in table and "zero power" in table
    assert "a = 0.00112915" in EXACT._repr_html_()
