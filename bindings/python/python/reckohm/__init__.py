"""Resistive parts measured, stated with an honest uncertainty, and judged."""

from . import errors, marking, measurement, meter, plot, preferred, uncertainty, verdict

__all__ = ["errors", "marking", "measurement", "meter", "plot", "preferred", "uncertainty", "verdict"]
