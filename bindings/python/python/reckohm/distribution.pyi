from typing import Any, Literal, overload

from ._typing import Numbers, Results, Truths, Where

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

@overload
def normal_above(
    z: float, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def normal_above(
    z: float, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
) -> tuple[float, bool]: ...
@overload
def normal_above(
    z: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> Results: ...
@overload
def normal_above(
    z: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
) -> tuple[Results, Truths]: ...
@overload
def normal_above(
    z: Any, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
) -> Any: ...
@overload
def normal_below(
    z: float, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def normal_below(
    z: float, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
) -> tuple[float, bool]: ...
@overload
def normal_below(
    z: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> Results: ...
@overload
def normal_below(
    z: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
) -> tuple[Results, Truths]: ...
@overload
def normal_below(
    z: Any, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
) -> Any: ...
@overload
def normal_quantile(
    p: float, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def normal_quantile(
    p: float, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
) -> tuple[float, bool]: ...
@overload
def normal_quantile(
    p: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> Results: ...
@overload
def normal_quantile(
    p: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
) -> tuple[Results, Truths]: ...
@overload
def normal_quantile(
    p: Any, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
) -> Any: ...
@overload
def normal_quantile_above(
    p: float, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def normal_quantile_above(
    p: float, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
) -> tuple[float, bool]: ...
@overload
def normal_quantile_above(
    p: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> Results: ...
@overload
def normal_quantile_above(
    p: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
) -> tuple[Results, Truths]: ...
@overload
def normal_quantile_above(
    p: Any, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
) -> Any: ...
@overload
def t_above(
    t: float, dof: float, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def t_above(
    t: float, dof: float, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
) -> tuple[float, bool]: ...
@overload
def t_above(
    t: Numbers, dof: float | Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> Results: ...
@overload
def t_above(
    t: Numbers, dof: float | Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
) -> tuple[Results, Truths]: ...
@overload
def t_above(
    t: Any, dof: Any, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
) -> Any: ...
@overload
def t_below(
    t: float, dof: float, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def t_below(
    t: float, dof: float, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
) -> tuple[float, bool]: ...
@overload
def t_below(
    t: Numbers, dof: float | Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> Results: ...
@overload
def t_below(
    t: Numbers, dof: float | Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
) -> tuple[Results, Truths]: ...
@overload
def t_below(
    t: Any, dof: Any, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
) -> Any: ...
@overload
def t_quantile(
    p: float, dof: float, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def t_quantile(
    p: float, dof: float, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
) -> tuple[float, bool]: ...
@overload
def t_quantile(
    p: Numbers, dof: float | Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> Results: ...
@overload
def t_quantile(
    p: Numbers, dof: float | Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
) -> tuple[Results, Truths]: ...
@overload
def t_quantile(
    p: Any, dof: Any, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
) -> Any: ...
@overload
def t_quantile_above(
    p: float, dof: float, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def t_quantile_above(
    p: float, dof: float, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
) -> tuple[float, bool]: ...
@overload
def t_quantile_above(
    p: Numbers, dof: float | Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> Results: ...
@overload
def t_quantile_above(
    p: Numbers, dof: float | Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
) -> tuple[Results, Truths]: ...
@overload
def t_quantile_above(
    p: Any, dof: Any, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
) -> Any: ...
