"""What holds for every class: frozen, pickled, hashed, copied, and a repr that gives the object back."""

from __future__ import annotations

import copy
import pickle
from typing import Any

import numpy as np
import pytest

import reckohm
from reckohm import verdict
from reckohm.errors import ChoiceError, ContradictionError, CountError, InputTypeError, MissingError, RangeError, TextError
from reckohm.marking import Marking, both_ways
from reckohm.measurement import evaluate
from reckohm.meter import Leads, Meter, Span
from reckohm.sensor import Thermistor
from reckohm.uncertainty import Estimate
from reckohm.verdict import Limits, Rule, judge

NAMES = {name: getattr(getattr(reckohm, module), name) for module in reckohm.__all__ for name in getattr(reckohm, module).__all__}

METER = Meter.example_hand_held()
ODD_SPAN = Span(
    "it's 2 kΩ", 2e3, 1, display_unit_ohm=1e3, over_range_marks=[], fraction_of_reading=0, accuracy_counts=2,
    fraction_of_span=0.001, coverage_factor=2, step_included=False, temperature_band_c=(20, 26), zeroing_required=True,
)

EXAMPLES: list[Any] = [
    Limits(990.0, 1010.0),
    Limits(-0.0, 0.1),
    Limits.at_most(0.05),
    Limits.at_least(1e6),
    Limits.from_tolerance(4.7e-7, 0.05),
    Marking.from_bands("red yellow white orange brown red"),
    Marking.from_letters("4K7J"),
    Marking.from_chip("472"),
    Marking.from_chip("000"),
    Marking.from_value(0.001, None, 15),
    both_ways("Gold RED violet yellow"),
    both_ways(["BN", "BK", "BK", "BN", "BN"], edition=2004),
    both_ways("gold red violet yellow").forward,
    both_ways("gold red violet yellow").backward,
    METER.spans[1],
    ODD_SPAN,
    METER,
    Meter.example_bench(),
    Meter([ODD_SPAN]),
    METER.spans[1].read("1"),
    METER.spans[1].read("-0.001"),
    METER.spans[1].read_reply(b"+1.462E+03"),
    METER.spans[1].read(["1.462", "1"]),
    METER.spans[1].read(["1.462", "1x", "1"], on_invalid="mask")[0],
    METER.choose(4700, tolerance=0.05),
    METER.choose(4700, tolerance=0.05, meter_temperature_c=35).chosen,
    METER.next_span(METER.spans[1].read("1")),
    Leads(METER.spans[0].read("00.3")),
    Leads.from_wire(1, 0.75, 5),
    evaluate(METER.spans[2].read(["4.66", "4.67", "4.66"]), meter=METER, coverage_probability=0.99),
    evaluate(
        METER.spans[0].read("12.9"), leads=Leads.from_wire(1, 0.75, 5), shunt_ohm=Estimate(1e6, 1e4), known_tcr=100,
        tcr_limit=5, temperature_c=Estimate(32).with_rectangular(1), reference_temperature_c=20, meter_temperature_c=30,
        repeatability_ohm=0.1, zero_error_common=True,
    ),
    evaluate(METER.spans[2].read("4.66")).budget,
    evaluate(METER.spans[2].read("4.66")).budget.rows[0],
    evaluate(METER.spans[2].read("4.66")).budget.expanded,
    evaluate(METER.spans[2].read("4.66")).advice[0],
    Thermistor.b_value(10_000, 25, 3977, (25, 85)),
    Thermistor.b_value(10_000, 25, 3977, (85, 25)).with_domain((-0.0, 85)),
    Thermistor.steinhart_hart([1.129148e-3, 2.34125e-4, 8.76741e-8], 1, (-40, 125)),
    Thermistor.steinhart_hart((3.354016e-3, 2.57e-4, 2.4e-6, 9.0e-8), 10_000, (-40, 125)),
    Rule.simple_acceptance(),
    Rule.guarded(0.05),
    Rule.max_risk(0.1),
    Estimate(-1.5),
    Estimate(100, 0.3, 4),
    Estimate(4880, 3).with_rectangular(69).with_rectangular(0.1).with_rectangular(7),
    Estimate(1e-9, 1e-10).with_type_a(3e-10, 2).with_type_a(1e-10, 2.5).with_one_sided(1e-9, 0),
    Estimate(5.0).with_type_a(0.1, 3).with_type_a(0.1, 5),
    Estimate(100, 0.3, 4).with_rectangular(0.1).expanded(0.99),
    Estimate(100, 0.3, 4).expanded_welch_satterthwaite(),
    Estimate(100, 0.3, 4).expanded_guaranteed(),
    judge(Estimate(4880, 3).with_rectangular(69), Limits.from_tolerance(4700, 0.05), Rule.guarded(0.05)),
    judge(Estimate(0.01, 0.01), Limits.at_most(0.05), Rule.simple_acceptance()),
]


