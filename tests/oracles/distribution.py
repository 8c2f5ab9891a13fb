"""Oracle for the normal and Student t distributions, from mpmath (pip install mpmath).

    python tests/oracles/distribution.py vectors > tests/vectors/distribution.tsv
    python tests/oracles/distribution.py grid > tests/checks/distribution_grid.tsv

Both are worked out at 40 digits by other formulas than the library's: the tail of Student's t as a series of positive terms
or, for many degrees of freedom, as an integral; a quantile by Newton's method on that. After remaking the vectors, write
the library's bits into them: UPDATE_BITS=1 cargo test -p reckohm-tests --test number_distribution.
"""
import math
import random
import sys

from mpmath import inf, mp, mpf

mp.dps = 40
TINY = mpf(10) ** -300


def normal_tail(z):
    return mp.erfc(z / mp.sqrt(2)) / 2


def normal_density(z):
    return mp.exp(-z * z / 2) / mp.sqrt(2 * mp.pi)


def t_density(t, dof):
    if dof == inf:
        return normal_density(t)
    front = mp.loggamma((dof + 1) / 2) - mp.loggamma(dof / 2) - mp.log(dof * mp.pi) / 2
    return mp.exp(front - (dof + 1) / 2 * mp.log1p(t * t / dof))


def t_tail(t, dof):
    """The probability above t."""
    if dof == inf:
        return normal_tail(t)
    if t < 0:
        return 1 - t_tail(-t, dof)
    with mp.workdps(60):
        square = t * t / dof
        if t * t <= 4 and square <= 1:
            return mpf(1) / 2 - t * t_density(mpf(0), dof) * mp.hyp2f1(mpf(1) / 2, (dof + 1) / 2, mpf(3) / 2, -square)
        if dof <= 300:
            # Series of positive terms of the incomplete beta function I_x(dof/2, 1/2).
            a, x = dof / 2, 1 / (1 + square)
            term = total = 1 / a
            n = 0
            while term > total * mpf(10) ** -45:
                term *= (n + mpf(1) / 2) / (n + 1) * x * (a + n) / (a + n + 1)
                total += term
                n += 1
            return x**a / mp.beta(a, mpf(1) / 2) * total / 2
    scale = (dof + 1) / 2

    def relative(s):
        return mp.exp(-scale * (mp.log1p(s * s / dof) - mp.log1p(t * t / dof)))

    width = (dof + t * t) / ((dof + 1) * t)
    return t_density(t, dof) * mp.quad(relative, [t + width * k for k in (0, 1, 2, 4, 8, 16, 32, 64, 128, 256)])


def double(x):
    return mpf(float(x))


def quantile_near(t, dof, p):
    """The exact value above which p lies, from one nearby, by Newton's method on the logarithm of the tail."""
    for _ in range(6):
        tail = t_tail(t, dof)
        step = mp.log(tail / p) * tail / t_density(t, dof)
        t += step
        if abs(step) < mpf(10) ** -32 * abs(t):
            return t
    raise ArithmeticError(f"no quantile near {t} for {dof} and {p}")


def place(p, dof):
    """Roughly the value that is exceeded with probability p; only to spread the points."""
    z = mp.findroot(lambda z: mp.log(normal_tail(z)) - mp.log(p), mp.sqrt(-2 * mp.log(p)) if p < 0.2 else 1 - 2 * p)
    if dof == inf:
        return z
    if dof < 3:
        x = mp.exp(mp.log(2 * p * dof / 2 * mp.beta(dof / 2, mpf(1) / 2)) * 2 / dof)
        if x < mpf(1) / 2:
            return mp.sqrt(dof * (1 / x - 1))
    wallace = z * (8 * dof + 3) / (8 * dof + 1)
    return mp.sqrt(dof * mp.expm1(min(wallace**2 / dof, mpf(300))))


def text(x):
    return "inf" if x == inf else repr(float(x))


def digits(x):
    return mp.nstr(x, 17, min_fixed=-5, max_fixed=17)


def points(rng, degrees, probabilities):
    """(p, dof, t exactly above which p lies), with p a double between 1e-300 and one half."""
    for dof in degrees:
        dof = inf if dof == inf else double(dof)
        for p in probabilities(rng):
            t = double(place(mpf(p), dof))
            if not 0 < t < mpf(10) ** 300:
                continue
            p = double(t_tail(t, dof))
            if TINY <= p < 0.5:
                yield p, dof, quantile_near(t, dof, p), t


def rows(rng, degrees, probabilities):
    """function, inputs, exact output."""
    for p, dof, exact, t in points(rng, degrees, probabilities):
        tail = t_tail(t, dof)
        if dof == inf:
            yield "normal_above", [t], tail
            yield "normal_below", [-t], tail
            yield "normal_below", [t], 1 - tail
            yield "normal_quantile_above", [p], exact
            yield "normal_quantile", [p], -exact
        yield "t_above", [t, dof], tail
        yield "t_below", [-t, dof], tail
        yield "t_quantile_above", [p, dof], exact
        yield "t_quantile", [p, dof], -exact
        other = double(1 - p)
        if p > mpf(10) ** -10 and other < 1:
            # The same tail from the other side of one half, where the double next to 1 - p stands for it.
            value = -quantile_near(exact, dof, 1 - other)
            yield "t_quantile_above", [other, dof], value
            yield "t_above", [-t, dof], 1 - tail


