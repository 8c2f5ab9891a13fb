"""The vectors that all doors run (tests/vectors of the repository): the same bits, texts and statuses as in Rust and C.

Columns and escapes are described in tests/src/vectors.rs.
"""

from __future__ import annotations

import re
import struct
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any, Callable

import numpy as np
import pytest

from reckohm import distribution, preferred
from reckohm.errors import ReckohmError
from reckohm.marking import Marking, both_ways
from reckohm.measurement import evaluate
from reckohm.meter import AutoRanger, Choice, Leads, Meter, Span
from reckohm.sensor import Thermistor
from reckohm.uncertainty import Estimate, effective_dof
from reckohm.verdict import Limits, Rule, conformance_probability, judge

FOLDER = Path(__file__).resolve().parents[3] / "tests" / "vectors"
HEADINGS = ["function", "inputs", "outputs", "bits", "status", "source"]


@dataclass(frozen=True)
class Row:
    place: str
    function: str
    inputs: tuple[bytes, ...]
    bits: tuple[str, ...]
    outputs: tuple[bytes, ...]
    status: int

    def text(self, place: int) -> str:
        return self.inputs[place].decode("latin-1")

    def number(self, place: int) -> float:
        return float(self.inputs[place])

    def optional(self, place: int) -> float | None:
        return float(self.inputs[place]) if self.inputs[place] else None


def unescaped(field: str) -> bytes:
    if field == r"\x":  # a single empty text
        return b""
    return re.sub(r"\\x([0-9A-Fa-f]{2})", lambda match: chr(int(match[1], 16)), field).encode("latin-1")


def items(column: str) -> list[str]:
    return column.split("|") if column else []


def rows(path: Path) -> list[Row]:
    lines = [
        (number, line)
        for number, line in enumerate(path.read_text(encoding="ascii").split("\n"), 1)
        if line and not line.startswith("#")
    ]
    assert lines[0][1].split("\t") == HEADINGS
    result = []
    for number, line in lines[1:]:
        function, inputs, outputs, bits, status, source = line.split("\t")
        assert source
        result.append(
            Row(
                f"{path.name}:{number}",
                function,
                tuple(unescaped(field) for field in items(inputs)),
                tuple(items(bits)),
                tuple(unescaped(field) for field in items(outputs)),
                int(status),
            )
        )
    return result


def written(value: Any) -> bytes:
    """As the files write what is no number."""
    return b"" if value is None else str(value).encode("utf-8")


def truth(value: bool) -> bytes:
    return b"true" if value else b"false"


def or_nothing(value: float | None) -> Any:
    return b"" if value is None else value


def marking_said(marking: Marking) -> list[Any]:
    limits = marking.limits if marking.tolerance is not None else None
    parts = [marking.nominal_ohm, marking.tolerance, marking.tcr_ppm_per_kelvin]
    return [or_nothing(part) for part in [*parts, limits and limits.lower_ohm, limits and limits.upper_ohm]]


def marking_given(row: Row) -> Marking:
    return Marking.from_value(row.number(0), row.optional(1), row.optional(2))


def edition(row: Row, place: int) -> int:
    return int(row.inputs[place])


def ways(row: Row) -> list[Any]:
    both = both_ways(row.inputs[0], edition=edition(row, 1))
    result: list[Any] = []
    for reading in (both.forward, both.backward):
        result += [or_nothing(reading.marking and reading.marking.nominal_ohm), written(", ".join(reading.doubts))]
    return [*result, written(both.more_plausible)]


def estimate_of(row: Row) -> Estimate:
    value, a, b, normal_u, s1, dof1, s2, dof2, below, above = (row.number(place) for place in range(10))
    estimate = Estimate(value).with_rectangular(a).with_rectangular(b).with_normal(normal_u)
    return estimate.with_type_a(s1, dof1).with_type_a(s2, dof2).with_one_sided(below, above)


def judged(row: Row) -> list[Any]:
    make = getattr(Rule, row.text(12).replace(" ", "_"))
    rule = make() if row.text(12) == "simple acceptance" else make(row.number(13))
    verdict = judge(estimate_of(row), Limits(row.number(10), row.number(11)), rule)
    numbers = [verdict.conformance_probability, verdict.guard_band_ohm, verdict.acceptance_lower_ohm]
    numbers += [verdict.acceptance_upper_ohm, verdict.distance_ohm, verdict.tur]
    words = [written(verdict.answer), written(verdict.side)]
    return [*words, *(or_nothing(number) for number in numbers), written(verdict.next_step)]


def point(row: Row, method: str) -> list[Any]:
    return [getattr(estimate_of(row), method)(row.number(10))]


def interval(row: Row, method: str) -> Any:
    return getattr(estimate_of(row), method)(row.number(10))


