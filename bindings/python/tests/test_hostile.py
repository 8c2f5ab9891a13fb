"""Every public function and method, read from the stubs, with every argument in turn replaced by something hostile.

Each call either succeeds without a NaN in what comes back, or raises an exception of this package or a TypeError and
leaves its `out` as it was; a panic of the compiled part would be neither. A new function needs nothing here if its arguments have names
that `GOOD` knows, and a new class that others make needs its maker in `MAKERS`.
"""

from __future__ import annotations

import ast
import decimal
import fractions
import math
import pathlib
from dataclasses import dataclass
from typing import Any, Callable, Iterator

import numpy as np
import pandas as pd
import pytest

import reckohm
from reckohm import distribution, marking, measurement, meter, preferred, sensor, uncertainty, verdict
from reckohm.errors import ReckohmError

HAND_HELD = meter.Meter.example_hand_held()
SPAN = HAND_HELD.spans[1]
READING = SPAN.read("1.462")
ESTIMATE = uncertainty.Estimate(1462.0, 1.0).with_rectangular(12.7).with_type_a(2.0, 4.0)
LIMITS = verdict.Limits.from_tolerance(1500, 0.05)

# An argument that does, by its name.
GOOD: dict[str, Any] = {
    "accuracy_counts": 2,
    "area_mm2": 0.5,
    "b_kelvin": 3977.0,
    "b_temperatures_c": (25.0, 85.0),
    "bands": "red violet gold gold",
    "coefficients": [1.129148e-3, 2.34125e-4, 8.76741e-8],
    "conductor_class": 5,
    "coverage_factor": 2.0,
    "discard": 1,
    "display_unit_ohm": 1e3,
    "domain_c": (-40.0, 85.0),
    "edition": 2016,
    "estimate": ESTIMATE,
    "form": "3 characters",
    "fraction_of_reading": 0.01,
    "full_scale_ohm": 2e3,
    "hysteresis": 0.05,
    "index": 1,
    "known_tcr": 50.0,
    "label": "2 k",
    "leads": meter.Leads(HAND_HELD.spans[0].read("0.3")),
    "limits": LIMITS,
    "lower_ohm": 1.0,
    "meter": HAND_HELD,
    "nominal_ohm": 1500.0,
    "observations": [1.0, 2.0, 4.0],
    "ohm": 1462.0,
    "over_range_marks": "OL",
    "p": 0.05,
    "rated_ohm": 10_000.0,
    "rated_temperature_c": 25.0,
    "reading": READING,
    "readings": [READING, READING],
    "reference_ohm": 1.0,
    "resistance_ohm": 9000.0,
    "resolution_ohm": 1,
    "risk": 0.05,
    "rule": verdict.Rule.guarded(0.05),
    "scheme": "military",
    "series": "E24",
    "shunt_ohm": 1e6,
    "spans": HAND_HELD.spans,
    "start": 1,
    "step_included": True,
    "tail_probability": 0.05,
    "tcr_limit": 100.0,
    "tcr_ppm_per_kelvin": 50,
    "temperature_c": 30.0,
    "temperature_band_c": (18.0, 28.0),
    "text": "472",
    "tolerance": 0.05,
    "upper_ohm": 2e6,
    "value": 1462.0,
    "widest_hysteresis": 0.5,
    "zero_error_common": True,
    "zeroing_required": False,
}
# The same where a function means something else by the name.
GOOD_HERE: dict[tuple[str, str], Any] = {
    ("Marking.from_letters", "text"): "4K7J",
    ("Span.read", "text"): "1.462",
    ("Span.read_reply", "text"): "1.462E3",
    ("effective_dof", "u"): [1.0, 2.0],
    ("effective_dof", "dof"): [4.0, math.inf],
    ("AutoRanger.step", "reading"): HAND_HELD.spans[-1].read_reply("5e6"),
    ("Leads", "reading"): HAND_HELD.spans[0].read("0.3"),
}
# Objects whose class has no constructor of its own.
MAKERS: dict[str, Callable[[], Any]] = {
    "BandReading": lambda: marking.both_ways("red violet gold").forward,
    "BothWays": lambda: marking.both_ways("red violet gold"),
    "Budget": lambda: measurement.evaluate([READING, READING]).budget,
    "Choice": lambda: HAND_HELD.choose(1500, tolerance=0.05),
    "Expanded": lambda: ESTIMATE.expanded(),
    "Marking": lambda: marking.Marking.from_letters("4K7J"),
    "Measurement": lambda: measurement.evaluate([READING, READING]),
    "Reading": lambda: READING,
    "Readings": lambda: SPAN.read(["1.462", "OL"]),
    "Rule": lambda: verdict.Rule.max_risk(0.01),
    "Thermistor": lambda: sensor.Thermistor.b_value(10_000, 25, 3977, (25, 85)),
    "Verdict": lambda: verdict.judge(ESTIMATE, LIMITS, verdict.Rule.guarded(0.05)),
}


class Deliberate(Exception):
    """What an object of the caller's raises when it is asked: that may come out as it is."""


