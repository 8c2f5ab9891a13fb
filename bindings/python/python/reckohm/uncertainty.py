"""What is known about a value: the estimate with the shape of its uncertainty, and the intervals that follow from it."""

from ._core import _uncertainty as _compiled

Estimate = _compiled.Estimate
Expanded = _compiled.Expanded
effective_dof = _compiled.effective_dof
_from_parts = _compiled._from_parts

__all__ = ["Estimate", "Expanded", "effective_dof"]
