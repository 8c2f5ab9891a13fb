"""Every public function, class and method is documented, with an example that runs."""

from __future__ import annotations

import dataclasses
import doctest
import importlib
import inspect
import pkgutil
from collections.abc import Iterator
from typing import Any

import pytest

import reckohm

MODULES = sorted(
    f"reckohm.{module.name}" for module in pkgutil.iter_modules(reckohm.__path__) if not module.name.startswith("_")
)


def public() -> Iterator[tuple[str, Any]]:
    """Every public function and class with its dotted name, and the documented members of classes."""
    for name in MODULES:
        module = importlib.import_module(name)
        for item in module.__all__:
            value = getattr(module, item)
            yield f"{name}.{item}", value
            if inspect.isclass(value) and not issubclass(value, Exception):
                for member in vars(value):
                    if not member.startswith("_") and member not in fields_of(value):
                        yield f"{name}.{item}.{member}", getattr(value, member)


def fields_of(value: Any) -> list[str]:
    """The fields of a record, which its own text describes."""
    return [field.name for field in dataclasses.fields(value)] if dataclasses.is_dataclass(value) else []


ITEMS = dict(public())


def test_modules_are_listed() -> None:
    assert [f"reckohm.{name}" for name in sorted(reckohm.__all__)] == MODULES


@pytest.mark.parametrize("name", ITEMS)
def test_has_a_text(name: str) -> None:
    text = inspect.getdoc(ITEMS[name]) or ""
    assert text.split("\n")[0].endswith((".", ":")) or text.split("\n\n")[0].endswith((".", ":")), text


@pytest.mark.parametrize("name", [name for name in ITEMS if fields_of(ITEMS[name])])
def test_fields_are_described(name: str) -> None:
    text = (inspect.getdoc(ITEMS[name]) or "").split("Attributes\n----------\n")[1]
    heads = [line.split(" : ")[0] for line in text.split("\n") if " : " in line and not line.startswith(" ")]
    assert ", ".join(heads).split(", ") == fields_of(ITEMS[name])


def needs_example(name: str) -> bool:
    value = ITEMS[name]
    if inspect.isclass(value):
        return not issubclass(value, Exception)
    return callable(value)


@pytest.mark.parametrize("name", [name for name in ITEMS if needs_example(name)])
def test_example_runs(name: str) -> None:
    value = ITEMS[name]
    text = inspect.getdoc(value) or ""
    test = doctest.DocTestParser().get_doctest(text, {}, name, None, 0)
    assert test.examples, f"{name} has no example"
    shown: list[str] = []
    runner = doctest.DocTestRunner(verbose=False, optionflags=doctest.NORMALIZE_WHITESPACE | doctest.ELLIPSIS)
    runner.run(test, out=shown.append)
    assert runner.failures == 0, "".join(shown)


@pytest.mark.parametrize("name", MODULES)
def test_module_text(name: str) -> None:
    assert importlib.import_module(name).__doc__
