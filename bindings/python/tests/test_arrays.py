"""Every vector function on every shape and type of array: the same numbers as the float call, and nothing half done."""

from __future__ import annotations

import pickle
from dataclasses import dataclass
from typing import Any, Callable

import numpy as np
import pandas as pd
import pytest

from reckohm import distribution, preferred, verdict
from reckohm.errors import ChoiceError, InputTypeError, MissingError, RangeError


@dataclass(frozen=True)
class Case:
    """A function of one number, six good arguments and a bad one."""

    name: str
    function: Callable[..., Any]
    good: tuple[float, ...]
    bad: float
    truth: bool = False

    def expected(self) -> list[Any]:
        return [self.function(x) for x in self.good]

    def out(self, size: int = 6) -> Any:
        """An output that holds what no result is."""
        return np.full(size, True) if self.truth else np.full(size, -7.0)


def with_series(name: str) -> Callable[..., Any]:
    function = getattr(preferred, name)
    return lambda ohm, **options: function(ohm, "E24", **options)


def with_dof(name: str) -> Callable[..., Any]:
    function = getattr(distribution, name)
    return lambda x, **options: function(x, 3.5, **options)


def within_limits(value: Any, **options: Any) -> Any:
    limits = verdict.Limits.from_tolerance(1000, 0.01)
    return verdict.conformance_probability(value, limits, u=0.5, dof=4, rectangular=2, **options)


OHMS = (0.47, 1.1, 4700.0, 4900.0, 9.7e3, 1e6)
CASES = [
    Case("nearest", with_series("nearest"), OHMS, -2.0),
    Case("below", with_series("below"), OHMS, 0.0),
    Case("above", with_series("above"), OHMS, float("inf")),
    Case("contains", with_series("contains"), OHMS, float("nan"), truth=True),
    Case("normal_above", distribution.normal_above, (-40.0, -1.5, 0.0, 0.5, 8.0, 37.0), float("inf")),
    Case("normal_quantile", distribution.normal_quantile, (1e-300, 1e-9, 0.05, 0.5, 0.95, 0.999), 1.0),
    Case("t_above", with_dof("t_above"), (-30.0, -1.5, 0.25, 0.5, 8.0, 1e6), float("nan")),
    Case("t_quantile", with_dof("t_quantile"), (1e-9, 0.05, 0.25, 0.75, 0.95, 0.999), 95.0),
    Case("conformance", within_limits, (0.1, 990.0, 1000.0, 1009.9, 1010.0, 1e6), float("nan")),
]


@pytest.fixture(params=CASES, ids=lambda case: case.name)
def case(request: pytest.FixtureRequest) -> Case:
    return request.param


def same(result: Any, expected: list[Any]) -> None:
    assert np.asarray(result).ravel().tolist() == expected


def test_floats_in_floats_out(case: Case) -> None:
    kind = bool if case.truth else float
    for x, expected in zip(case.good, case.expected()):
        for given in (x, np.float64(x), np.array(x)):
            result = case.function(given)
            assert type(result) is kind and result == expected


@pytest.mark.parametrize("shape", [(6,), (2, 3), (1, 6, 1), (3, 2)])
def test_shapes(case: Case, shape: tuple[int, ...]) -> None:
    result = case.function(np.array(case.good).reshape(shape))
    assert result.shape == shape
    same(result, case.expected())


@pytest.mark.parametrize("shape", [(0,), (0, 3), (2, 0)])
def test_nothing_in_nothing_out(case: Case, shape: tuple[int, ...]) -> None:
    assert case.function(np.empty(shape)).shape == shape
    values, valid = case.function(np.empty(shape), on_invalid="mask")
    assert values.shape == valid.shape == shape


def test_layouts(case: Case) -> None:
    good = np.array(case.good)
    spread = np.full(18, case.bad)
    spread[1::3] = good
    read_only = good.copy()
    read_only.flags.writeable = False
    unaligned = np.frombuffer(b"x" + good.tobytes(), dtype=np.uint8)[1:].view(np.float64)
    for given in (spread[1::3], read_only, good.astype(">f8"), good.astype("<f8"), unaligned, list(case.good)):
        same(case.function(given), case.expected())
    same(case.function(good[::-1]), case.expected()[::-1])
    same(case.function(np.asfortranarray(good.reshape(2, 3))), case.expected())
    same(case.function(good.astype(np.longdouble)), case.expected())


