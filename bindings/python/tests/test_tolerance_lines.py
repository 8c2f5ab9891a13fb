"""Parts of any sort on the scale of their limits: what is drawn lies where the numbers say."""

from __future__ import annotations

import pytest

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
from matplotlib.collections import PathCollection  # noqa: E402
from matplotlib.figure import Figure  # noqa: E402

from reckohm.errors import ContradictionError, CountError, RangeError  # noqa: E402
from reckohm.plot import tolerance_lines  # noqa: E402
from reckohm.uncertainty import Estimate  # noqa: E402
from reckohm.verdict import Limits, Rule, judge  # noqa: E402

LIMITS = Limits.from_tolerance(4700, 0.05)
RULE = Rule.guarded(0.05)


def part(shown: float) -> Estimate:
    return Estimate(shown).with_rectangular(0.008 * shown + 30).with_normal(3)


def test_each_part_is_on_the_scale_of_its_limits() -> None:
    axes = Figure().subplots()
    parts = [part(4700), part(4935), part(470), Estimate(1.04e3).with_rectangular(11)]
    limits = [LIMITS, LIMITS, LIMITS, Limits.from_tolerance(1000, 0.05)]
    verdicts = judge(parts, limits, RULE)
    tolerance_lines(axes, verdicts, labels=["middle", "limit", "far below", "another"])
    assert [line.get_xdata()[0] for line in axes.lines if list(line.get_ydata()) == [0, 1]] == [-1.0, 1.0]
    drawn = [points.get_offsets() for points in axes.collections if isinstance(points, PathCollection)]
    assert [float(points[0][0]) for points in drawn if len(points)] == pytest.approx([0.0, 1.0, -0.97 * 2.0, 0.8])
    assert f"{part(470)} ohm" in [text.get_text() for text in axes.texts]
    last = [bar for bar in axes.patches if 2.5 < bar.get_y() < 3 and bar.get_height() > 0]
    ends = sorted(end for bar in last for end in (bar.get_x(), bar.get_x() + bar.get_width()))
    guard = verdicts[3].guard_band_ohm / 50
    assert ends == pytest.approx([-1.0, guard - 1, guard - 1, 1 - guard, 1 - guard, 1.0])


def test_what_cannot_be_drawn_is_refused() -> None:
    axes = Figure().subplots()
    both = judge([part(4700)], LIMITS, RULE)
    with pytest.raises(ContradictionError, match="R1 has no two limits apart"):
        tolerance_lines(axes, judge([part(4700)], Limits.at_most(4935), RULE), labels=["R1"])
    with pytest.raises(CountError, match="labels: 0 given for 1 verdicts"):
        tolerance_lines(axes, both, labels=[])
    with pytest.raises(RangeError, match="reach: 1 given, more than 1 allowed"):
        tolerance_lines(axes, both, reach=1.0)
    with pytest.raises(CountError, match="none given, one or more needed"):
        tolerance_lines(axes, [])
    assert not axes.lines and not axes.patches
