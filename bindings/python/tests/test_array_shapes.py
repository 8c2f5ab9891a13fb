"""Arrays of any shape, type, layout and mask, made by hypothesis: element by element they are what the call with a float gives."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Callable

import hypothesis
import numpy as np
import pandas as pd
import polars as pl
import pytest
from hypothesis import strategies as st
from hypothesis.extra import numpy as hnp

from reckohm import distribution, preferred, verdict
from reckohm.errors import InputTypeError, ReckohmError
from reckohm.sensor import Thermistor

LIMITS = verdict.Limits.from_tolerance(1000, 0.01)
THERMISTOR = Thermistor.b_value(10_000, 25, 3977, (25, 85)).with_domain((-25, 100))
BEFORE = -7.25


@dataclass(frozen=True)
class Form:
    """A function of one or two columns, and what its columns are made of."""

    name: str
    function: Callable[..., Any]
    columns: tuple[tuple[float, ...], ...]
    truth: bool = False


def in_series(name: str, series: str) -> Callable[..., Any]:
    function = getattr(preferred, name)
    return lambda ohm, **options: function(ohm, series, **options)


def conforming(value: Any, u: Any, **options: Any) -> Any:
    return verdict.conformance_probability(value, LIMITS, u=u, rectangular=2.0, **options)


NAN, INF = float("nan"), float("inf")
# Mostly legal, so that whole arrays succeed now and then; zero to three elements of each are refused.
OHMS = (0.47, 1.0, 4.7, 100.0, 4900.0, 9.7e3, 1e6, 5e-9, 1e15, 0.0, -2.0, NAN)
CHANCES = (1e-3, 0.05, 0.25, 0.5, 0.75, 0.95, 0.999, 1.0, NAN)
PLACES = (-30.0, -1.5, -0.0, 0.0, 0.25, 1.0, 8.0, 37.0, 1e300, -INF)
CELSIUS = (-25.0, -0.0, 3.0, 25.0, 37.5, 85.0, 99.0, 100.0, -26.0, INF)
THERMISTOR_OHMS = (97_000.0, 3e4, 10_000.0, 5e3, 1100.0, 1e3, 700.0, 100.0, 0.0, NAN)
DOFS = (0.5, 1.0, 2.5, 3.0, 30.0, INF, 0.0)
FORMS = [
    Form("nearest", in_series("nearest", "E24"), (OHMS,)),
    Form("below", in_series("below", "E192"), (OHMS,)),
    Form("above", in_series("above", "E3"), (OHMS,)),
    Form("contains", in_series("contains", "E12"), (OHMS,), truth=True),
    Form("normal_below", distribution.normal_below, (PLACES,)),
    Form("normal_above", distribution.normal_above, (PLACES,)),
    Form("normal_quantile", distribution.normal_quantile, (CHANCES,)),
    Form("normal_quantile_above", distribution.normal_quantile_above, (CHANCES,)),
    Form("t_below", distribution.t_below, (PLACES, DOFS)),
    Form("t_above", distribution.t_above, (PLACES, DOFS)),
    Form("t_quantile", distribution.t_quantile, (CHANCES, DOFS)),
    Form("t_quantile_above", distribution.t_quantile_above, (CHANCES, DOFS)),
    Form("thermistor resistance_ohm", THERMISTOR.resistance_ohm, (CELSIUS,)),
    Form("thermistor slope", THERMISTOR.slope, (CELSIUS,)),
    Form("thermistor temperature_c", THERMISTOR.temperature_c, (THERMISTOR_OHMS,)),
    Form("conformance", conforming, (OHMS, (0.0, 0.5, 1.0, 2.0, -1.0))),
]
FLOATS = ["f8", ">f8", "f4", ">f4", "f2", "g"]
INTS = ["i1", "i8", ">i4", "u2", "u8"]
each = pytest.mark.parametrize("form", FORMS, ids=lambda form: form.name)
tried = hypothesis.settings(max_examples=40, deadline=None, derandomize=True)


@st.composite
def layout(draw: st.DrawFn, array: Any) -> Any:
    """The same elements laid out differently, or some of them: steps, backwards, turned, repeated without a copy."""
    choice = draw(st.sampled_from(["as it is", "steps", "turned", "repeated", "read-only", "Fortran", "unaligned"]))
    if choice == "steps" and array.ndim:
        return array[draw(hnp.basic_indices(array.shape, allow_ellipsis=False))]
    if choice == "turned":
        return array.T
    if choice == "repeated":
        return np.broadcast_to(array, (2, *array.shape))
    if choice == "Fortran":
        return np.asfortranarray(array)
    if choice == "unaligned":
        moved = np.frombuffer(b"x" + array.tobytes(), dtype=np.uint8)[1:]
        return moved.view(array.dtype).reshape(array.shape) if array.size else array
    array = array.copy()
    array.flags.writeable = choice != "read-only"
    return array


@st.composite
def columns(draw: st.DrawFn, form: Form, dtypes: list[str]) -> tuple[Any, ...]:
    """One array a column, of shapes that broadcast together."""
    shapes = draw(hnp.mutually_broadcastable_shapes(num_shapes=len(form.columns), max_dims=3, max_side=4)).input_shapes
    made = []
    for shape, elements in zip(shapes, form.columns):
        dtype = np.dtype(draw(st.sampled_from(dtypes)))
        if dtype.kind != "f":
            elements = tuple(x for x in elements if x == x // 1 and 0 <= x < 127) + (3.0,)
        few = elements if draw(st.booleans()) else elements[: max(len(elements) // 2, 1)]
        with np.errstate(over="ignore"):
            values = np.array(draw(st.lists(st.sampled_from(few), min_size=prod(shape), max_size=prod(shape))), dtype="f8")
            made.append(values.reshape(shape).astype(dtype))
    laid = tuple(draw(layout(array)) for array in made)
    try:
        np.broadcast_shapes(*(np.shape(array) for array in laid))
    except ValueError:
        return tuple(made)
    return laid


def prod(shape: tuple[int, ...]) -> int:
    return int(np.prod(shape, dtype=int))


def one_by_one(form: Form, arrays: tuple[Any, ...]) -> tuple[tuple[int, ...], list[Any]]:
    """The shape of the result and each element's: a number, or the exception."""
    spread = np.broadcast_arrays(*arrays)
    # A float beside an array of single precision goes with it; two arrays of different precision are widened.
    single = all((array.dtype.kind, array.dtype.itemsize) == ("f", 4) for array in arrays)
    results: list[Any] = []
    for place in np.ndindex(spread[0].shape):
        given = [(np.float32 if single else float)(array[place]) for array in spread]
        try:
            results.append(form.function(*given))
        except ReckohmError as error:
            results.append(error)
    return spread[0].shape, results


