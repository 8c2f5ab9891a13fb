from typing import Any, Literal, overload

from ._typing import Numbers, Results, Truths, Where

__all__ = ["above", "below", "coarsest", "contains", "decade", "nearest", "neighbours", "tolerance"]

@overload
def nearest(
    ohm: float, series: str, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def nearest(
    ohm: float, series: str, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
) -> tuple[float, bool]: ...
@overload
def nearest(
    ohm: Numbers, series: str, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> Results: ...
@overload
def nearest(
    ohm: Numbers, series: str, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
) -> tuple[Results, Truths]: ...
@overload
def nearest(
    ohm: Any, series: str, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
) -> Any: ...
@overload
def below(
    ohm: float, series: str, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def below(
    ohm: float, series: str, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
) -> tuple[float, bool]: ...
@overload
def below(
    ohm: Numbers, series: str, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> Results: ...
@overload
def below(
    ohm: Numbers, series: str, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
) -> tuple[Results, Truths]: ...
@overload
def below(
    ohm: Any, series: str, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
) -> Any: ...
@overload
def above(
    ohm: float, series: str, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def above(
    ohm: float, series: str, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
) -> tuple[float, bool]: ...
@overload
def above(
    ohm: Numbers, series: str, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
) -> Results: ...
@overload
def above(
    ohm: Numbers, series: str, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
) -> tuple[Results, Truths]: ...
@overload
def above(
    ohm: Any, series: str, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
) -> Any: ...
@overload
def contains(
    ohm: float, series: str, *, out: None = None, where: None = None, on_invalid: Literal["raise"] = "raise"
) -> bool: ...
@overload
def contains(
    ohm: float, series: str, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
) -> tuple[bool, bool]: ...
@overload
def contains(
    ohm: Numbers, series: str, *, out: Truths | None = None, where: Where = None, on_invalid: Literal["raise"] = "raise"
) -> Truths: ...
@overload
def contains(
    ohm: Numbers, series: str, *, out: Truths | None = None, where: Where = None, on_invalid: Literal["mask"]
) -> tuple[Truths, Truths]: ...
@overload
def contains(
    ohm: Any, series: str, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
) -> Any: ...
def decade(series: str) -> tuple[float, ...]: ...
@overload
def neighbours(ohm: float, series: str, *, on_invalid: Literal["raise", "nan"] = "raise") -> tuple[float, float]: ...
@overload
def neighbours(ohm: Numbers, series: str, *, on_invalid: Literal["raise", "nan"] = "raise") -> tuple[Results, Results]: ...
@overload
def neighbours(ohm: Any, series: str, *, on_invalid: str = "raise") -> tuple[Any, Any]: ...
def tolerance(series: str) -> float | None: ...
def coarsest(ohm: float) -> str | None: ...
