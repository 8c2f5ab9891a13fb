"""Writes ../vectors/uncertainty.tsv: intervals and tails of estimates, computed by error_shape.py with mpmath.

The bits column holds what the library gives and is filled by UPDATE_BITS=1 cargo test -p reckohm-tests.
"""

import itertools
import multiprocessing
import pathlib

from error_shape import Shape
from mpmath import inf, mpf, nstr, sqrt

SOURCE = "oracles/uncertainty_vectors.py, mpmath at 34 digits"
ERROR = "the legal ranges of the core"
# a, b, normal, s1, dof1, s2, dof2
SHAPES = [
    (1.0, 0.0, 0.0, 0.0, inf, 0.0, inf),
    (1.0, 0.25, 0.0, 0.0, inf, 0.0, inf),
    (1.0, 1.0, 0.0, 0.0, inf, 0.0, inf),
    (0.0, 0.0, 2.5, 0.0, inf, 0.0, inf),
    (0.0, 0.0, 0.0, 0.5, 1.0, 0.0, inf),
    (0.0, 0.0, 0.0, 0.5, 4.0, 0.0, inf),
    (0.0, 0.0, 0.3, 0.5, 4.0, 0.0, inf),
    (1.0, 0.0, 1e-6, 0.0, inf, 0.0, inf),
    (1.0, 0.0, 0.1, 0.0, inf, 0.0, inf),
    (1.0, 0.0, 1.4, 0.0, inf, 0.0, inf),
    (1.0, 0.0, 1.5, 0.0, inf, 0.0, inf),
    (1.0, 0.0, 40.0, 0.0, inf, 0.0, inf),
    (69.04, 0.0, 3.0, 0.0, inf, 0.0, inf),
    (1.0, 0.3, 0.1, 0.0, inf, 0.0, inf),
    (1.0, 1.0, 1.0, 0.0, inf, 0.0, inf),
    (1.0, 1e-3, 0.5, 0.0, inf, 0.0, inf),
    (0.05, 0.011, 0.001, 0.0, inf, 0.0, inf),
    (1.0, 0.0, 0.0, 0.1, 1.0, 0.0, inf),
    (1.0, 0.0, 0.0, 0.1, 2.0, 0.0, inf),
    (1.0, 0.0, 0.0, 1e-4, 2.0, 0.0, inf),
    (1.0, 0.0, 0.0, 1.0, 4.0, 0.0, inf),
    (1.0, 0.0, 0.0, 0.3333333333333333, 9.0, 0.0, inf),
    (1.0, 0.0, 0.0, 10.0, 29.0, 0.0, inf),
    (1.0, 0.3, 0.0, 0.1, 1.0, 0.0, inf),
    (1.0, 1.0, 0.0, 0.3333333333333333, 4.0, 0.0, inf),
    (30.0, 5.0, 0.0, 2.5, 2.0, 0.0, inf),
    (1.0, 0.0, 0.2, 0.1, 3.0, 0.0, inf),
    (0.0, 0.0, 0.0, 1.0, 1.0, 1.0, 9.0),
    (1.0, 0.0, 0.0, 0.3, 2.0, 0.4, 9.0),
]
PROBABILITIES = [0.5, 0.6826894921370859, 0.95, 0.99, 0.9973]
TAILS = [0.5, 0.25, 0.05, 0.01, 1e-6]


def text(x):
    return "inf" if x == inf else nstr(x, 17) if not isinstance(x, float) else repr(x)


def line(function, inputs, outputs, status=0, source=SOURCE):
    return "\t".join([function, "|".join(inputs), "|".join(outputs), "|".join("-" * len(outputs)), str(status), source])


def head(value, shape, below=0.0, above=0.0):
    return [text(x) for x in (value, *shape, below, above)]


def shape_of(shape):
    a, b, u, s1, d1, s2, d2 = shape
    return Shape(a, b, u, [(s1, d1), (s2, d2)])


def number(x):
    return nstr(mpf(x), 17)


