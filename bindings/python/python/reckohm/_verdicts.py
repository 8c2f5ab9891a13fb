"""Verdicts on arrays of numbers: what `reckohm.verdict.judge` gives for them."""

from __future__ import annotations

from typing import Any, Iterator

import numpy as np

from . import _core
from ._array_call import _as_array, _as_floats, _check_type, _is_foreign, _is_plain, _raise_first
from .errors import CountError, InputTypeError, _not_a_choice

ANSWERS = ("conforms", "does not conform", "undecided")
_WORDS = np.array(["invalid", *ANSWERS, *ANSWERS])
_SIDES = np.array(["invalid", "inside", "inside", "inside", "outside", "outside", "outside"])


class Verdicts:
    """Verdicts on many parts; they come from `judge` where it is given an array of numbers.

    Every property that says something of each part is an array of the shape of what was judged, or a pandas Series with its
    index. A place that could not be judged (see ``on_invalid``) is "invalid", neither True in any of the answers nor a number.

    Examples
    --------
    >>> from reckohm.verdict import Limits, Rule, judge
    >>> shown = [4860.0, 4880.0, 4999.0]
    >>> verdicts = judge(shown, Limits.from_tolerance(4700, 0.05), Rule.guarded(0.05), u=3, rectangular=[68.9, 69.0, 70.0])
    >>> verdicts
    <Verdicts on 3: 1 conforms, 1 does not conform, 1 undecided; Rule.guarded(0.05)>
    >>> verdicts.conforms
    array([ True, False, False])
    >>> verdicts[1], len(verdicts)
    ('undecided', 3)
    >>> verdicts[verdicts.undecided].side
    array(['inside'], dtype='<U7')
    """

    _probability: Any
    _code: Any
    _limits: Any
    _rule: Any
    _series: Any
    _index: Any
    _name: Any
    __slots__ = ("_probability", "_code", "_limits", "_rule", "_series", "_index", "_name")
    __hash__ = None  # type: ignore[assignment]  # arrays have none

    def __init__(self, *_: Any) -> None:
        raise InputTypeError("verdicts: they come from reckohm.verdict.judge, they are not made")

    @classmethod
    def _of(
        cls,
        probability: Any,
        code: Any,
        limits: Any,
        rule: Any,
        series: Any = None,
        index: Any = None,
        name: Any = None,
    ) -> Verdicts:
        made = object.__new__(cls)
        for array in (probability, code):
            array.flags.writeable = False
        for slot, value in zip(cls.__slots__, (probability, code, limits, rule, series, index, name)):
            object.__setattr__(made, slot, value)
        return made

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError(f"{name}: verdicts cannot be changed")

    def __delattr__(self, name: str) -> None:
        raise AttributeError(f"{name}: verdicts cannot be changed")

    def _each(self, array: Any) -> Any:
        if self._index is None:
            return array
        return self._series(array, index=self._index, name=self._name)

    @property
    def conformance_probability(self) -> Any:
        """Probability that each part lies within its limits, from its measurement alone, without a prior; NaN where it could not
        be judged."""
        return self._each(self._probability)

    @property
    def conforms(self) -> Any:
        """Which parts conform at the agreed risk."""
        return self._each((self._code == 1) | (self._code == 4))

    @property
    def does_not_conform(self) -> Any:
        """Which parts do not conform at the agreed risk."""
        return self._each((self._code == 2) | (self._code == 5))

    @property
    def undecided(self) -> Any:
        """Of which parts the measurement cannot tell."""
        return self._each((self._code == 3) | (self._code == 6))

    @property
    def valid(self) -> Any:
        """Which parts could be judged at all."""
        return self._each(self._code != 0)

    @property
    def answer(self) -> Any:
        """Each answer in words, "conforms", "does not conform" or "undecided", made when asked for; "invalid" where there is
        none."""
        return self._each(_WORDS[self._code])

    @property
    def side(self) -> Any:
        """On which side of its limits each value itself lies, "inside" or "outside", made when asked for; "invalid" where there
        is none."""
        return self._each(_SIDES[self._code])

    @property
    def counts(self) -> dict[str, int]:
        """How many of each answer; "invalid" too if there are any."""
        found = np.bincount(self._code.ravel(), minlength=7)
        counts = {answer: int(found[k] + found[k + 3]) for k, answer in enumerate(ANSWERS, start=1)}
        return counts if found[0] == 0 else {**counts, "invalid": int(found[0])}

    @property
    def limits(self) -> Any:
        """The limits that all were judged against."""
        return self._limits

    @property
    def rule(self) -> Any:
        """The rule that gave the answers."""
        return self._rule

    @property
    def shape(self) -> tuple[int, ...]:
        """The shape of what was judged."""
        return self._code.shape

    def __len__(self) -> int:
        return len(self._code)

    def __getitem__(self, which: Any) -> Any:
        """The answer of one part in words; verdicts on several for a slice, a mask or an array of indices, by position."""
        if self._index is not None:
            which = np.asarray(which) if hasattr(which, "to_numpy") else which
        code = self._code[which]
        if code.ndim == 0:
            return str(_WORDS[code])
        index = None if self._index is None else self._index[which]
        probability = self._probability[which].copy()
        return Verdicts._of(probability, code.copy(), self._limits, self._rule, self._series, index, self._name)

    def __iter__(self) -> Iterator[Any]:
        return (self[n] for n in range(len(self)))

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Verdicts):
            return NotImplemented
        return (
            self._limits == other._limits
            and self._rule == other._rule
            and np.array_equal(self._code, other._code)
            and np.array_equal(self._probability, other._probability, equal_nan=True)
        )

    def __repr__(self) -> str:
        counts = ", ".join(f"{count} {answer}" for answer, count in self.counts.items())
        return f"<Verdicts on {self._code.size}: {counts}; {self._rule!r}>"

    def __reduce__(self) -> tuple[Any, ...]:
        return Verdicts._of, tuple(getattr(self, slot) for slot in self.__slots__)

    def _repr_html_(self) -> str:
        from ._tables import verdicts

        return verdicts(self)


