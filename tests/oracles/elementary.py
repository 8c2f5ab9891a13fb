"""Oracle for the logarithm and the exponential in double precision, from mpmath (pip install mpmath).

    python tests/oracles/elementary.py > tests/checks/elementary_f64.tsv

A row: function, bits of the argument, bits of the double nearest to the exact result, and what is missing from it in units
in the last place (-0.5 to 0.5). The arguments: special places and their neighbours, random ones over the whole range, and
those out of a larger random set whose results lie nearest to halfway between two doubles, where rounding is hardest.
The random numbers have a fixed seed, so that the file comes out the same.
"""
import math
import random
import struct

from mpmath import mp, mpf

mp.prec = 160


def bits(x):
    return struct.unpack("<Q", struct.pack("<d", x))[0]


def from_bits(b):
    return struct.unpack("<d", struct.pack("<Q", b))[0]


def judged(function, x):
    """The nearest double and the remainder in its units, or None where the exact result is out of range."""
    exact = {"ln": mp.log, "exp": mp.exp}[function](mpf(x))
    if exact == 0:
        return 0.0, 0.0
    _, exponent = mp.frexp(exact)
    unit_exponent = max(int(exponent) - 53, -1074)
    whole = int(mp.nint(mp.ldexp(exact, -unit_exponent)))
    remainder = mp.ldexp(exact, -unit_exponent) - whole
    if whole == 0 or unit_exponent > 971 or unit_exponent == 971 and abs(whole) >= 2**53:
        return None
    return math.ldexp(whole, unit_exponent), float(remainder)


def neighbours(x, count):
    places = [x]
    up = down = x
    for _ in range(count):
        up = math.nextafter(up, math.inf)
        down = math.nextafter(down, -math.inf)
        places += [up, down]
    return places


def logarithm_arguments(rng):
    for k in range(-1074, 1024, 3):
        yield from neighbours(math.ldexp(1.0, k), 1)
    for place in (1.0, math.sqrt(0.5), math.sqrt(2.0), 2.0, 0.5, math.e, 1 / math.e):
        yield from neighbours(place, 20)
    yield from neighbours(1.7976931348623157e308, 1)[::2]
    for _ in range(300):
        yield from_bits(rng.randrange(1, 2**52))  # subnormal
    for exponent in range(2, 53):
        for _ in range(12):
            yield 1.0 + rng.choice((-1, 1)) * math.ldexp(rng.uniform(0.5, 1.0), -exponent)
    for _ in range(2500):
        yield rng.uniform(0.5, 2.0)
    for _ in range(1500):
        yield from_bits(rng.randrange(2**52, 0x7FF0 << 48))


def exponential_arguments(rng):
    log2 = math.log(2)
    for k in range(-1074, 1024, 3):
        yield from neighbours(k * log2, 1)
        yield (k + 0.5) * log2
    for place in (1.0, -1.0, 709.782712893384, -708.3964185322641, -744.4400719213812, 0.5 * log2, -0.5 * log2):
        yield from neighbours(place, 20)
    for exponent in range(0, 60):
        for _ in range(10):
            yield rng.choice((-1, 1)) * math.ldexp(rng.uniform(0.5, 1.0), -exponent)
    for _ in range(400):
        yield rng.uniform(-745.1, -708.0)
    for _ in range(2000):
        yield rng.uniform(-1.0, 1.0)
    for _ in range(2000):
        yield rng.uniform(-708.0, 709.78)


def hard(function, rng, of, keep):
    """Those of many random arguments whose results are nearest to halfway between two doubles."""
    draws = {"ln": lambda: math.exp(rng.uniform(-3.0, 3.0)), "exp": lambda: rng.uniform(-30.0, 30.0)}
    arguments = [draws[function]() for _ in range(of)]
    return sorted(arguments, key=lambda x: -abs(judged(function, x)[1]))[:keep]


def main():
    rng = random.Random(20261125)
    print("# Made by tests/oracles/elementary.py with mpmath at 160 bits.")
    print("function\targument\tnearest\tremainder")
    for function, arguments in (("ln", logarithm_arguments), ("exp", exponential_arguments)):
        for x in list(arguments(rng)) + hard(function, rng, 60_000, 1500):
            if x == 0.0 or function == "ln" and x < 0.0:
                continue
            answer = judged(function, x)
            if answer is not None:
                print(f"{function}\t{bits(x):016x}\t{bits(answer[0]):016x}\t{answer[1]:.4f}")


if __name__ == "__main__":
    main()
