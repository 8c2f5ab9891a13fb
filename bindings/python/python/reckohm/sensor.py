"""Sensors: parts whose resistance stands for something else."""

from ._core import _sensor as _compiled

Thermistor = _compiled.Thermistor

__all__ = ["Thermistor"]
