"""Meters: spans, readings, the choice of a span, stepping, leads."""

from __future__ import annotations

import copy
import pickle

import numpy as np
import pandas as pd
import pytest

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
from reckohm.meter import AutoRanger, Leads, Meter, RangerStep, Readings, Span

METER = Meter.example_hand_held()
SPAN = METER.spans[1]
OPTIONS = {"display_unit_ohm": 1e3, "over_range_marks": "OL", "fraction_of_reading": 0.01, "accuracy_counts": 2}


def test_span_holds_what_was_given() -> None:
    span = Span(
        "2 kΩ",
        2e3,
        1,
        **{**OPTIONS, "over_range_marks": ["dashes", "OL"]},
        fraction_of_span=0.001,
        coverage_factor=2,
        step_included=False,
        temperature_band_c=(20, 26),
        temperature_coefficient_per_kelvin=0.1,
        zeroing_required=True,
    )
    assert (span.label, span.full_scale_ohm, span.resolution_ohm, span.display_unit_ohm) == ("2 kΩ", 2e3, 1.0, 1e3)
    assert (span.over_range_marks, span.full_scale_counts) == (("OL", "dashes"), 2000)
    assert (span.fraction_of_reading, span.accuracy_counts, span.fraction_of_span) == (0.01, 2.0, 0.001)
    assert (span.coverage_factor, span.step_included, span.temperature_band_c) == (2.0, False, (20.0, 26.0))
    assert (span.temperature_coefficient_per_kelvin, span.zeroing_required) == (0.1, True)
    assert span.clause_half_width_ohm(1000) == pytest.approx(10 + 2 + 2, rel=1e-15)
    assert span.clause_half_width_ohm(1000, meter_temperature_c=30) == pytest.approx(14 * 1.4, rel=1e-15)
    assert Span("x", 2e3, 1, **{**OPTIONS, "over_range_marks": []}).over_range_marks == ()


@pytest.mark.parametrize(
    ("change", "error", "kind"),
    [
        ({"label": ""}, CountError, "Empty"),
        ({"label": "x" * 16}, TextError, "TextTooLong"),
        ({"full_scale_ohm": -1}, RangeError, "OutOfRange"),
        ({"resolution_ohm": 3}, MeterError, "UnknownResolution"),
        ({"display_unit_ohm": 10}, MeterError, "UnknownDisplayUnit"),
        ({"full_scale_ohm": 2000.5}, ContradictionError, "Contradiction"),
        ({"fraction_of_reading": 1.5}, RangeError, "OutOfRange"),
        ({"accuracy_counts": float("nan")}, RangeError, "NotFinite"),
        ({"fraction_of_reading": 0, "accuracy_counts": 0}, MissingError, "MissingArgument"),
        ({"temperature_band_c": (28, 18)}, ContradictionError, "Contradiction"),
        ({"over_range_marks": "EEE"}, ChoiceError, "UnknownMarks"),
        ({"over_range_marks": 3}, InputTypeError, None),
        ({"label": 3}, InputTypeError, None),
        ({"full_scale_ohm": "2 k"}, InputTypeError, None),
    ],
)
def test_spans_that_no_meter_has(change: dict[str, object], error: type[ReckohmError], kind: str | None) -> None:
    given = {"label": "2 kohm", "full_scale_ohm": 2e3, "resolution_ohm": 1.0, **OPTIONS, **change}
    with pytest.raises(error) as caught:
        Span(**given)  # type: ignore[arg-type]
    assert caught.value.kind == kind


def test_reading() -> None:
    reading = SPAN.read("1.462")
    assert (reading.ohm, reading.counts, reading.over, reading.negative) == (1462.0, 1462, False, False)
    assert reading.span == SPAN and reading.text == "1.462" and str(reading) == "1462 ohm on 2 kohm"
    assert SPAN.read("1,462") == reading and SPAN.read(b"1.462") == reading
    over = SPAN.read("1")
    assert over.over and str(over) == "beyond 2 kohm"
    assert SPAN.read("-.000").negative and str(SPAN.read("-.000")) == "-0 ohm on 2 kohm"
    match reading:
        case type(ohm=ohm, over=False):
            assert ohm == 1462.0
    assert METER.spans[1].read_reply("9.9E37").over
    assert METER.spans[1].read_reply(b"+1.46203500E+03\n").ohm == 1462.035


