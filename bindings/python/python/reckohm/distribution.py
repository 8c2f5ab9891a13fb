"""The standard normal distribution and Student's t: probabilities and quantiles, both tails to full accuracy."""

from ._core import _distribution as _compiled

normal_above = _compiled.normal_above
normal_below = _compiled.normal_below
normal_quantile = _compiled.normal_quantile
normal_quantile_above = _compiled.normal_quantile_above
t_above = _compiled.t_above
t_below = _compiled.t_below
t_quantile = _compiled.t_quantile
t_quantile_above = _compiled.t_quantile_above

__all__ = [
    "normal_above",
    "normal_below",
    "normal_quantile",
    "normal_quantile_above",
    "t_above",
    "t_below",
    "t_quantile",
    "t_quantile_above",
]
