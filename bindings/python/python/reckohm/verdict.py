"""Whether a part conforms: limits, decision rules, and verdicts with three answers."""

from ._core import _verdict as _compiled

Limits = _compiled.Limits

__all__ = ["Limits"]
