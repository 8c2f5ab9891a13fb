"""Verdicts on arrays of numbers: each is the verdict on its number alone."""

from __future__ import annotations

import pickle
from typing import Any

import numpy as np
import pandas as pd
import pytest

from reckohm import _core
from reckohm.errors import ChoiceError, CountError, InputTypeError, RangeError
from reckohm.uncertainty import Estimate
from reckohm.verdict import Limits, Rule, Verdict, Verdicts, judge

LIMITS = Limits.from_tolerance(4700, 0.05)
RULES = [Rule.simple_acceptance(), Rule.guarded(0.05), Rule.max_risk(0.01)]
RANDOM = np.random.default_rng(106)
VALUES = RANDOM.uniform(4350, 5050, 200_000)


def made(values: Any = VALUES, rule: Rule = RULES[1], **options: Any) -> Any:
    return judge(values, LIMITS, rule, **{"u": 3.0, "rectangular": 69.0, **options})


@pytest.mark.parametrize("rule", RULES, ids=repr)
def test_each_is_the_verdict_alone(rule: Rule) -> None:
    few = VALUES[:400]
    u, clause = RANDOM.choice([0.0, 0.5, 3.0, 30.0], 400), RANDOM.choice([0.0, 20.0, 69.0], 400)
    dof = RANDOM.choice([4.0, np.inf, np.inf], 400)
    verdicts = judge(few, LIMITS, rule, u=u, dof=dof, rectangular=clause)
    assert type(verdicts) is Verdicts and verdicts.shape == (400,) and len(verdicts) == 400
    for n in range(400):
        alone = judge(float(few[n]), LIMITS, rule, u=float(u[n]), dof=float(dof[n]), rectangular=float(clause[n]))
        assert type(alone) is Verdict
        assert alone == judge(Estimate(few[n], u[n], dof[n]).with_rectangular(clause[n]), LIMITS, rule)
        assert (verdicts.answer[n], verdicts.side[n]) == (alone.answer, alone.side)
        assert verdicts[n] == alone.answer
        assert verdicts.conformance_probability[n] == alone.conformance_probability
        said = (verdicts.conforms[n], verdicts.does_not_conform[n], verdicts.undecided[n])
        assert said == tuple(alone.answer == word for word in ("conforms", "does not conform", "undecided"))
    assert verdicts.valid.all() and verdicts.limits == LIMITS and verdicts.rule == rule
    assert sum(verdicts.counts.values()) == 400


@pytest.mark.parametrize("kind", [np.float64, np.float32])
def test_widths_threads_and_layouts(kind: Any) -> None:
    values = VALUES.astype(kind)
    try:
        _core._limit_threads(1)
        wanted = made(values)
        assert wanted.conformance_probability.dtype == kind
        for width in (128, 256, 512):
            _core._limit_vector_bits(width)
            for threads in (1, 2, 3):
                _core._limit_threads(threads)
                assert made(values) == wanted, (width, threads)
    finally:
        _core._limit_threads(0)
        _core._limit_vector_bits(512)
    spread = np.zeros(3 * values.size, dtype=kind)
    spread[1::3] = values
    assert made(spread[1::3]) == wanted
    table = made(values.reshape(4, -1))
    assert table.shape == (4, 50_000) and table[1] == wanted[50_000:100_000]
    assert made(values[:, None], u=np.array([3.0, 30.0], dtype=kind)).shape == (200_000, 2)


def test_single_precision_decides_as_double_but_next_to_the_risk() -> None:
    single, double = made(VALUES.astype(np.float32)), made(VALUES.astype(np.float32).astype(np.float64))
    np.testing.assert_allclose(single.conformance_probability, double.conformance_probability, atol=2e-5)
    assert (single.answer == double.answer).mean() > 0.999