def test_texts_that_are_no_reading() -> None:
    for text, kind in (("1462", "MissingPoint"), ("1.46", "TooFewDecimals"), ("2.462", "BeyondFullScale")):
        with pytest.raises(DisplayError) as caught:
            SPAN.read(text)
        assert caught.value.kind == kind and caught.value.given == text
    with pytest.raises(TextError) as caught:
        SPAN.read("1.4x2")
    assert (caught.value.kind, caught.value.index) == ("UnexpectedByte", 3)
    with pytest.raises(TextError) as caught:
        SPAN.read(b"1.4\xff2")
    assert caught.value.given == b"1.4\xff2"
    with pytest.raises(CountError):
        SPAN.read("")
    with pytest.raises(DisplayError) as caught:
        SPAN.read_reply("9.91E37")
    assert caught.value.kind == "NoReading"
    for given in (1.462, 1462, None, [1.462]):
        with pytest.raises(InputTypeError, match="text"):
            SPAN.read(given)


def test_many_readings() -> None:
    readings = SPAN.read(["1.462", "1", "-0.001"])
    assert isinstance(readings, Readings) and len(readings) == 3 and readings.span == SPAN
    assert readings.ohm.tolist() == [1462.0, 2000.0, -1.0] and readings.ohm.dtype == np.float64
    assert readings.over.tolist() == [False, True, False] and readings.over.dtype == np.bool_
    assert readings.negative.tolist() == [False, False, True]
    assert readings.counts.tolist() == [1462, 0, -1] and readings.counts.dtype == np.int64
    assert readings[-1] == SPAN.read("-0.001") and [r.ohm for r in readings] == readings.ohm.tolist()
    with pytest.raises(IndexError):
        readings[3]
    for texts in (np.array(["1.462", "1"]), pd.Series(["1.462", "1"]), ("1.462", b"1")):
        assert SPAN.read(texts).ohm.tolist() == [1462.0, 2000.0]
    assert len(SPAN.read([])) == 0 and SPAN.read([]).ohm.shape == (0,)
    with pytest.raises(DisplayError) as caught:
        SPAN.read(["1.462", "1462", "2.5"])
    assert caught.value.index == 1 and caught.value.failed == 2 and caught.value.given == "1462"
    assert str(caught.value).startswith("element 1: ") and "(2 of 3 elements failed)" in str(caught.value)
    readings, valid = SPAN.read(["1.462", "1462", "1"], on_invalid="mask")
    assert valid.tolist() == [True, False, True] and valid.dtype == np.bool_
    assert readings[1] is None and np.isnan(readings.ohm[1]) and readings[0].ohm == 1462.0
    assert SPAN.read("1462", on_invalid="mask") == (None, False)
    assert SPAN.read("1.462", on_invalid="mask") == (SPAN.read("1.462"), True)
    with pytest.raises(ChoiceError):
        SPAN.read("1.462", on_invalid="nan")


def test_choice() -> None:
    choice = METER.choose(4700, tolerance=0.05)
    assert choice.index == 2 and choice.span == METER.spans[2] and choice.chosen == choice.assessments[2]
    assert choice.chosen.expanded_ohm == pytest.approx(0.95 * 67.6)
    assert [made.outcome for made in choice.assessments] == ["over-range"] * 2 + ["chosen"] + ["wider"] * 3
    assert choice.assessments[3].factor == pytest.approx(choice.assessments[3].expanded_ohm / choice.chosen.expanded_ohm)
    hot = METER.choose(4700, tolerance=0.05, meter_temperature_c=35)
    assert hot.chosen.expanded_ohm == pytest.approx(1.7 * choice.chosen.expanded_ohm)
    html = METER.choose(220, tolerance=0.01)._repr_html_()
    assert html.count("<tr>") == 7 and "No span of this meter is good enough" in html and "times as wide" in html
    over_range = METER.choose(4700, tolerance=0.05)._repr_html_().split("<tr>")[2]
    assert over_range.count("<td>–</td>") == 4 and "over-range" in over_range
    with pytest.raises(MeterError) as caught:
        METER.choose(1e9, tolerance=0.05)
    assert caught.value.kind == "NoSpanHolds"
    with pytest.raises(RangeError):
        METER.choose(4700, tolerance=5)


def test_meter() -> None:
    assert Meter(list(METER.spans)) == METER and Meter(METER.spans[:2]).spans == METER.spans[:2]
    for spans, error in (([], CountError), (METER.spans[::-1], ContradictionError), ([1], InputTypeError), (5, InputTypeError)):
        with pytest.raises(error):
            Meter(spans)


def test_indices() -> None:
    choice = METER.choose(4700, tolerance=0.05)
    assert METER.span(2) == METER.spans[2] and choice.assessment(2) == choice.chosen
    for call in (METER.span, choice.assessment):
        with pytest.raises(MeterError) as caught:
            call(6)
        assert caught.value.kind == "NoSuchSpan"
        with pytest.raises((TypeError, OverflowError)):
            call(-1)


