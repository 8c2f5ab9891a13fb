"""Writes ../vectors/sensor.tsv: thermistors both ways, slopes and uncertain values, from mpmath (pip install mpmath).

    python tests/oracles/sensor_vectors.py > tests/vectors/sensor.tsv

Worked out at 40 digits from the numbers as the library holds them (doubles, or singles for the functions ending in _f32) by
other means than the library's: the logarithm of a resistance by bisection between far ends, slopes by the textbook's derivatives.
After remaking the vectors, write the library's bits into them: UPDATE_BITS=1 cargo test -p reckohm-tests --test sensor_vectors.
"""

import math
import struct
from dataclasses import dataclass

from mpmath import mp, mpf

mp.dps = 40
SOURCE = "oracles/sensor_vectors.py, mpmath at 40 digits"
ZERO = mpf("273.15")


def single(x):
    """The single nearest to a double, as a double."""
    return struct.unpack("f", struct.pack("f", x))[0]


def next_single(x, up):
    bits = struct.unpack("i", struct.pack("f", x))[0]
    if x == 0.0:
        return math.copysign(2.0**-149, 1.0 if up else -1.0)
    return struct.unpack("f", struct.pack("i", bits + (1 if (x > 0) == up else -1)))[0]


@dataclass(frozen=True)
class BValue:
    name = "b_value"
    parameters: tuple[float, ...]  # rated ohm, rated temperature, B, its two temperatures
    domain: tuple[float, float]

    def resistance(self, t):
        rated, rated_c, b = (mpf(x) for x in self.parameters[:3])
        return rated * mp.exp(b / (t + ZERO) - b / (rated_c + ZERO))

    def temperature(self, r):
        rated, rated_c, b = (mpf(x) for x in self.parameters[:3])
        return 1 / (1 / (rated_c + ZERO) + mp.log(r / rated) / b) - ZERO

    def slope(self, t):
        return -mpf(self.parameters[2]) / (t + ZERO) ** 2 * self.resistance(t)


@dataclass(frozen=True)
class SteinhartHart:
    name = "steinhart_hart"
    parameters: tuple[float, ...]  # a, b, c, d, reference ohm
    domain: tuple[float, float]

    def reciprocal(self, log):
        a, b, c, d = (mpf(x) for x in self.parameters[:4])
        return a + b * log + c * log**2 + d * log**3

    def steepness(self, log):
        _, b, c, d = (mpf(x) for x in self.parameters[:4])
        return b + 2 * c * log + 3 * d * log**2

    def log(self, t):
        """By bisection outwards from the tangent's solution, then down to the last digit."""
        goal = 1 / (t + ZERO)
        start = (goal - mpf(self.parameters[0])) / mpf(self.parameters[1])
        low, high, width = start, start, mpf("0.25")
        while self.reciprocal(low) > goal:
            low -= width
        while self.reciprocal(high) < goal:
            high += width
        for _ in range(140):
            middle = (low + high) / 2
            if self.reciprocal(middle) < goal:
                low = middle
            else:
                high = middle
        return (low + high) / 2

    def resistance(self, t):
        return mpf(self.parameters[4]) * mp.exp(self.log(t))

    def temperature(self, r):
        return 1 / self.reciprocal(mp.log(mpf(r) / mpf(self.parameters[4]))) - ZERO

    def slope(self, t):
        log = self.log(t)
        return -mpf(self.parameters[4]) * mp.exp(log) / (t + ZERO) ** 2 / self.steepness(log)


# The frost alarm's, one of a heater, of a medical probe, of a cryostat; steep and flat ones at the ends of what is legal.
B_VALUES = [
    BValue((10_000.0, 25.0, 3977.0, 25.0, 85.0), (-40.0, 125.0)),
    BValue((10_000.0, 25.0, 3977.0, 25.0, 85.0), (25.0, 85.0)),
    BValue((2_252.0, 25.0, 3892.0, 0.0, 50.0), (0.0, 50.0)),
    BValue((100_000.0, 25.0, 4250.0, 25.0, 100.0), (-50.0, 300.0)),
    BValue((1.0e6, 200.0, 11_000.0, 300.0, 900.0), (150.0, 1000.0)),
    BValue((47.0, 20.0, 2800.0, 25.0, 50.0), (-80.0, 160.0)),
    BValue((3_000.0, -100.0, 900.0, -50.0, -150.0), (-200.0, 0.0)),
    BValue((1.0, 0.0, 100.0, 0.0, 1.0), (-200.0, 1000.0)),
    BValue((1_000.0, 300.0, 20_000.0, 250.0, 350.0), (200.0, 420.0)),
]

