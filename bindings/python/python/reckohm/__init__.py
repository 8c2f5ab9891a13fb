"""Resistive parts measured, stated with an honest uncertainty, and judged."""

from . import distribution, errors, marking, measurement, meter, plot, preferred, sensor, uncertainty, verdict

__all__ = ["distribution", "errors", "marking", "measurement", "meter", "plot", "preferred", "sensor", "uncertainty", "verdict"]
