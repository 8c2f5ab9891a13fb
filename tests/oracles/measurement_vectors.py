"""Writes ../vectors/measurement.tsv: evaluations of readings on the demonstration's hand-held meter, worked out anew with
mpmath: exact decimals for the readings, derivatives by differentiation at many digits, intervals by error_shape.py.

The bits column holds what the library gives and is filled by UPDATE_BITS=1 cargo test -p reckohm-tests.
"""

import itertools
import pathlib

from error_shape import Shape
from mpmath import diff, mpf, nstr, sqrt

SOURCE = "oracles/measurement_vectors.py, mpmath at 34 digits"
ERROR = "the conditions of an evaluation"
NONE = "\\x"
# Span number: unit, step, fraction of reading, counts (as the demonstration's meter invents them).
SPANS = {
    0: ("1", "0.1", "0.008", "3"),
    1: ("1000", "1", "0.008", "3"),
    2: ("1000", "10", "0.008", "3"),
    3: ("1000", "100", "0.008", "3"),
    4: ("1000000", "1000", "0.01", "3"),
    5: ("1000000", "10000", "0.02", "5"),
}
NUMBERS = ["path", "path u", "known", "known u", "limit", "temperature", "temperature half-width", "reference",
           "meter temperature", "repeatability", "probability"]


def evaluate(span, texts, leads, o):
    unit, step, fraction, counts = (mpf(x) for x in SPANS[span])
    values = [mpf(t) * unit for t in texts]
    n = len(values)
    mean = sum(values) / n
    warm = o.get("meter temperature")
    widening = 1 if warm is None else 1 + mpf("0.1") * max(mpf(warm) - 28, 18 - mpf(warm), 0)
    fixed = counts * step * widening
    gain = fraction * widening
    l = mpf(leads) * unit if leads else mpf(0)
    clause = gain * abs(mean - l) + fixed * (sqrt(mpf(2)) if leads else 1)
    g = 1 / mpf(o["path"]) if "path" in o else mpf(0)
    ug = mpf(o["path u"]) / mpf(o["path"]) ** 2 if "path" in o else mpf(0)
    k = mpf(o["known"]) * mpf(10) ** -6 if "known" in o else mpf(0)
    uk = mpf(o["known u"]) * mpf(10) ** -6 if "known" in o else mpf(0)
    dt = mpf(o["temperature"]) - mpf(o["reference"]) if "temperature" in o else mpf(0)

    def model(shown, leads_, g_, k_, dt_):
        x = shown - leads_
        return x / (1 - x * g_) / (1 + k_ * dt_)

    at = (mean, l, g, k, dt)
    partial = [abs(diff(model, at, tuple(int(i == j) for j in range(5)))) for i in range(5)]
    rectangular = [partial[0] * clause]
    normal = [partial[2] * ug, partial[3] * uk]
    if "limit" in o:
        rectangular.append(partial[3] * mpf(o["limit"]) * mpf(10) ** -6)
    if "temperature half-width" in o:
        rectangular.append(partial[4] * mpf(o["temperature half-width"]))
    type_a = []
    if "repeatability" in o:
        normal.append(partial[0] * mpf(o["repeatability"]) / sqrt(mpf(n)))
    elif n > 1:
        s = sqrt(sum((x - mean) ** 2 for x in values) / (n - 1))
        s = max(s, mpf("0.3") * step)
        type_a = [(partial[0] * s / sqrt(mpf(n)), n - 1)]
    rectangular.sort(reverse=True)
    normal += [x / sqrt(mpf(3)) for x in rectangular[2:]]
    a, b = (rectangular + [mpf(0)])[:2]
    shape = Shape(a, b, sqrt(sum(x * x for x in normal)), type_a)
    half = shape.quantile((1 - mpf(o.get("probability", 0.95))) / 2)
    return [model(*at), sqrt(shape.variance()), half]