# Coefficient sets of checks/sensor_thermistor.csv, the first two as printed, then sets with four terms, one for the ratio to
# a rated resistance, one with a falling curvature, and one without any, which is a B-value's curve.
STEINHART_HARTS = [
    SteinhartHart((1.129148e-3, 2.34125e-4, 0.0, 8.76741e-8, 1.0), (-40.0, 125.0)),
    SteinhartHart((1.4e-3, 2.37e-4, 0.0, 9.9e-8, 1.0), (-40.0, 125.0)),
    SteinhartHart((1.009249522e-3, 2.378405444e-4, 0.0, 2.019202697e-7, 1.0), (-40.0, 125.0)),
    SteinhartHart((1.10415912480924e-3, 2.38917946714771e-4, 0.0, 6.93162652598713e-8, 1.0), (0.0, 50.0)),
    SteinhartHart((1.74017983186514e-3, 3.45189611834592e-4, 0.0, 2.475789662544e-7, 1.0), (-50.0, 100.0)),
    SteinhartHart((3.354016e-3, 2.57e-4, 2.4e-6, 9.0e-8, 10_000.0), (-50.0, 150.0)),
    SteinhartHart((1.10358805e-3, 2.38556231e-4, 1.01932718e-7, 6.35673493e-8, 1.0), (-40.0, 125.0)),
    SteinhartHart((3.354016e-3, 2.6e-4, 1.5e-6, -4.0e-8, 470.0), (-30.0, 90.0)),
    SteinhartHart((3.354016e-3, 2.5e-4, 0.0, 0.0, 1.0e6), (-100.0, 300.0)),
]


def singly(model):
    return type(model)(tuple(map(single, model.parameters)), tuple(map(single, model.domain)))


def row(function, inputs, outputs, status=0, source=SOURCE):
    inputs, outputs = "|".join(map(repr, inputs)), "|".join(mp.nstr(x, 20) for x in outputs)
    bits = "|".join("-" * (outputs.count("|") + 1)) if outputs else ""
    return "\t".join([f"sensor.{function}", inputs, outputs, bits, str(status), source])


def rows_of(model, suffix, count):
    """One model in one precision: both directions and the slope from end to end, then what is refused."""
    number = single if suffix else float
    head = [*model.parameters, *model.domain]
    name = model.name
    lower, upper = model.domain
    inner = [number(lower + (upper - lower) * (k + 0.37) / count) for k in range(count)]
    near = [0.0, 0.1, 25.0] if lower < 0 and upper > 25 else []
    one_inside = [next_single(lower, True), next_single(upper, False)] if suffix else [
        math.nextafter(lower, math.inf), math.nextafter(upper, -math.inf)
    ]
    for t in [lower, *one_inside, upper, *inner, *map(number, near)]:
        yield row(f"{name}.resistance_ohm{suffix}", [*head, t], [model.resistance(mpf(t))])
    for t in [lower, upper, *inner]:
        yield row(f"{name}.slope{suffix}", [*head, t], [model.slope(mpf(t))])
    for t in inner:
        r = number(model.resistance(mpf(t)))
        yield row(f"{name}.temperature_c{suffix}", [*head, r], [model.temperature(mpf(r))])
    lowest, highest = sorted(model.resistance(mpf(end)) for end in (lower, upper))
    for r in {float(f"{float(lowest):.1g}"), float(f"{float(highest):.2g}"), 10.0 ** round(float(mp.log10(highest)) - 1)}:
        if lowest <= number(r) <= highest:
            yield row(f"{name}.temperature_c{suffix}", [*head, number(r)], [model.temperature(mpf(number(r)))])
    outside = "outside the domain"
    out = [next_single(lower, False), next_single(upper, True)] if suffix else [
        math.nextafter(lower, -math.inf), math.nextafter(upper, math.inf)
    ]
    for t in [*out, lower - 1000.0, upper + 1000.0]:
        yield row(f"{name}.resistance_ohm{suffix}", [*head, t], [], 450, outside)
        yield row(f"{name}.slope{suffix}", [*head, t], [], 450, outside)
    for r in [0.0, -float(lowest), number(lowest * mpf("0.999")), number(highest * mpf("1.001")), 1e30]:
        yield row(f"{name}.temperature_c{suffix}", [*head, number(r)], [], 450, outside)
    for x in [math.nan, math.inf, -math.inf]:
        for quantity in ("resistance_ohm", "slope", "temperature_c"):
            yield row(f"{name}.{quantity}{suffix}", [*head, x], [], 2, "not finite")


