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

__all__ = ["budget_bars", "tolerance_lines", "verdict_line"]

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
    from .errors import ContradictionError
    from .verdict import Verdict

    shown = [verdicts] if isinstance(verdicts, Verdict) else list(verdicts)
    names = _names(shown, labels)
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


def tolerance_lines(
    axes: Axes, verdicts: Sequence[Verdict], *, labels: Sequence[str] | None = None, reach: float = 2.0
) -> None:
    """Draws verdicts on parts of any sort below one another, each on its own scale: its limits lie at -1 and 1.

    Parameters
    ----------
    axes : matplotlib.axes.Axes
        Where to draw.
    verdicts : sequence of Verdict
        Verdicts between two limits, one line each, from the top.
    labels : sequence of str, optional
        What stands beside each line; the value with its uncertainty where none is given.
    reach : float
        How far the scale reaches, above 1. An estimate beyond it is an arrow at the edge with its value.

    Raises
    ------
    CountError
        No verdict, or another number of labels.
    RangeError
        A reach of 1 or less.
    ContradictionError
        A verdict with one limit alone, which has no scale: :func:`verdict_line` draws it.

    Examples
    --------
    >>> import matplotlib
    >>> matplotlib.use("Agg")
    >>> from matplotlib.figure import Figure
    >>> from reckohm.plot import tolerance_lines
    >>> from reckohm.uncertainty import Estimate
    >>> from reckohm.verdict import Limits, Rule, judge
    >>> parts = [Estimate(98).with_rectangular(1), Estimate(4.88e3).with_rectangular(69)]
    >>> limits = [Limits.from_tolerance(100, 0.05), Limits.from_tolerance(4700, 0.05)]
    >>> axes = Figure().subplots()
    >>> tolerance_lines(axes, judge(parts, limits, Rule.guarded(0.05)))
    >>> [label.get_text() for label in axes.get_yticklabels()]
    ['98.00 ± 0.95 ohm', '4880 ± 66 ohm']
    """
    from .errors import RangeError

    names = _names(verdicts, labels)
    if not reach > 1.0:
        message = f"reach: {reach:g} given, more than 1 allowed, since the limits lie at -1 and 1"
        raise RangeError(message, 1, "OutOfRange", reach, (1.0, math.inf))
    for line, (verdict, name) in enumerate(zip(verdicts, names)):
        value, half_width, first, last = _between_limits(verdict, name)
        _shade_between(axes, line, (-1.0, 1.0), (first, last))
        colour, marker = _FACES[verdict.answer], _MARKERS[verdict.answer]
        if abs(value) > reach:
            side = math.copysign(1.0, value)
            axes.scatter(0.97 * side * reach, line, marker="><"[side < 0], color=colour, edgecolor="black", s=60)
            axes.annotate(f"{verdict.estimate} ohm", (0.93 * side * reach, line), va="center", fontsize="small",
                          ha="right" if side > 0 else "left")
            continue
        axes.errorbar(value, line, xerr=half_width, fmt="none", ecolor="black", capsize=3, linewidth=1.2, zorder=3)
        axes.scatter(value, line, marker=marker, color=colour, edgecolor="black", s=45, zorder=4)
    for end in (-1.0, 1.0):
        axes.axvline(end, color="black", linewidth=1.5, zorder=2)
    axes.set_xlim(-reach, reach)
    axes.set_ylim(len(names) - 0.4, -0.6)
    axes.set_yticks(range(len(names)), names)
    axes.set_xticks([-1.0, 0.0, 1.0], ["lower limit", "middle", "upper limit"])
    axes.set_xlabel("each part on its own scale; lines show the 95 % interval")
    _legend(axes, verdicts)


def _names(verdicts: Sequence[Verdict], labels: Sequence[str] | None) -> list[str]:
    """What stands beside each line."""
    from .errors import CountError

    if not verdicts:
        raise CountError("verdicts on a number line: none given, one or more needed; judge a part first", 3, "Empty")
    names = [f"{verdict.estimate} ohm" for verdict in verdicts] if labels is None else list(labels)
    if len(names) != len(verdicts):
        message = f"labels: {len(names)} given for {len(verdicts)} verdicts, as many as verdicts allowed"
        raise CountError(message, 7, "WrongCount", len(names))
    return names


def _between_limits(verdict: Verdict, name: str) -> tuple[float, float, float | None, float | None]:
    """Value, half of its interval, and acceptance limits, on the scale where the limits lie at -1 and 1."""
    from .errors import ContradictionError

    lower, upper = verdict.limits.lower_ohm, verdict.limits.upper_ohm
    half = 0.5 * (upper - lower)
    if not math.isfinite(half) or half == 0.0:
        message = f"verdicts between their limits: {name} has no two limits apart, two needed; draw it by verdict_line"
        raise ContradictionError(message, 4, "Contradiction")

    def scaled(ohm: float) -> float:
        return (ohm - lower) / half - 1.0

    first, last = verdict.acceptance_lower_ohm, verdict.acceptance_upper_ohm
    half_width = verdict.estimate.expanded(0.95).half_width / half
    if first is None or last is None:
        return scaled(verdict.estimate.value), half_width, None, None
    return scaled(verdict.estimate.value), half_width, scaled(first), scaled(last)


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
    _shade_between(axes, line, (start, end), (verdict.acceptance_lower_ohm, verdict.acceptance_upper_ohm))


def _shade_between(
    axes: Axes, line: int, limits: tuple[float, float], acceptance: tuple[float | None, float | None]
) -> None:
    """The same on whatever scale the two limits and the acceptance limits are on."""
    (start, end), (first, last) = limits, acceptance
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
    factor = f"k = {expanded.coverage_factor:.2f}, {100 * expanded.coverage_probability:g} %"
    width = f"{expanded.half_width:.3g}" if expanded.half_width < 1000 else f"{expanded.half_width:.0f}"
    coverage = f"U = {width} ohm ({factor})"
    axes.annotate(coverage, (0, len(rows)), xytext=(5, 0), textcoords="offset points", va="center", color="white")
    axes.set_xlim(0, 1.15 * max(widths) or 1)
    axes.set_ylim(len(names) - 0.4, -0.6)
    axes.set_yticks(range(len(names)), names)
    axes.set_xlabel("standard uncertainty, ohm")
