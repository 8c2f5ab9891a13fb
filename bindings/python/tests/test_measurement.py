"""Measurements: every option, every error, the budget's ways out."""

from __future__ import annotations

import json
from typing import Any

import pytest

from reckohm.errors import ContradictionError, CountError, InputTypeError, MissingError, RangeError, ReckohmError
from reckohm.measurement import evaluate
from reckohm.meter import Leads, Meter, Span
from reckohm.uncertainty import Estimate

METER = Meter.example_hand_held()
LOW, TWO, TWENTY = METER.spans[:3]
READINGS = TWENTY.read(["4.66", "4.67", "4.66"])


def test_readings_are_taken_as_they_come() -> None:
    measured = evaluate(READINGS)
    assert measured.estimate.value == pytest.approx(13990 / 3, rel=1e-15)
    assert measured.estimate.rectangular[0] == pytest.approx(0.008 * 13990 / 3 + 30, rel=1e-14)
    assert evaluate(list(READINGS)) == evaluate(tuple(READINGS)) == measured
    assert measured.readings == tuple(READINGS) and measured.budget.expanded.estimate == measured.estimate
    assert evaluate(TWENTY.read("4.66")) == evaluate([TWENTY.read("4.66")])
    assert evaluate(TWENTY.read(["4.66", "4.66"])).scatter_at_floor
    match measured:
        case type(estimate=Estimate(value, _)):
            assert value == measured.estimate.value


def test_each_option_does_its_part() -> None:
    plain = evaluate(READINGS).estimate.value
    leads = Leads(LOW.read("00.4"))
    assert evaluate(READINGS, leads=leads).estimate.value == pytest.approx(plain - 0.4, rel=1e-14)
    shunted = evaluate(READINGS, shunt_ohm=Estimate(1e6, 1e4))
    assert shunted.estimate.value == pytest.approx(1 / (1 / plain - 1e-6), rel=1e-12)
    warm = evaluate(READINGS, known_tcr=100, temperature_c=Estimate(32).with_rectangular(1), reference_temperature_c=20)
    assert warm.estimate.value == pytest.approx(plain / (1 + 100e-6 * 12), rel=1e-12)
    limited = evaluate(READINGS, tcr_limit=100, temperature_c=32, reference_temperature_c=20)
    assert limited.estimate.value == plain
    rows = {row.contribution: row for row in limited.budget.rows}
    assert rows["limit of the temperature coefficient"].width == pytest.approx(1e-4)
    hot = evaluate(READINGS, meter_temperature_c=35).estimate
    assert hot.rectangular[0] == pytest.approx(1.7 * (0.008 * plain + 30), rel=1e-12)
    steady = evaluate(READINGS, repeatability_ohm=0).estimate
    assert steady.type_a == () and steady.normal_u == 0.0
    kinds = [piece.kind for piece in evaluate(TWENTY.read("1.46"), meter=METER).advice]
    assert "other span" in kinds and "other span" not in [piece.kind for piece in evaluate(TWENTY.read("1.46")).advice]
    assert evaluate(READINGS, coverage_probability=0.99).budget.expanded.coverage_probability == 0.99
    shorted = Leads(LOW.read("00.4"))
    low = LOW.read("02.9")
    widths = [evaluate(low, leads=shorted, zero_error_common=common).budget.u_ohm for common in (True, False, None)]
    assert widths[0] < widths[1] == widths[2]


NO_COEFFICIENT = Span("20 kohm", 20e3, 10, display_unit_ohm=1e3, over_range_marks="1", fraction_of_reading=0.01, accuracy_counts=2)