def estimate_rows(model, suffix):
    """Value, two rectangular parts, normal, type A with its degrees of freedom, below, above: in, and out without the dof."""
    number = single if suffix else float
    head = [*model.parameters, *model.domain]
    lower, upper = model.domain
    parts = [(0.002, 0.0005, 0.0003, 0.0001, 4.0, 0.0, 0.001), (0.0, 0.0, 0.01, 0.0, math.inf, 0.0, 0.0)]
    for share in (0.31, 0.83):
        t = number(lower + (upper - lower) * share)
        r = number(model.resistance(mpf(t)))
        for relative in parts:
            given = [r, *(part * r for part in relative[:4]), relative[4], *(part * r for part in relative[5:])]
            given = [number(x) for x in given]
            exact = [mpf(x) for x in given]
            temperature = model.temperature(exact[0])
            by = abs(1 / model.slope(temperature))
            outputs = [temperature, *(part * by for part in exact[1:5]), exact[7] * by, exact[6] * by]
            yield row(f"{model.name}.temperature_estimate{suffix}", [*head, *given], outputs)
        given = [number(x) for x in (t, 0.05, 0.01, 0.02, 0.03, 9.0, 0.0, 0.1)]
        exact = [mpf(x) for x in given]
        by = abs(model.slope(exact[0]))
        outputs = [model.resistance(exact[0]), *(part * by for part in exact[1:5]), exact[7] * by, exact[6] * by]
        yield row(f"{model.name}.resistance_estimate{suffix}", [*head, *given], outputs)
    exact = [0.0, 0.0, 0.0, 0.0, math.inf, 0.0, 0.0]
    yield row(f"{model.name}.temperature_estimate{suffix}", [*head, -1.0, *exact], [], 450, "outside the domain")
    yield row(f"{model.name}.resistance_estimate{suffix}", [*head, upper + 1.0, *exact], [], 450, "outside the domain")


def refused():
    """Models that are none."""
    good = [10_000.0, 25.0, 3977.0, 25.0, 85.0, -40.0, 125.0]
    at = 25.0
    wrong = [
        (0, 0.0, 1), (0, -10.0, 1), (0, 2e15, 1), (0, math.nan, 2), (1, 1001.0, 1), (1, -math.inf, 2), (2, 99.0, 1),
        (2, -3977.0, 1), (2, 20_001.0, 1), (2, math.nan, 2), (3, 85.0, 4), (4, -273.15, 1), (4, math.nan, 2),
        (5, 125.0, 4), (5, 126.0, 4), (5, math.nan, 2), (6, -40.0, 4), (6, 1e4, 1), (6, math.inf, 2), (5, -201.0, 1),
    ]
    for place, value, status in wrong:
        for suffix in ("", "_f32"):
            number = single if suffix else float
            inputs = [number(x) for x in (*good[:place], value, *good[place + 1 :], at)]
            yield row(f"b_value.resistance_ohm{suffix}", inputs, [], status, "the legal ranges of the core")
    # Its resistance at the cold end is that of no sensor, then at the hot one.
    yield row("b_value.resistance_ohm", [1e12, 25.0, 3977.0, 25.0, 85.0, -100.0, 85.0, at], [], 1, "insulation")
    yield row("b_value.resistance_ohm", [1e-4, 25.0, 3977.0, 25.0, 85.0, 0.0, 300.0, at], [], 1, "a short")

    good = [1.129148e-3, 2.34125e-4, 0.0, 8.76741e-8, 1.0, -40.0, 125.0]
    wrong = [
        (0, math.nan, 2), (0, math.inf, 2), (1, 0.0, 4), (1, -2.34125e-4, 4), (1, math.nan, 2), (1, 2.34125e-8, 4),
        (2, 1e-3, 4), (2, -1e-4, 4), (2, math.nan, 2), (3, 8.76741e-5, 4), (3, -8.76741e-6, 4), (3, -math.inf, 2),
        (4, 0.0, 1), (4, -1.0, 1), (4, math.nan, 2), (5, 125.0, 4), (5, 130.0, 4), (5, -200.5, 1), (6, -41.0, 4),
        (6, math.nan, 2), (6, 1e6, 1), (0, 1e3, 4), (0, -3.0, 4), (0, 0.5, 4),
    ]
    for place, value, status in wrong:
        for suffix in ("", "_f32"):
            number = single if suffix else float
            inputs = [number(x) for x in (*good[:place], value, *good[place + 1 :], at)]
            yield row(f"steinhart_hart.resistance_ohm{suffix}", inputs, [], status, "the legal ranges of the core")


def main():
    print("# Thermistors. Inputs: the model's five parameters and its domain, then the value; for b_value rated ohm, its")
    print("# temperature, B and its two temperatures, for steinhart_hart a, b, c, d and the reference in ohm. An uncertain value:")
    print("# value, two rectangular parts, normal u, type A s and dof, below, above; out the same without dof. Functions ending in")
    print("# _f32 take singles and give such, here as the doubles of the same values. Made by oracles/sensor_vectors.py.")
    print("function\tinputs\toutputs\tbits\tstatus\tsource")
    for model in (*B_VALUES, *STEINHART_HARTS):
        for line in rows_of(model, "", 12):
            print(line)
        for line in rows_of(singly(model), "_f32", 7):
            print(line)
        for line in estimate_rows(model, ""):
            print(line)
        for line in estimate_rows(singly(model), "_f32"):
            print(line)
    for line in refused():
        print(line)


main()