def test_out_is_returned_and_filled(case: Case) -> None:
    out = case.out()
    assert case.function(np.array(case.good), out=out) is out
    same(out, case.expected())
    if not case.truth:
        big_endian = np.zeros(12, dtype=">f8")[::2]
        assert case.function(list(case.good), out=big_endian) is big_endian
        same(big_endian, case.expected())
        in_place = np.array(case.good)
        case.function(in_place, out=in_place)
        same(in_place, case.expected())
        overlapping = np.array([*case.good, 0.0])
        case.function(overlapping[:6], out=overlapping[1:])
        same(overlapping[1:], case.expected())


@pytest.mark.parametrize("out", [np.zeros(6, "f4"), np.zeros(6, "i8"), [0.0] * 6, "text"], ids=["f4", "i8", "list", "str"])
def test_out_of_another_type_is_refused(case: Case, out: Any) -> None:
    with pytest.raises(InputTypeError, match="out: "):
        case.function(np.array(case.good), out=out)


def test_out_that_cannot_be_written(case: Case) -> None:
    out = case.out()
    out.flags.writeable = False
    with pytest.raises(InputTypeError, match="read-only"):
        case.function(np.array(case.good), out=out)
    with pytest.raises(ValueError):
        case.function(np.array(case.good), out=case.out(5))


def test_where_leaves_the_others_alone(case: Case) -> None:
    given = np.array([case.bad, *case.good])
    where = np.array([False] + [True] * 6)
    out = case.out(7)
    untouched = out[0].item()
    case.function(given, out=out, where=where)
    assert out.tolist() == [untouched, *case.expected()]
    with pytest.raises(MissingError, match="give out"):
        case.function(given, where=where)
    with pytest.raises(InputTypeError, match="where: "):
        case.function(given, out=out, where=[1, 0, 1, 1, 1, 1, 1])


def test_error_names_the_first_and_counts_all(case: Case) -> None:
    given = np.array([[*case.good[:3]], [case.good[3], case.bad, case.bad]])
    out = case.out().reshape(2, 3)
    before = out.copy()
    with pytest.raises(RangeError) as caught:
        case.function(given, out=out)
    assert (out == before).all()
    error = caught.value
    assert error.index == (1, 1) and error.failed == 2
    assert error.given == case.bad or np.isnan(case.bad)
    assert str(error).startswith("element (1, 1): ") and "(2 of 6 elements failed)" in str(error)
    with pytest.raises(RangeError) as caught:
        case.function([case.good[0], case.bad])
    assert caught.value.index == 1 and caught.value.failed == 1


def test_a_float_fails_as_an_array_does(case: Case) -> None:
    errors = []
    for given in (case.bad, np.array(case.bad), np.array([case.bad]), pd.Series([case.bad]), np.float32(case.bad)):
        with pytest.raises(RangeError) as caught:
            case.function(given)
        errors.append(caught.value)
    assert len({type(error) for error in errors}) == 1
    assert len({(error.status, error.row) for error in errors}) == 1
    assert str(errors[0]) == str(errors[1]) and str(errors[0]) in str(errors[2])


def test_on_invalid(case: Case) -> None:
    given = np.array([case.good[0], case.bad])
    first = case.expected()[0]
    if case.truth:
        with pytest.raises(ChoiceError, match="yes or no"):
            case.function(given, on_invalid="nan")
    else:
        result = case.function(given, on_invalid="nan")
        assert result[0] == first and np.isnan(result[1])
        assert np.isnan(case.function(case.bad, on_invalid="nan"))
    values, valid = case.function(given, on_invalid="mask")
    assert values[0] == first and valid.tolist() == [True, False]
    value, is_valid = case.function(case.good[0], on_invalid="mask")
    assert value == first and is_valid is True
    assert case.function(case.bad, on_invalid="mask")[1] is False
    out = case.out(2)
    untouched = out[1].item()
    assert case.function(given, on_invalid="mask", out=out)[0] is out
    assert out.tolist() == [first, untouched]
    with pytest.raises(ChoiceError, match="on_invalid"):
        case.function(given, on_invalid="ignore")