class Thorny:
    """Looks like a number and a sequence until it is asked."""

    def fail(self, *arguments: Any, **options: Any) -> Any:
        raise Deliberate

    __float__ = __index__ = __len__ = __getitem__ = __iter__ = __str__ = __bool__ = __array__ = fail
    __eq__ = __lt__ = fail
    __hash__ = object.__hash__

    def __repr__(self) -> str:
        return "Thorny()"


class Lying:
    """Says another number than it has elements."""

    def __len__(self) -> int:
        return 3

    def __getitem__(self, index: int) -> float:
        raise IndexError(index)


HOSTILE: list[Any] = [
    *(math.nan, math.inf, -math.inf, -0.0, 0.0, 5e-324, -5e-324, 2.2250738585072014e-308, 1e-300, 1e300, -1e300),
    *(1.7976931348623157e308, 2.0**53 + 2, -1.0, 0.1 + 0.2, 1e15, 1e-15),
    *(0, -1, 2**63, -(2**63), 2**64, 10**400, 10**5000, True, None, Ellipsis, 1j, object(), Thorny(), Lying(), str, len),
    *("", "\0", "4700", "\ud800", "1" * 5000, "é" * 64, "NaN", "inf", b"", b"\xff\xfe", bytearray(b"472"), memoryview(b"472")),
    *([], (), {}, set(), [math.nan], [None], ["1"], [[1.0], [1.0, 2.0]], [1.0] * 50, [1e308] * 3, iter([1.0, 2.0]), range(3)),
    *(np.float64("nan"), np.float32("inf"), np.int64(-(2**63)), np.array(math.nan), np.array(5.0), np.empty(0)),
    *(np.empty((0, 3)), np.empty((3, 0)), np.array([math.nan, 1.0]), np.array(["a"]), np.array([None, 1.0], dtype=object)),
    *(np.array([1.0, 5e-324, -0.0], dtype=">f8"), np.array([1, 2], dtype="f4"), np.array([True]), np.datetime64("NaT")),
    *(np.zeros(2, dtype=[("a", "f8")]), np.ma.masked, np.ma.array([1.0, 2.0], mask=True), np.float16(6e-8), np.longdouble("1e400")),
    *(np.broadcast_to(1500.0, (2, 3)), np.arange(8.0)[::-3], np.uint64(2**63 + 1)),
    *(pd.NA, pd.NaT, pd.Series([None, 1.0]), pd.Series(["a"]), pd.Series([], dtype="f8"), pd.DataFrame({"a": [math.nan]})),
    *(decimal.Decimal("NaN"), decimal.Decimal("1e999"), fractions.Fraction(1, 3), ESTIMATE, READING, SPAN, LIMITS),
]


@dataclass(frozen=True)
class Entry:
    """A function as the stubs have it."""

    module: str
    owner: str | None
    name: str
    static: bool
    positional: tuple[str, ...]
    keywords: tuple[str, ...]
    optional: frozenset[str]

    @property
    def title(self) -> str:
        if self.owner is None:
            return self.name
        return self.owner if self.name == "__new__" else f"{self.owner}.{self.name}"

    def target(self) -> Callable[..., Any]:
        module = getattr(reckohm, self.module)
        if self.owner is None:
            return getattr(module, self.name)
        owner = getattr(module, self.owner)
        if self.name == "__new__":
            return owner
        return getattr(owner, self.name) if self.static else getattr(made(self.module, self.owner), self.name)

    def good(self, argument: str) -> Any:
        """One that does; a float of no other name is 1."""
        return GOOD_HERE.get((self.title, argument), GOOD.get(argument, 1.0))


def made(module: str, owner: str) -> Any:
    if owner in MAKERS:
        return MAKERS[owner]()
    constructor = next((entry for entry in ENTRIES if entry.owner == owner and entry.name == "__new__"), None)
    assert constructor is not None, f"say in MAKERS of {__file__} how a {module}.{owner} is made"
    return call(constructor, {})


def call(entry: Entry, changed: dict[str, Any]) -> Any:
    """With good arguments where needed, and with those that are changed."""
    names = [name for name in entry.positional if name not in entry.optional]
    last = max((entry.positional.index(name) + 1 for name in changed if name in entry.positional), default=0)
    given = entry.positional[: max(len(names), last)]
    positional = [changed.get(name, entry.good(name)) for name in given]
    keywords = {name: entry.good(name) for name in entry.keywords if name not in entry.optional}
    keywords.update({name: value for name, value in changed.items() if name in entry.keywords})
    return entry.target()(*positional, **keywords)


def entries() -> Iterator[Entry]:
    folder = pathlib.Path(reckohm.__file__).parent
    for module in reckohm.__all__:
        stub = folder / f"{module}.pyi"
        if not stub.exists():
            continue
        seen = set()
        for node in ast.parse(stub.read_text(encoding="utf-8")).body:
            functions = node.body if isinstance(node, ast.ClassDef) else [node]
            owner = node.name if isinstance(node, ast.ClassDef) else None
            for function in functions:
                if isinstance(function, ast.FunctionDef) and (owner, function.name) not in seen:
                    decorators = {ast.unparse(decorator) for decorator in function.decorator_list}
                    if "property" in decorators or (function.name.startswith("_") and function.name != "__new__"):
                        continue
                    seen.add((owner, function.name))
                    yield entry_of(module, owner, function, "staticmethod" in decorators)