@pytest.fixture(params=EXAMPLES, ids=lambda example: f"{type(example).__name__}")
def example(request: pytest.FixtureRequest) -> Any:
    return request.param


def test_repr_gives_it_back(example: Any) -> None:
    again = eval(repr(example), {**NAMES})
    assert type(again) is type(example) and again == example
    assert repr(again) == repr(example)


@pytest.mark.parametrize("protocol", range(2, pickle.HIGHEST_PROTOCOL + 1))
def test_pickles(example: Any, protocol: int) -> None:
    again = pickle.loads(pickle.dumps(example, protocol))
    assert again == example and repr(again) == repr(example)


def test_copies(example: Any) -> None:
    assert copy.copy(example) == example and copy.deepcopy(example) == example


def test_hash_goes_with_equality(example: Any) -> None:
    again = pickle.loads(pickle.dumps(example))
    assert hash(again) == hash(example)
    assert {example: 1}[again] == 1


def test_frozen(example: Any) -> None:
    with pytest.raises(AttributeError):
        example.anything = 1
    for name in getattr(type(example), "__match_args__", ()):
        with pytest.raises(AttributeError):
            setattr(example, name, 1)


def test_equals_nothing_else(example: Any) -> None:
    assert example != repr(example) and example != 1.0 and not example == None  # noqa: E711


def test_limits() -> None:
    limits = Limits.from_tolerance(4700, 0.05)
    assert (limits.lower_ohm, limits.upper_ohm) == (4465.0, 4935.0)
    assert 4935.0 in limits and 4935.1 not in limits and not limits.contains(float("nan"))
    match limits:
        case Limits(lower, upper):
            assert (lower, upper) == (4465.0, 4935.0)
    assert hash(Limits(0.0, 1)) == hash(Limits(-0.0, 1)) and Limits(0.0, 1) == Limits(-0.0, 1)
    assert Limits(np.float32(1), np.int64(5)) == Limits(np.array(1.0), 5)


def test_limits_refused() -> None:
    inf = float("inf")
    for given, status in (((2, 1), 4), ((float("nan"), 1), 2), ((inf, inf), 2), ((-inf, inf), 3)):
        with pytest.raises((RangeError, CountError, ContradictionError)) as caught:
            Limits(*given)
        assert caught.value.status == status
    with pytest.raises(RangeError, match="give a fraction, not percent") as caught:
        Limits.from_tolerance(4700, 5)
    assert caught.value.given == 5.0 and caught.value.allowed == (0.0, 1.0)


@pytest.mark.parametrize("given", ["1", True, np.True_, None, 1j, [1.0], np.array([1.0]), 10**400], ids=lambda x: str(x)[:9])
def test_a_number_is_a_number(given: Any) -> None:
    with pytest.raises(InputTypeError, match="allowed"):
        Limits(given, 5)
    with pytest.raises(InputTypeError):
        verdict.Limits.at_most(given)


def test_estimate_shape() -> None:
    part = Estimate(4880, 3).with_rectangular(69)
    assert part.rectangular == (69.0, 0.0) and part.normal_u == 3.0 and part.type_a == ()
    assert part.u == pytest.approx((69**2 / 3 + 9) ** 0.5, rel=1e-15)
    repeats = Estimate(1000.2, 0.4, 4)
    assert repeats.type_a == ((0.4, 4.0),) and repeats.effective_dof == 4.0 and repeats.normal_u == 0.0
    match repeats:
        case Estimate(value, u):
            assert (value, u) == (1000.2, 0.4)