def agree(found: Any, expected: list[Any]) -> None:
    """To the bit, signs of zeros included."""
    assert [(np.float64(x).tobytes(), bool(x)) for x in np.asarray(found).ravel()] == [
        (np.float64(x).tobytes(), bool(x)) for x in expected
    ]


def first_failure(expected: list[Any]) -> int | None:
    return next((place for place, result in enumerate(expected) if isinstance(result, Exception)), None)


def holds_failure(error: ReckohmError, shape: tuple[int, ...], expected: list[Any]) -> None:
    first = first_failure(expected)
    assert first is not None, error
    alone = expected[first]
    assert type(error) is type(alone) and (error.status, error.row) == (alone.status, alone.row)
    assert error.given == alone.given or error.given != error.given
    if shape == ():
        return
    index = tuple(int(i) for i in np.unravel_index(first, shape))
    assert error.index == (index[0] if len(index) == 1 else index)
    assert error.failed == sum(isinstance(result, Exception) for result in expected)
    assert str(alone) in str(error)


@each
@tried
@hypothesis.given(data=st.data())
def test_an_array_is_its_elements(form: Form, data: st.DataObject) -> None:
    arrays = data.draw(columns(form, FLOATS + INTS))
    shape, expected = one_by_one(form, arrays)
    try:
        result = form.function(*arrays)
    except ReckohmError as error:
        holds_failure(error, shape, expected)
        return
    assert first_failure(expected) is None
    assert np.shape(result) == shape
    agree(result, expected)


