"""Markings: what the bands or the print on a resistor say (IEC 60062, colour codes of IEC 60757)."""

from ._core import _marking as _compiled

BandReading = _compiled.BandReading
BothWays = _compiled.BothWays
Marking = _compiled.Marking
both_ways = _compiled.both_ways

__all__ = ["BandReading", "BothWays", "Marking", "both_ways"]
