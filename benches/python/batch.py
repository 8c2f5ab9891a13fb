"""Arrays against NumPy and SciPy: at each width of vectors, on one thread and on two, in double and single precision.

NumPy is held to the same width as we are, by its own NPY_DISABLE_CPU_FEATURES, so each setting runs in a process of its own.
The number of threads is the number of cores that this process may use; NumPy and SciPy run such expressions on one.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
from dataclasses import dataclass

import machine
from table import answer, count, figures, table

# What the library is to reach, where the machine has 512-bit vectors: (goal, bits, threads) to how many times as fast.
GOALS = {
    ("conversion", 512, 1): 8.0,
    ("conversion", 512, 2): 14.0,
    ("conversion", 256, 1): 2.5,
    ("conformance", 512, 2): 10.0,
    ("judge", 512, 2): 10.0,
}
# What NumPy calls the sets of features beyond each width.
BEYOND = {128: "X86_V3 X86_V4 AVX512_ICL AVX512_SPR", 256: "X86_V4 AVX512_ICL AVX512_SPR", 512: ""}
# No call is longer than this: a slow function gets fewer elements, and the table says how many.
LONGEST_S = 2.0


@dataclass(frozen=True)
class Setting:
    """How a process runs."""

    bits: int
    threads: int


def settings() -> list[Setting]:
    """All that this machine can show."""
    widest = machine.vector_bits()
    cores = len(os.sched_getaffinity(0))
    return [
        *(Setting(widest, threads) for threads in (1, 2) if threads <= cores),
        *(Setting(bits, 1) for bits in (256, 128) if bits < widest),
    ]


def run(elements: int, rounds: int) -> None:
    """The tables, one a setting."""
    for setting in settings():
        rows = []
        for line in _process(setting, elements, rounds):
            goal, what, kind, form, many, ours, theirs, copy, ratio, lower, upper = line.split("\t")
            asked = GOALS.get((goal, setting.bits, setting.threads))
            numbers = [figures(float(x)) for x in (ours, theirs, copy, ratio)]
            spread = f"{figures(float(lower))} to {figures(float(upper))}"
            rows.append(
                [what, kind, form, count(float(many)), *numbers, spread, *answer(float(ratio), asked, at_least=True)]
            )
        table(
            f"Arrays, {setting.bits}-bit vectors, {setting.threads} thread{'s' if setting.threads > 1 else ''}",
            [
                "function",
                "type",
                "form",
                "elements",
                "ours, ns",
                "theirs, ns",
                "copy, ns",
                "times as fast",
                "quartiles",
                "goal",
                "",
            ],
            rows,
        )


def _process(setting: Setting, elements: int, rounds: int) -> list[str]:
    environment = {**os.environ, "NPY_DISABLE_CPU_FEATURES": BEYOND[setting.bits], "PYTHONWARNINGS": "ignore"}
    asked = [sys.executable, __file__, str(setting.bits), str(setting.threads), str(elements), str(rounds)]
    done = subprocess.run(asked, env=environment, stdout=subprocess.PIPE, text=True, check=True)
    return done.stdout.splitlines()


def _measure(bits: int, threads: int, elements: int, rounds: int) -> None:
    """In a process of its own: prints a line a row."""
    cores = sorted(os.sched_getaffinity(0))
    os.sched_setaffinity(0, cores[-threads:])
    import numpy as np
    from contests import FRESH, contests
    from pairs import Pair, in_turn

    import reckohm._core as core

    core._limit_vector_bits(bits)
    random = np.random.default_rng(1)
    for contest in contests():
        for kind in (np.float64, np.float32):
            few = [x.astype(kind) for x in contest.inputs(random, 10_000)]
            for form, (ours, theirs) in contest.forms.items():
                print(f"{bits} bits, {threads} threads: {contest.what}, {kind.__name__}, {form}", file=sys.stderr)
                out = np.empty_like(few[0])
                got = ours(*few, None)
                if got.dtype != kind:
                    continue  # no form in this precision
                wanted = theirs(*few, out)
                agree = contest.agree if kind is np.float64 else contest.agree_single
                np.testing.assert_allclose(got, wanted, rtol=agree, atol=agree, err_msg=contest.what)
                slow = max(
                    time for calls in in_turn([lambda: ours(*few, out), lambda: theirs(*few, out)], 3) for time in calls
                )
                many = int(min(elements, 10.0 ** int(np.log10(LONGEST_S / slow * 10_000))))
                inputs = [x.astype(kind) for x in contest.inputs(random, many)]
                out = np.empty_like(inputs[0])
                # A copy is the limit: what only reads and writes as much.
                copy = (lambda: inputs[0].copy()) if form == FRESH else (lambda: np.copyto(out, inputs[0]))
                times = in_turn([lambda: ours(*inputs, out), lambda: theirs(*inputs, out), copy], rounds)
                pair = Pair.of(*times[:2])
                cells = [contest.goal, contest.what, np.dtype(kind).name, form, many]
                nanoseconds = [1e9 * time / many for time in (pair.ours, pair.theirs, statistics.median(times[2]))]
                print(*cells, *nanoseconds, pair.ratio, pair.lower, pair.upper, sep="\t", flush=True)


if __name__ == "__main__":
    _measure(*(int(word) for word in sys.argv[1:]))