Verdicts.__module__ = "reckohm.verdict"


def judge(values: Any, limits: Any, rule: Any, u: Any, dof: Any, rectangular: Any, on_invalid: str) -> Any:
    """Judges arrays of numbers; the compiled `judge` has looked at limits and rule."""
    choices = ("raise", "nan", "mask")
    if on_invalid not in choices:
        raise _not_a_choice("on_invalid", on_invalid, choices)
    given = {"estimate": values, "u": u, "dof": dof, "rectangular": rectangular}
    for argument, value in given.items():
        _check_type(value, argument)
        if isinstance(value, np.ma.MaskedArray):
            raise InputTypeError(
                f'{argument}: a masked array given, an array allowed; fill it with nan and give on_invalid="mask"'
            )
    arrays = [_column(value, argument) for argument, value in given.items()]
    singles = [isinstance(array, np.ndarray) and array.dtype in (np.dtype("<f4"), np.dtype(">f4")) for array in arrays]
    of_arrays = [single for single, array in zip(singles, arrays) if isinstance(array, np.ndarray)]
    dtype = np.float32 if all(of_arrays) else np.float64
    shapes = [np.shape(array) for array in arrays]
    try:
        shape = np.broadcast_shapes(*shapes)
    except ValueError:
        raise CountError(f"judging arrays: shapes {shapes} given, which do not go together", 7, "WrongCount") from None
    columns = [
        array if isinstance(array, float) else np.ascontiguousarray(np.broadcast_to(array, shape), dtype=dtype)
        for array in arrays
    ]
    probability, code = np.empty(shape, dtype=dtype), np.empty(shape, dtype=np.uint8)
    refused = _core._judge_columns(columns, limits, rule, probability, code)
    if refused and on_invalid == "raise":
        ends = [limits.lower_ohm, limits.upper_ohm]
        _raise_first(_core._verdict_conformance_probability, [*columns, *ends], code == 0)
    parts = [probability, code, limits, rule]
    # A pandas Series: what is said of each part is one with its index.
    if type(values).__module__.startswith("pandas") and len(shape) == 1 and shape == np.shape(values):
        parts += [type(values), values.index, values.name]
    verdicts = Verdicts._of(*parts)
    return (verdicts, verdicts.valid) if on_invalid == "mask" else verdicts


def _column(value: Any, argument: str) -> Any:
    """A float for one number, an array for many; a null is NaN."""
    if _is_plain(value):
        return float(value)
    array = _as_floats(value) if _is_foreign(value) else _as_array(value, argument)
    return float(array) if array.ndim == 0 else array
