"""Eight threads at once, on the same objects and arrays: each gets what one thread alone gets, errors included."""

from __future__ import annotations

import threading
from typing import Any, Callable

import numpy as np
import pytest

from reckohm import distribution, marking, measurement, meter, preferred, sensor, uncertainty, verdict
from reckohm.errors import ReckohmError

THREADS = 8
ROUNDS = 6

SPAN = meter.Meter.example_hand_held().spans[1]
ESTIMATE = uncertainty.Estimate(1000.0, 1.0).with_rectangular(12.7).with_type_a(2.0, 4.0)
LIMITS = verdict.Limits.from_tolerance(1000, 0.02)
THERMISTOR = sensor.Thermistor.steinhart_hart((1.129148e-3, 2.34125e-4, 8.76741e-8), 1, (-40, 125))
RULE = verdict.Rule.guarded(0.05)
OHMS = np.geomspace(1e-3, 1e9, 3001)
BAD_OHMS = np.where(np.arange(3001) == 1234, -1.0, OHMS)
PROBABILITIES = np.linspace(1e-6, 1 - 1e-6, 1501)
VALUES = np.linspace(900.0, 1100.0, 301)
TEXTS = ["1.462", "OL", "0.001", "-1.462"] * 50


def evaluated() -> Any:
    readings = [SPAN.read(text) for text in ("1.462", "1.463", "1.461")]
    found = measurement.evaluate(readings, tcr_limit=100.0, temperature_c=20.0, reference_temperature_c=25.0)
    return found.budget.to_dict(), repr(found.estimate), found.advice


TASKS: list[Callable[[], Any]] = [
    lambda: preferred.nearest(OHMS, "E96").tobytes(),
    lambda: preferred.nearest(OHMS.astype("f4"), "E24").tobytes(),
    lambda: preferred.nearest(BAD_OHMS, "E12"),
    lambda: preferred.nearest(BAD_OHMS, "E12", on_invalid="nan").tobytes(),
    lambda: distribution.normal_above(OHMS[:2000]).tobytes(),
    lambda: distribution.t_quantile(PROBABILITIES, 3.5).tobytes(),
    lambda: distribution.t_quantile(PROBABILITIES * 2, 3.5),
    lambda: verdict.conformance_probability(VALUES, LIMITS, u=0.5, rectangular=2.0).tobytes(),
    lambda: verdict.conformance_probability(VALUES[:40], LIMITS, u=0.5, dof=4, rectangular=2.0).tobytes(),
    lambda: THERMISTOR.temperature_c(np.geomspace(500, 1e5, 3001)).tobytes(),
    lambda: THERMISTOR.resistance_ohm(VALUES),
    lambda: repr(THERMISTOR.temperature_c(ESTIMATE)),
    lambda: repr(verdict.judge(ESTIMATE, LIMITS, RULE)),
    lambda: ESTIMATE.expanded(0.99).half_width,
    lambda: ESTIMATE.with_normal(-1.0),
    lambda: marking.Marking.from_bands("red violet gold mauve"),
    lambda: repr(marking.both_ways("red violet gold")),
    lambda: SPAN.read(TEXTS).counts.tobytes(),
    lambda: SPAN.read([*TEXTS, "1.4x2"]),
    lambda: meter.Meter.example_bench().choose(4700, tolerance=0.01).chosen,
    evaluated,
]


def answer(task: Callable[[], Any]) -> Any:
    """What comes out, or the exception in full."""
    try:
        return task()
    except ReckohmError as error:
        return type(error), error.args


def hammer(work: Callable[[int], None]) -> None:
    """The work in all threads, begun at once; the first exception of any is raised."""
    start = threading.Barrier(THREADS)
    raised: list[BaseException] = []

    def run(number: int) -> None:
        start.wait()
        try:
            work(number)
        except BaseException as error:
            raised.append(error)

    threads = [threading.Thread(target=run, args=(number,)) for number in range(THREADS)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    if raised:
        raise raised[0]


def test_every_thread_gets_what_one_alone_gets() -> None:
    expected = [answer(task) for task in TASKS]
    assert sum(isinstance(alone, tuple) and isinstance(alone[0], type) for alone in expected) == 6

    def work(number: int) -> None:
        for step in range(ROUNDS * len(TASKS)):
            chosen = (number * 5 + step) % len(TASKS)
            assert answer(TASKS[chosen]) == expected[chosen], chosen

    hammer(work)


def test_outputs_of_threads_do_not_meet() -> None:
    expected = distribution.t_above(PROBABILITIES, 3.5)
    whole = np.full((THREADS, PROBABILITIES.size), -7.0)
    parts = np.full(PROBABILITIES.size, -7.0)

    def work(number: int) -> None:
        distribution.t_above(PROBABILITIES, 3.5, out=whole[number])
        distribution.t_above(PROBABILITIES[number::THREADS], 3.5, out=parts[number::THREADS])

    hammer(work)
    assert (whole == expected).all() and (parts == expected).all()


def test_an_auto_ranger_of_all_threads_stays_whole() -> None:
    bench = meter.Meter.example_bench()
    ranger = meter.AutoRanger(bench)

    def work(number: int) -> None:
        for step in range(200):
            ohm = 10.0 ** ((number + step) % 7)
            assert 0 <= ranger.step_ohm(ohm).index < len(bench.spans)

    hammer(work)
    while ranger.step_ohm(470.0).kind not in ("accept", "beyond-highest", "below-lowest"):
        pass
    assert ranger.span.full_scale_ohm > 470.0


@pytest.mark.parametrize("name", ["normal_quantile", "t_quantile"])
def test_first_bad_element_of_each_thread(name: str) -> None:
    function = getattr(distribution, name)
    more = () if name.startswith("normal") else (3.5,)

    def work(number: int) -> None:
        for step in range(20):
            bad = PROBABILITIES.copy()
            bad[[number * 50 + step, -1]] = 2.0
            with pytest.raises(ReckohmError) as caught:
                function(bad, *more)
            assert (caught.value.index, caught.value.failed) == (number * 50 + step, 2)

    hammer(work)
