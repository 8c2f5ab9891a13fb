"""Calls with anything but plain floats: arrays, series, masked arrays, lazy arrays, `out=`, `where=`, `on_invalid=`.

The compiled functions hand such calls to `call`. Behind every function stand two NumPy ufuncs of the same formula: one
raises at the first element that the formula refuses, the other, ending in `_or_nan`, gives NaN there. Since no formula
gives NaN otherwise, the second one is also the check that comes before anything is written.
"""

from __future__ import annotations

from typing import Any, Callable

import numpy as np

from . import _core
from .errors import ChoiceError, CountError, InputTypeError, MissingError, ReckohmError, _not_a_choice

_NUMERIC_KINDS = "fiu"
_CHOICES = ("raise", "nan", "mask")


def call(
    name: str, inputs: tuple[Any, ...], names: tuple[str, ...], out: Any, where: Any, on_invalid: str, truth: bool
) -> Any:
    """One call of the function behind the ufunc `name`; `truth` says that it answers yes or no."""
    if on_invalid not in _CHOICES:
        raise _not_a_choice("on_invalid", on_invalid, _CHOICES)
    if truth and on_invalid == "nan":
        raise ChoiceError('on_invalid: "nan" given where the answer is yes or no, "raise" or "mask" allowed')
    if isinstance(out, tuple) and len(out) == 1:
        out = out[0]
    if where is not None and out is None:
        raise MissingError("where: given without out, so that nothing says what stands in the places left out; give out")
    for value, argument in zip(inputs, names):
        _check_type(value, argument)
    foreign = [_is_foreign(value) for value in inputs]
    # Formulas may pass over infinity on their way; where NumPy converts an input, it would warn of that.
    with np.errstate(all="ignore"):
        if any(foreign) and out is None and where is None:
            return _by_protocol(name, inputs, on_invalid, truth)
        return _plain(name, inputs, names, out, where, on_invalid, truth)


def _is_foreign(value: Any) -> bool:
    """Whether the object answers to ufuncs itself: pandas, polars, xarray, Dask and their like."""
    return not isinstance(value, np.ndarray | np.generic) and hasattr(value, "__array_ufunc__")


def _is_plain(value: Any) -> bool:
    """Whether it is one of Python's own numbers."""
    return isinstance(value, float | int) and not isinstance(value, np.generic | bool)


def _is_lazy(value: Any) -> bool:
    """Whether looking at the values would compute them (Dask's own protocol)."""
    graph = getattr(value, "__dask_graph__", None)
    return graph is not None and graph() is not None


def _check_type(value: Any, argument: str) -> None:
    """Refuses bool, text, object and complex, which NumPy would take or refuse each in its own way."""
    if isinstance(value, float):
        return
    if getattr(value, "__array_ufunc__", 0) is None:
        raise _wrong_type(argument, type(value).__name__)
    if hasattr(value, "dtype"):
        dtypes = [value.dtype]
    elif _is_foreign(value) and hasattr(value, "dtypes"):
        dtypes = list(value.dtypes)
    else:
        dtypes = [_as_array(value, argument).dtype]
    for dtype in dtypes:
        if hasattr(dtype, "is_numeric"):
            numeric = dtype.is_numeric()
        else:
            numeric = getattr(dtype, "kind", "O") in _NUMERIC_KINDS
        if not numeric:
            raise _wrong_type(argument, str(dtype))


def _wrong_type(argument: str, given: str) -> InputTypeError:
    return InputTypeError(
        f"{argument}: {given} given, a float, an int or an array of them allowed; convert it first, and write a missing"
        " number as nan",
        given=given,
    )


def _as_array(value: Any, argument: str) -> Any:
    try:
        return np.asanyarray(value)
    except ValueError as error:
        raise InputTypeError(f"{argument}: a nested list of unequal lengths given, {error}") from None


def _result_dtype(ufunc: Any, inputs: tuple[Any, ...]) -> Any:
    """The dtype of the result: `float32` if all arrays are and the formula has such a twin, else `float64`."""
    dtypes: list[Any] = []
    for value in inputs:
        dtype = getattr(value, "dtype", None)
        if _is_plain(value):
            dtypes.append(float)  # goes with the others
        else:
            dtypes.append(dtype if isinstance(dtype, np.dtype) else np.dtype("f8"))
    return ufunc.resolve_dtypes((*dtypes, None))[-1]


