"""Resistive parts measured, stated with an honest uncertainty, and judged."""

from . import errors, preferred, uncertainty, verdict

__all__ = ["errors", "preferred", "uncertainty", "verdict"]