def expanded(job):
    value, shape, below, above, p = job
    e = shape_of(shape)
    u = sqrt(e.variance() + (mpf(below) ** 2 + mpf(above) ** 2) / 3)
    half = e.quantile((1 - mpf(p)) / 2)
    factor = half / u if u else mpf(0)
    outputs = [half, factor, mpf(value) - half - mpf(below), mpf(value) + half + mpf(above), u]
    return line("uncertainty.expanded", [*head(value, shape, below, above), text(p)], [number(x) for x in outputs])


def guaranteed(job):
    value, shape, p = job
    e = shape_of(shape)
    return line(
        "uncertainty.expanded_guaranteed",
        [*head(value, shape), text(p)],
        [number(e.guaranteed((1 - mpf(p)) / 2))],
    )


def quantile(job):
    shape, q = job
    return line("uncertainty.quantile_above", [*head(0.0, shape), text(q)], [number(shape_of(shape).quantile(mpf(q)))])


def tail(job):
    shape, x, side = job
    value, below, above = 10.0, 0.125, 0.25
    distance = mpf(x) - mpf(value) - mpf(above) if side == "above" else mpf(value) - mpf(below) - mpf(x)
    inputs = [*head(value, shape, below, above), text(x)]
    return line(f"uncertainty.probability_{side}", inputs, [number(shape_of(shape).tail(distance))])


def run(job):
    kind, arguments = job
    return {"expanded": expanded, "guaranteed": guaranteed, "quantile": quantile, "tail": tail}[kind](arguments)


def welch_satterthwaite():
    from error_shape import t_quantile

    for shape, p in itertools.product([s for s in SHAPES if s[3] > 0], [0.95, 0.99]):
        e = shape_of(shape)
        half = t_quantile((1 - mpf(p)) / 2, e.effective_dof()) * sqrt(e.variance())
        yield line("uncertainty.expanded_welch_satterthwaite", [*head(0.0, shape), text(p)], [number(half)])


def errors():
    good = [0.0, 1.0, 0.0, 0.5, 0.25, 4.0, 0.0, inf, 0.0, 0.0]
    cases = [
        (0, float("nan"), 2), (0, float("inf"), 2), (1, -1.0, 1), (1, float("inf"), 2), (2, -0.5, 1), (3, -1e-300, 1),
        (3, float("nan"), 2), (4, -1.0, 1), (5, 0.5, 1), (5, float("nan"), 2), (6, -2.0, 1), (7, 0.0, 1), (8, -1.0, 1),
        (9, float("-inf"), 2), (3, 1e200, 5),
    ]
    for place, wrong, status in cases:
        inputs = list(good)
        inputs[place] = wrong
        yield line("uncertainty.expanded", [*map(text, inputs), "0.95"], [], status, ERROR)
    for p, status in ((0.0, 1), (1.0, 1), (95.0, 1), (-0.5, 1), (float("nan"), 2), (float("inf"), 2)):
        for name in ("expanded", "expanded_welch_satterthwaite", "expanded_guaranteed"):
            yield line(f"uncertainty.{name}", [*map(text, good), text(p)], [], status, ERROR)
    for q, status in ((0.0, 1), (0.6, 1), (float("nan"), 2)):
        yield line("uncertainty.quantile_above", [*map(text, good), text(q)], [], status, ERROR)
    for x in ("nan", "inf", "-inf"):
        for side in ("above", "below"):
            yield line(f"uncertainty.probability_{side}", [*map(text, good), x], [], 2, ERROR)


