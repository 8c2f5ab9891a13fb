"""Pictures of verdicts and budgets, drawn on a given matplotlib axes.

Needs matplotlib (``pip install reckohm[plot]``), which is not imported here: whoever has an axes has it.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import inf, isinf
from typing import Any

from .measurement import Budget
from .verdict import Verdict

__all__ = ["budget", "verdict", "verdicts"]

# Told apart by people who see colours differently, and by their shape.
_COLOUR = {"conforms": "#0072b2", "undecided": "#e69f00", "does not conform": "#d55e00"}
_SHAPE = {"conforms": "o", "undecided": "D", "does not conform": "X"}
_LIMIT, _ACCEPTED, _GUARD = "#333333", "#cfe3ef", "#f7e3b5"


def verdict(axes: Any, verdict: Verdict, *, unit_ohm: float = 1.0, unit: str = "ohm") -> None:
    """Draw one verdict on a number line: limits, guard bands, and the estimate with its 95 % interval.

    Parameters
    ----------
    axes : matplotlib.axes.Axes
        Where to draw.
    verdict : Verdict
        The verdict, of one limit or two.
    unit_ohm, unit : float and str
        The unit of the scale: how many ohm, and its name, such as 1000 and "kohm".

    Examples
    --------
    >>> from matplotlib.figure import Figure
    >>> from reckohm import plot
    >>> from reckohm.uncertainty import Estimate
    >>> from reckohm.verdict import Limits, Rule, judge
    >>> axes = Figure().subplots()
    >>> made = judge(Estimate(4880).with_rectangular(69.04).with_normal(3), Limits(4465, 4935), Rule.guarded(0.05))
    >>> plot.verdict(axes, made, unit_ohm=1000, unit="kohm")
    >>> axes.get_title()
    'undecided, inside the limits (conformance probability 0.898)'
    """
    lower, upper = verdict.limits.lower_ohm / unit_ohm, verdict.limits.upper_ohm / unit_ohm
    interval = verdict.estimate.expanded(0.95)
    value, low, high = (x / unit_ohm for x in (verdict.estimate.value, interval.lower, interval.upper))
    acceptance = (verdict.acceptance_lower_ohm, verdict.acceptance_upper_ohm)
    ends = [x for x in (lower, upper, low, high) if not isinf(x)]
    margin = 0.15 * (max(ends) - min(ends))
    left, right = min(ends) - margin, max(ends) + margin

    if acceptance[0] is not None and acceptance[1] is not None:
        first, last = max(left, acceptance[0] / unit_ohm), min(right, acceptance[1] / unit_ohm)
        axes.axvspan(first, last, color=_ACCEPTED, lw=0, label="a value here conforms")
    guard = (verdict.guard_band_ohm or 0.0) / unit_ohm
    label: str | None = "guard band"
    for limit in (lower, upper):
        if not isinf(limit) and guard > 0.0:
            axes.axvspan(max(left, limit - guard), min(right, limit + guard), color=_GUARD, lw=0, label=label)
            label = None
    label = "limit"
    for limit in (lower, upper):
        if not isinf(limit):
            axes.axvline(limit, color=_LIMIT, lw=2, label=label)
            label = None
    colour, shape = _COLOUR[verdict.answer], _SHAPE[verdict.answer]
    axes.plot([low, high], [0, 0], color=colour, lw=3, solid_capstyle="butt", label="95 % interval")
    axes.plot([value], [0], shape, color=colour, ms=10, mec="white", label="estimate")
    axes.set_xlim(left, right)
    axes.set_ylim(-1, 1)
    axes.set_yticks([])
    axes.set_xlabel(f"resistance in {unit}")
    said = verdict.answer + (f", {verdict.side} the limits" if verdict.answer == "undecided" else "")
    axes.set_title(f"{said} (conformance probability {verdict.conformance_probability:.3f})")
    axes.legend(loc="upper center", bbox_to_anchor=(0.5, -0.35), ncols=5, frameon=False)


def verdicts(axes: Any, verdicts: Sequence[Verdict], labels: Sequence[str], *, reach: float = 2.0) -> None:
    """Draw verdicts of many parts below one another, each on its own scale: its limits lie at -1 and 1.

    Parameters
    ----------
    axes : matplotlib.axes.Axes
        Where to draw.
    verdicts : sequence of Verdict
        Verdicts between two limits.
    labels : sequence of str
        What stands at the left, one a verdict.
    reach : float
        How far the scale reaches, above 1; an estimate beyond it is drawn as an arrow at the edge.

    Raises
    ------
    ValueError
        For a verdict with one limit alone, since it has no scale; for unequal numbers; for a reach of 1 or less.

    Examples
    --------
    >>> from matplotlib.figure import Figure
    >>> from reckohm import plot
    >>> from reckohm.uncertainty import Estimate
    >>> from reckohm.verdict import Limits, Rule, judge
    >>> axes = Figure().subplots()
    >>> parts = [Estimate(98).with_rectangular(1), Estimate(104).with_rectangular(3)]
    >>> made = judge(parts, Limits.from_tolerance(100, 0.05), Rule.guarded(0.05))
    >>> plot.verdicts(axes, made, ["R1", "R2"])
    >>> [tick.get_text() for tick in axes.get_yticklabels()]
    ['R1', 'R2']
    """
    if len(verdicts) != len(labels):
        raise ValueError(f"drawing verdicts: {len(labels)} labels given for {len(verdicts)} verdicts, one each needed")
    if not reach > 1.0:
        raise ValueError(f"drawing verdicts: a reach of {reach} given, more than 1 allowed; the limits lie at -1 and 1")
    rows = [_on_scale(verdict, label) for verdict, label in zip(verdicts, labels)]
    named: set[str] = set()

    def once(name: str) -> str | None:
        """A name the first time, so that the legend has it once."""
        first = name not in named
        named.add(name)
        return name if first else None

    for place, (row, made) in enumerate(zip(rows, verdicts)):
        value, half_width, acceptance = row
        axes.barh(place, 2.0, 0.7, -1.0, color=_GUARD, label=once("guard band"))
        if acceptance is not None:
            low, high = acceptance
            axes.barh(place, high - low, 0.7, low, color=_ACCEPTED, label=once("a value here conforms"))
        colour, shape = _COLOUR[made.answer], _SHAPE[made.answer]
        if abs(value) > reach:
            edge = reach if value > 0 else -reach
            arrow, side = (">", "right") if value > 0 else ("<", "left")
            axes.plot([edge * 0.97], [place], arrow, color=colour, ms=8, clip_on=False)
            axes.text(edge * 0.93, place, f"{made.estimate} ohm", ha=side, va="center", fontsize="small", color=colour)
            continue
        axes.plot([value - half_width, value + half_width], [place, place], color=colour, lw=2, solid_capstyle="butt")
        axes.plot([value], [place], shape, color=colour, ms=7, mec="white", label=once(made.answer))
    for limit in (-1.0, 1.0):
        axes.axvline(limit, color=_LIMIT, lw=1.5, zorder=1.5, label=once("limit"))
    axes.set_xlim(-reach, reach)
    axes.set_ylim(len(rows) - 0.5, -0.5)
    axes.set_yticks(range(len(rows)), labels)
    axes.set_xticks([-1.0, 0.0, 1.0], ["lower limit", "middle", "upper limit"])
    axes.set_xlabel("each part on its own scale; lines show the 95 % interval")
    axes.legend(loc="lower center", bbox_to_anchor=(0.5, 1.0), ncols=3, frameon=False)


def _on_scale(verdict: Verdict, label: str) -> tuple[float, float, tuple[float, float] | None]:
    """Value, half of the interval and acceptance limits on the scale where the limits are -1 and 1."""
    lower, upper = verdict.limits.lower_ohm, verdict.limits.upper_ohm
    if upper - lower == inf or upper == lower:
        raise ValueError(f"drawing verdicts: {label} has no two limits to be its scale, two needed; draw it by itself")
    middle, half = lower + 0.5 * (upper - lower), 0.5 * (upper - lower)
    first, last = verdict.acceptance_lower_ohm, verdict.acceptance_upper_ohm
    acceptance = None if first is None or last is None else ((first - middle) / half, (last - middle) / half)
    value = (verdict.estimate.value - middle) / half
    return value, verdict.estimate.expanded(0.95).half_width / half, acceptance


def budget(axes: Any, budget: Budget) -> None:
    """Draw a budget as bars: what each contribution brings to the standard uncertainty, and all of them together.

    Parameters
    ----------
    axes : matplotlib.axes.Axes
        Where to draw.
    budget : Budget
        The budget.

    Examples
    --------
    >>> from matplotlib.figure import Figure
    >>> from reckohm import plot
    >>> from reckohm.measurement import evaluate
    >>> from reckohm.meter import Meter
    >>> span = Meter.example_hand_held().spans[2]
    >>> axes = Figure().subplots()
    >>> plot.budget(axes, evaluate(span.read(["4.66", "4.67", "4.66"])).budget)
    >>> [tick.get_text() for tick in axes.get_yticklabels()]
    ['scatter of the readings', 'accuracy clause of the meter', 'all together']
    """
    rows = [(row.contribution, row.u_ohm, f"{100 * row.share:.1f} % of the variance") for row in budget.rows]
    rows.append(("all together", budget.u_ohm, f"u = {_three_figures(budget.u_ohm)} ohm"))
    names, widths, texts = zip(*rows)
    colours = ["#0072b2"] * (len(rows) - 1) + [_LIMIT]
    bars = axes.barh(range(len(rows)), widths, 0.6, color=colours)
    axes.bar_label(bars, texts, padding=4)
    axes.set_yticks(range(len(rows)), names)
    axes.set_ylim(len(rows) - 0.4, -0.6)
    axes.set_xlim(0.0, 1.4 * max(max(widths), 1e-300))
    axes.set_xlabel("standard uncertainty in ohm")
    expanded = budget.expanded
    axes.set_title(f"{expanded.estimate} ohm ({100 * expanded.coverage_probability:g} %)")


def _three_figures(number: float) -> str:
    """A number to three figures, or to whole ones, without an exponent where a person would write none."""
    text = f"{number:.3g}"
    return f"{number:.0f}" if "e+" in text and number < 1e9 else text