@pytest.mark.parametrize(
    ("readings", "options", "error", "kind"),
    [
        ([], {}, CountError, "Empty"),
        (TWENTY.read([]), {}, CountError, "Empty"),
        (TWENTY.read("1"), {}, RangeError, "OverRangeReading"),
        ([TWO.read("1.462"), TWENTY.read("1.46")], {}, ContradictionError, "Contradiction"),
        (READINGS, {"shunt_ohm": 4000}, ContradictionError, "Contradiction"),
        (READINGS, {"shunt_ohm": -1}, RangeError, "OutOfRange"),
        (READINGS, {"temperature_c": 32, "reference_temperature_c": 20}, MissingError, "MissingArgument"),
        (READINGS, {"temperature_c": 32}, MissingError, "MissingArgument"),
        (READINGS, {"reference_temperature_c": 20}, MissingError, "MissingArgument"),
        (READINGS, {"tcr_limit": 100}, MissingError, "MissingArgument"),
        (READINGS, {"tcr_limit": -1}, RangeError, "OutOfRange"),
        (READINGS, {"temperature_c": -300, "reference_temperature_c": 20}, RangeError, "OutOfRange"),
        (READINGS, {"known_tcr": -1e5, "temperature_c": 35, "reference_temperature_c": 20}, ContradictionError, "Contradiction"),
        (NO_COEFFICIENT.read("4.66"), {"meter_temperature_c": 35}, MissingError, "MissingArgument"),
        (READINGS, {"meter_temperature_c": float("nan")}, RangeError, "NotFinite"),
        (READINGS, {"repeatability_ohm": -1}, RangeError, "OutOfRange"),
        (READINGS, {"coverage_probability": 95}, RangeError, "OutOfRange"),
        ("4.66", {}, InputTypeError, None),
        (4660.0, {}, InputTypeError, None),
        ([4660.0], {}, InputTypeError, None),
        (READINGS, {"leads": 0.4}, InputTypeError, None),
        (READINGS, {"meter": LOW}, InputTypeError, None),
        (READINGS, {"shunt_ohm": "1M"}, InputTypeError, None),
        (TWENTY.read(["4.66", "x"], on_invalid="mask")[0], {}, InputTypeError, None),
    ],
)
def test_errors(readings: Any, options: dict[str, Any], error: type[ReckohmError], kind: str | None) -> None:
    with pytest.raises(error) as caught:
        evaluate(readings, **options)
    assert caught.value.kind == kind


def test_an_over_range_reading_is_named() -> None:
    with pytest.raises(RangeError) as caught:
        evaluate(TWENTY.read(["4.66", "4.67", "1"]))
    assert caught.value.index == 2 and caught.value.status == 300


def test_budget() -> None:
    budget = evaluate(READINGS).budget
    assert [row.contribution for row in budget.rows] == ["scatter of the readings", "accuracy clause of the meter"]
    assert budget.u_ohm == pytest.approx(sum(row.u_ohm**2 for row in budget.rows) ** 0.5, rel=1e-14)
    assert sum(row.share for row in budget.rows) == pytest.approx(1, rel=1e-14)
    assert budget.rows[0].dof == 2.0
    plain = json.loads(json.dumps(budget.to_dict(), allow_nan=False))
    assert plain["value_ohm"] == budget.value_ohm and plain["half_width_ohm"] == budget.expanded.half_width
    assert plain["coverage_factor"] == budget.expanded.coverage_factor and plain["upper_ohm"] == budget.expanded.upper
    assert [row["u_ohm"] for row in plain["rows"]] == [row.u_ohm for row in budget.rows]
    assert [row["dof"] for row in plain["rows"]] == [2.0, None]
    for row, record in zip(plain["rows"], budget.rows):
        assert list(row) == [field for field in record.__dataclass_fields__]


def test_tables() -> None:
    measured = evaluate(READINGS, meter=METER)
    html = measured._repr_html_()
    assert html.startswith(measured.budget._repr_html_()) and html.count("<li>") == len(measured.advice)
    assert html.count("<tr>") == 1 + len(measured.budget.rows) and "99" in html and "∞" in html
    text = str(measured)
    assert text.startswith(str(measured.budget)) and str(measured.advice[0]) in text
