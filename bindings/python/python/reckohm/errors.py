"""What can go wrong. Every exception is a `ReckohmError`, and the fitting built-in as well."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

__all__ = [
    "ReckohmError",
    "RangeError",
    "CountError",
    "ContradictionError",
    "MissingError",
    "InputTypeError",
    "ChoiceError",
    "TextError",
    "DisplayError",
    "MeterError",
]


class ReckohmError(Exception):
    """Root of all exceptions of this package.

    Attributes
    ----------
    status : int or None
        The status number, the same as in C; None where only Python can go wrong (a type).
    kind : str or None
        The status in one word.
    given : object
        What was given: the number, or the text.
    allowed : tuple of float or None
        Lower and upper end of what is allowed.
    row : int or None
        The number of the range row concerned.
    index : int, tuple of int or None
        Where: the element of an array, or the byte or band of a text.
    failed : int or None
        How many elements of an array failed; None outside arrays.
    """

    def __init__(
        self,
        message: str = "",
        status: int | None = None,
        kind: str | None = None,
        given: Any = None,
        allowed: tuple[float, float] | None = None,
        row: int | None = None,
        index: int | tuple[int, ...] | None = None,
        failed: int | None = None,
    ) -> None:
        super().__init__(message, status, kind, given, allowed, row, index, failed)
        self.message = message
        self.status = status
        self.kind = kind
        self.given = given
        self.allowed = allowed
        self.row = row
        self.index = index
        self.failed = failed

    def __str__(self) -> str:
        return self.message

    def _in_array(self, index: int | tuple[int, ...], failed: int, size: int) -> ReckohmError:
        """The same failure, as one of an array."""
        message = f"element {index}: {self.message} ({failed} of {size} elements failed)"
        return type(self)(message, self.status, self.kind, self.given, self.allowed, self.row, index, failed)


class RangeError(ReckohmError, ValueError):
    """A number outside its legal range, NaN or infinite, or with a result that no number holds."""


class CountError(ReckohmError, ValueError):
    """Nothing given where at least one is needed, too many, or unequal lengths."""


class ContradictionError(ReckohmError, ValueError):
    """Two arguments that contradict one another."""


class MissingError(ReckohmError, TypeError):
    """A condition without the value that it needs."""


class InputTypeError(ReckohmError, TypeError):
    """Not a number, or not a type that the argument takes."""


class ChoiceError(ReckohmError, ValueError):
    """A name that is none of the choices."""


class TextError(ReckohmError, ValueError):
    """A name, a marking or a written number that cannot be what it should be."""


class DisplayError(ReckohmError, ValueError):
    """A display text or a reply that is no reading of its span."""


class MeterError(ReckohmError, ValueError):
    """A meter, a span or a lead that cannot be as described, or that cannot do what is asked."""


_BY_KIND: dict[str, type[ReckohmError]] = {
    "OutOfRange": RangeError,
    "NotFinite": RangeError,
    "ResultOutOfRange": RangeError,
    "Empty": CountError,
    "WrongCount": CountError,
    "Contradiction": ContradictionError,
    "MissingArgument": MissingError,
    "OverRangeReading": RangeError,
    "OutsideDomain": RangeError,
    "UnknownSeries": ChoiceError,
    "UnknownMarks": ChoiceError,
}

_BY_BLOCK: tuple[tuple[range, type[ReckohmError]], ...] = (
    (range(20, 30), TextError),
    (range(100, 200), TextError),
    (range(200, 220), DisplayError),
    (range(220, 300), MeterError),
)


def _class_of(status: int, kind: str) -> type[ReckohmError]:
    """The class of a status: the one of its kind, else that of the block its number lies in."""
    if kind in _BY_KIND:
        return _BY_KIND[kind]
    return next((exception for block, exception in _BY_BLOCK if status in block), ReckohmError)


def _from_core(
    status: int,
    kind: str,
    message: str,
    row: int,
    given: float,
    lower: float,
    upper: float,
    index: int,
    text: object,
    of_list: bool,
) -> ReckohmError:
    """The exception of a failure in the compiled core; fields that a failure does not use arrive as 0."""
    exception = _class_of(status, kind)
    # A sensor's domain has no row. Elsewhere the two ends hold other numbers of the failure, which the message says.
    has_domain = kind in ("OutsideDomain", "NotFinite") and lower < upper
    has_ends = has_domain or (kind in ("ResultOutOfRange", "WrongCount") and lower != 0)
    allowed = (lower, upper) if row or has_ends else None
    if text is None:
        where = index if of_list else None
        said = given if row or given or has_domain else None
        return exception(message, status, kind, said, allowed, row or None, where)
    return exception(message, status, kind, text, allowed, row or None, index)


def _not_a_choice(argument: str, given: object, allowed: Sequence[str]) -> ChoiceError:
    """The exception for a name that is none of the choices."""
    names = " or ".join([", ".join(f'"{name}"' for name in allowed[:-1]), f'"{allowed[-1]}"'])
    status, kind = (222, "UnknownMarks") if argument == "over_range_marks" else (None, None)
    return ChoiceError(f"{argument}: {given!r} given, {names} allowed", status, kind, given)
