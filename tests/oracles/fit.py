"""Fits by arbitrary precision, written to `tests/checks/fit_oracle.tsv`.

Independent of the library: no triangle, no damping and no reduction by the adjusted x. Every true x is a parameter of its own,
and Newton's method finds the zero of the gradient of the whole sum of squares, with derivatives by differences at 60 digits.
The covariance is the block of the inverse of the whole tangent problem, with the shared errors carried through that same
inverse (JCGM 100 5.2.2). Run: python tests/oracles/fit.py > tests/checks/fit_oracle.tsv
"""

from mpmath import exp, lu_solve, matrix, mp, mpf, sqrt

mp.dps = 60


def jacobian(residuals, unknowns):
    """Central differences; at 60 digits a step of 1e-20 leaves 40 of them."""
    step = mpf(10) ** -20
    columns = []
    for k, value in enumerate(unknowns):
        h = step * max(1, abs(value))
        up, down = list(unknowns), list(unknowns)
        up[k], down[k] = value + h, value - h
        columns.append([(a - b) / (2 * h) for a, b in zip(residuals(up), residuals(down))])
    return matrix(columns).T


def fit(model, start, x, y, u_x, u_y, common, held=()):
    """Parameters, covariance and sum of squares; parameters in `held` stay where they start."""
    count = len(x)
    u_x = u_x or [mpf(0)] * count
    uncertain = [i for i in range(count) if u_x[i] > 0]
    free = [k for k in range(len(start)) if k not in held]

    def split(unknowns):
        parameters = list(start)
        for k, value in zip(free, unknowns):
            parameters[k] = value
        true_x = list(x)
        for i, value in zip(uncertain, unknowns[len(free) :]):
            true_x[i] = value
        return parameters, true_x

    def residuals(unknowns, shift_x=0, shift_y=0, gain=0):
        parameters, true_x = split(unknowns)
        # The shared errors move the curve against the points: they are what the readings have too much of.
        out = [
            ((y[i] - shift_y - gain * y[i]) - model(parameters, true_x[i] - (0 if u_x[i] > 0 else shift_x))) / u_y[i]
            for i in range(count)
        ]
        return out + [(x[i] - shift_x - true_x[i]) / u_x[i] for i in uncertain]

    unknowns = [start[k] for k in free] + [x[i] for i in uncertain]
    last = None
    for _ in range(400):
        j = jacobian(residuals, unknowns)
        r = matrix(residuals(unknowns))
        # Gauss and Newton's step with a fixed damping of none: the starts are near.
        step = lu_solve(j.T * j, -(j.T * r))
        unknowns = [a + b for a, b in zip(unknowns, step)]
        size = max(abs(s) for s in step)
        if size < mpf(10) ** -35:
            break
        last = size
    else:
        raise SystemExit(f"no end after 400 steps, last {last}")
    j = jacobian(residuals, unknowns)
    r = residuals(unknowns)
    information = (j.T * j) ** -1
    square = sum(a * a for a in r)
    covariance = [[information[a, b] for b in range(len(free))] for a in range(len(free))]
    h = mpf(10) ** -20
    for name, u in common.items():
        up, down = residuals(unknowns, **{name: h}), residuals(unknowns, **{name: -h})
        by_error = matrix([(a - b) / (2 * h) for a, b in zip(up, down)])
        moved = information * (j.T * by_error) * u
        for a in range(len(free)):
            for b in range(len(free)):
                covariance[a][b] += moved[a] * moved[b]
    parameters, _ = split(unknowns)
    full = [[mpf(0)] * len(start) for _ in start]
    for a, row in zip(free, covariance):
        for b, value in zip(free, row):
            full[a][b] = value
    return parameters, full, square


def numbers(text):
    """Decimals as a double holds them, as the library is given them."""
    return [mpf(float(part)) for part in text.split()]


def line(p, x):
    return p[0] + p[1] * x


def parabola(p, x):
    return p[0] + p[1] * x + p[2] * x * x