def row(span, texts, leads, options, outputs, status=0, source=SOURCE):
    inputs = [str(span), " ".join(texts) or NONE, leads or NONE]
    inputs += [repr(options[name]) if name in options else NONE for name in NUMBERS]
    marks = "|".join("-" * len(outputs))
    return "\t".join(["measurement.evaluate", "|".join(inputs), "|".join(outputs), marks, str(status), source])


CASES = [
    (0, ["1.5"], None), (0, ["10.4", "10.5"], "0.4"), (0, ["2.6", "2.6", "2.7"], "1.5"), (0, ["-0.2"], None),
    (1, ["1.462"], None), (1, ["1.462", "1.463", "1.462"], None), (1, ["0.332", "0.332", "0.332", "0.332"], None),
    (1, ["0.104"], "0.001"), (2, ["4.88"], None), (2, ["4.86", "4.88", "4.87", "4.87", "4.88"], None),
    (2, ["10.00", "10.02"], None), (3, ["47.1"], None), (3, ["99.8", "100.1", "99.9"], None),
    (4, ["0.683"], None), (4, ["1.000", "1.001"], None), (5, ["10.02"], None), (5, ["4.70", "4.71", "4.69"], None),
]
OPTIONS = [
    {},
    {"meter temperature": 35.0},
    {"meter temperature": 10.0, "probability": 0.99},
    {"repeatability": 0.25},
    {"path": 5.0e7, "path u": 1.0e6},
    {"limit": 100.0, "temperature": 32.0, "reference": 20.0},
    {"known": 3850.0, "known u": 4.0, "temperature": 25.5, "temperature half-width": 0.5, "reference": 20.0},
]


def main():
    rows = []
    for (span, texts, leads), options in itertools.product(CASES, OPTIONS):
        # Student's t beside a normal and two rectangular parts takes an integral over an integral: left to the tests of shapes.
        if len(texts) > 1 and ("path" in options or "known" in options):
            continue
        outputs = [nstr(x, 17) for x in evaluate(span, texts, leads, options)]
        rows.append(row(span, texts, leads, options, outputs))
    wrong = [
        (2, [], None, {}, 3), (2, ["4.88", "OL"], None, {}, 300), (2, ["OL"], None, {}, 300),
        (2, ["4.88"], None, {"path": 4000.0, "path u": 1.0}, 4), (2, ["4.88"], None, {"path": 0.0, "path u": 1.0}, 1),
        (2, ["4.88"], None, {"path": float("nan"), "path u": 1.0}, 2), (2, ["4.88"], None, {"limit": 100.0}, 6),
        (2, ["4.88"], None, {"temperature": 30.0, "reference": 20.0}, 6), (2, ["4.88"], None, {"limit": -1.0}, 1),
        (2, ["4.88"], None, {"known": 100.0, "known u": 1.0}, 6),
        (2, ["4.88"], None, {"known": -1e6, "known u": 1.0, "temperature": 22.0, "reference": 20.0}, 4),
        (2, ["4.88"], None, {"limit": 1.0, "temperature": -300.0, "reference": 20.0}, 1),
        (2, ["4.88"], None, {"limit": 1.0, "temperature": 20.0, "reference": float("inf")}, 2),
        (2, ["4.88"], None, {"meter temperature": float("nan")}, 2), (2, ["4.88"], None, {"repeatability": -1.0}, 1),
        (2, ["4.88"], None, {"probability": 95.0}, 1), (2, ["4.88"], None, {"probability": 0.0}, 1),
    ]
    for span, texts, leads, options, status in wrong:
        rows.append(row(span, texts, leads, options, [], status, ERROR))
    out = pathlib.Path(__file__).parent.parent / "vectors" / "measurement.tsv"
    head = "# Evaluations on the spans of the demonstration's hand-held meter. Inputs: span|display texts|leads as shown|"
    head += "|".join(NUMBERS) + ".\n# Outputs: value|u|expanded uncertainty. Made by oracles/measurement_vectors.py.\n"
    head += "function\tinputs\toutputs\tbits\tstatus\tsource\n"
    out.write_text(head + "\n".join(rows) + "\n")
    print(len(rows), "rows")


if __name__ == "__main__":
    main()
