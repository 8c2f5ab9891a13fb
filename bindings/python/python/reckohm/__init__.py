"""Resistive parts measured, stated with an honest uncertainty, and judged."""

from . import errors, marking, preferred, uncertainty, verdict

__all__ = ["errors", "marking", "preferred", "uncertainty", "verdict"]