def _by_protocol(name: str, inputs: tuple[Any, ...], on_invalid: str, truth: bool) -> Any:
    """NumPy's protocol carries index, names, dimensions and laziness through the ufunc."""
    ufunc, or_nan = getattr(_core, f"_{name}"), getattr(_core, f"_{name}_or_nan")
    # Lazy arrays would find the dtype by calling the function on made-up numbers: say it.
    dtype = _result_dtype(ufunc, inputs)
    if on_invalid == "raise" and any(_is_lazy(value) for value in inputs):
        return ufunc(*inputs, dtype=dtype)
    values = or_nan(*inputs, dtype=_result_dtype(or_nan, inputs))
    if on_invalid == "raise":
        flags = np.isnan(np.asarray(values, dtype="f8"))  # a null is NaN here
        if flags.any():
            arrays = [value if _is_plain(value) else _as_floats(value) for value in inputs]
            if any(np.ndim(array) and np.shape(array) != flags.shape for array in arrays):
                ufunc(*inputs, dtype=dtype)  # aligned by NumPy's protocol: the position is that in the aligned call
            _raise_first(ufunc, arrays, flags)
        return values == 1.0 if truth else values
    valid = _valid(values)
    if truth:
        values = values == 1.0
    return values if on_invalid == "nan" else (values, valid)


def _valid(values: Any) -> Any:
    """Where there is a number, in the kind of the values themselves; a null is none."""
    bad = values.is_nan() if hasattr(values, "is_nan") else np.isnan(values)
    for fill in ("fillna", "fill_null"):
        if hasattr(bad, fill) and not _is_lazy(bad):
            bad = getattr(bad, fill)(True)
    return ~bad


def _as_floats(value: Any) -> Any:
    """As a NumPy array for the error's sake, nulls as NaN, `float32` as it is."""
    dtype = getattr(value, "dtype", None)
    return np.asarray(value, dtype=np.float32 if dtype == np.float32 else np.float64)


def _plain(
    name: str,
    inputs: tuple[Any, ...],
    names: tuple[str, ...],
    out: Any,
    where: Any,
    on_invalid: str,
    truth: bool,
) -> Any:
    ufunc, or_nan = getattr(_core, f"_{name}"), getattr(_core, f"_{name}_or_nan")
    arrays = [value if _is_plain(value) else _as_array(value, argument) for value, argument in zip(inputs, names)]
    taken: Any = True if where is None else _as_array(where, "where")
    if where is not None and taken.dtype.kind != "b":
        raise InputTypeError(f"where: {taken.dtype} given, an array of bool allowed", given=str(taken.dtype))
    shape = _shape(taken, *arrays)
    masked = any(isinstance(array, np.ma.MaskedArray) for array in arrays)
    if masked:
        for array in arrays:
            taken = taken & ~np.ma.getmaskarray(array)
        arrays = [np.ma.getdata(array) for array in arrays]
    if out is not None:
        _check_out(out, _result_dtype(ufunc, tuple(arrays)))

    if taken is True:
        values = np.asarray(or_nan(*arrays))
    else:
        values = np.zeros(shape, dtype=_result_dtype(or_nan, tuple(arrays)))
        taken = np.broadcast_to(taken, shape)
        or_nan(*arrays, out=values, where=taken)
    bad = np.isnan(values)
    if on_invalid == "raise" and bad.any():
        _raise_first(ufunc, arrays, bad)
    result = values == 1.0 if truth else values
    if out is not None:
        np.copyto(out, result, where=taken & ~bad if on_invalid == "mask" else taken)
        result = out
    elif masked:
        result = np.ma.MaskedArray(result, mask=~taken)
    if on_invalid != "mask":
        return result if out is not None else _scalar(result)
    valid = ~bad & taken
    return (result, valid) if out is not None else (_scalar(result), _scalar(valid))


def _shape(*arrays: Any) -> tuple[int, ...]:
    """The shape of the result."""
    shapes = [np.shape(array) for array in arrays]
    try:
        return np.broadcast_shapes(*shapes)
    except ValueError:
        given = ", ".join(str(shape) for shape in shapes if shape)
        raise CountError(f"arrays of shapes {given} given, ones that fit together by NumPy's rules allowed") from None


def _scalar(array: Any) -> Any:
    """A 0-d array as the number it is: Python's own, but `float32` stays what it is."""
    if not isinstance(array, np.ndarray | np.generic) or array.ndim or isinstance(array, np.ma.MaskedArray):
        return array
    return np.float32(array) if array.dtype == np.float32 else array.item()


def _check_out(out: Any, dtype: Any) -> None:
    if not isinstance(out, np.ndarray) or not np.can_cast(dtype, out.dtype, "equiv"):
        given = str(out.dtype) if isinstance(out, np.ndarray) else type(out).__name__
        raise InputTypeError(f"out: {given} given, a NumPy array of {dtype} allowed", given=given)
    if not out.flags.writeable:
        raise InputTypeError("out: a read-only array given, a writeable one allowed")


def _raise_first(ufunc: Callable[..., Any], arrays: list[Any], bad: Any) -> None:
    """Raises what a float call raises for the first bad element, with its index and how many failed."""
    first = int(np.argmax(bad))
    element = [array if _is_plain(array) else np.broadcast_to(array, bad.shape).flat[first] for array in arrays]
    try:
        ufunc(*element)
    except ReckohmError as error:
        if bad.ndim == 0:
            raise
        where = first if bad.ndim == 1 else tuple(int(i) for i in np.unravel_index(first, bad.shape))
        raise error._in_array(where, int(bad.sum()), bad.size) from None
