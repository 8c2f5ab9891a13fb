"""The drawings: what is on the axes. How they look was looked at by eye."""

from __future__ import annotations

import pytest

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
from matplotlib.figure import Figure  # noqa: E402

from reckohm.errors import ContradictionError, CountError  # noqa: E402
from reckohm.measurement import evaluate  # noqa: E402
from reckohm.meter import Meter  # noqa: E402
from reckohm.plot import budget_bars, verdict_line  # noqa: E402
from reckohm.uncertainty import Estimate  # noqa: E402
from reckohm.verdict import Limits, Rule, judge  # noqa: E402

LIMITS = Limits.from_tolerance(4700, 0.05)
TRAY = [Estimate(shown, 3).with_rectangular(0.008 * shown + 30) for shown in (4700, 4880, 5100)]


def test_number_line() -> None:
    axes = Figure().subplots()
    verdicts = judge(TRAY, LIMITS, Rule.guarded(0.05))
    verdict_line(axes, verdicts, labels=["a", "b", "c"])
    assert [tick.get_text() for tick in axes.get_yticklabels()] == ["a", "b", "c"]
    lines = [line.get_xdata()[0] for line in axes.lines if len(set(line.get_xdata())) == 1 and len(line.get_xdata()) == 2]
    assert {LIMITS.lower_ohm, LIMITS.upper_ohm} <= set(lines)
    interval = TRAY[1].expanded(0.95)
    segments = [path.vertices[:, 0].tolist() for bars in axes.collections for path in bars.get_paths()]
    assert any(ends == pytest.approx([interval.lower, interval.upper]) for ends in segments if len(ends) == 2)
    second = [bar for bar in axes.patches if 0.5 < bar.get_y() < 1]
    bars = sorted(end for bar in second for end in (bar.get_x(), bar.get_x() + bar.get_width()))
    first, last = verdicts[1].acceptance_lower_ohm, verdicts[1].acceptance_upper_ohm
    assert bars == pytest.approx([LIMITS.lower_ohm, first, first, last, last, LIMITS.upper_ohm])
    words = [text.get_text() for text in axes.get_legend().get_texts()]
    assert words == ["conforms", "undecided", "does not conform", "values that conform", "guard band"]
    low, high = axes.get_xlim()
    assert low < LIMITS.lower_ohm and high > TRAY[2].expanded(0.95).upper


def test_number_line_of_one() -> None:
    axes = Figure().subplots()
    verdict_line(axes, judge(Estimate(0.03, 0.01), Limits.at_most(0.05), Rule.simple_acceptance()))
    assert [text.get_text() for text in axes.get_legend().get_texts()] == ["conforms", "values that conform"]
    assert [text.get_text() for text in axes.texts] == ["limit 0.05"]
    exact = Figure().subplots()
    verdict_line(exact, judge(Estimate(5.0), Limits.at_most(5.0), Rule.simple_acceptance()))
    assert exact.get_xlim()[0] < 5.0 < exact.get_xlim()[1]


def test_number_line_refuses() -> None:
    axes = Figure().subplots()
    with pytest.raises(CountError):
        verdict_line(axes, [])
    verdicts = judge(TRAY, LIMITS, Rule.guarded(0.05))
    with pytest.raises(CountError):
        verdict_line(axes, verdicts, labels=["a"])
    with pytest.raises(ContradictionError):
        verdict_line(axes, [verdicts[0], judge(TRAY[0], Limits.at_most(5000), Rule.guarded(0.05))])
    assert not axes.lines and not axes.patches


def test_budget_bars() -> None:
    axes = Figure().subplots()
    budget = evaluate(Meter.example_hand_held().spans[2].read(["4.66", "4.67", "4.66"])).budget
    budget_bars(axes, budget)
    assert [bar.get_width() for bar in axes.patches] == [*(row.u_ohm for row in budget.rows), budget.u_ohm]
    assert axes.texts[1].get_text() == f"{100 * budget.rows[1].share:.1f} %"
    assert "k = 1.68" in axes.texts[-1].get_text()
