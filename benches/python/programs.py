"""What the compiled programs measured, as tables: the C one prints a line a round, name, ours and theirs in nanoseconds."""

from __future__ import annotations

import subprocess
from pathlib import Path

from pairs import Pair
from table import answer, figures, table

# A call through the C door is to take no more time than plain C.
GOAL = 1.0


def scalar_c(program: Path, rounds: int) -> None:
    """Single calls in C."""
    times: dict[str, tuple[list[float], list[float]]] = {}
    for line in subprocess.run(
        [program, str(rounds)], stdout=subprocess.PIPE, text=True, check=True
    ).stdout.splitlines():
        name, ours, theirs = line.split("\t")
        kept = times.setdefault(name, ([], []))
        kept[0].append(float(ours))
        kept[1].append(float(theirs))
    rows = []
    for name, (ours, theirs) in times.items():
        pair = Pair.of(ours, theirs)
        share = 1 / pair.ratio
        spread = f"{figures(1 / pair.upper)} to {figures(1 / pair.lower)}"
        rows.append(
            [
                *name.split(" | "),
                figures(pair.ours),
                figures(pair.theirs),
                figures(share),
                spread,
                *answer(share, GOAL, at_least=False),
            ]
        )
    table(
        "Single calls in C, gcc -O2",
        ["call", "against", "ours, ns", "theirs, ns", "ours/theirs", "quartiles", "goal", ""],
        rows,
    )