@pytest.mark.parametrize(
    "given",
    [True, np.True_, np.array([True]), "4700", ["4700"], None, [None], 1j, np.array([1j]), [[1.0], [1.0, 2.0]], {}, b"1"],
    ids=repr,
)
def test_what_is_no_number_is_refused(case: Case, given: Any) -> None:
    with pytest.raises(InputTypeError):
        case.function(given)


@pytest.mark.parametrize("dtype", ["bool", "str", "object", "datetime64[ns]"])
def test_series_of_another_type_are_refused(case: Case, dtype: str) -> None:
    with pytest.raises(InputTypeError):
        case.function(pd.Series([1, 2]).astype(dtype))


def test_masked_arrays(case: Case) -> None:
    given = np.ma.array([case.bad, *case.good], mask=[True] + [False] * 6)
    result = case.function(given)
    assert isinstance(result, np.ma.MaskedArray)
    assert result.mask.tolist() == given.mask.tolist()
    same(result.compressed(), case.expected())
    with pytest.raises(RangeError) as caught:
        case.function(np.ma.array([case.bad, case.bad], mask=[True, False]))
    assert caught.value.index == 1 and caught.value.failed == 1


def test_pandas(case: Case) -> None:
    series = pd.Series(case.good, index=list("abcdef"), name="tray")
    result = case.function(series)
    assert isinstance(result, pd.Series) and list(result.index) == list("abcdef") and result.name == "tray"
    same(result, case.expected())
    frame = case.function(pd.DataFrame({"x": case.good, "y": case.good}))
    same(frame["y"], case.expected())
    with pytest.raises(RangeError) as caught:
        case.function(pd.Series([case.good[0], case.bad], index=["p", "q"]))
    assert caught.value.index == 1 and caught.value.failed == 1
    values, valid = case.function(pd.Series([case.good[0], case.bad]), on_invalid="mask")
    assert valid.tolist() == [True, False] and values[0] == case.expected()[0]
    out = case.out()
    assert case.function(series, out=out) is out
    same(out, case.expected())


def test_a_null_is_no_number(case: Case) -> None:
    with pytest.raises(RangeError):
        case.function(pd.Series([case.good[0], None], dtype="Float64"))


def test_ints_are_numbers() -> None:
    assert preferred.nearest(1, "E12") == 1.0
    assert preferred.nearest(np.array([1, 5], dtype=np.int16), "E12").tolist() == [1.0, 4.7]
    assert preferred.nearest(np.full(20_001, 5), "E12").tolist() == [4.7] * 20_001  # more than one of NumPy's blocks


def test_single_precision_of_preferred_values() -> None:
    given = np.array([0.47, 1.1], dtype=np.float32)
    result = preferred.nearest(given, "E12")
    assert result.dtype == np.float32 and result.tolist() == [np.float32(0.47), 1.0]
    assert preferred.contains(given, "E12").tolist() == [True, False]
    assert preferred.contains(np.float32(0.47), "E12") is True
    assert type(preferred.nearest(np.float32(0.5), "E12")) is np.float32
    assert preferred.nearest(pd.Series(given), "E12").dtype == np.float32
    with pytest.raises(InputTypeError, match="out: float64"):
        preferred.nearest(given, "E12", out=np.zeros(2))


def test_single_precision_beside_double_is_widened() -> None:
    single = np.array([0.1], dtype=np.float32)
    result = distribution.t_above(single, np.array([4.0]))
    assert result.dtype == np.float64 and result[0] == distribution.t_above(float(single[0]), 4)
    assert distribution.t_above(single, 4).dtype == np.float32


def test_pickles_by_name() -> None:
    for name in preferred.__all__:
        function = getattr(preferred, name)
        assert pickle.loads(pickle.dumps(function)) is function