def whole_interval(row: Row) -> list[Any]:
    e = interval(row, "expanded")
    return [e.half_width, e.coverage_factor, e.lower, e.upper, e.u]


def thermistor_of(row: Row) -> Thermistor:
    a, b, c, d, e, lower, upper = (row.number(place) for place in range(7))
    if row.function.startswith("sensor.b_value."):
        return Thermistor.b_value(a, b, c, (d, e)).with_domain((lower, upper))
    return Thermistor.steinhart_hart([a, b, c, d], e, (lower, upper))


def sensed(row: Row) -> list[Any]:
    """A float, and the same as an array; or an array of single precision."""
    method = row.function.rpartition(".")[2]
    single = method.endswith("_f32")
    convert = getattr(thermistor_of(row), method.removesuffix("_f32"))
    given = np.array([row.number(7)], dtype=np.float32 if single else np.float64)
    result = convert(given)
    assert result.dtype == given.dtype
    if single:
        return [float(result[0])]
    assert convert(row.number(7)) == result[0]
    return [float(result[0])]


def carried(row: Row) -> list[Any]:
    value, a, b, normal_u, s, dof, below, above = (row.number(place) for place in range(7, 15))
    given = Estimate(value).with_rectangular(a).with_rectangular(b).with_normal(normal_u)
    given = given.with_type_a(s, dof).with_one_sided(below, above)
    to = "resistance_ohm" if row.function.endswith("resistance_estimate") else "temperature_c"
    out = getattr(thermistor_of(row), to)(given)
    return [out.value, *out.rectangular, out.normal_u, out.type_a[0][0] if out.type_a else 0.0, out.below, out.above]


def of_floats(function: Callable[..., Any], row: Row) -> list[Any]:
    """A function of arrays of single precision, asked for one element."""
    given = [np.array([float(cell)], dtype=np.float32) for cell in row.inputs]
    result = function(*given)
    assert result.dtype == np.float32
    return [float(result[0])]


MARKS = {1: "1", 2: "OL", 4: "blank", 8: "dashes"}


def span_of(row: Row) -> Span:
    """Of the first 14 inputs; a bit that stands for no mark is a name that no mark has."""
    bits = int(row.inputs[4])
    return Span(
        row.inputs[0].decode("utf-8"),
        row.number(1),
        row.number(2),
        display_unit_ohm=row.number(3),
        over_range_marks=[MARKS.get(1 << bit, f"bit {bit}") for bit in range(8) if bits >> bit & 1],
        fraction_of_reading=row.number(5),
        fraction_of_span=row.number(6),
        accuracy_counts=row.number(7),
        coverage_factor=row.optional(8),
        step_included=row.inputs[9] == b"true",
        temperature_band_c=(row.number(10), row.number(11)),
        temperature_coefficient_per_kelvin=row.optional(12),
        zeroing_required=row.inputs[13] == b"true",
    )


def shown(row: Row) -> list[Any]:
    reading = span_of(row).read(row.inputs[14])
    return [reading.ohm, float(reading.counts), truth(reading.over), truth(reading.negative)]


def replied(row: Row) -> list[Any]:
    reading = span_of(row).read_reply(row.inputs[14])
    return [reading.ohm, truth(reading.over), truth(reading.negative)]


def choice_of(row: Row) -> Choice:
    return meter_of(row).choose(row.number(1), tolerance=row.number(2), meter_temperature_c=row.optional(3))


def meter_of(row: Row) -> Meter:
    return {"hand_held": Meter.example_hand_held, "bench": Meter.example_bench}[row.text(0)]()


def assessed(row: Row) -> list[Any]:
    made = choice_of(row).assessment(int(row.inputs[4]))
    numbers = [made.expected_ohm, float(made.counts_used), made.expanded_ohm, made.tur]
    factor = {"chosen": 1.0, "over-range": 0.0}.get(made.outcome, made.factor)
    head = [truth(made.holds), written(made.expected_display), *numbers, made.conformance_probability_at_centre]
    return [*head, truth(made.accepts_some), written(made.outcome), factor]


def stepped(row: Row) -> list[Any]:
    meter, index = meter_of(row), int(row.inputs[1])
    step = meter.next_span(meter.span(index).read(row.inputs[2]))
    return [written(step.kind), float(index if step.index is None else step.index)]


def ranged(row: Row, as_shown: bool) -> list[Any]:
    meter = meter_of(row)
    ranger = AutoRanger(
        meter, start=int(row.inputs[1]), discard=int(row.inputs[2]), hysteresis=row.number(3), widest_hysteresis=row.number(4)
    )
    said: list[Any] = []
    for place in range(5, len(row.inputs)):
        ohm = row.number(place)
        step = ranger.step(ranger.span.read(ranger.span.display_text(ohm))) if as_shown else ranger.step_ohm(ohm)
        said += [written(step.kind), float(step.index)]
    return said


