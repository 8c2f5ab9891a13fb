"""The benchmarks as Markdown. `cargo xtask bench [GROUP …] [--quick]` builds what they need and calls this."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

import batch
import footprint
import growth
import machine
import programs
import scalar
from contests import contests

GROUPS = ("arrays", "c", "python", "growth", "import", "memory")


def main() -> None:
    """Runs the groups asked for."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("groups", nargs="*", metavar="GROUP", help=f"{', '.join(GROUPS)}; all where none is given")
    asked.add_argument("--quick", action="store_true", help="few elements and rounds, to see that it runs")
    asked.add_argument("--scalar-c", type=Path, required=True, help="the compiled C program")
    asked.add_argument("--wheel", type=Path, required=True)
    asked.add_argument("--library", type=Path, required=True, help="the C door's shared library")
    told = asked.parse_args()
    groups = told.groups or GROUPS
    for group in groups:
        if group not in GROUPS:
            sys.exit(f"group: {group} given, {', '.join(GROUPS)} allowed")
    print(f"{machine.line()}{' A quick run, not for the record.' if told.quick else ''}")
    if "arrays" in groups:
        batch.run(*((10**5, 3) if told.quick else (10**7, 5)))
    if "c" in groups:
        programs.scalar_c(told.scalar_c, 5 if told.quick else 25)
    if "python" in groups:
        scalar.run(5 if told.quick else 25)
    if "growth" in groups:
        growth.run(*((10**5, 3) if told.quick else (10**8, 3)))
    if "import" in groups:
        footprint.import_time(5 if told.quick else 41)
        footprint.sizes(told.wheel, told.library)
    if "memory" in groups:
        footprint.memory(10**5 if told.quick else 10**7, len(contests()))


if __name__ == "__main__":
    main()
