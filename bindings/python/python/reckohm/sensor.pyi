from collections.abc import Sequence
from typing import Any, Literal, final, overload

from ._typing import Numbers, Results, Truths, Where
from .uncertainty import Estimate

__all__ = ["Thermistor"]

@final
class Thermistor:
    @staticmethod
    def b_value(
        rated_ohm: float, rated_temperature_c: float, b_kelvin: float, b_temperatures_c: tuple[float, float]
    ) -> Thermistor: ...
    @staticmethod
    def steinhart_hart(
        coefficients: Sequence[float], reference_ohm: float, domain_c: tuple[float, float]
    ) -> Thermistor: ...
    def with_domain(self, domain_c: tuple[float, float]) -> Thermistor: ...
    @overload
    def resistance_ohm(
        self, temperature_c: Estimate, *, out: None = None, where: None = None, on_invalid: Literal["raise"] = "raise"
    ) -> Estimate: ...
    @overload
    def resistance_ohm(
        self, temperature_c: float, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
    ) -> float: ...
    @overload
    def resistance_ohm(
        self, temperature_c: float, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
    ) -> tuple[float, bool]: ...
    @overload
    def resistance_ohm(
        self, temperature_c: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
    ) -> Results: ...
    @overload
    def resistance_ohm(
        self, temperature_c: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
    ) -> tuple[Results, Truths]: ...
    @overload
    def resistance_ohm(
        self, temperature_c: Any, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
    ) -> Any: ...
    @overload
    def slope(
        self, temperature_c: float, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
    ) -> float: ...
    @overload
    def slope(
        self, temperature_c: float, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
    ) -> tuple[float, bool]: ...
    @overload
    def slope(
        self, temperature_c: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
    ) -> Results: ...
    @overload
    def slope(
        self, temperature_c: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
    ) -> tuple[Results, Truths]: ...
    @overload
    def slope(
        self, temperature_c: Any, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
    ) -> Any: ...
    @overload
    def temperature_c(
        self, resistance_ohm: Estimate, *, out: None = None, where: None = None, on_invalid: Literal["raise"] = "raise"
    ) -> Estimate: ...
    @overload
    def temperature_c(
        self, resistance_ohm: float, *, out: None = None, where: None = None, on_invalid: Literal["raise", "nan"] = "raise"
    ) -> float: ...
    @overload
    def temperature_c(
        self, resistance_ohm: float, *, out: None = None, where: None = None, on_invalid: Literal["mask"]
    ) -> tuple[float, bool]: ...
    @overload
    def temperature_c(
        self, resistance_ohm: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["raise", "nan"] = "raise"
    ) -> Results: ...
    @overload
    def temperature_c(
        self, resistance_ohm: Numbers, *, out: Results | None = None, where: Where = None, on_invalid: Literal["mask"]
    ) -> tuple[Results, Truths]: ...
    @overload
    def temperature_c(
        self, resistance_ohm: Any, *, out: Any = None, where: Any = None, on_invalid: str = "raise"
    ) -> Any: ...
    @property
    def domain_c(self) -> tuple[float, float]: ...
    @property
    def ends_ohm(self) -> tuple[float, float]: ...
    @property
    def formula(self) -> Literal["B-value", "Steinhart-Hart"]: ...
    @property
    def rated_ohm(self) -> float | None: ...
    @property
    def rated_temperature_c(self) -> float | None: ...
    @property
    def b_kelvin(self) -> float | None: ...
    @property
    def b_temperatures_c(self) -> tuple[float, float] | None: ...
    @property
    def coefficients(self) -> tuple[float, float, float, float] | None: ...
    @property
    def reference_ohm(self) -> float | None: ...
    def __hash__(self) -> int: ...