def test_next_span() -> None:
    kinds = [METER.next_span(METER.spans[index].read(text)) for index, text in ((1, "1"), (2, "4.70"), (3, "4.7"), (5, "OL"))]
    assert [(step.kind, step.index) for step in kinds] == [("up", 2), ("stay", 2), ("down", 2), ("beyond highest", None)]
    assert kinds[0].span == METER.spans[2] and kinds[3].span is None
    with pytest.raises(ContradictionError, match="span of this meter") as caught:
        METER.next_span(Meter.example_bench().spans[0].read("10.000"))
    assert caught.value.status == 4
    with pytest.raises(InputTypeError):
        METER.next_span("1.462")


def test_auto_ranger() -> None:
    ranger = AutoRanger(METER, start=1, discard=1)
    assert (ranger.meter, ranger.index, ranger.span, ranger.discard) == (METER, 1, METER.spans[1], 1)
    assert (ranger.hysteresis, ranger.widest_hysteresis) == (0.05, 0.5)
    assert ranger.step(SPAN.read("OL")) == RangerStep("switch", 2, METER.spans[2], 0)
    assert ranger.step(METER.spans[2].read("OL")) == RangerStep("again", 2, METER.spans[2], 0)
    assert ranger.step(METER.spans[2].read("4.70")).kind == "accept"
    with pytest.raises(ContradictionError, match="on 2 kohm given, one on 20 kohm allowed"):
        ranger.step(SPAN.read("1.462"))
    with pytest.raises(RangeError):
        ranger.step_ohm(float("nan"))
    with pytest.raises(InputTypeError):
        ranger.step("4.70")
    assert ranger.step(METER.spans[2].read("4.70")).kind == "accept" and ranger.index == 2
    assert AutoRanger(METER).index == 5
    assert AutoRanger(METER, start=0).step_ohm(0).kind == "below lowest"
    assert AutoRanger(METER).step_ohm(1e9).kind == "beyond highest"


def test_auto_ranger_is_pickled_where_it_stands() -> None:
    ranger = AutoRanger(METER, start=1, discard=1, hysteresis=0.1, widest_hysteresis=0.4)
    assert eval(repr(ranger)) == ranger
    for ohm in (2200, 2200, 1600, 1600, 2200):
        ranger.step_ohm(ohm)
    for protocol in range(2, pickle.HIGHEST_PROTOCOL + 1):
        again = pickle.loads(pickle.dumps(ranger, protocol))
        assert again == ranger and again.index == 2
        assert again.step_ohm(1600).kind == "again", "one more is to be discarded"
        assert again != ranger and again.step_ohm(1600).kind == "accept", "the hysteresis is now a fifth"
    copied = copy.deepcopy(ranger)
    copied.restart()
    assert copied.index == 1 and ranger.index == 2 and copied == AutoRanger(METER, start=1, discard=1, hysteresis=0.1, widest_hysteresis=0.4)
    copied.restart(3)
    assert copied.index == 3
    with pytest.raises(TypeError):
        hash(ranger)
    with pytest.raises(ContradictionError):
        ranger.__setstate__((1, 5, 0.1, None, False))


def test_auto_rangers_that_cannot_be() -> None:
    for options, error, kind in (
        ({"start": 6}, MeterError, "NoSuchSpan"),
        ({"hysteresis": 0}, RangeError, "OutOfRange"),
        ({"widest_hysteresis": float("inf")}, RangeError, "NotFinite"),
        ({"hysteresis": 0.2, "widest_hysteresis": 0.1}, ContradictionError, "Contradiction"),
        ({"hysteresis": "5 %"}, InputTypeError, None),
    ):
        with pytest.raises(error) as caught:
            AutoRanger(METER, **options)
        assert caught.value.kind == kind
    with pytest.raises(MeterError):
        AutoRanger(METER).restart(6)
    many = [Span("x", 100.0 * (1 + place), 1, **OPTIONS) for place in range(17)]
    with pytest.raises(CountError):
        AutoRanger(Meter(many))
    with pytest.raises(InputTypeError):
        AutoRanger(METER.spans)


def test_leads() -> None:
    shorted = METER.spans[0].read("00.3")
    leads = Leads(shorted)
    assert leads.ohm == 0.3 and leads.reading == shorted and leads.half_width_ohm == 0.0
    wire = Leads.from_wire(1, 0.75, 5)
    assert wire.reading is None and wire.ohm + wire.half_width_ohm == pytest.approx(0.052)
    with pytest.raises(RangeError) as caught:
        Leads(METER.spans[0].read("OL"))
    assert caught.value.kind == "OverRangeReading"
    for wire_given in ((1, 0.8, 5), (1, 0.75, 3), (1, 0.75, 1.5)):
        with pytest.raises(MeterError):
            Leads.from_wire(*wire_given)
    with pytest.raises(InputTypeError):
        Leads(0.3)
