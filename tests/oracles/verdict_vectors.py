"""Writes ../vectors/verdict.tsv: conformance probabilities and verdicts, computed by error_shape.py with mpmath.

The bits column holds what the library gives and is filled by UPDATE_BITS=1 cargo test -p reckohm-tests.
"""

import itertools
import multiprocessing
import pathlib

from error_shape import Shape
from mpmath import findroot, inf, mpf, nstr

SOURCE = "oracles/verdict_vectors.py, mpmath at 34 digits"
ERROR = "the legal ranges of the core"
NONE = "\\x"
NO = (0.0, inf)
# a, b, normal, type A parts, below, above
SHAPES = [
    (0.0, 0.0, 0.0, NO, 0.0, 0.0),
    (0.0, 0.0, 1.0, NO, 0.0, 0.0),
    (1.0, 0.0, 0.0, NO, 0.0, 0.0),
    (1.0, 0.5, 0.0, NO, 0.0, 0.0),
    (1.0, 0.0, 0.25, NO, 0.0, 0.0),
    (1.0, 0.3, 0.1, NO, 0.0, 0.0),
    (0.0, 0.0, 0.0, (0.4, 4.0), 0.0, 0.0),
    (1.0, 0.0, 0.0, (0.2, 2.0), 0.0, 0.0),
    (1.0, 0.0, 0.0, (1.0, 9.0), 0.0, 0.0),
    (0.5, 0.0, 0.25, NO, 0.0, 1.0),
    (0.5, 0.0, 0.25, NO, 0.75, 0.25),
]
LIMITS = [(95.0, 105.0), (99.0, 101.0), (-inf, 102.0), (98.0, inf)]
VALUES = [94.0, 96.125, 98.5, 99.75, 100.0, 101.0, 101.75, 103.5, 107.0]
RULES = [("simple acceptance", None), ("guarded", 0.05), ("max risk", 0.05), ("guarded", 0.001)]


def text(x):
    if x in (inf, -inf):
        return "inf" if x > 0 else "-inf"
    return repr(x) if isinstance(x, float) else nstr(x, 17)


def number(x):
    return text(mpf(x)) if x not in (inf, -inf) else text(x)


def shape_of(shape):
    a, b, u, (s, dof), _, _ = shape
    return Shape(a, b, u, [(s, dof)])


def tail(e, x):
    if x == inf:
        return mpf(0)
    if x == -inf:
        return mpf(1)
    if e.a == 0 and e.u == 0 and not e.type_a:
        return mpf(1) if x < 0 else mpf(0)
    return e.tail(x)


def inside(e, x, lower, upper):
    if x > upper:
        return tail(e, x - upper) - tail(e, x - lower)
    if x < lower:
        return tail(e, lower - x) - tail(e, upper - x)
    return 1 - tail(e, upper - x) - tail(e, x - lower)


def probabilities(e, value, below, above, lower, upper):
    """Smallest and largest probability of being inside: at the ends of the one-sided parts, and in the middle of the limits."""
    low, high = value - below, value + above
    places = [low, high]
    centre = (lower + upper) / 2 if lower > -inf and upper < inf else None
    if centre is not None and low < centre < high:
        places.append(centre)
    found = [inside(e, x, lower, upper) for x in places]
    return min(found), max(found)


def guard(e, lower, upper, kind, risk):
    if risk is None:
        return mpf(0)
    risk = mpf(risk)
    one = e.quantile(risk)
    width = upper - lower
    if kind == "guarded" or width == inf:
        return one
    both = lambda w: tail(e, w) + tail(e, width - w) - risk
    if both(width / 2) > 0:
        return None
    if one == 0 or both(one) <= 0:
        return one
    return findroot(lambda w: both(w) / risk, (one, width / 2), solver="anderson", tol=1e-36, verify=False)


