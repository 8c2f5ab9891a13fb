"""Pictures: what is drawn lies where the numbers say."""

from __future__ import annotations

import pytest
from matplotlib.figure import Figure

from reckohm import plot
from reckohm.measurement import evaluate
from reckohm.meter import Meter
from reckohm.uncertainty import Estimate
from reckohm.verdict import Limits, Rule, judge

LIMITS = Limits.from_tolerance(4700, 0.05)
RULE = Rule.guarded(0.05)


def part(shown: float) -> Estimate:
    return Estimate(shown).with_rectangular(0.008 * shown + 30).with_normal(3)


def vertical_lines(axes) -> list[float]:
    return [line.get_xdata()[0] for line in axes.lines if len(set(line.get_xdata())) == 1 and len(line.get_xdata()) == 2]


def markers(axes) -> list[float]:
    return [float(line.get_xdata()[0]) for line in axes.lines if len(line.get_xdata()) == 1]


def test_a_verdict_shows_limits_guard_bands_and_estimate() -> None:
    axes = Figure().subplots()
    made = judge(part(4880), LIMITS, RULE)
    plot.verdict(axes, made, unit_ohm=1000, unit="kohm")
    assert vertical_lines(axes) == [4.465, 4.935]
    assert markers(axes) == [4.88]
    spans = sorted((patch.get_x(), patch.get_x() + patch.get_width()) for patch in axes.patches)
    assert spans[-1] == pytest.approx(((4935 - made.guard_band_ohm) / 1000, (4935 + made.guard_band_ohm) / 1000))
    assert spans[1] == pytest.approx((made.acceptance_lower_ohm / 1000, made.acceptance_upper_ohm / 1000))


def test_a_single_limit_is_drawn_alone() -> None:
    axes = Figure().subplots()
    plot.verdict(axes, judge(Estimate(-0.1).with_rectangular(0.3), Limits.at_most(0.8), RULE))
    assert vertical_lines(axes) == [0.8]


def test_verdicts_share_the_scale_of_their_limits() -> None:
    axes = Figure().subplots()
    plot.verdicts(axes, judge([part(4700), part(4935), part(470)], LIMITS, RULE), ["middle", "limit", "far below"])
    assert vertical_lines(axes) == [-1.0, 1.0]
    assert markers(axes)[:2] == [0.0, 1.0]
    assert [text.get_text() for text in axes.texts] == [f"{part(470)} ohm"]
    assert axes.yaxis_inverted()


def test_verdicts_that_cannot_be_drawn_are_refused() -> None:
    axes = Figure().subplots()
    one_sided = judge([part(4700)], Limits.at_most(4935), RULE)
    both = judge([part(4700)], LIMITS, RULE)
    for arguments, message in [
        ((one_sided, ["R1"]), "R1 has no two limits to be its scale"),
        ((both, []), "0 labels given for 1 verdicts"),
    ]:
        with pytest.raises(ValueError, match=message):
            plot.verdicts(axes, *arguments)
    with pytest.raises(ValueError, match="a reach of 1.0 given, more than 1 allowed"):
        plot.verdicts(axes, both, ["R1"], reach=1.0)


def test_a_budget_has_a_bar_a_row_and_one_for_all() -> None:
    axes = Figure().subplots()
    budget = evaluate(Meter.example_hand_held().spans[2].read(["11.94", "11.42", "12.60"])).budget
    plot.budget(axes, budget)
    assert [bar.get_width() for bar in axes.patches] == [*(row.u_ohm for row in budget.rows), budget.u_ohm]
    assert [text.get_text() for text in axes.texts] == ["95.7 % of the variance", "4.3 % of the variance", "u = 349 ohm"]