def entry_of(module: str, owner: str | None, function: ast.FunctionDef, static: bool) -> Entry:
    arguments = function.args
    positional = [argument.arg for argument in (*arguments.posonlyargs, *arguments.args)]
    optional = positional[len(positional) - len(arguments.defaults) :]
    keywords = [argument.arg for argument in arguments.kwonlyargs]
    optional += [name for name, default in zip(keywords, arguments.kw_defaults) if default is not None]
    first = 0 if owner is None or static else 1
    return Entry(module, owner, function.name, static, tuple(positional[first:]), tuple(keywords), frozenset(optional))


ENTRIES = list(entries())


def numbers(value: Any, depth: int = 0) -> Iterator[float]:
    """Every float within a result."""
    if isinstance(value, float | np.floating):
        yield float(value)
    elif isinstance(value, np.ndarray | pd.Series | pd.DataFrame):
        if isinstance(value, np.ma.MaskedArray):
            value = value.compressed()
        values = np.asarray(value)
        if values.dtype.kind == "f":
            yield from values.ravel().tolist()
    elif isinstance(value, dict):
        yield from numbers(list(value.values()), depth)
    elif isinstance(value, tuple | list):
        for item in value:
            yield from numbers(item, depth)
    elif type(value).__module__.startswith("reckohm") and depth < 3:
        for name in dir(value):
            if not name.startswith("_"):
                try:
                    held = getattr(value, name)
                except ReckohmError:
                    continue
                if not callable(held):
                    yield from numbers(held, depth + 1)


def hostile_call(entry: Entry, changed: dict[str, Any]) -> None:
    try:
        result = call(entry, changed)
    except (ReckohmError, TypeError, Deliberate):
        return
    except UnicodeEncodeError:
        assert changed.get("on_invalid") == "\ud800", changed  # a choice, which Python takes as a text by itself
    except ValueError as error:
        # pandas brings a column of another length to NumPy itself.
        assert any(isinstance(value, pd.Series) for value in changed.values()) and "broadcast" in str(error), changed
    except BaseException as error:
        raise AssertionError(f"{entry.title}({changed!r}) raised {type(error).__name__}: {error}") from error
    else:
        assert not any(map(math.isnan, numbers(result))), f"{entry.title}({changed!r}) gave NaN: {result!r}"


def test_the_stubs_have_every_public_name() -> None:
    for module in reckohm.__all__:
        if not (pathlib.Path(reckohm.__file__).parent / f"{module}.pyi").exists():
            continue
        names = {entry.owner or entry.name for entry in ENTRIES if entry.module == module}
        functions = {name for name in getattr(reckohm, module).__all__ if not isinstance(getattr(getattr(reckohm, module), name), type)}
        assert functions <= names, f"{module}: {functions - names}"


# NumPy's own words about a number that it makes infinite or no number, before the library refuses that.
pytestmark = [
    pytest.mark.filterwarnings("ignore:overflow encountered in cast"),
    pytest.mark.filterwarnings("ignore:Warning. converting a masked element to nan"),
]
each = pytest.mark.parametrize("entry", ENTRIES, ids=lambda entry: f"{entry.module}.{entry.title}")


@each
def test_hostile_arguments(entry: Entry) -> None:
    call(entry, {})  # what the table holds is good
    for argument in (*entry.positional, *entry.keywords):
        if argument == "out":
            continue  # below
        for value in HOSTILE:
            hostile_call(entry, {argument: value})


@each
def test_hostile_pairs(entry: Entry) -> None:
    arguments = [argument for argument in (*entry.positional, *entry.keywords) if argument != "out"]
    chance = np.random.default_rng(len(entry.title))
    for _ in range(200 if len(arguments) > 1 else 0):
        pair = chance.choice(arguments, 2, replace=False)
        hostile_call(entry, {str(argument): HOSTILE[chance.integers(len(HOSTILE))] for argument in pair})


@pytest.mark.parametrize("entry", [entry for entry in ENTRIES if "out" in entry.keywords], ids=lambda entry: entry.title)
def test_nothing_is_written_on_failure(entry: Entry) -> None:
    truth = entry.name == "contains"
    failures = 0
    for value in HOSTILE:
        out = np.full((2, 3), True) if truth else np.full((2, 3), -7.0)
        try:
            call(entry, {entry.positional[0]: value, "out": out})
        except ReckohmError:
            failures += 1
            assert (out == (True if truth else -7.0)).all(), repr(value)
        except (Deliberate, ValueError):
            continue
    assert failures > 20
    for value in HOSTILE:
        hostile_call(entry, {"out": value}) if value is not None else None
