"""Preferred values (IEC 60063, series E3 to E192): the stock that resistors are made in."""

from ._core import _preferred as _compiled

above = _compiled.above
below = _compiled.below
coarsest = _compiled.coarsest
contains = _compiled.contains
decade = _compiled.decade
nearest = _compiled.nearest
neighbours = _compiled.neighbours
tolerance = _compiled.tolerance

__all__ = ["above", "below", "coarsest", "contains", "decade", "nearest", "neighbours", "tolerance"]
