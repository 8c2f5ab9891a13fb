"""Resistive parts measured, stated with an honest uncertainty, and judged."""

from . import errors, marking, meter, preferred, uncertainty, verdict

__all__ = ["errors", "marking", "meter", "preferred", "uncertainty", "verdict"]