def test_what_cannot_be_judged() -> None:
    values = VALUES.copy()
    values[[77, 15_000]] = np.nan
    with pytest.raises(RangeError) as caught:
        made(values)
    assert (caught.value.index, caught.value.failed) == (77, 2)
    verdicts = made(values, on_invalid="nan")
    assert np.flatnonzero(~verdicts.valid).tolist() == [77, 15_000]
    assert verdicts[77] == verdicts.side[77] == "invalid" and np.isnan(verdicts.conformance_probability[77])
    assert not (verdicts.conforms | verdicts.does_not_conform | verdicts.undecided)[77]
    assert verdicts.counts["invalid"] == 2 and "2 invalid" in repr(verdicts)
    again, valid = made(values, on_invalid="mask")
    assert again == verdicts and (valid == verdicts.valid).all()
    assert made()[100:15_000] == verdicts[100:15_000]
    with pytest.raises(RangeError):
        made(u=-1.0)
    with pytest.raises(RangeError):
        made(4700.0, u=-1.0)
    with pytest.raises(ChoiceError):
        made(on_invalid="skip")
    with pytest.raises(CountError):
        made(u=np.ones(3))
    for wrong in (True, "4700", ["a"], np.array([True]), np.ma.array([1.0], mask=[True]), np.array([1j]), None):
        with pytest.raises(InputTypeError):
            made(wrong)
    with pytest.raises(InputTypeError):
        judge(VALUES, [LIMITS], RULES[0])
    for estimate in (Estimate(4700, 1), [Estimate(4700, 1)]):
        with pytest.raises(InputTypeError, match="holds its own uncertainty"):
            judge(estimate, LIMITS, RULES[0], u=1.0)
    with pytest.raises(InputTypeError, match="judge"):
        Verdicts()


def test_sequences_of_estimates_stay_what_they_were() -> None:
    assert judge([], LIMITS, RULES[0]) == []
    estimates = [Estimate(4700, 1), Estimate(9000, 1)]
    assert [verdict.answer for verdict in judge(estimates, LIMITS, RULES[0])] == ["conforms", "does not conform"]
    assert judge(np.array(estimates, dtype=object), LIMITS, RULES[0]) == judge(estimates, LIMITS, RULES[0])
    assert len(judge(np.empty(0), LIMITS, RULES[0])) == 0


def test_lists_ints_and_one_number_with_an_array() -> None:
    assert made([4700, 4940]).answer.tolist() == ["conforms", "undecided"]
    assert made([[4700.0], [9000.0]]).shape == (2, 1)
    assert made(4880, u=[1.0, 90.0]).shape == (2,)


def test_pandas_keeps_its_index() -> None:
    series = pd.Series([4700.0, 4940.0, None], index=list("abc"), name="tray", dtype="Float64")
    with pytest.raises(RangeError):
        made(series)
    verdicts = made(series, on_invalid="nan")
    assert verdicts.conforms["a"] and verdicts.undecided["b"] and not verdicts.valid["c"]
    assert list(verdicts.answer.index) == list("abc") and verdicts.answer.name == "tray"
    assert list(verdicts[verdicts.valid].answer.index) == ["a", "b"]
    assert verdicts[0] == "conforms"
    assert pickle.loads(pickle.dumps(verdicts)).answer.equals(verdicts.answer)


def test_it_is_frozen() -> None:
    verdicts = made()
    with pytest.raises(AttributeError):
        verdicts.limits = None
    with pytest.raises(AttributeError):
        del verdicts._code
    with pytest.raises(ValueError):
        verdicts.conformance_probability[0] = 1.0
    assert pickle.loads(pickle.dumps(verdicts)) == verdicts
    assert verdicts != made(u=4.0) and verdicts != 1
    with pytest.raises(TypeError):
        hash(verdicts)


def test_what_is_shown() -> None:
    verdicts = made([4700.0, 4940.0, 9000.0, 9001.0])
    assert repr(verdicts) == "<Verdicts on 4: 1 conforms, 2 does not conform, 1 undecided; Rule.guarded(0.05)>"
    assert verdicts.counts == {"conforms": 1, "does not conform": 2, "undecided": 1}
    html = verdicts._repr_html_()
    assert "<caption>Verdicts on 4</caption>" in html and "<td>does not conform</td><td>2</td><td>50.0 %</td>" in html
    assert list(verdicts) == ["conforms", "undecided", "does not conform", "does not conform"]
    assert "share" in made(np.empty(0))._repr_html_()
