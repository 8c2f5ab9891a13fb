"""Drawings on matplotlib axes that the caller gives: verdicts on a number line, a budget as bars.

matplotlib is an optional extra (``pip install reckohm[plot]``), needed only when something is drawn.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from .measurement import Budget
    from .verdict import Verdict

__all__ = ["budget_bars", "verdict_line"]

_MARKERS = {"conforms": "o", "undecided": "D", "does not conform": "X"}
_FACES = {"conforms": "tab:green", "undecided": "tab:orange", "does not conform": "tab:red"}


def verdict_line(axes: Axes, verdicts: Verdict | Sequence[Verdict], *, labels: Sequence[str] | None = None) -> None:
    """Draws verdicts on a number line in ohm: limits, guard bands, estimates with their 95 % intervals.

    All verdicts are against the same limits; guard bands are shaded for each by itself, since they follow the estimate.

    Parameters
    ----------
    axes : matplotlib.axes.Axes
        Where to draw.
    verdicts : Verdict or sequence of Verdict
        One line each, from the top.
    labels : sequence of str, optional
        What stands beside each line; the value with its uncertainty where none is given.

    Raises
    ------
    CountError
        No verdict, or another number of labels.
    ContradictionError
        Verdicts against different limits.

    Examples
    --------
    >>> import matplotlib
    >>> matplotlib.use("Agg")
    >>> from matplotlib.figure import Figure
    >>> from reckohm.plot import verdict_line
    >>> from reckohm.uncertainty import Estimate
    >>> from reckohm.verdict import Limits, Rule, judge
    >>> tray = [Estimate(shown, 3).with_rectangular(0.008 * shown + 30) for shown in (4700, 4880, 5100)]
    >>> axes = Figure().subplots()
    >>> verdict_line(axes, judge(tray, Limits.from_tolerance(4700, 0.05), Rule.guarded(0.05)))
    >>> axes.get_xlabel()
    'resistance, ohm'
    """
    from .errors import ContradictionError, CountError
    from .verdict import Verdict

    shown = [verdicts] if isinstance(verdicts, Verdict) else list(verdicts)
    if not shown:
        raise CountError("verdicts on a number line: none given, one or more needed; judge a part first", 3, "Empty")
    names = [f"{verdict.estimate} ohm" for verdict in shown] if labels is None else list(labels)
    if len(names) != len(shown):
        message = f"labels: {len(names)} given for {len(shown)} verdicts, as many as verdicts allowed"
        raise CountError(message, 7, "WrongCount", len(names))
    limits = shown[0].limits
    if any(verdict.limits != limits for verdict in shown):
        message = "verdicts on a number line: different limits given, the same for all allowed; draw each on axes of its own"
        raise ContradictionError(message, 4, "Contradiction")

    low, high = _extent(shown)
    axes.set_xlim(low, high)
    for line, verdict in enumerate(shown):
        _shade(axes, verdict, line, low, high)
        interval = verdict.estimate.expanded(0.95)
        value = verdict.estimate.value
        reach = [[value - interval.lower], [interval.upper - value]]
        axes.errorbar(value, line, xerr=reach, fmt="none", ecolor="black", capsize=4, linewidth=1.2, zorder=3)
        answer = verdict.answer
        axes.scatter(value, line, marker=_MARKERS[answer], color=_FACES[answer], edgecolor="black", s=60, zorder=4)
    # Each limit's number stands on its outer side, so that two that are near one another do not collide.
    for end, side in ((limits.lower_ohm, "right"), (limits.upper_ohm, "left")):
        if math.isfinite(end):
            axes.axvline(end, color="black", linewidth=1.5, zorder=2)
            place: dict[str, Any] = {"xycoords": ("data", "axes fraction"), "xytext": (0, 4), "textcoords": "offset points"}
            axes.annotate(f"limit {end:g}", (end, 1), ha=side, va="bottom", fontsize="small", **place)
    axes.set_ylim(len(shown) - 0.4, -0.6)
    axes.set_yticks(range(len(shown)), names)
    axes.set_xlabel("resistance, ohm")
    _legend(axes, shown)


def _extent(verdicts: Sequence[Verdict]) -> tuple[float, float]:
    """From the lowest to the highest of all that is drawn, with a margin."""
    intervals = [verdict.estimate.expanded(0.95) for verdict in verdicts]
    ends = [end for interval in intervals for end in (interval.lower, interval.upper)]
    limits = verdicts[0].limits
    ends += [end for end in (limits.lower_ohm, limits.upper_ohm) if math.isfinite(end)]
    low, high = min(ends), max(ends)
    margin = 0.08 * (high - low) or abs(low) * 0.01 or 1.0
    return low - margin, high + margin


def _shade(axes: Axes, verdict: Verdict, line: int, low: float, high: float) -> None:
    """The values that conform, and the guard bands between them and the limits."""
    limits = verdict.limits
    start, end = max(limits.lower_ohm, low), min(limits.upper_ohm, high)
    first, last = verdict.acceptance_lower_ohm, verdict.acceptance_upper_ohm
    if first is None or last is None:
        bands = [(start, end)]
    else:
        first, last = max(first, start), min(last, end)
        axes.barh(line, last - first, left=first, height=0.7, color="tab:green", alpha=0.18, zorder=1)
        bands = [(start, first), (last, end)]
    for left, right in bands:
        if right > left:
            axes.barh(line, right - left, left=left, height=0.7, color="tab:orange", alpha=0.25, hatch="///",
                      edgecolor="tab:orange", linewidth=0, zorder=1)


def _legend(axes: Axes, verdicts: Sequence[Verdict]) -> None:
    """What is drawn, each once, below the axes so that it covers nothing."""
    from matplotlib.transforms import offset_copy

    handles: list[Any] = []
    for answer, marker in _MARKERS.items():
        if any(verdict.answer == answer for verdict in verdicts):
            face = _FACES[answer]
            handles.append(axes.scatter([], [], marker=marker, color=face, edgecolor="black", s=60, label=answer))
    if any(verdict.acceptance_lower_ohm is not None for verdict in verdicts):
        handles.append(axes.bar(0, 0, color="tab:green", alpha=0.18, label="values that conform"))
    if any(verdict.guard_band_ohm != 0 for verdict in verdicts):
        guard = axes.bar(0, 0, color="tab:orange", alpha=0.25, hatch="///", edgecolor="tab:orange", linewidth=0)
        guard.set_label("guard band")
        handles.append(guard)
    below = offset_copy(axes.transAxes, fig=axes.get_figure(root=True), y=-36, units="points")
    style: dict[str, Any] = {"frameon": False, "fontsize": "small", "handletextpad": 0.4, "columnspacing": 1.2}
    place: dict[str, Any] = {"loc": "upper center", "bbox_to_anchor": (0.5, 0), "bbox_transform": below}
    axes.legend(handles=handles, ncols=len(handles), **place, **style)


def budget_bars(axes: Axes, budget: Budget) -> None:
    """Draws a budget as bars: the standard uncertainty that each contribution brings, and that of the result.

    Parameters
    ----------
    axes : matplotlib.axes.Axes
        Where to draw.
    budget : Budget
        The budget of a measurement.

    Examples
    --------
    >>> import matplotlib
    >>> matplotlib.use("Agg")
    >>> from matplotlib.figure import Figure
    >>> from reckohm.measurement import evaluate
    >>> from reckohm.meter import Meter
    >>> from reckohm.plot import budget_bars
    >>> axes = Figure().subplots()
    >>> budget_bars(axes, evaluate(Meter.example_hand_held().spans[2].read(["4.66", "4.67"])).budget)
    >>> [label.get_text() for label in axes.get_yticklabels()]
    ['scatter of the readings', 'accuracy clause of the meter', 'result']
    """
    rows = budget.rows
    names = [row.contribution for row in rows] + ["result"]
    widths = [row.u_ohm for row in rows] + [budget.u_ohm]
    colours = ["tab:blue"] * len(rows) + ["tab:gray"]
    axes.barh(range(len(names)), widths, color=colours, height=0.6)
    for line, row in enumerate(rows):
        axes.annotate(f"{100 * row.share:.1f} %", (row.u_ohm, line), xytext=(5, 0), textcoords="offset points", va="center")
    expanded = budget.expanded
    coverage = f"U = {expanded.half_width:.3g} ohm (k = {expanded.coverage_factor:.2f}, {100 * expanded.coverage_probability:g} %)"
    axes.annotate(coverage, (0, len(rows)), xytext=(5, 0), textcoords="offset points", va="center", color="white")
    axes.set_xlim(0, 1.15 * max(widths) or 1)
    axes.set_ylim(len(names) - 0.4, -0.6)
    axes.set_yticks(range(len(names)), names)
    axes.set_xlabel("standard uncertainty, ohm")
