"""The distributions at this door: shapes, broadcasting, what is refused."""

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from reckohm import distribution
from reckohm.distribution import normal_above, t_above, t_quantile_above
from reckohm.errors import RangeError


def test_values_and_degrees_of_freedom_broadcast() -> None:
    t = np.array([[0.5], [2.0], [30.0]])
    dof = np.array([0.5, 4.0, np.inf])
    result = t_above(t, dof)
    assert result.shape == (3, 3)
    assert result.tolist() == [[t_above(x, n) for n in dof] for x in t[:, 0]]
    assert result[1, 2] == normal_above(2.0)


def test_a_float_gives_a_float_and_a_list_an_array() -> None:
    assert type(normal_above(1)) is float
    assert normal_above([0, 0]).tolist() == [0.5, 0.5]
    assert normal_above([]).shape == (0,)


def test_a_quantile_beyond_the_doubles_is_refused_with_what_is_allowed() -> None:
    with pytest.raises(RangeError, match="quantile of Student's t: probability 1e-300 given") as refused:
        t_quantile_above(1e-300, 0.1)
    assert refused.value.status == 5
    assert refused.value.given == 1e-300
    assert refused.value.allowed == (t_above(np.finfo(float).max, 0.1), 1.0)
    out = np.full(3, 7.0)
    with pytest.raises(RangeError):
        t_quantile_above([0.1, 1e-300, 1e-200], 0.1, out=out)
    assert out.tolist() == [7.0] * 3
    values, valid = t_quantile_above([0.1, 1e-300], 0.1, on_invalid="mask")
    assert valid.tolist() == [True, False]
    assert values[0] == t_quantile_above(0.1, 0.1)


@pytest.mark.parametrize("name", distribution.__all__)
def test_bad_arguments_are_refused(name: str) -> None:
    function: Callable[..., Any] = getattr(distribution, name)
    more = (4.0,) if name.startswith("t_") else ()
    for bad in (float("nan"), float("inf")):
        with pytest.raises(RangeError) as refused:
            function(bad, *more)
        assert refused.value.status == 2
    if "quantile" in name:
        with pytest.raises(RangeError, match="95 % is 0.95"):
            function(95, *more)
    if more:
        with pytest.raises(RangeError, match="degrees of freedom"):
            function(0.5, 0)
