"""What it costs to have the library: import time over NumPy's own, size of the wheel and of the code, memory of a call."""

from __future__ import annotations

import statistics
import subprocess
import sys
from pathlib import Path

from table import answer, figures, table

IMPORT_GOAL_MS = 15.0
WHEEL_GOAL_MB = 1.0

_IMPORT = """
import numpy, time
start = time.perf_counter()
import reckohm
print(1e3 * (time.perf_counter() - start))
"""
_NUMPY = """
import time
start = time.perf_counter()
import numpy
print(1e3 * (time.perf_counter() - start))
"""


def import_time(runs: int) -> None:
    """Fresh interpreters in turn: NumPy's import, and ours after it."""
    ours, numpys = [], []
    for _ in range(runs):
        numpys.append(_printed(_NUMPY))
        ours.append(_printed(_IMPORT))
    middle = statistics.median(ours)
    spread = [figures(x) for x in statistics.quantiles(ours, n=4)]
    table(
        f"Import, median of {runs} interpreters",
        ["import", "ms", "quartiles", "goal", ""],
        [
            ["numpy", figures(statistics.median(numpys)), "-", "-", "-"],
            [
                "reckohm, NumPy being there",
                figures(middle),
                f"{spread[0]} to {spread[2]}",
                *answer(middle, IMPORT_GOAL_MS, at_least=False),
            ],
        ],
    )


def _printed(code: str) -> float:
    return float(subprocess.run([sys.executable, "-c", code], stdout=subprocess.PIPE, text=True, check=True).stdout)


def sizes(wheel: Path, library: Path) -> None:
    """Sizes of files, and of the code in them as `size` says."""
    import reckohm._core

    megabytes = wheel.stat().st_size / 1e6
    rows = [["wheel", figures(megabytes), "-", *answer(megabytes, WHEEL_GOAL_MB, at_least=False)]]
    libraries = (("Python door, compiled module", Path(reckohm._core.__file__)), ("C door, shared library", library))
    for name, path in libraries:
        code = (
            subprocess.run(["size", str(path)], stdout=subprocess.PIPE, text=True, check=True)
            .stdout.splitlines()[1]
            .split()[0]
        )
        rows.append([name, figures(path.stat().st_size / 1e6), figures(int(code) / 1e6), "-", "-"])
    table("Sizes, in millions of bytes", ["what", "file", "code and constants", "goal", ""], rows)


_MEMORY = """
import numpy as np, sys
sys.path.insert(0, sys.argv[1])
from contests import FRESH, contests
def status(name):
    return next(int(line.split()[1]) for line in open("/proc/self/status") if line.startswith(name)) / 1e3
contest = contests()[int(sys.argv[2])]
call = contest.forms[FRESH][int(sys.argv[3])]
inputs = contest.inputs(np.random.default_rng(1), int(sys.argv[4]))
call(*(x[:1000] for x in inputs), None)
before = status("VmRSS")
open("/proc/self/clear_refs", "w").write("5")
result = call(*inputs, None)
print(contest.what, sum(x.nbytes for x in inputs) / 1e6, result.nbytes / 1e6, status("VmHWM") - before, sep="\\t")
"""


def memory(elements: int, how_many: int) -> None:
    """The most memory at a time during a call, beyond what was there before it: the output itself is the least."""
    rows = []
    for index in range(how_many):
        told = []
        for side in ("0", "1"):
            print(f"memory: {index + 1} of {how_many}", file=sys.stderr)
            asked = [sys.executable, "-c", _MEMORY, str(Path(__file__).parent), str(index), side, str(elements)]
            told.append(
                subprocess.run(asked, stdout=subprocess.PIPE, text=True, check=True).stdout.rstrip("\n").split("\t")
            )
        what, given, result, ours = told[0]
        theirs = told[1][3]
        over = [
            figures(max(0.0, float(peak) - float(result)) / (float(given) + float(result))) for peak in (ours, theirs)
        ]
        rows.append([what, *(figures(float(cell)) for cell in (given, result, ours, theirs)), *over])
    table(
        f"Memory of a call with {elements:.0e} elements".replace("e+0", "e"),
        ["function", "input, MB", "output, MB", "ours, peak", "theirs, peak", "ours beyond/both", "theirs beyond/both"],
        rows,
    )
