"""How the cost grows from a thousand elements to a hundred million, and from which size on a second thread pays."""

from __future__ import annotations

import os
import subprocess
import sys

from table import answer, count, figures, table

# Ten times the elements may take no more than ten times this.
GOAL = 1.3
LONGEST_S = 3.0
# Elements that the calls of one size go through in turn.
POOL = 1 << 20


def run(most: int, rounds: int) -> None:
    """The tables: growth with as many threads as there are cores, and one thread against all."""
    counts = [10**power for power in range(3, len(str(most)))]
    cores = sorted(os.sched_getaffinity(0))
    all_threads, one_thread = _process(len(cores), counts, rounds), _process(1, counts, rounds)
    for threads, measured in ((len(cores), all_threads), (1, one_thread)):
        rows = []
        for (what, kind), times in measured.items():
            known = [(many, times[many]) for many in counts if many in times]
            growth = max(later / earlier for (_, earlier), (_, later) in zip(known, known[1:]))
            cells = [figures(times[many]) if many in times else "-" for many in counts]
            rows.append([what, kind, *cells, figures(growth), *answer(growth, GOAL, at_least=False)])
        table(
            f"Nanoseconds an element by the number of elements, {threads} thread{'s' if threads > 1 else ''}",
            ["function", "type", *(count(many) for many in counts), "worst growth", "goal", ""],
            rows,
        )
    if len(cores) > 1:
        _threshold()


def _threshold() -> None:
    counts = [1 << power for power in range(10, 23)]
    one, two = _process(1, counts, 9), _process(2, counts, 9)
    rows = [
        [what, kind, *(figures(one[what, kind][many] / two[what, kind][many]) for many in counts)] for what, kind in one
    ]
    table(
        "Two threads against one: how many times as fast, by the number of elements in units of 1024",
        ["function", "type", *(str(many >> 10) for many in counts)],
        rows,
    )


def _process(threads: int, counts: list[int], rounds: int) -> dict[tuple[str, str], dict[int, float]]:
    """Nanoseconds an element of each function at each count, from a process that may use so many cores."""
    asked = [sys.executable, __file__, str(threads), str(rounds), *(str(many) for many in counts)]
    done = subprocess.run(asked, stdout=subprocess.PIPE, text=True, check=True)
    times: dict[tuple[str, str], dict[int, float]] = {}
    for line in done.stdout.splitlines():
        what, kind, many, nanoseconds = line.split("\t")
        times.setdefault((what, kind), {})[int(many)] = float(nanoseconds)
    return times


def _measure(threads: int, rounds: int, counts: list[int]) -> None:
    """In a process of its own: prints a line a function and count."""
    os.sched_setaffinity(0, sorted(os.sched_getaffinity(0))[-threads:])
    import itertools
    import statistics

    import numpy as np
    from contests import FRESH, contests
    from pairs import in_turn

    random = np.random.default_rng(1)
    for contest in contests():
        ours, _ = contest.forms[FRESH]
        for kind in (np.float64, np.float32):
            each = 0.0
            for many in counts:
                if each * many > 1e9 * LONGEST_S:
                    break
                print(f"growth, {threads} threads: {contest.what}, {kind.__name__}, {many}", file=sys.stderr)
                # A stretch of its own for each call: the processor would learn by heart where a short one branches.
                pool = [x.astype(kind) for x in contest.inputs(random, max(many, POOL))]
                starts = itertools.cycle(range(0, max(many, POOL) - many + 1, many))
                if ours(*(x[:1] for x in pool), None).dtype != kind:
                    break  # no form in this precision

                def call() -> None:
                    start = next(starts)
                    ours(*(x[start : start + many] for x in pool), None)

                [times] = in_turn([call], rounds, least=0.002)
                each = 1e9 * statistics.median(times) / many
                print(contest.what, np.dtype(kind).name, many, each, sep="\t", flush=True)


if __name__ == "__main__":
    _measure(int(sys.argv[1]), int(sys.argv[2]), [int(word) for word in sys.argv[3:]])
