"""Writes ../vectors/meter_single.tsv: meters in single precision, by the rules of meter_rules.py in decimal arithmetic.

    python3 tests/oracles/meter_single_vectors.py            writes the file
    python3 tests/oracles/meter_single_vectors.py --check    fails if the file is not what would be written

What a display or a reply says is rounded once, from its decimal to the nearest number of single precision, ties to the even
one; here with fractions, and so that an output's decimal is exactly that number. The column of bits is the library's own, of
the double with the value of the float, and kept for rows that are the same; new rows get theirs by
UPDATE_BITS=1 cargo test -p reckohm-tests --test meter_single_vectors
"""

import random
import sys
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import meter_rules as rules
import meter_vectors as double
from meter_rules import BENCH, Failure, HAND_HELD, ODD_SPANS, Span

FILE = Path(__file__).parent.parent / "vectors" / "meter_single.tsv"
NOTE = """\
# Meters in single precision: inputs and outputs as of the functions without _f32 in meter.tsv, and meter.span.estimate_f32: a
# span, a display text and the meter's temperature or nothing, to value, two rectangular parts and normal u. Made by
# tests/oracles/meter_single_vectors.py; bits are the library's own, of the double with the value of the float."""

LARGEST = Fraction(2**24 - 1) * 2**104


def single(x):
    """The nearest number of single precision, ties to the even one, as the decimal that it is; none beyond the largest."""
    x = Fraction(x)
    size, power = abs(x), -149
    if size >= LARGEST + 2**103:
        return None
    while size >= Fraction(2) ** (power + 24):
        power += 1
    scaled = size / Fraction(2) ** power
    whole = int(scaled)
    rest = scaled - whole
    if rest > Fraction(1, 2) or rest == Fraction(1, 2) and whole % 2 == 1:
        whole += 1
    found = Fraction(whole) * Fraction(2) ** power * (-1 if x < 0 else 1)
    return Decimal(found.numerator) / Decimal(found.denominator)


def text(x):
    """Of a number of single precision, exactly: the shortest decimal of the double with the same value."""
    return repr(float(x))


def read(span, shown):
    ohm, *others = rules.read(span, shown)
    return [text(single(Decimal(ohm))), *others]


def reply(span, said):
    """The rules of replies, asked of the number that single precision makes of the text."""
    try:
        rules.reply(span._replace(full_scale="1e300", resolution="1e290"), said)
    except Failure as failure:
        if failure.status in (rules.TEXT_TOO_LONG, rules.EMPTY, rules.MISSING_DIGITS, rules.UNEXPECTED_BYTE):
            raise
    body = said.strip(b" \t\r\n").decode()
    value = single(Decimal(body))
    if value is None:
        raise Failure(rules.TOO_LARGE)
    size, minus = abs(value), body.startswith("-")
    near = lambda mark: abs(size - Decimal(mark)) <= Decimal(mark) / 10**6
    if near("9.9e37"):
        return [text(single(-span.top if minus else span.top)), "true", rules.word(minus)]
    if near("9.91e37"):
        raise Failure(rules.NO_READING)
    if size >= single(Decimal("9e37")):
        raise Failure(rules.UNDEFINED_MARK)
    if size >= single(span.top):
        raise Failure(rules.BEYOND)
    return [text(abs(value) if value == 0 else value), "false", rules.word(minus)]


def estimate(span, shown, temperature):
    ohm, _, over, _ = rules.read(span, shown)
    if over == "true":
        raise Failure(OVER_RANGE_READING)
    width = rules.half_width(span, Decimal(ohm), temperature)
    step = Decimal(0) if span.step_inside else span.step / 2
    clause, normal = (width, Decimal(0)) if span.factor == "" else (Decimal(0), width / Decimal(span.factor))
    parts = sorted([clause, step], reverse=True)
    return [text(single(Decimal(ohm))), *map(rules.number, parts), rules.number(normal)]


OVER_RANGE_READING = 300


def ties():
    """Readings half-way between two numbers of single precision, and beside: 2^24 + 1 in steps and on."""
    span = Span("fine", "100000000", "1", "1", rules.OL, "0.01")
    for counts in [2**24 - 1, 2**24, 2**24 + 1, 2**24 + 2, 2**24 + 3, 2**25 + 2, 2**25 + 6, 2**26 + 4, 2**26 + 12, 99999999]:
        double.add("meter.span.read", [*span.tokens(), str(counts)], lambda: read(span, str(counts).encode()), "ties to even")
    wide = Span("wide", "1000000", "0.01", "1", 0, "0.0002", counts="2")
    for said in ["1.00000005960464477539062", "1.000000059604644775390625", "1.0000000596046447753906251", "1.000000178813934326171875",
                 "1.4e-45", "0.7e-45", "7.006492321624085354618e-46", "7.0064923216240853546186479164495e-46",
                 "7.0064923216240853546186479164496e-46", "1.17549435e-38", "1.1754942e-38", "3.4028236e38", "3.4028235e38",
                 "999999.97", "999999.96875", "999999.984375", "-1e-40"]:  # fmt: skip
        double.add("meter.span.read_reply", [*wide.tokens(), said], lambda: reply(wide, said.encode()), "ties, subnormal numbers, ends")


