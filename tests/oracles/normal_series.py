"""Makes the coefficients of crates/reckohm/src/number/normal.rs (mpmath alone): `python normal_series.py`.

Mills' ratio of the standard normal distribution and its first two repeated integrals, each times a power of z + 1, as
polynomials of t = (z - 4)/(z + 4), from z = 0 to where the tail is below the smallest number of the type. The quantile as
ratios of polynomials: near the centre z/q - 2, with q the distance of the probability from one half, in powers of
0.16 - q squared; in the tail z + 1 - r, with r the root of -2 times the logarithm of the tail, in powers of r - 2, to the
smallest number of the type. Interpolation at Chebyshev nodes, with 60 digits. Printed beside each: the largest relative
error of the fit itself on a grid.
"""

import struct

from mpmath import cos, erfc, erfinv, exp, log, lu_solve, matrix, mp, mpf, nstr, pi, sqrt

mp.dps = 60
CENTRE = 4
# Where the two fits of the quantile meet.
SPLIT = mpf("0.1")


def ratio(z):
    return sqrt(pi / 2) * exp(z * z / 2) * erfc(z / sqrt(mpf(2)))


def first(z):
    with mp.workdps(100):
        return 1 - z * ratio(z)


def second(z):
    with mp.workdps(140):
        return ((1 + z * z) * ratio(z) - z) / 2


def centre(square):
    """The quantile over q, from q squared."""
    q = sqrt(square)
    return sqrt(mpf(2)) * erfinv(2 * q) / q


def far(r):
    """The quantile in the tail: Newton's method on the logarithm, which is concave, from the right."""
    z = r
    while True:
        step = (log(erfc(z / sqrt(mpf(2))) / 2) + r * r / 2) * ratio(z)
        z += step
        if abs(step) < mpf(10) ** -50:
            return z


def chebyshev(low, high, count):
    return [(low + high) / 2 + (high - low) / 2 * cos(pi * (mpf(k) + mpf(1) / 2) / count) for k in range(count)]


def interpolation(function, low, high, degree):
    """Coefficients of the polynomial that meets the function at Chebyshev nodes, the constant first."""
    count = degree + 1
    nodes = chebyshev(low, high, count)
    differences = [function(node) for node in nodes]
    for order in range(1, count):
        for k in range(count - 1, order - 1, -1):
            differences[k] = (differences[k] - differences[k - 1]) / (nodes[k] - nodes[k - order])
    polynomial = [differences[-1]]
    for k in range(count - 2, -1, -1):
        raised = [mpf(0), *polynomial]
        for power, coefficient in enumerate(polynomial):
            raised[power] -= coefficient * nodes[k]
        raised[0] += differences[k]
        polynomial = raised
    return polynomial


def rational(function, nodes, degrees):
    """Coefficients of the two polynomials whose ratio meets the function at the nodes; the lower one's constant is 1."""
    top, bottom = degrees
    rows = matrix(len(nodes), len(nodes))
    values = matrix(len(nodes), 1)
    for row, node in enumerate(nodes):
        values[row] = function(node)
        for power in range(top + 1):
            rows[row, power] = node**power
        for power in range(1, bottom + 1):
            rows[row, top + power] = -values[row] * node**power
    solution = list(lu_solve(rows, values))
    return solution[: top + 1], [mpf(1), *solution[top + 1 :]]


def value(polynomial, x):
    result = mpf(0)
    for coefficient in reversed(polynomial):
        result = result * x + coefficient
    return result


def error(function, polynomial, low, high):
    worst = mpf(0)
    for step in range(1, 400):
        x = low + (high - low) * mpf(step) / 400
        worst = max(worst, abs(value(polynomial, x) / function(x) - 1))
    return worst


def rounded(coefficient, single):
    if not single:
        return repr(float(coefficient))
    nearest = struct.unpack("f", struct.pack("f", float(coefficient)))[0]
    return min((repr(float(f"{nearest:.{digits}g}")) for digits in range(6, 10)), key=lambda text: (
        struct.unpack("f", struct.pack("f", float(text)))[0] != nearest, len(text)))


def show(name, function, low, high, degree, single):
    polynomial = interpolation(function, mpf(low), mpf(high), degree)
    print(f"{name}, relative error {nstr(error(function, polynomial, mpf(low), mpf(high)), 2)}:")
    print("    " + ",\n    ".join(rounded(coefficient, single) for coefficient in polynomial) + ",")


def show_ratio(name, place, back, low, high, degrees, single, whole, part, variable):
    """The fit of `part` in powers of `variable`, with nodes even in `place`; its error is relative to `whole`."""
    nodes = [back(node) for node in chebyshev(place(low), place(high), sum(degrees) + 1)]
    exact = {variable(node): part(node, whole(node)) for node in nodes}
    fit = rational(exact.get, list(exact), degrees)
    worst = mpf(0)
    for step in range(1, 400):
        x = back(place(low) + (place(high) - place(low)) * mpf(step) / 400)
        found = value(fit[0], variable(x)) / value(fit[1], variable(x))
        worst = max(worst, abs((found - part(x, whole(x))) / whole(x)))
    print(f"{name}, relative error {nstr(worst, 2)}:")
    for polynomial in fit:
        print("    [\n        " + ",\n        ".join(rounded(coefficient, single) for coefficient in polynomial) + ",\n    ],")


def show_quantile(kind, single, smallest, near, away):
    # Nodes are even in the logarithms, or the ends of the fits would be worse than the rest.
    quarter = mpf(1) / 4
    show_ratio(
        f"{kind} NEAR", lambda x: -log(quarter - x), lambda t: quarter - exp(-t), mpf(10) ** -30, (mpf(1) / 2 - SPLIT) ** 2,
        near, single, centre, lambda x, whole: whole - 2, lambda x: mpf("0.16") - x,
    )
    show_ratio(
        f"{kind} FAR", lambda r: log(r - 1), lambda t: 1 + exp(t), sqrt(-2 * log(SPLIT)), sqrt(-2 * log(smallest)),
        away, single, far, lambda r, whole: whole - (r - 1), lambda r: r - 2,
    )


def of_t(function, power):
    def scaled(t):
        z = CENTRE * (1 + t) / (1 - t)
        return function(z) * (z + 1) ** power
    return scaled


for single, farthest, smallest, degrees, near, away in (
    (False, 40, mpf(2) ** -1074, (24, 26, 28), (7, 7), (11, 11)),
    (True, 15, mpf(2) ** -149, (10, 11, 12), (3, 3), (4, 4)),
):
    high = mpf(farthest - CENTRE) / (farthest + CENTRE)
    kind = "f32" if single else "f64"
    show(f"{kind} RATIO", of_t(ratio, 1), -1, high, degrees[0], single)
    show(f"{kind} FIRST", of_t(first, 2), -1, high, degrees[1], single)
    show(f"{kind} SECOND", of_t(second, 3), -1, high, degrees[2], single)
    show_quantile(kind, single, smallest, near, away)
