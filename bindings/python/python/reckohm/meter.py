"""A meter: its spans with their accuracy clauses, what its display and its replies say, which span a part goes on, leads."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from ._core import _meter as _compiled

AutoRanger = _compiled.AutoRanger
Choice = _compiled.Choice
Leads = _compiled.Leads
Meter = _compiled.Meter
Reading = _compiled.Reading
Readings = _compiled.Readings
Span = _compiled.Span
_readings = _compiled._readings

__all__ = ["Assessment", "AutoRanger", "Choice", "Leads", "Meter", "RangerStep", "Reading", "Readings", "Span", "Step"]


@dataclass(frozen=True)
class Assessment:
    """What one span makes of a part; it comes from `Choice`.

    Attributes
    ----------
    span : Span
        The span.
    outcome : str
        "chosen"; "over-range", if a conforming part at the upper limit would be; "wider", if the chosen one's expanded
        uncertainty is less.
    factor : float or None
        How many times as wide, for "wider".
    holds : bool
        Whether every part up to the upper limit is shown.
    expected_display : str
        What a part of exactly the nominal value shows.
    expected_ohm, counts_used : float, int
        The same in ohm and in steps of the display; the full scale's where it is over-range.
    expanded_ohm : float
        Expanded uncertainty of one reading of the nominal value, at a coverage probability of 0.95: the meter's clause, and
        the display's step where that is not inside it. Scatter, leads and temperature are not in it.
    tur : float
        Test uncertainty ratio: the width of the tolerance over that of the coverage interval.
    conformance_probability_at_centre : float
        The probability that a part that reads exactly the nominal value conforms.
    accepts_some : bool
        Whether that probability is 0.95 at least.

    Examples
    --------
    >>> from reckohm.meter import Meter
    >>> assessment = Meter.example_hand_held().choose(4700, tolerance=0.05).chosen
    >>> assessment.outcome, assessment.counts_used, round(assessment.tur, 2)
    ('chosen', 470, 3.66)
    """

    span: Any
    outcome: str
    factor: float | None
    holds: bool
    expected_display: str
    expected_ohm: float
    counts_used: int
    expanded_ohm: float
    tur: float
    conformance_probability_at_centre: float
    accepts_some: bool


@dataclass(frozen=True)
class Step:
    """What to do with the span after a reading; it comes from `Meter.next_span`.

    Attributes
    ----------
    kind : str
        "stay", "up", "down" or "beyond highest": open, or not for this meter.
    index, span : int or None, Span or None
        The span for the next reading and its index in the meter; None beyond the highest.

    Examples
    --------
    >>> from reckohm.meter import Meter
    >>> meter = Meter.example_hand_held()
    >>> meter.next_span(meter.spans[2].read("4.70")).kind
    'stay'
    """

    kind: str
    index: int | None
    span: Any


@dataclass(frozen=True)
class RangerStep:
    """What an auto-ranger says of a reading; it comes from `AutoRanger.step`.

    Attributes
    ----------
    kind : str
        "again": do not use this reading, the input is settling, measure again; "switch": put the meter on `span` and measure
        there; "accept": use this reading; "beyond highest": open, or not for this meter; "below lowest": less than one step
        of the lowest span, a short, or not for this meter; it may be used as a value.
    index, span : int, Span
        The span for the next reading and its index in the meter.
    left : int
        How many readings will be discarded after this one.

    Examples
    --------
    >>> from reckohm.meter import AutoRanger, Meter
    >>> ranger = AutoRanger(Meter.example_hand_held(), start=0)
    >>> step = ranger.step_ohm(250)
    >>> step.kind, step.index, step.span.label, step.left
    ('switch', 1, '2 kohm', 0)
    """

    kind: str
    index: int
    span: Any
    left: int
