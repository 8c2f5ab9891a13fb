"""Writes ../vectors/arithmetic.tsv and arithmetic_single.tsv: subtractions that arithmetic other than IEEE 754's gets wrong, as the distance of an exact
value from a limit. The differences are exact fractions, rounded once to the nearest number, to even on a tie.

The bits column holds what the library gives and is filled by UPDATE_BITS=1 cargo test -p reckohm-tests.
"""

import pathlib
import random
import struct
from fractions import Fraction

SOURCE = "oracles/arithmetic_vectors.py, exact fractions"


def of_bits(bits):
    return struct.unpack(">d", struct.pack(">Q", bits))[0]


def single(x):
    """The nearest single-precision number of an exact fraction, to even on a tie, subnormals included."""
    exponent = max(-149, (x.numerator.bit_length() - x.denominator.bit_length()) - 24)
    while x / Fraction(2) ** exponent >= 1 << 24:
        exponent += 1
    steps = x / Fraction(2) ** exponent
    whole = steps.numerator // steps.denominator
    rest = steps - whole
    if rest > Fraction(1, 2) or (rest == Fraction(1, 2) and whole % 2 == 1):
        whole += 1
    return float(whole * Fraction(2) ** exponent)


def row(value, lower, upper, name, why):
    """Python divides whole numbers with correct rounding, subnormal quotients included."""
    exact = Fraction(value) - Fraction(lower)
    distance = single(exact) if name.endswith("_f32") else exact.numerator / exact.denominator
    inputs = [repr(value), *["0.0"] * 4, "inf", "0.0", "inf", "0.0", "0.0", repr(lower), repr(upper), "simple acceptance", "\\x"]
    outputs = ["conforms", "inside", "1.0", "0.0", repr(lower), repr(upper), repr(distance), "\\x", "none"]
    return [f"verdict.{name}", "|".join(inputs), "|".join(outputs), "|".join("-" * len(outputs)), "0", f"{SOURCE}; {why}"]


def doubles():
    rng = random.Random(20261126)
    fraction = lambda: rng.getrandbits(52)
    # One library's subtraction for Thumb-2 is wrong where the minuend is a power of two and the exponents are 33 apart.
    known = [0x3DE34F2A050C605B, 0x3DE2D21E3DA342CD, 0x3DEC1E3E10D162FA]
    for bits in known:
        yield 1.0, of_bits(bits), "a power of two, exponents 33 apart"
    for gap in range(30, 37):
        for power in (0, 12):
            lower = of_bits((1023 + power - gap) << 52 | fraction())
            yield float(2**power), lower, f"a power of two, exponents {gap} apart"
        minuend = of_bits((1023 + 12) << 52 | fraction())
        yield minuend, of_bits((1023 + 12 - gap) << 52 | fraction()), f"exponents {gap} apart"
    step = 2.0**-52
    for steps in (1, 2, 3, 4):
        yield 1.0 + steps * step, step / 2, "a tie"
        yield 1.0 + steps * step, step / 2 + 2.0**-100, "just beyond a tie"
        yield 1.0 + steps * step, step / 2 - 2.0**-100, "just before a tie"
    least = 5e-324
    normal = 2.0**-1022
    yield 3 * least, least, "subnormal numbers"
    yield normal, least, "the difference is subnormal"
    yield normal, normal / 2, "the difference is subnormal"
    yield normal + 5 * least, normal + 2 * least, "the difference is subnormal"


def singles():
    step = 2.0**-23
    for steps in (1, 2, 3, 4):
        yield 1.0 + steps * step, step / 2, "a tie"
        yield 1.0 + steps * step, step / 2 + 2.0**-40, "just beyond a tie"
        yield 1.0 + steps * step, step / 2 - 2.0**-40, "just before a tie"
    for gap in (23, 24, 25):
        for fraction in (1, 0x2AAAAA, 0x7FFFFF):
            yield 4096.0, 2.0 ** (12 - gap) * (1 + fraction * step), f"a power of two, exponents {gap} apart"
    least = 2.0**-149
    normal = 2.0**-126
    yield 3 * least, least, "subnormal numbers"
    yield normal, least, "the difference is subnormal"
    yield normal, normal / 2, "the difference is subnormal"
    yield normal + 5 * least, normal + 2 * least, "the difference is subnormal"


def write(name, columns, rows):
    head = [
        "# What arithmetic other than IEEE 754's gets wrong: ties, subnormal numbers, exponents far apart, and subtractions that one",
        f"# library for Cortex-M rounds wrongly. Columns as in {columns}; the distance is the difference of value and lower",
        "# limit. Made by oracles/arithmetic_vectors.py; bits are the library's own.",
        "function\tinputs\toutputs\tbits\tstatus\tsource",
    ]
    path = pathlib.Path(__file__).parent.parent / "vectors" / name
    path.write_text("\n".join(head + ["\t".join(cells) for cells in rows]) + "\n")


def main():
    write("arithmetic.tsv", "verdict.tsv", [row(value, lower, 1e300, "judge", why) for value, lower, why in doubles()])
    rows = [row(value, lower, 2.0**100, "judge_f32", why) for value, lower, why in singles()]
    write("arithmetic_single.tsv", "single.tsv", rows)


main()
