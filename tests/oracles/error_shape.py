"""Tails and quantiles of the error behind an estimate, by arbitrary precision integration.

Independent of the library: no mixture of normal distributions, but the integral of Student's tail in its own closed form,
and numerical integration over a second rectangular part or a normal part beside it.
"""

from mpmath import betainc, erfc, findroot, gamma, inf, log, mp, mpf, npdf, pi, quad, sqrt

mp.dps = 34


def normal_above(z):
    return erfc(z / sqrt(2)) / 2


def t_above(t, dof):
    if dof == inf:
        return normal_above(t)
    tail = betainc(dof / 2, mpf(1) / 2, 0, dof / (dof + t * t), regularized=True) / 2
    return tail if t >= 0 else 1 - tail


def normal_quantile(q):
    return findroot(lambda z: (normal_above(z) - q) / q, (mpf(0), mpf(3)), solver="anderson", tol=1e-40, verify=False)


def t_quantile(q, dof):
    """The t exceeded with probability q <= 1/2, by bisection on a logarithmic scale and secants."""
    if q == mpf(1) / 2:
        return mpf(0)
    high = mpf(1)
    while t_above(high, dof) > q:
        high *= 2
    low = mpf(0)
    for _ in range(90):
        middle = (low + high) / 2
        if t_above(middle, dof) > q:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def t_integral(z, dof):
    """The integral of the upper tail of Student's t from z on, up to a constant that drops out of differences."""
    if dof == 1:
        return log(1 + z * z) / (-2 * pi) - z * t_above(z, dof)
    density = gamma((dof + 1) / 2) / gamma(dof / 2) / sqrt(dof * pi) * (1 + z * z / dof) ** (-(dof + 1) / 2)
    return (dof + z * z) / (dof - 1) * density - z * t_above(z, dof)


def without_noise(x, a, b):
    if x >= a + b:
        return mpf(0)
    return (a + b - x) ** 2 / (8 * a * b) if x > a - b else (a - x) / (2 * a)


def integrated_twice(x, a, b, u):
    """Rectangular parts around a normal one: differences of the repeated integral of the tail, at many digits."""
    h = lambda z: npdf(z) - z * normal_above(z)
    m = lambda z: ((1 + z * z) * normal_above(z) - z * npdf(z)) / 2
    if b == 0:
        return u / (2 * a) * (h((x - a) / u) - h((x + a) / u))
    places = ((x + a + b, 1), (x + a - b, -1), (x - a + b, -1), (x - a - b, 1))
    return u * u / (4 * a * b) * sum(sign * m(place / u) for place, sign in places)


class Shape:
    """Half-widths a >= b, normal u, and one or two type A parts (s, dof)."""

    def __init__(self, a, b, u, type_a):
        self.a, self.b, self.u = mpf(a), mpf(b), mpf(u)
        self.type_a = [(mpf(s), mpf(dof)) for s, dof in type_a if s > 0]

    def variance(self):
        return (self.a**2 + self.b**2) / 3 + self.u**2 + sum(s * s for s, _ in self.type_a)

    def effective_dof(self):
        if not self.type_a:
            return inf
        return self.variance() ** 2 / sum(s**4 / dof for s, dof in self.type_a)

    def merged(self, q):
        """The type A parts as one at the tail probability q (Banerjee's bound)."""
        if not self.type_a:
            return mpf(0), inf
        if len(self.type_a) == 1:
            return self.type_a[0]
        dof = min(d for _, d in self.type_a)
        bound = sqrt(sum((t_quantile(q, d) * s) ** 2 for s, d in self.type_a))
        return bound / t_quantile(q, dof), dof

    def above(self, x, q=None):
        """Probability of an error above x, in closed form but for a second rectangular part beside Student's t."""
        if x < 0:
            return 1 - self.above(-x, q)
        s, dof = self.merged(q)
        if s > 0 and dof == inf:
            return Shape(self.a, self.b, sqrt(self.u**2 + s**2), []).above(x)
        if s > 0 and self.u > 0:
            # Over the normal part, at Gauss-Hermite density.
            rest = Shape(self.a, self.b, 0, [(s, dof)])
            knots = sorted({-9, -3, 0, 3, 9, *(k for k in ((x - self.a) / self.u, (x + self.a) / self.u) if -9 < k < 9)})
            return quad(lambda z: npdf(z) * rest.above(x - self.u * z), knots)
        if self.a == 0:
            return t_above(x / s, dof) if s > 0 else normal_above(x / self.u)
        if s == 0 and self.u == 0:
            return without_noise(x, self.a, self.b)
        if s == 0:
            return integrated_twice(x, self.a, self.b, self.u)
        one = lambda y: s / (2 * self.a) * (t_integral((y - self.a) / s, dof) - t_integral((y + self.a) / s, dof))
        if self.b == 0:
            return one(x)
        b = self.b
        knots = sorted({-b, b, *(k for k in (self.a - x, x - self.a) if -b < k < b)})
        return quad(lambda y: one(x - y), knots) / (2 * b)

    def tail(self, x):
        """Probability of an error above x; with two type A parts the q whose quantile is x."""
        if len(self.type_a) < 2:
            return self.above(x)
        if x < 0:
            return 1 - self.tail(-x)
        if x == 0:
            return mpf(1) / 2
        low, high = mpf(10) ** -12, mpf("0.49999")
        for _ in range(54):
            middle = sqrt(low * high)
            if self.above(x, middle) > middle:
                low = middle
            else:
                high = middle
        return sqrt(low * high)

    def quantile(self, q):
        if q == mpf(1) / 2:
            return mpf(0)
        if self.a == 0 and self.u == 0 and not self.type_a:
            return mpf(0)
        s, dof = self.merged(q)
        guess = self.a + self.b + 3 * (self.u + s)
        one = Shape(self.a, self.b, self.u, [(s, dof)])
        if one.a == 0 and s == 0:
            return one.u * normal_quantile(q)
        if one.a == 0 and one.u == 0:
            return s * t_quantile(q, dof)
        if one.u == 0 and s == 0 and one.b == 0:
            return one.a * (1 - 2 * q)
        low, high = mpf(0), guess
        while one.above(high) > q:
            high *= 2
        # The logarithm of the tail is nearly straight far out.
        f = lambda x: log(max(one.above(x), mpf(10) ** -60) / q)
        return findroot(f, (low, high), solver="anderson", tol=1e-36, verify=False, maxsteps=60)

    def guaranteed(self, q):
        parts = [(t_quantile(q, dof) * s) for s, dof in self.type_a]
        if self.u:
            parts.append(normal_quantile(q) * self.u)
        return self.a + self.b + sqrt(sum(p * p for p in parts))
