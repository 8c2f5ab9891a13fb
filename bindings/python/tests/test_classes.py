"""What holds for every class: frozen, pickled, hashed, copied, and a repr that gives the object back."""

from __future__ import annotations

import copy
import pickle
from typing import Any

import numpy as np
import pytest

import reckohm
from reckohm import verdict
from reckohm.errors import ContradictionError, CountError, InputTypeError, RangeError
from reckohm.verdict import Limits

NAMES = {name: getattr(getattr(reckohm, module), name) for module in reckohm.__all__ for name in getattr(reckohm, module).__all__}

EXAMPLES: list[Any] = [
    Limits(990.0, 1010.0),
    Limits(-0.0, 0.1),
    Limits.at_most(0.05),
    Limits.at_least(1e6),
    Limits.from_tolerance(4.7e-7, 0.05),
]


@pytest.fixture(params=EXAMPLES, ids=repr)
def example(request: pytest.FixtureRequest) -> Any:
    return request.param


def test_repr_gives_it_back(example: Any) -> None:
    again = eval(repr(example), {**NAMES})
    assert type(again) is type(example) and again == example
    assert repr(again) == repr(example)


@pytest.mark.parametrize("protocol", range(2, pickle.HIGHEST_PROTOCOL + 1))
def test_pickles(example: Any, protocol: int) -> None:
    again = pickle.loads(pickle.dumps(example, protocol))
    assert again == example and repr(again) == repr(example)


def test_copies(example: Any) -> None:
    assert copy.copy(example) == example and copy.deepcopy(example) == example


def test_hash_goes_with_equality(example: Any) -> None:
    again = pickle.loads(pickle.dumps(example))
    assert hash(again) == hash(example)
    assert {example: 1}[again] == 1


def test_frozen(example: Any) -> None:
    with pytest.raises(AttributeError):
        example.anything = 1
    for name in getattr(type(example), "__match_args__", ()):
        with pytest.raises(AttributeError):
            setattr(example, name, 1)


def test_equals_nothing_else(example: Any) -> None:
    assert example != repr(example) and example != 1.0 and not example == None  # noqa: E711


def test_limits() -> None:
    limits = Limits.from_tolerance(4700, 0.05)
    assert (limits.lower_ohm, limits.upper_ohm) == (4465.0, 4935.0)
    assert 4935.0 in limits and 4935.1 not in limits and not limits.contains(float("nan"))
    match limits:
        case Limits(lower, upper):
            assert (lower, upper) == (4465.0, 4935.0)
    assert hash(Limits(0.0, 1)) == hash(Limits(-0.0, 1)) and Limits(0.0, 1) == Limits(-0.0, 1)
    assert Limits(np.float32(1), np.int64(5)) == Limits(np.array(1.0), 5)


def test_limits_refused() -> None:
    inf = float("inf")
    for given, status in (((2, 1), 4), ((float("nan"), 1), 2), ((inf, inf), 2), ((-inf, inf), 3)):
        with pytest.raises((RangeError, CountError, ContradictionError)) as caught:
            Limits(*given)
        assert caught.value.status == status
    with pytest.raises(RangeError, match="give a fraction, not percent") as caught:
        Limits.from_tolerance(4700, 5)
    assert caught.value.given == 5.0 and caught.value.allowed == (0.0, 1.0)


@pytest.mark.parametrize("given", ["1", True, np.True_, None, 1j, [1.0], np.array([1.0]), 10**400], ids=lambda x: str(x)[:9])
def test_a_number_is_a_number(given: Any) -> None:
    with pytest.raises(InputTypeError, match="allowed"):
        Limits(given, 5)
    with pytest.raises(InputTypeError):
        verdict.Limits.at_most(given)