def settling(p, x):
    return p[0] + p[1] * exp(-x / p[2])


def thermistor(p, x):
    return p[0] * exp(p[1] * (1 / (x + mpf(float("273.15"))) - 1 / mpf(float("298.15"))))


# Pearson's points with York's weights (Canadian Journal of Physics 44, 1966), from memory; his line is 5.479910 - 0.480533 x.
YORK_X = numbers("0.0 0.9 1.8 2.6 3.3 4.4 5.2 6.1 6.5 7.4")
YORK_Y = numbers("5.9 5.4 4.4 4.6 3.5 3.7 2.8 2.8 2.4 1.5")
YORK_WX = numbers("1000 1000 500 800 200 80 60 20 1.8 1")
YORK_WY = numbers("1 1.8 4 8 20 20 70 70 100 500")

THERMISTOR_C = numbers("0 10 20 30 40 50 60")
THERMISTOR_OHM = numbers("32640 19900 12490 8059 5324 3602 2489")

CASES = {
    "york": dict(
        model=line, start=[mpf("5.5"), mpf("-0.5")], x=YORK_X, y=YORK_Y,
        u_x=[mpf(float(1 / sqrt(w))) for w in YORK_WX], u_y=[mpf(float(1 / sqrt(w))) for w in YORK_WY], common={},
    ),
    "parabola_in_both": dict(
        model=parabola, start=[mpf(1), mpf(1), mpf(1)],
        x=numbers("-2 -1 0 1 2 3 4"), y=numbers("5.1 1.7 1.2 2.9 7.3 12.8 21.4"),
        u_x=numbers("0.1 0.05 0.1 0.05 0.1 0.05 0.1"), u_y=numbers("0.2 0.2 0.1 0.1 0.3 0.3 0.4"),
        common=dict(shift_x=mpf(0.25), shift_y=mpf(0.5), gain=mpf(0.0625)),
    ),
    "line_common": dict(
        model=line, start=[mpf(0), mpf(1)], x=numbers("0 10 20 30 40"), y=numbers("100.01 103.9 107.8 111.67 115.55"),
        u_x=None, u_y=numbers("0.005 0.005 0.005 0.005 0.005"),
        common=dict(shift_x=mpf(float("0.03")), gain=mpf(float("0.0001"))),
    ),
    "thermistor_in_both": dict(
        model=thermistor, start=[mpf(10000), mpf(3950)], x=THERMISTOR_C, y=THERMISTOR_OHM,
        u_x=numbers("0.02 0.02 0.02 0.02 0.02 0.02 0.02"), u_y=numbers("10 6 4 3 2 1 1"),
        common=dict(shift_x=mpf(float("0.05")), gain=mpf(float("0.001"))),
    ),
    "settling_held": dict(
        model=settling, start=[mpf(1010), mpf(490), mpf(2)], held=(0,),
        x=numbers("0 1 2 3 4 5"), y=numbers("1500 1303.3 1183.9 1111.6 1067.6 1041"),
        u_x=None, u_y=numbers("0.5 0.5 0.5 0.5 0.5 0.5"), common=dict(shift_y=mpf(0.25)),
    ),
}

if __name__ == "__main__":
    print("# Fits at 60 digits, made by tests/oracles/fit.py, which does not use this library.")
    print("case\tquantity\tvalues")
    show = lambda values: " ".join(mp.nstr(v, 25) for v in values)
    for name, case in CASES.items():
        given = dict(x=case["x"], y=case["y"], u_y=case["u_y"])
        if case["u_x"]:
            given["u_x"] = case["u_x"]
        for quantity, values in given.items():
            print(f"{name}\t{quantity}\t{' '.join(repr(float(v)) for v in values)}")
        parameters, covariance, square = fit(**case)
        print(f"{name}\tparameters\t{show(parameters)}")
        print(f"{name}\tcovariance\t{show(v for row in covariance for v in row)}")
        print(f"{name}\tsum_of_squares\t{show([square])}")
