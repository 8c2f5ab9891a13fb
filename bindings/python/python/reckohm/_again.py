"""How results come back from a pickle: they are computed anew from what they were computed from, to the bit."""

from __future__ import annotations

from typing import Any


def call(owner: Any, name: str, *arguments: Any) -> Any:
    """`owner.name(*arguments)`."""
    return getattr(owner, name)(*arguments)


def both_ways(bands: str, edition: int) -> Any:
    """`reckohm.marking.both_ways` with its option."""
    from .marking import both_ways

    return both_ways(bands, edition=edition)


def b_value_thermistor(rated_ohm: float, of_c: float, b_kelvin: float, b_of_c: Any, domain_c: Any) -> Any:
    """`Thermistor.b_value` over its domain."""
    from .sensor import Thermistor

    return Thermistor.b_value(rated_ohm, of_c, b_kelvin, b_of_c).with_domain(domain_c)


def choose(meter: Any, nominal_ohm: float, tolerance: float, meter_temperature_c: float | None) -> Any:
    """`Meter.choose` with its options."""
    return meter.choose(nominal_ohm, tolerance=tolerance, meter_temperature_c=meter_temperature_c)


def evaluate(readings: list[Any], options: dict[str, Any]) -> Any:
    """`reckohm.measurement.evaluate` with its options."""
    from .measurement import evaluate

    return evaluate(readings, **options)
