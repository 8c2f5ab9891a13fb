"""Every status of the core comes out as an exception with its fields, of the class that its block stands for."""

from __future__ import annotations

import copy
import pickle
from typing import Any, Callable

import numpy as np
import pytest

from reckohm import _core, errors, preferred
from reckohm.errors import (
    ChoiceError,
    ContradictionError,
    CountError,
    DisplayError,
    InputTypeError,
    MeterError,
    MissingError,
    RangeError,
    ReckohmError,
    TextError,
)
from reckohm.marking import Marking
from reckohm.measurement import evaluate
from reckohm.meter import Leads, Meter, Span
from reckohm.sensor import Thermistor
from reckohm.uncertainty import Estimate
from reckohm.verdict import Limits

SPAN = Meter.example_hand_held().spans[1]
TWENTY = Meter.example_hand_held().spans[2]
FIVES = Span("5", 1e4, 5, display_unit_ohm=1, over_range_marks="1", fraction_of_reading=0, accuracy_counts=2)


def span(**change: Any) -> Span:
    given = {"label": "x", "full_scale_ohm": 2e3, "resolution_ohm": 1, "display_unit_ohm": 1e3, "over_range_marks": "OL"}
    return Span(**{**given, "fraction_of_reading": 0.01, "accuracy_counts": 2, **change})


Raising = tuple[str, type[ReckohmError], Callable[[], Any], dict[str, Any]]

# Kind, class, a call that raises it, and the fields that say what was given.
THERMISTOR = Thermistor.b_value(10_000, 25, 3977, (25, 85))

CASES: list[Raising] = [
    ("OutOfRange", RangeError, lambda: preferred.nearest(-1, "E12"), {"given": -1.0, "allowed": (0.0, 1e15), "row": 4}),
    ("NotFinite", RangeError, lambda: preferred.nearest(float("inf"), "E12"), {"given": float("inf"), "row": 4}),
    ("Empty", CountError, lambda: evaluate([]), {"given": None}),
    ("Contradiction", ContradictionError, lambda: Limits(2, 1), {"given": None, "allowed": None}),
    ("ResultOutOfRange", RangeError, lambda: Estimate(0, 1e200), {}),
    ("MissingArgument", MissingError, lambda: Marking.from_letters("4K7").limits, {}),
    ("WrongCount", CountError, lambda: Marking.from_bands("red red"), {"given": "red red", "allowed": (3.0, 6.0)}),
    ("UnexpectedByte", TextError, lambda: SPAN.read("1.4x2"), {"given": "1.4x2", "index": 3}),
    ("MissingDigits", TextError, lambda: SPAN.read_reply("1.0E"), {"given": "1.0E", "index": 4}),
    ("TextTooLong", TextError, lambda: SPAN.read("1" * 200), {"given": "1" * 200}),
    ("UnknownSeries", ChoiceError, lambda: preferred.decade("E13"), {"given": "E13"}),
    ("UnknownColour", TextError, lambda: Marking.from_bands("red mauve red"), {"given": "red mauve red", "index": 4}),
    ("MisplacedColour", TextError, lambda: Marking.from_bands("gold red red"), {"given": "gold red red", "index": 0}),
    ("WrongForm", TextError, lambda: Marking.from_chip("47"), {"given": "47"}),
    ("DoubtfulCode", TextError, lambda: Marking.from_chip("09R"), {"given": "09R", "index": 2}),
    ("NoSuchMarking", TextError, lambda: Marking.from_value(1 / 3), {}),
    ("MissingPoint", DisplayError, lambda: SPAN.read("1462"), {"given": "1462"}),
    ("TooFewDecimals", DisplayError, lambda: SPAN.read("1.46"), {"given": "1.46"}),
    ("TooManyDecimals", DisplayError, lambda: SPAN.read("1.4620"), {"given": "1.4620"}),
    ("TooManyDigits", DisplayError, lambda: SPAN.read("00001.462"), {"given": "00001.462"}),
    ("BeyondFullScale", DisplayError, lambda: SPAN.read("2.462"), {"given": "2.462"}),
    ("OffGrid", DisplayError, lambda: FIVES.read("1462"), {"given": "1462"}),
    ("AmbiguousText", DisplayError, lambda: span(display_unit_ohm=1, over_range_marks="1").read("1"), {"given": "1"}),
    ("MarkNotOfSpan", DisplayError, lambda: SPAN.read("----"), {"given": "----"}),
    ("NoReading", DisplayError, lambda: SPAN.read_reply("9.91E37"), {"given": "9.91E37"}),
    ("UndefinedMark", DisplayError, lambda: SPAN.read_reply("9.95E37"), {"given": "9.95E37"}),
    ("UnknownResolution", MeterError, lambda: span(resolution_ohm=3), {}),
    ("UnknownDisplayUnit", MeterError, lambda: span(display_unit_ohm=10), {}),
    ("UnknownMarks", ChoiceError, lambda: span(over_range_marks="EEE"), {"given": "EEE"}),
    ("NoSpanHolds", MeterError, lambda: Meter.example_hand_held().choose(1e9, tolerance=0.05), {}),
    ("NoSuchSpan", MeterError, lambda: Meter.example_hand_held().span(9), {}),
    ("WireNotInTable", MeterError, lambda: Leads.from_wire(1, 0.8, 5), {}),
    ("OverRangeReading", RangeError, lambda: evaluate([TWENTY.read("4.66"), TWENTY.read("1")]), {"index": 1}),
    ("OutsideDomain", RangeError, lambda: THERMISTOR.resistance_ohm(86), {"given": 86.0, "allowed": (25.0, 85.0)}),
]

