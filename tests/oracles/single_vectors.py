"""Writes ../vectors/single.tsv: the twins for single precision, computed with mpmath by the programs beside this one.

Every input is a number of single precision, so that what is computed is the exact answer to what the library is asked. The
bits column holds what the library gives, as those of the double with the same value; it is filled by
UPDATE_BITS=1 cargo test -p reckohm-tests.
"""

import itertools
import multiprocessing
import pathlib
import random
import struct

import distribution
import uncertainty_vectors as intervals
import verdict_vectors as verdicts
from mpmath import inf, mpf

SOURCE = "oracles/single_vectors.py, mpmath at 34 digits"


def single(x):
    """The nearest number of single precision."""
    return x if x is None or x in (inf, -inf) else struct.unpack("f", struct.pack("f", float(x)))[0]


def all_single(x):
    if isinstance(x, tuple):
        return tuple(all_single(part) for part in x)
    return x if isinstance(x, str) else single(x)


def held(output):
    """What single precision holds of an output: nothing of a probability below its smallest number."""
    try:
        return "0.0" if 0 < float(output) < 2.0**-150 else output
    except ValueError:
        return output


def named(row):
    """A row of another program's as one of a twin."""
    function, inputs, outputs, *cells, _ = row.split("\t")
    outputs = "|".join(held(output) for output in outputs.split("|"))
    return "\t".join([function + "_f32", inputs, outputs, *cells, SOURCE])


def distributions():
    distribution.double = lambda x: mpf(single(x))
    distribution.TINY = mpf(10) ** -30
    rng = random.Random(20261126)

    def probabilities(rng):
        yield from map(single, (0.4999, 0.31, 0.15, 0.025, 1e-4, 1e-9))
        yield single(10 ** rng.uniform(-28, -10))

    for function, inputs, exact in distribution.rows(rng, (1, 2, 2.5, 4, 9, 100, 1e4, inf), probabilities):
        given = "|".join(distribution.text(x) for x in inputs)
        yield f"distribution.{function}_f32\t{given}\t{distribution.digits(exact)}\t-\t0\t{SOURCE}"
    for function, inputs, kind in distribution.errors():
        if kind != 5:
            yield f"distribution.{function}_f32\t{'|'.join(inputs)}\t\t\t{kind}\tour rule"


def run(job):
    work, given = job
    return work(given)


def main():
    shapes = [all_single(shape) for shape in intervals.SHAPES if not intervals.is_slow(shape)]
    slow = [all_single(shape) for shape in intervals.SHAPES if intervals.is_slow(shape)][::3]
    jobs = [(intervals.expanded, (0.0, shape, 0.0, 0.0, single(p))) for shape in shapes for p in (0.95, 0.99)]
    jobs += [(intervals.expanded, (1000.0 + i, shape, 0.5, 0.25 * i, single(0.95))) for i, shape in enumerate(shapes)]
    for shape in shapes + slow:
        jobs.append((intervals.guaranteed, (0.0, shape, single(0.95))))
        jobs.append((intervals.quantile, (shape, single(0.05))))
        jobs += [(intervals.tail, (shape, 11.25, side)) for side in ("above", "below")]
    parts = [all_single(shape) for shape in verdicts.SHAPES]
    rules = [all_single(rule) for rule in verdicts.RULES[:3]]
    jobs += [(verdicts.judged, job) for job in itertools.product(parts, verdicts.LIMITS, verdicts.VALUES[1::2], rules)]
    jobs += [(verdicts.conformance, job) for job in itertools.product(parts, verdicts.LIMITS, verdicts.VALUES[::2])]
    with multiprocessing.Pool() as pool:
        rows = pool.map(run, jobs, chunksize=4)
    rows += filter(lambda row: "1e+200" not in row and "1e-300" not in row, intervals.errors())
    rows += verdicts.errors()
    rows = [named(row) for row in rows] + list(distributions())
    out = pathlib.Path(__file__).parent.parent / "vectors" / "single.tsv"
    head = "# Twins for single precision: inputs and outputs as of the function without _f32 in the other files. Made by\n"
    head += "# oracles/single_vectors.py; bits are the library's own, of the double with the value of the float.\n"
    head += "function\tinputs\toutputs\tbits\tstatus\tsource\n"
    out.write_text(head + "\n".join(rows) + "\n")
    print(len(rows), "rows")


if __name__ == "__main__":
    main()