def some_probabilities(rng):
    yield from (0.4999, 0.31, 0.29, 0.15, 0.025, 1e-4, 1e-9)
    yield 10 ** rng.uniform(-60, -10)
    yield 10 ** rng.uniform(-299, -60)


def many_probabilities(rng):
    yield from (0.5 - 1e-9, 0.499, 0.45, 0.3000001, 0.2999999, 0.2, 0.05, 0.025, 0.01)
    for exponent in (3, 6, 10, 16, 30, 60, 100, 150, 200, 250, 299):
        yield 10 ** -(exponent - rng.random())


def quantile_probabilities(rng):
    """Both sides of one half, next to it, about where the library's two fits meet, and down to the smallest double."""
    for power in (54, 53, 50, 40, 30, 20, 10):
        yield 0.5 - 2.0**-power
    yield from (0.1, math.nextafter(0.1, 0), math.nextafter(0.1, 1))
    yield from (math.ulp(0.0), 2 * math.ulp(0.0), sys.float_info.min, math.nextafter(sys.float_info.min, 0))
    for _ in range(60):
        yield rng.uniform(0.1, 0.5)
        yield rng.uniform(0.01, 0.1)
        yield 10 ** rng.uniform(-12, -2)
        yield 10 ** rng.uniform(-307, -12)
    for _ in range(20):
        yield rng.getrandbits(rng.randint(2, 52)) * math.ulp(0.0)
        yield 0.5 - 10 ** rng.uniform(-16, -1)
        yield 1 - 10 ** rng.uniform(-16, -0.4)
    yield 1 - 2.0**-53


def quantiles(rng):
    """function, inputs, exact output, for the quantile of the normal distribution."""
    for p in quantile_probabilities(rng):
        if p == 0:
            continue
        # Next to one half as many digits are lost as the probability has.
        with mp.workdps(80):
            tail = min(mpf(p), 1 - mpf(p))
            exact = quantile_near(place(tail, inf), inf, tail)
            exact = exact if p < 0.5 else -exact
        yield "normal_quantile_above", [p], exact
        yield "normal_quantile", [p], -exact


def errors():
    """function, inputs, number of the kind: 1 out of range, 2 not finite, 5 the result out of range."""
    for function in ("normal_below", "normal_above", "t_below", "t_above"):
        for value in ("nan", "inf", "-inf"):
            yield function, [value] + (["4.0"] if function.startswith("t_") else []), 2
    for function in ("normal_quantile", "normal_quantile_above", "t_quantile", "t_quantile_above"):
        for value, kind in (("0.0", 1), ("1.0", 1), ("-0.05", 1), ("95.0", 1), ("nan", 2), ("inf", 2)):
            yield function, [value] + (["4.0"] if function.startswith("t_") else []), kind
    for function in ("t_below", "t_above", "t_quantile", "t_quantile_above"):
        for dof, kind in (("0.0", 1), ("-1.0", 1), ("nan", 2), ("-inf", 2)):
            yield function, ["0.25", dof], kind
    for function in ("t_quantile", "t_quantile_above"):
        for p, dof in (("1e-300", "0.1"), ("1e-32", "0.1"), ("0.001", "0.005"), ("0.9999999", "0.02")):
            yield function, [p, dof], 5


def vectors():
    rng = random.Random(20261125)
    print("# The normal and Student t distributions. Made by oracles/distribution.py with mpmath at 40 digits; bits are the")
    print("# library's own. Inputs: value or probability, then the degrees of freedom for Student's t.")
    print("function\tinputs\toutputs\tbits\tstatus\tsource")
    for function, exact in (("normal_below", "0.5"), ("normal_above", "0.5"), ("normal_quantile", "0.0")):
        given = "0.5" if function == "normal_quantile" else "0.0"
        print(f"distribution.{function}\t{given}\t{exact}\t-\t0\tsymmetry")
    for dof in ("0.1", "1.0", "4.0", "1e12", "inf"):
        print(f"distribution.t_below\t0.0|{dof}\t0.5\t-\t0\tsymmetry")
        print(f"distribution.t_quantile\t0.5|{dof}\t0.0\t-\t0\tsymmetry")
    degrees = (0.1, 0.75, 1, 2, 2.5, 4, 9, 19.5, 100, 1e4, 1e7, 1e12, inf)
    for function, inputs, exact in rows(rng, degrees, some_probabilities):
        given = "|".join(text(x) for x in inputs)
        print(f"distribution.{function}\t{given}\t{digits(exact)}\t-\t0\tmpmath at 40 digits")
    for function, inputs, kind in errors():
        print(f"distribution.{function}\t{'|'.join(inputs)}\t\t\t{kind}\tour rule")


def grid():
    rng = random.Random(1908)
    print("# Made by tests/oracles/distribution.py with mpmath at 40 digits.")
    print("function\tinputs\texact")
    degrees = [0.1, 0.15, 0.3, 0.5, 0.9, 1, 1.1, 1.5, 2, 2.7, 2.999, 3, 3.001, 5, 7, 10, 14, 20, 33, 59.5, 120, 299, 301, 1000]
    degrees += [3e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, inf]
    degrees += [10 ** rng.uniform(-1, 4) for _ in range(10)]
    for function, inputs, exact in [*rows(rng, degrees, many_probabilities), *quantiles(rng)]:
        print(f"{function}\t{'|'.join(text(x) for x in inputs)}\t{digits(exact)}")


if __name__ == "__main__":
    {"vectors": vectors, "grid": grid}[sys.argv[1]]()