def test_expanded_against_worked_numbers() -> None:
    """METROLOGY: rectangular 1 with s·t(ν) at 95 %; figures computed apart from this library."""
    for s, dof, expected in ((1 / 3, 2, 1.7203139), (0.1, 9, 0.9878773), (1, 1, 12.7322663), (1, float("inf"), 2.2541371)):
        assert Estimate(0.0, s, dof).with_rectangular(1).expanded(0.95).half_width == pytest.approx(expected, abs=6e-8)


@pytest.mark.parametrize("compare", ["__lt__", "__le__", "__gt__", "__ge__"])
def test_estimates_have_no_order(compare: str) -> None:
    with pytest.raises(InputTypeError, match="reckohm.verdict.judge"):
        getattr(Estimate(1.0), compare)(Estimate(2.0))
    with pytest.raises(TypeError):
        sorted([Estimate(1.0), Estimate(2.0)])


def test_estimates_are_no_numpy_numbers() -> None:
    with pytest.raises(TypeError):
        np.array([1.0, 2.0]) * Estimate(1.0)
    with pytest.raises(TypeError):
        np.sin(Estimate(1.0))


@pytest.mark.parametrize(
    ("estimate", "text"),
    [
        (Estimate(4880, 3).with_rectangular(69), "4880 ± 66"),
        (Estimate(1000.0).with_rectangular(10), "1000.0 ± 9.5"),
        (Estimate(0.012345).with_rectangular(0.001), "0.01235 ± 0.00095"),
        (Estimate(1234567).with_rectangular(10000), "1234600 ± 9500"),
        (Estimate(1234567).with_rectangular(100000), "1235000 ± 95000"),
        (Estimate(100.0), "100 exactly"),
        (Estimate(9.9e6, 1e4).with_one_sided(0, 1e5), "9900000 ± 20000, and +100000.0 one-sided"),
        (Estimate(1e-20, 1e-22), "1.000e-20 ± 2.0e-22"),
    ],
)
def test_digits_follow_the_uncertainty(estimate: Estimate, text: str) -> None:
    assert str(estimate) == text


def test_verdict_against_worked_numbers() -> None:
    """METROLOGY §3: limits 4465 to 4935, clause 0.8 % + 3×10, noise 3."""
    limits, rule = Limits.from_tolerance(4700, 0.05), Rule.guarded(0.05)

    def at(shown: float) -> Estimate:
        return Estimate(shown, 3).with_rectangular(0.008 * shown + 30)

    verdicts = judge([at(shown) for shown in (4860, 4880, 4930, 4960, 4998)], limits, rule)
    assert [v.answer for v in verdicts] == ["conforms", *["undecided"] * 3, "does not conform"]
    assert [v.side for v in verdicts[1:4]] == ["inside", "inside", "outside"]
    assert [round(v.conformance_probability, 3) for v in verdicts[1:4]] == [0.898, 0.536, 0.321]
    assert verdicts[1] == judge(at(4880), limits, rule)
    assert judge([], limits, rule) == []
    each = judge([at(4860), at(4880)], [limits, Limits.at_most(4000)], rule)
    assert [v.answer for v in each] == ["conforms", "does not conform"]
    assert [v.limits for v in judge(at(4860), [limits, limits], rule)] == [limits, limits]
    html = verdicts[1]._repr_html_()
    assert html.startswith("<table>") and "undecided, inside the limits" in html and "0.898" in html


def test_judge_refuses() -> None:
    limits, rule = Limits.at_most(5), Rule.simple_acceptance()
    for given in (("1.0", limits, rule), (Estimate(1.0), 5.0, rule), (Estimate(1.0), limits, "guarded"), (["1"], limits, rule)):
        with pytest.raises(InputTypeError):
            judge(*given)
    with pytest.raises(CountError) as caught:
        judge([Estimate(1.0)], [limits, limits], rule)
    assert caught.value.status == 7
    with pytest.raises(TypeError):
        judge(Estimate(1.0), limits)