def wired(row: Row) -> list[float]:
    leads = Leads.from_wire(row.number(0), row.number(1), int(row.inputs[2]))
    return [leads.ohm, leads.half_width_ohm]


def evaluated(row: Row) -> list[Any]:
    span = Meter.example_hand_held().spans[int(row.text(0))]
    readings = [span.read(text) for text in row.text(1).split()]
    (path, path_u, known, known_u, limit, temperature, half_width, reference, meter, repeatability, p) = (
        row.optional(3 + place) for place in range(11)
    )
    given: dict[str, Any] = {
        "leads": Leads(span.read(row.text(2))) if row.inputs[2] else None,
        "shunt_ohm": None if path is None else Estimate(path).with_normal(path_u or 0.0),
        "known_tcr": None if known is None else Estimate(known).with_normal(known_u or 0.0),
        "tcr_limit": limit,
        "temperature_c": None if temperature is None else Estimate(temperature).with_rectangular(half_width or 0.0),
        "reference_temperature_c": reference,
        "meter_temperature_c": meter,
        "repeatability_ohm": repeatability,
        "coverage_probability": p,
    }
    measured = evaluate(readings, **{name: value for name, value in given.items() if value is not None})
    return [measured.estimate.value, measured.estimate.u, measured.budget.expanded.half_width]


def effective(row: Row) -> list[Any]:
    numbers = [row.number(place) for place in range(len(row.inputs))]
    return [effective_dof(numbers[::2], numbers[1::2])]


def from_repeats(row: Row) -> list[Any]:
    mean = Estimate.from_repeats([row.number(place) for place in range(len(row.inputs))])
    return [mean.value, mean.u]


def probability(row: Row) -> list[Any]:
    return [conformance_probability(estimate_of(row), Limits(row.number(10), row.number(11)))]


def limits_of(limits: Limits) -> list[float]:
    return [limits.lower_ohm, limits.upper_ohm]


# What each function of the vectors is at this door: the row's inputs in, numbers and texts out, in their order.
DOORS: dict[str, Callable[[Row], list[Any]]] = {
    "distribution.normal_below": lambda row: [distribution.normal_below(row.number(0))],
    "distribution.normal_above": lambda row: [distribution.normal_above(row.number(0))],
    "distribution.normal_quantile": lambda row: [distribution.normal_quantile(row.number(0))],
    "distribution.normal_quantile_above": lambda row: [distribution.normal_quantile_above(row.number(0))],
    "distribution.t_below": lambda row: [distribution.t_below(row.number(0), row.number(1))],
    "distribution.t_above": lambda row: [distribution.t_above(row.number(0), row.number(1))],
    "distribution.t_quantile": lambda row: [distribution.t_quantile(row.number(0), row.number(1))],
    "distribution.t_quantile_above": lambda row: [distribution.t_quantile_above(row.number(0), row.number(1))],
    "preferred.nearest": lambda row: [preferred.nearest(row.number(0), row.text(1))],
    "preferred.below": lambda row: [preferred.below(row.number(0), row.text(1))],
    "preferred.above": lambda row: [preferred.above(row.number(0), row.text(1))],
    "preferred.neighbours": lambda row: list(preferred.neighbours(row.number(0), row.text(1))),
    "preferred.contains": lambda row: [truth(preferred.contains(row.number(0), row.text(1)))],
    "preferred.coarsest": lambda row: [written(preferred.coarsest(row.number(0)))],
    "preferred.decade": lambda row: list(preferred.decade(row.text(0))),
    "preferred.tolerance": lambda row: [or_nothing(preferred.tolerance(row.text(0)))],
    "marking.from_bands": lambda row: marking_said(Marking.from_bands(row.inputs[0], edition=edition(row, 1))),
    "marking.from_letters": lambda row: marking_said(Marking.from_letters(row.inputs[0])),
    "marking.from_chip": lambda row: marking_said(Marking.from_chip(row.inputs[0], scheme=row.text(1) or None)),
    "marking.to_bands": lambda row: [written(marking_given(row).to_bands(edition=edition(row, 3)))],
    "marking.to_letters": lambda row: [written(marking_given(row).to_letters())],
    "marking.to_chip": lambda row: [written(marking_given(row).to_chip())],
    "marking.both_ways": ways,
    "uncertainty.expanded": whole_interval,
    "uncertainty.expanded_welch_satterthwaite": lambda row: [interval(row, "expanded_welch_satterthwaite").half_width],
    "uncertainty.expanded_guaranteed": lambda row: [interval(row, "expanded_guaranteed").half_width],
    "uncertainty.quantile_above": lambda row: point(row, "quantile_above"),
    "uncertainty.probability_above": lambda row: point(row, "probability_above"),
    "uncertainty.probability_below": lambda row: point(row, "probability_below"),
    "uncertainty.effective_dof": effective,
    "uncertainty.from_repeats": from_repeats,
    "measurement.evaluate": evaluated,
    "meter.span": lambda row: [float(span_of(row).full_scale_counts)],
    "meter.span.read": shown,
    "meter.span.read_reply": replied,
    "meter.span.display_text": lambda row: [written(span_of(row).display_text(row.number(14)))],
    "meter.span.clause_half_width_ohm": lambda row: [
        span_of(row).clause_half_width_ohm(row.number(14), meter_temperature_c=row.optional(15))
    ],
    "meter.choose": lambda row: [float(choice_of(row).index)],
    "meter.choice.assessment": assessed,
    "meter.next_span": stepped,
    "meter.auto_ranger.step": lambda row: ranged(row, True),
    "meter.auto_ranger.step_ohm": lambda row: ranged(row, False),
    "meter.leads.from_wire": wired,
    "verdict.judge": judged,
    "verdict.conformance_probability": probability,
    "verdict.limits.from_tolerance": lambda row: limits_of(Limits.from_tolerance(row.number(0), row.number(1))),
}

