"""From readings to an estimate with its budget: what contributes, what dominates, and what would help."""

from __future__ import annotations

from dataclasses import dataclass

from ._core import _measurement as _compiled

Budget = _compiled.Budget
Measurement = _compiled.Measurement
evaluate = _compiled.evaluate

__all__ = ["Advice", "Budget", "BudgetRow", "Measurement", "evaluate"]


@dataclass(frozen=True)
class BudgetRow:
    """One contribution to an uncertainty budget.

    Attributes
    ----------
    contribution : str
        Where it comes from.
    value, unit : float, str
        Best value of the input and its unit.
    width, distribution : float, str
        Half-width of a "rectangular" input, else a standard uncertainty, in the input's unit.
    sensitivity : float
        Partial derivative of the result with respect to the input, ohm per unit.
    u_ohm : float
        Standard uncertainty that it brings to the result.
    share : float
        Its part of the result's variance, 0 to 1.
    dof : float
        Degrees of freedom.

    Examples
    --------
    >>> from reckohm.measurement import evaluate
    >>> from reckohm.meter import Meter
    >>> row = evaluate(Meter.example_hand_held().spans[2].read("4.70")).budget.rows[0]
    >>> row.distribution, round(row.width, 6), row.unit, row.share
    ('rectangular', 67.6, 'ohm', 1.0)
    """

    contribution: str
    value: float
    unit: str
    width: float
    distribution: str
    sensitivity: float
    u_ohm: float
    share: float
    dof: float

    def __repr__(self) -> str:
        # Infinite degrees of freedom in a form that can be pasted back.
        shown = ("float('inf')" if value == float("inf") else repr(value) for value in vars(self).values())
        return f"BudgetRow({', '.join(f'{name}={value}' for name, value in zip(vars(self), shown))})"


@dataclass(frozen=True)
class Advice:
    """What dominates a result, or what would help.

    Attributes
    ----------
    kind : str
        Its sort in a word or two: "dominates", "scatter unknown", "more readings", "other span", …
    contribution : str
        The contribution that it is about.
    share : float
        That contribution's part of the variance, 0 to 1.
    expanded_now_ohm, expanded_then_ohm : float, float
        Expanded uncertainty as it stands, and as it would be; the same where no number can be given.
    number : int
        How many readings, or the index of the span; else 0.
    text : str
        The advice as a sentence, which ``print`` shows.

    Examples
    --------
    >>> from reckohm.measurement import evaluate
    >>> from reckohm.meter import Meter
    >>> advice = evaluate(Meter.example_hand_held().spans[2].read("4.70")).advice
    >>> [piece.kind for piece in advice]
    ['dominates', 'scatter unknown', 'substitution']
    """

    kind: str
    contribution: str
    share: float
    expanded_now_ohm: float
    expanded_then_ohm: float
    number: int
    text: str

    def __str__(self) -> str:
        return self.text
