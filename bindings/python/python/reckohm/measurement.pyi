from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, final

from .meter import Leads, Meter, Reading, Readings
from .uncertainty import Estimate, Expanded

__all__ = ["Advice", "Budget", "BudgetRow", "Measurement", "evaluate"]

@dataclass(frozen=True)
class BudgetRow:
    contribution: str
    value: float
    unit: str
    width: float
    distribution: str
    sensitivity: float
    u_ohm: float
    share: float
    dof: float

@dataclass(frozen=True)
class Advice:
    kind: str
    contribution: str
    share: float
    expanded_now_ohm: float
    expanded_then_ohm: float
    number: int
    text: str

@final
class Budget:
    __match_args__ = ("rows", "expanded")
    @property
    def rows(self) -> tuple[BudgetRow, ...]: ...
    @property
    def value_ohm(self) -> float: ...
    @property
    def u_ohm(self) -> float: ...
    @property
    def effective_dof(self) -> float: ...
    @property
    def expanded(self) -> Expanded: ...
    def to_dict(self) -> dict[str, Any]: ...
    def _repr_html_(self) -> str: ...
    def __hash__(self) -> int: ...

@final
class Measurement:
    __match_args__ = ("estimate", "budget", "advice")
    @property
    def estimate(self) -> Estimate: ...
    @property
    def budget(self) -> Budget: ...
    @property
    def advice(self) -> tuple[Advice, ...]: ...
    @property
    def readings(self) -> tuple[Reading, ...]: ...
    @property
    def scatter_at_floor(self) -> bool: ...
    def _repr_html_(self) -> str: ...
    def __hash__(self) -> int: ...

def evaluate(
    readings: Reading | Readings | Sequence[Reading],
    *,
    leads: Leads | None = None,
    shunt_ohm: float | Estimate | None = None,
    known_tcr: float | Estimate | None = None,
    tcr_limit: float | None = None,
    temperature_c: float | Estimate | None = None,
    reference_temperature_c: float | None = None,
    meter_temperature_c: float | None = None,
    repeatability_ohm: float | None = None,
    zero_error_common: bool | None = None,
    meter: Meter | None = None,
    coverage_probability: float = 0.95,
) -> Measurement: ...