def judged(job):
    shape, (lower, upper), value, (kind, risk) = job
    a, b, u, (s, dof), below, above = shape
    inputs = [text(x) for x in (value, a, b, u, s, dof, 0.0, inf, below, above, lower, upper)]
    inputs += [kind, NONE if risk is None else text(risk)]
    e = shape_of(shape)
    value, lower, upper = mpf(value), mpf(lower), mpf(upper)
    worst, best = probabilities(e, value, mpf(below), mpf(above), lower, upper)
    w = guard(e, lower, upper, kind, risk)
    side_low, side_high = (0, 0) if risk is None else (mpf(below), mpf(above))
    low = high = None
    if w is not None:
        low, high = lower + w + side_low, upper - w - side_high
        if low > high:
            low = high = None
    if low is not None and low <= value <= high:
        answer = "conforms"
    elif risk is None:
        answer = "does not conform"
    elif kind == "max risk":
        answer = "does not conform" if best <= risk else "undecided"
    else:
        one = e.quantile(mpf(risk))
        out = value >= upper + one + mpf(below) or value <= lower - one - mpf(above)
        answer = "does not conform" if out else "undecided"
    u95 = e.quantile(mpf("0.025"))
    tur = None if u95 == 0 or upper - lower == inf else (upper - lower) / (2 * u95)
    meter = (e.a**2 + e.b**2) / 3
    scatter = e.variance() - meter
    one_sided = (mpf(below) ** 2 + mpf(above) ** 2) / 3
    step = "none"
    if answer == "undecided":
        step = "take more readings" if scatter > meter else "use a span or meter with a tighter clause, or compare with a known part"
        if one_sided > meter and one_sided > scatter:
            step = "take away what pushes the reading to one side"
    distance = min(abs(value - lower), abs(upper - value))
    place = "inside" if lower <= value <= upper else "outside"
    optional = lambda x: NONE if x is None else number(x)
    outputs = [answer, place, number(worst), optional(w), optional(low), optional(high), number(distance), optional(tur), step]
    return "\t".join(["verdict.judge", "|".join(inputs), "|".join(outputs), "|".join("-" * len(outputs)), "0", SOURCE])


def conformance(job):
    shape, (lower, upper), value = job
    a, b, u, (s, dof), below, above = shape
    inputs = [text(x) for x in (value, a, b, u, s, dof, 0.0, inf, below, above, lower, upper)]
    worst, _ = probabilities(shape_of(shape), mpf(value), mpf(below), mpf(above), mpf(lower), mpf(upper))
    return "\t".join(["verdict.conformance_probability", "|".join(inputs), number(worst), "-", "0", SOURCE])


def errors():
    good = ["100.0", "1.0", "0.0", "0.5", "0.0", "inf", "0.0", "inf", "0.0", "0.0", "95.0", "105.0"]
    for place, wrong, status in ((0, "nan", 2), (1, "-1.0", 1), (3, "inf", 2), (10, "106.0", 4), (10, "nan", 2), (11, "nan", 2)):
        inputs = list(good)
        inputs[place] = wrong
        yield "\t".join(["verdict.conformance_probability", "|".join(inputs), "", "", str(status), ERROR])
        yield "\t".join(["verdict.judge", "|".join([*inputs, "guarded", "0.05"]), "", "", str(status), ERROR])
    for kind, risk, status in (
        ("guarded", "0.0", 1), ("guarded", "0.5", 1), ("guarded", "5.0", 1), ("guarded", "nan", 2),
        ("max risk", "0.0", 1), ("max risk", "1.0", 1), ("max risk", "-0.05", 1), ("max risk", "inf", 2),
    ):
        yield "\t".join(["verdict.judge", "|".join([*good, kind, risk]), "", "", str(status), ERROR])


def main():
    with multiprocessing.Pool() as pool:
        rows = pool.map(judged, itertools.product(SHAPES, LIMITS[:3], VALUES, RULES[:3]), chunksize=8)
        rows += pool.map(judged, itertools.product(SHAPES[1::3], LIMITS[3:], VALUES, RULES[3:]), chunksize=8)
        rows += pool.map(conformance, itertools.product(SHAPES, LIMITS, VALUES[::2]), chunksize=8)
    rows += errors()
    out = pathlib.Path(__file__).parent.parent / "vectors" / "verdict.tsv"
    head = "# Verdicts. Inputs: value|a|b|normal u|s|dof|s|dof|below|above|lower|upper, then rule and risk. Outputs of judge:\n"
    head += "# answer|side|conformance probability|guard band|acceptance from|to|distance|test uncertainty ratio|next step.\n"
    head += "# Made by oracles/verdict_vectors.py; bits are the library's own.\n"
    head += "function\tinputs\toutputs\tbits\tstatus\tsource\n"
    out.write_text(head + "\n".join(rows) + "\n")
    print(len(rows), "rows")


if __name__ == "__main__":
    main()