DOORS |= {
    f"sensor.{model}.{quantity}": carried if quantity.endswith("estimate") else sensed
    for model in ("b_value", "steinhart_hart")
    for quantity in (
        *(q + form for q in ("resistance_ohm", "slope", "temperature_c") for form in ("", "_f32")),
        "resistance_estimate",
        "temperature_estimate",
    )
}
DOORS |= {
    f"distribution.{function}_f32": partial(of_floats, getattr(distribution, function))
    for function in distribution.__all__
    if function.startswith(("normal", "t_"))
}



def of_preferred(function: Callable[..., Any], row: Row) -> list[Any]:
    """A function of preferred values, asked for an array of one number of single precision."""
    result = function(np.array([row.number(0)], dtype=np.float32), row.text(1))
    assert result.dtype in (np.float32, np.bool_)
    return [truth(bool(result[0])) if result.dtype == np.bool_ else float(result[0])]


DOORS |= {
    f"preferred.{function}_f32": partial(of_preferred, getattr(preferred, function))
    for function in ("nearest", "below", "above", "contains")
}

# Functions that Python does not have, each with the reason.
NOT_HERE: dict[str, str] = {
    f"{function}_f32": "an Estimate and a Verdict are of doubles at this door"
    for function in (
        "uncertainty.expanded",
        "uncertainty.expanded_guaranteed",
        "uncertainty.expanded_welch_satterthwaite",
        "uncertainty.quantile_above",
        "uncertainty.probability_above",
        "uncertainty.probability_below",
        "verdict.judge",
        "verdict.conformance_probability",
        "verdict.limits.from_tolerance",
        "sensor.b_value.resistance_estimate",
        "sensor.b_value.temperature_estimate",
        "sensor.steinhart_hart.resistance_estimate",
        "sensor.steinhart_hart.temperature_estimate",
    )
} | {
    f"meter.{function}_f32": "a Span and a Reading are of doubles at this door"
    for function in (
        "span",
        "span.read",
        "span.read_reply",
        "span.display_text",
        "span.clause_half_width_ohm",
        "span.estimate",
        "next_span",
        "auto_ranger.step",
        "auto_ranger.step_ohm",
    )
}

FILES = sorted(FOLDER.glob("*.tsv"))


def test_there_are_vectors() -> None:
    assert FILES, f"no vectors in {FOLDER}"


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_vectors(path: Path) -> None:
    problems = []
    done = 0
    for row in rows(path):
        if row.function in NOT_HERE:
            continue
        if row.function not in DOORS:
            problems.append(f"{row.place}: {row.function} is not known at this door")
            continue
        done += 1
        problem = difference(row)
        if problem:
            problems.append(f"{row.place}: {row.function}{row.inputs}: {problem}")
    assert not problems, f"{len(problems)} problems\n" + "\n".join(problems[:20])
    assert done or all(row.function in NOT_HERE for row in rows(path))


def difference(row: Row) -> str | None:
    try:
        given = DOORS[row.function](row)
    except ReckohmError as error:
        return None if error.status == row.status else f"status {error.status} ({error}), {row.status} expected"
    if row.status:
        return f"{given} given, status {row.status} expected"
    if len(given) != len(row.bits):
        return f"{len(given)} results, {len(row.bits)} expected"
    for value, bits, text in zip(given, row.bits, row.outputs):
        if isinstance(value, bytes):
            if value != text or bits != "-":
                return f"{value!r} given, {text!r} expected"
        elif struct.pack(">d", value).hex() != bits:
            return f"{value!r} given, {text!r} expected ({bits})"
    return None
