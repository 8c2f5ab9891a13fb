"""Resistive parts measured, stated with an honest uncertainty, and judged."""

from . import errors, preferred, verdict

__all__ = ["errors", "preferred", "verdict"]