def shown_rows():
    for span in [*HAND_HELD, *BENCH, *ODD_SPANS]:
        if span.top / span.step > 2**20:
            continue  # Beyond what single precision tells apart; the readings have it.
        for part in ["0", "0.31415", "-0.27", "0.9999999999", "1", "-1.5"]:
            ohm = single(Decimal(part) * span.top)
            double.add("meter.span.display_text", [*span.tokens(), text(ohm)], lambda: rules.display(span, ohm), "the rules of display texts")
    whole = Span("whole", "20000000", "1", "1", rules.OL, "0.01")
    # One half more is no number of single precision from 2^23 on: a whole number of steps stays what it is.
    for ohm in ["8388607.5", "8388606.5", "4194303.75", "8388609", "8388611", "16777215", "0.5", "1.5", "-2.5"]:
        double.add("meter.span.display_text", [*whole.tokens(), ohm], lambda: rules.display(whole, Decimal(ohm)), "steps of one half")
    for bad in ["nan", "inf", "-inf"]:
        double.add("meter.span.display_text", [*HAND_HELD[0].tokens(), bad], lambda: double.fail(rules.NOT_FINITE), "our rule")


def estimate_rows():
    rng = random.Random(58)
    source = "clause and step as parts, decimal arithmetic"
    for span in [*HAND_HELD, *BENCH, *ODD_SPANS]:
        for temperature in ["", "23", "18", "31.5" if span.coefficient else "20", "-12", "121"]:
            counts = rng.randrange(1, int(span.top / span.step))
            shown = rules.display(span, counts * span.step * rng.choice([1, 1, -1]))[0].encode()
            double.add("meter.span.estimate", [*span.tokens(), shown, temperature], lambda: estimate(span, shown, temperature), source)
        double.add("meter.span.estimate", [*span.tokens(), b"OL", ""], lambda: estimate(span, b"OL", ""), "our rule")


def ranger_rows():
    """Those of double precision, but for one that stands exactly at an end, 0.6 times 12 kohm, which no float is."""
    double.ranger_rows()
    double.rows = [row for row in double.rows if not row[1].endswith("|9500|7200|7100")]
    for ohms in ["9700 9500 12100 9500 7210 7100", "9700 9500 12100 9500 7190 7100"]:
        for function, as_shown in [("meter.auto_ranger.step", True), ("meter.auto_ranger.step_ohm", False)]:
            double.add(function, ["bench", "3", "0", "0.2", "0.4", *ohms.split()],
                       lambda: rules.ranged(BENCH, 3, 0, "0.2", "0.4", ohms.split(), as_shown), "beside the end of a neighbourhood")  # fmt: skip


def main():
    double.read, double.reply = read, reply
    double.NUMBERS["meter.span.estimate"] = {0, 1, 2, 3}
    for make in [double.span_rows, double.read_rows, double.reply_rows, ties, shown_rows, double.clause_rows, estimate_rows,
                 double.step_rows, ranger_rows]:  # fmt: skip
        make()
    unique = list({(row[0], row[1]): [row[0] + "_f32", *row[1:]] for row in double.rows}.values())
    # The readings are very many: those of three in four are left to double precision.
    unique = [row for place, row in enumerate(unique) if row[0] != "meter.span.read_f32" or "ties" in row[5] or place % 4 == 0]
    old = FILE.read_text() if FILE.exists() else ""
    kept = {tuple(c[:2]): c[3] for c in (line.split("\t") for line in old.splitlines()) if len(c) == 6}
    for row in unique:
        bits = kept.get((row[0], row[1]), "")
        if row[4] == "0" and bits and [b == "-" for b in bits.split("|")] == [b == "-" for b in row[3].split("|")]:
            row[3] = bits
    made = "\n".join([NOTE, double.HEADINGS, *("\t".join(row) for row in unique)]) + "\n"
    if "--check" in sys.argv:
        if made != old:
            sys.exit("tests/vectors/meter_single.tsv is not what tests/oracles/meter_single_vectors.py writes: run it")
        return
    FILE.write_text(made)
    print(f"{len(unique)} rows, {sum(row[4] != '0' for row in unique)} of them errors")


if __name__ == "__main__":
    main()
