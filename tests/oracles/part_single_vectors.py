"""Writes ../vectors/part_single.tsv: preferred values and limits in single precision, in exact fractions, without the library.

A preferred value is the number of single precision nearest to its decimal, ties to the even one, and so is a limit. The column
of bits is the library's own; it is filled by UPDATE_BITS=1 cargo test -p reckohm-tests --test part_single_vectors.
"""

import random
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from meter_single_vectors import single, text
from part_vectors import SERIES, candidates

SOURCE = "exact fractions"
OUT_OF_RANGE, NOT_FINITE, UNKNOWN_SERIES = 1, 2, 100
rows = []


def rounded(x):
    return Fraction(single(x))


def add(function, inputs, outputs, status=0):
    joined = "|".join(outputs)
    bits = "|".join("-" if out in ("true", "false") else "0" * 16 for out in outputs)
    rows.append(f"{function}_f32\t{'|'.join(inputs)}\t{joined}\t{bits}\t{status}\t{SOURCE if status == 0 else 'our rule'}")


def ask(x, series):
    """`x` is a number of single precision."""
    exact = Fraction(x)
    values = sorted(candidates(float(x), series))
    below = max(v for v in values if rounded(v) <= exact)
    above = min(v for v in values if rounded(v) >= exact)
    # A number of few figures is meant by its float: a tie there goes to the lower one.
    nearest = below if below == above or exact <= rounded((below + above) / 2) else above
    given = [text(x), series]
    for function, found in [("nearest", nearest), ("below", below), ("above", above)]:
        add(f"preferred.{function}", given, [text(single(found))])
    add("preferred.contains", given, ["true" if rounded(below) == exact else "false"])


def preferred(rng):
    for series, values in SERIES.items():
        for _ in range(8):
            ask(single(Decimal(f"{10 ** rng.uniform(-3, 9):.{rng.randint(1, 4)}e}")), series)
        for value in rng.sample(values, min(3, len(values))):
            at = single(value * Fraction(10) ** rng.randint(-6, 12))
            for x in (at, beside(at, 1), beside(at, -1)):
                ask(x, series)
        middle = (values[0] + values[1]) / 2
        for x in (single(middle), beside(single(middle), 1), beside(single(middle), -1)):
            ask(x, series)
    # The ends of the range, and numbers without all their digits.
    for x in ["999999986991104", "1.401298464324817e-45", "1.1754943508222875e-38", "1.0e-40"]:
        for series in ["E3", "E24", "E192"]:
            ask(single(Decimal(x)), series)
    for x, status in [("0.0", OUT_OF_RANGE), ("-1.0", OUT_OF_RANGE), ("1000000054099968.0", OUT_OF_RANGE), ("nan", NOT_FINITE), ("inf", NOT_FINITE)]:
        for function in ["nearest", "below", "above", "contains"]:
            add(f"preferred.{function}", [x, "E12"], [], status)


def beside(x, step):
    """The next number of single precision above or below."""
    size = Fraction(x)
    gap = Fraction(2) ** -149
    while rounded(size + step * gap) == size:
        gap *= 2
    return single(size + step * gap)


def limits(rng):
    """Of decimals of so few figures that single precision tells them apart: each limit is rounded once."""
    for _ in range(60):
        nominal = Decimal(f"{10 ** rng.uniform(-2, 7):.{rng.randint(1, 4)}e}")
        tolerance = Decimal(rng.choice(["0.05", "0.01", "0.1", "0.001", "0.2", "0.0005"]))
        ends = [text(single(nominal * (1 - tolerance))), text(single(nominal * (1 + tolerance)))]
        add("verdict.limits.from_tolerance", [str(nominal), str(tolerance)], ends)
    for nominal, tolerance, status in [("0.0", "0.05", OUT_OF_RANGE), ("2e15", "0.05", OUT_OF_RANGE), ("4700.0", "1.0", OUT_OF_RANGE),
                                       ("4700.0", "0.0", OUT_OF_RANGE), ("nan", "0.05", NOT_FINITE), ("4700.0", "nan", NOT_FINITE)]:  # fmt: skip
        add("verdict.limits.from_tolerance", [nominal, tolerance], [], status)


def main():
    rng = random.Random(404)
    preferred(rng)
    limits(rng)
    unique = list(dict.fromkeys(rows))
    head = "# Preferred values and limits in single precision: inputs and outputs as of the functions without _f32. Made by\n"
    head += "# oracles/part_single_vectors.py; bits are the library's own, of the double with the value of the float.\n"
    head += "function\tinputs\toutputs\tbits\tstatus\tsource\n"
    path = Path(__file__).parent.parent / "vectors" / "part_single.tsv"
    path.write_text(head + "\n".join(unique) + "\n")
    print(len(unique), "rows")


if __name__ == "__main__":
    main()
