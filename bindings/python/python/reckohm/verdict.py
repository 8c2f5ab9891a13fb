"""Whether a part conforms: limits, decision rules, and verdicts with three answers."""

from ._core import _verdict as _compiled
from ._verdicts import Verdicts

Limits = _compiled.Limits
Rule = _compiled.Rule
Verdict = _compiled.Verdict
conformance_probability = _compiled.conformance_probability
judge = _compiled.judge

__all__ = ["Limits", "Rule", "Verdict", "Verdicts", "conformance_probability", "judge"]