def repeats():
    sets = [
        [1.0, 2.0], [100.0, 100.0, 100.0], [1000.2, 1000.4, 999.8, 1000.1], [1e-3, 3e-3, 2e-3, 2e-3, 1e-3],
        [1e9, 1e9 + 1, 1e9 + 2], [-1.0, 1.0], [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0],
    ]
    for xs in sets:
        exact = [mpf(x) for x in xs]
        mean = sum(exact) / len(exact)
        s = sqrt(sum((x - mean) ** 2 for x in exact) / (len(exact) - 1) / len(exact))
        yield line("uncertainty.from_repeats", map(text, xs), [number(mean), number(s)])
    for xs, status in ([[5.0], 7], [[], 7], [[1.0, float("nan")], 2], [[1.0, float("inf")], 2]):
        yield line("uncertainty.from_repeats", map(text, xs), [], status, ERROR)


def effective():
    """The formula itself, in exact powers."""
    sets = [
        [(25.0, 18.0), (5.8, 24.0), (3.9, 5.0), (6.7, 8.0), (2.9, 50.0), (16.6, 2.0)],
        [(1.0, 4.0)], [(1.0, inf)], [(1.0, 4.0), (1.0, inf)], [(3.0, 1.0), (4.0, 2.5)], [(0.0, 1.0), (2.0, 9.0)],
        [(0.0, 3.0)], [(1e-160, 5.0), (1e-160, 5.0)], [(1e200, 4.0)], [(1e150, 5.0), (2e150, 7.0), (1e140, 1.0)],
    ]
    for parts in sets:
        exact = [(mpf(u), mpf(dof)) for u, dof in parts]
        below = sum(u**4 / dof for u, dof in exact)
        found = sum(u * u for u, _ in exact) ** 2 / below if below else inf
        flat = [text(x) for part in parts for x in part]
        source = "JCGM 100 H.1, inputs as reprinted; " + SOURCE if len(parts) == 6 else SOURCE
        yield line("uncertainty.effective_dof", flat, [text(found)], source=source)
    for flat, status in (("-1.0|4.0", 1), ("1.0|0.5", 1), ("nan|4.0", 2), ("1.0|nan", 2), ("inf|4.0", 2)):
        yield line("uncertainty.effective_dof", flat.split("|"), [], status, ERROR)


def is_slow(shape):
    """Shapes that take an integral at each step of a search: one probability and a few tails are enough of them."""
    a, b, u, s1, _, s2, _ = shape
    return s1 > 0 and (b > 0 or u > 0 or s2 > 0)


def main():
    jobs = []
    for shape, p in itertools.product(SHAPES, PROBABILITIES):
        if p == 0.95 or not is_slow(shape):
            jobs.append(("expanded", (0.0, shape, 0.0, 0.0, p)))
    for i, shape in enumerate(SHAPES):
        if not is_slow(shape):
            jobs.append(("expanded", (1000.0 + i, shape, 0.5, 0.25 * i, 0.95)))
        jobs.append(("guaranteed", (0.0, shape, 0.95)))
        jobs.append(("guaranteed", (0.0, shape, 0.99)))
        slow = is_slow(shape)
        jobs += [("quantile", (shape, q)) for q in TAILS if q == 0.05 or not slow]
        places = (11.25,) if slow else (9.0, 10.0, 10.5, 11.25)
        jobs += [("tail", (shape, x, side)) for x in places for side in ("above", "below")]
    jobs.append(("expanded", (4700.0, (0.0, 0.0, 0.0, 0.0, inf, 0.0, inf), 0.0, 0.0, 0.95)))
    with multiprocessing.Pool() as pool:
        rows = pool.map(run, jobs, chunksize=4)
    rows += [*welch_satterthwaite(), *repeats(), *effective(), *errors()]
    out = pathlib.Path(__file__).parent.parent / "vectors" / "uncertainty.tsv"
    text_ = "# Intervals and tails of estimates. Inputs: value|a|b|normal u|s|dof|s|dof|below|above, then the probability,\n"
    text_ += "# tail or point. Made by oracles/uncertainty_vectors.py; bits are the library's own.\n"
    text_ += "function\tinputs\toutputs\tbits\tstatus\tsource\n" + "\n".join(rows) + "\n"
    out.write_text(text_)
    print(len(rows), "rows")


if __name__ == "__main__":
    main()