def test_conformance_probability() -> None:
    limits = Limits.from_tolerance(4700, 0.05)
    part = Estimate(4880, 3).with_rectangular(69)
    expected = judge(part, limits, Rule.guarded(0.05)).conformance_probability
    assert verdict.conformance_probability(part, limits) == expected
    assert verdict.conformance_probability(4880, limits, u=3, rectangular=69) == expected
    assert verdict.conformance_probability([part, part], limits).tolist() == [expected] * 2
    assert verdict.conformance_probability(np.full((2, 1), 4880), limits, u=[3, 3], rectangular=69).shape == (2, 2)
    assert verdict.conformance_probability([], limits).shape == (0,)
    repeats = Estimate(4900, 5, 3)
    assert verdict.conformance_probability(4900, limits, u=5, dof=3) == verdict.conformance_probability(repeats, limits)
    with pytest.raises(InputTypeError, match="options"):
        verdict.conformance_probability(part, limits, u=3)
    with pytest.raises(RangeError) as caught:
        verdict.conformance_probability([4880.0, 4880.0], limits, u=[3, -3])
    assert caught.value.index == 1 and caught.value.given == -3.0


def test_marking() -> None:
    marking = Marking.from_bands("brown green red gold")
    assert (marking.nominal_ohm, marking.tolerance, marking.tcr_ppm_per_kelvin) == (1500.0, 0.05, None)
    assert marking == Marking.from_bands(["BN", "gn", b"RD", "GD"]) == Marking.from_letters("1K5J")
    assert marking.limits == Limits(1425.0, 1575.0)
    assert (marking.to_bands(), marking.to_letters(), marking.to_chip()) == ("brown green red gold", "1K5J", "152")
    assert Marking.from_bands("black").is_zero_ohm_link
    assert Marking.from_bands("red yellow white orange brown red").tcr_ppm_per_kelvin == 50.0
    grey = "brown black black brown grey"
    assert Marking.from_bands(grey, edition=2004).tolerance == 0.0005
    assert Marking.from_bands(grey).tolerance == 0.0001
    assert Marking.from_chip("09R", scheme="common list").nominal_ohm == 1.21


def test_marking_refused() -> None:
    with pytest.raises(TextError, match="no colour") as caught:
        Marking.from_bands("brown purple red")
    assert (caught.value.status, caught.value.index, caught.value.given) == (101, 6, "brown purple red")
    with pytest.raises(TextError) as caught:
        Marking.from_letters(b"4K\xff")
    assert caught.value.index == 2 and caught.value.given == b"4K\xff"
    with pytest.raises(CountError):
        Marking.from_bands("brown red")
    with pytest.raises(CountError):
        Marking.from_bands([])
    with pytest.raises(TextError) as caught:
        Marking.from_chip("09R")
    assert caught.value.kind == "DoubtfulCode"
    with pytest.raises(MissingError):
        Marking.from_chip("472").limits
    with pytest.raises(ChoiceError, match="edition: '2010' given"):
        Marking.from_bands("brown green red gold", edition=2010)
    with pytest.raises(ChoiceError, match='"military"'):
        Marking.from_chip("09R", scheme="navy")
    with pytest.raises(ChoiceError):
        Marking.from_letters("4K7").to_chip(form="long")
    with pytest.raises(RangeError):
        Marking.from_value(-1)
    for coefficient in (0, 20000, float("nan"), 1.5):
        with pytest.raises((RangeError, TextError)):
            Marking.from_value(1, 0.05, coefficient)
    for given in (None, 472, ["brown", 1]):
        with pytest.raises(InputTypeError):
            Marking.from_bands(given)


def test_both_ways() -> None:
    ways = both_ways("gold red violet yellow")
    assert ways.more_plausible == "backward"
    assert ways.forward.marking is None and isinstance(ways.forward.error, TextError)
    assert ways.backward.marking == Marking.from_letters("4K7J") and ways.backward.doubts == ()
    assert ways.backward.error is None and ways.backward.bands == "yellow violet red gold"