@each
@tried
@hypothesis.given(data=st.data())
def test_an_output_is_written_in_whole_or_not_at_all(form: Form, data: st.DataObject) -> None:
    arrays = data.draw(columns(form, ["f8", ">f8", "i4"]))
    shape, expected = one_by_one(form, arrays)
    whole = np.full((2, *shape), True if form.truth else BEFORE)
    out = whole[0, ...]
    try:
        assert form.function(*arrays, out=out) is out
    except ReckohmError as error:
        holds_failure(error, shape, expected)
        assert (whole == (True if form.truth else BEFORE)).all()
        return
    agree(out, expected)
    assert (whole[1] == (True if form.truth else BEFORE)).all()


@each
@tried
@hypothesis.given(data=st.data())
def test_where_and_masks_leave_the_others_alone(form: Form, data: st.DataObject) -> None:
    arrays = data.draw(columns(form, ["f8", ">f8"]))
    shape, expected = one_by_one(form, arrays)
    taken = data.draw(hnp.arrays(bool, shape))
    before = True if form.truth else BEFORE
    chosen = [result if take else before for result, take in zip(expected, taken.ravel())]
    out = np.full(shape, before)
    try:
        form.function(*arrays, out=out, where=taken)
    except ReckohmError as error:
        holds_failure(error, shape, chosen)
        assert (out == before).all()
    else:
        assert first_failure(chosen) is None
        agree(out, chosen)
    masked = np.ma.array(np.broadcast_to(arrays[0], shape), mask=~taken)
    try:
        result = form.function(masked, *arrays[1:])
    except ReckohmError as error:
        holds_failure(error, shape, chosen)
    else:
        assert (np.ma.getmaskarray(result) == ~taken).all()
        agree(np.ma.getdata(result)[taken], [x for x, take in zip(expected, taken.ravel()) if take])


@each
@tried
@hypothesis.given(data=st.data())
def test_a_mask_says_where_a_number_stands(form: Form, data: st.DataObject) -> None:
    arrays = data.draw(columns(form, ["f8"]))
    shape, expected = one_by_one(form, arrays)
    values, valid = form.function(*arrays, on_invalid="mask")
    assert np.shape(values) == np.shape(valid) == shape
    assert np.ravel(valid).tolist() == [not isinstance(result, Exception) for result in expected]
    agree(np.ravel(values)[np.ravel(valid)], [result for result in expected if not isinstance(result, Exception)])
    if not form.truth:
        marked = form.function(*arrays, on_invalid="nan")
        assert (np.isnan(np.ravel(marked)) == ~np.ravel(valid)).all()


@each
@tried
@hypothesis.given(data=st.data())
def test_what_holds_no_numbers_is_refused(form: Form, data: st.DataObject) -> None:
    dtype = data.draw(st.sampled_from(["?", "O", "U2", "S2", "c16", "M8[s]", "m8[s]", "V3"]))
    given = np.zeros(data.draw(hnp.array_shapes(min_dims=0, max_dims=3, min_side=0, max_side=3)), dtype=dtype)
    others = [column[0] for column in form.columns[1:]]
    with pytest.raises(InputTypeError):
        form.function(given, *others)


@each
@tried
@hypothesis.given(data=st.data())
def test_a_null_is_refused_or_marked_where_it_stands(form: Form, data: st.DataObject) -> None:
    values = data.draw(st.lists(st.sampled_from((*form.columns[0][:7], None)), min_size=1, max_size=6))
    others = [column[0] for column in form.columns[1:]]
    missing = [value is None for value in values]
    for series in (pd.Series(values, dtype="Float64"), pd.Series(values, dtype="f8"), pl.Series(values, dtype=pl.Float64)):
        marked, valid = form.function(series, *others, on_invalid="mask")
        assert [not whether for whether in valid] == missing, type(series)
        expected = [form.function(value, *others) for value in values if value is not None]
        assert [bool(x) if form.truth else float(x) for x, good in zip(marked, valid) if good] == expected
        if not any(missing):
            assert [x for x in form.function(series, *others)] == expected
            continue
        with pytest.raises(ReckohmError) as caught:
            form.function(series, *others)
        assert (caught.value.index, caught.value.failed) == (missing.index(True), sum(missing))