# Kinds that Python cannot meet, each with the reason.
NOT_HERE = {
    "NullPointer": "Python has no null pointers",
    "UnknownCode": "names, not numbers, stand for choices",
    "BufferTooSmall": "texts are made as long as they are",
    "CorruptMemory": "objects keep their own memory",
    "WrongArithmetic": "the self-test is for programs in C that set their processor up",
    "Undetermined": "fits are at the Rust door alone yet",
    "NotSettled": "fits are at the Rust door alone yet",
    "ModelNotFinite": "fits are at the Rust door alone yet",
}


@pytest.mark.parametrize(("kind", "exception", "call", "fields"), CASES, ids=[case[0] for case in CASES])
def test_raised_with_its_fields(
    kind: str, exception: type[ReckohmError], call: Callable[[], Any], fields: dict[str, Any]
) -> None:
    with pytest.raises(ReckohmError) as caught:
        call()
    error = caught.value
    assert type(error) is exception and error.kind == kind
    assert (error.status, kind) in _core._kinds
    for name, value in fields.items():
        assert getattr(error, name) == value, name
    assert error.failed is None and len(str(error)) > 20


def test_every_kind_is_raised() -> None:
    names = {name for _, name in _core._kinds}
    assert {case[0] for case in CASES} | set(NOT_HERE) == names
    assert not {case[0] for case in CASES} & set(NOT_HERE)


def test_one_class_for_a_status() -> None:
    for number, name in _core._kinds:
        assert issubclass(errors._class_of(number, name), ReckohmError)
    for name in errors.__all__:
        exception = getattr(errors, name)
        assert issubclass(exception, ReckohmError)
        assert exception is ReckohmError or issubclass(exception, ValueError | TypeError)


@pytest.mark.parametrize("protocol", range(2, pickle.HIGHEST_PROTOCOL + 1))
@pytest.mark.parametrize("call", [case[2] for case in CASES], ids=[case[0] for case in CASES])
def test_pickled_with_all_fields(call: Callable[[], Any], protocol: int) -> None:
    with pytest.raises(ReckohmError) as caught:
        call()
    error = caught.value
    for again in (pickle.loads(pickle.dumps(error, protocol)), copy.copy(error)):
        assert type(again) is type(error) and str(again) == str(error)
        kept = ("status", "kind", "given", "allowed", "row", "index", "failed")
        assert [repr(getattr(again, name)) for name in kept] == [repr(getattr(error, name)) for name in kept]


def test_an_array_error_is_pickled_too() -> None:
    with pytest.raises(RangeError) as caught:
        preferred.nearest(np.array([[1.0, -1.0]]), "E12")
    again = pickle.loads(pickle.dumps(caught.value))
    assert (again.index, again.failed, str(again)) == ((0, 1), 1, str(caught.value))


def test_types_without_a_status() -> None:
    with pytest.raises(InputTypeError) as caught:
        preferred.nearest("4700", "E12")
    assert caught.value.status is None and isinstance(caught.value, TypeError)
