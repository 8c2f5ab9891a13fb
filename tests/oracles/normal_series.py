"""Makes the coefficients of crates/reckohm/src/number/normal.rs (mpmath alone): `python normal_series.py`.

Mills' ratio of the standard normal distribution and its first two repeated integrals, each times a power of z + 1, as
polynomials of t = (z - 4)/(z + 4), from z = 0 to where the tail is below the smallest number of the type; and the
probability between 0 and z over z, near the centre, as a polynomial of z squared. Interpolation at Chebyshev nodes, with
60 digits. Printed beside each: the largest relative error of the polynomial itself on a grid.
"""

import struct

from mpmath import cos, erf, erfc, exp, mp, mpf, nstr, pi, sqrt

mp.dps = 60
CENTRE = 4


def ratio(z):
    return sqrt(pi / 2) * exp(z * z / 2) * erfc(z / sqrt(mpf(2)))


def first(z):
    with mp.workdps(100):
        return 1 - z * ratio(z)


def second(z):
    with mp.workdps(140):
        return ((1 + z * z) * ratio(z) - z) / 2


def between(square):
    z = sqrt(square)
    return erf(z / sqrt(mpf(2))) / (2 * z)


def interpolation(function, low, high, degree):
    """Coefficients of the polynomial that meets the function at Chebyshev nodes, the constant first."""
    count = degree + 1
    nodes = [(low + high) / 2 + (high - low) / 2 * cos(pi * (mpf(k) + mpf(1) / 2) / count) for k in range(count)]
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


def error(function, polynomial, low, high):
    worst = mpf(0)
    for step in range(1, 400):
        x = low + (high - low) * mpf(step) / 400
        value = mpf(0)
        for coefficient in reversed(polynomial):
            value = value * x + coefficient
        worst = max(worst, abs(value / function(x) - 1))
    return worst


def rounded(coefficient, single):
    if not single:
        return repr(float(coefficient))
    nearest = struct.unpack("f", struct.pack("f", float(coefficient)))[0]
    return min((f"{nearest:.{digits}g}" for digits in range(6, 10)), key=lambda text: (
        struct.unpack("f", struct.pack("f", float(text)))[0] != nearest, len(text)))


def show(name, function, low, high, degree, single):
    polynomial = interpolation(function, mpf(low), mpf(high), degree)
    print(f"{name}, relative error {nstr(error(function, polynomial, mpf(low), mpf(high)), 2)}:")
    print("    " + ",\n    ".join(rounded(coefficient, single) for coefficient in polynomial) + ",")


def of_t(function, power):
    def scaled(t):
        z = CENTRE * (1 + t) / (1 - t)
        return function(z) * (z + 1) ** power
    return scaled


for single, farthest, degrees in ((False, 40, (24, 26, 28, 11)), (True, 15, (10, 11, 12, 5))):
    high = mpf(farthest - CENTRE) / (farthest + CENTRE)
    kind = "f32" if single else "f64"
    show(f"{kind} RATIO", of_t(ratio, 1), -1, high, degrees[0], single)
    show(f"{kind} FIRST", of_t(first, 2), -1, high, degrees[1], single)
    show(f"{kind} SECOND", of_t(second, 3), -1, high, degrees[2], single)
    show(f"{kind} BETWEEN", between, mpf(10) ** -30, mpf("0.75"), degrees[3], single)
