"""The rules of display texts, replies, accuracy clauses, the choice of a span and the demonstration's meters, in decimal
arithmetic and without the library. Used by meter_vectors.py.
"""

import math
import re
from decimal import ROUND_HALF_UP, Decimal, getcontext
from statistics import NormalDist
from typing import NamedTuple

getcontext().prec = 60

ONE, OL, BLANK, DASHES = 1, 2, 4, 8
EMPTY, CONTRADICTION, MISSING_ARGUMENT, TOO_LARGE = 3, 4, 6, 5
OUT_OF_RANGE, NOT_FINITE = 1, 2
UNEXPECTED_BYTE, MISSING_DIGITS, TEXT_TOO_LONG = 20, 21, 22
MISSING_POINT, TOO_FEW, TOO_MANY, TOO_MANY_DIGITS, BEYOND, OFF_GRID, AMBIGUOUS, NOT_MARK = range(200, 208)
NO_READING, UNDEFINED_MARK = 210, 211
RESOLUTION, DISPLAY_UNIT, MARKS = 220, 221, 222
NO_SPAN_HOLDS, NO_SUCH_SPAN, NOT_IN_TABLE = 230, 231, 240


class Failure(Exception):
    """An error with the number of its kind."""

    def __init__(self, status):
        super().__init__(status)
        self.status = status


class Span(NamedTuple):
    label: str
    full_scale: str
    resolution: str
    unit: str
    marks: int
    of_reading: str
    of_span: str = "0"
    counts: str = "0"
    factor: str = ""
    step_inside: bool = True
    band: tuple = ("18", "28")
    coefficient: str = ""
    zeroing: bool = False

    def tokens(self):
        yes = {True: "true", False: "false"}
        return [
            self.label, self.full_scale, self.resolution, self.unit, str(self.marks), self.of_reading, self.of_span,
            self.counts, self.factor, yes[self.step_inside], *self.band, self.coefficient, yes[self.zeroing],
        ]  # fmt: skip

    # Numbers, for the rules below.
    @property
    def top(self):
        return Decimal(self.full_scale)

    @property
    def step(self):
        return Decimal(self.resolution)

    @property
    def power(self):
        return {"0.001": -3, "1": 0, "1000": 3, "1000000": 6, "1000000000": 9}[self.unit]

    def decimals(self, power):
        step_power = self.step.normalize().as_tuple().exponent
        return max(0, power - step_power)


def word(flag):
    return "true" if flag else "false"


def number(x):
    """A number as a text that parses to the nearest double."""
    return repr(float(x))


# The rules of display texts -----------------------------------------------------------------------------------------


def read(span, text):
    if len(text) > 32:
        raise Failure(TEXT_TOO_LONG)
    body = text.strip(b" \t\r\n").decode("latin-1")
    solid = re.sub(r"[ \t\r\n]", "", body)
    bare = re.sub(r"[.,]", "", solid)
    points = len(solid) - len(bare)
    over = None
    if bare == "" and points <= 1:
        if span.marks & BLANK:
            over = ""
        elif body == "":
            raise Failure(EMPTY)
    elif re.fullmatch(r"-{2,}", bare):
        if not span.marks & DASHES:
            raise Failure(NOT_MARK)
        over = ""
    elif points <= 1 and re.fullmatch(r"[-+]?[Oo0][Ll]", bare) and not re.search(r"[-+]", body[1:]):
        if not span.marks & OL:
            raise Failure(NOT_MARK)
        over = body[0]
    elif re.fullmatch(r"[-+]?1[.,]?", body) and span.marks & ONE:
        if span.decimals(span.power) == 0 and span.step <= Decimal(10) ** span.power:
            raise Failure(AMBIGUOUS)
        over = body[0]
    if over is not None:
        bound = -span.top if over == "-" else span.top
        return [number(bound), "0.0", "true", word(over == "-")]
    match = re.fullmatch(r"([-+]?)([0-9]*)(?:([.,])([0-9]*))?[ \t\r\n]*([kKMG]?)", body)
    if not match or not (match[2] or match[4]):
        raise Failure(MISSING_DIGITS if re.fullmatch(r"[-+]?[.,]?", body) else UNEXPECTED_BYTE)
    sign, whole, point, fraction, letter = (part or "" for part in match.groups())
    power = {"": span.power, "k": 3, "K": 3, "M": 6, "G": 9}[letter]
    value = Decimal((whole or "0") + "." + (fraction or "0")) * Decimal(10) ** power
    shown = span.decimals(power)
    if letter and value >= span.top:
        raise Failure(BEYOND)
    if len(fraction) < shown:
        raise Failure(TOO_FEW if point else MISSING_POINT)
    if len(fraction) > shown:
        raise Failure(TOO_MANY)
    if value >= span.top:
        raise Failure(BEYOND)
    largest = (span.top - span.step) / Decimal(10) ** power
    if len(whole) > len(str(int(largest))):
        raise Failure(TOO_MANY_DIGITS)
    if value % span.step != 0:
        raise Failure(OFF_GRID)
    if sign == "-" and value != 0:
        value = -value
    return [number(value), number(value / span.step), "false", word(sign == "-")]


def display(span, ohm):
    counts = int((abs(ohm) / span.step).to_integral_value(ROUND_HALF_UP))
    shown = counts * span.step / Decimal(10) ** span.power
    minus = "-" if ohm < 0 else ""
    if counts * span.step < span.top:
        return [(minus if counts else "") + f"{shown:.{span.decimals(span.power)}f}"]
    for mark, text in [(ONE, minus + "1"), (OL, minus + "OL"), (BLANK, ""), (DASHES, "----")]:
        if span.marks & mark:
            return [text]
    raise Failure(BEYOND)


# The rules of replies -----------------------------------------------------------------------------------------------


def reply(span, text):
    if len(text) > 128:
        raise Failure(TEXT_TOO_LONG)
    body = text.strip(b" \t\r\n").decode("latin-1")
    if not body:
        raise Failure(EMPTY)
    if not re.fullmatch(r"[-+]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([Ee][-+]?[0-9]+)?", body):
        unfinished = re.fullmatch(r"[-+]?\.?|[-+]?([0-9]+(\.[0-9]*)?|\.[0-9]+)[Ee][-+]?", body)
        raise Failure(MISSING_DIGITS if unfinished else UNEXPECTED_BYTE)
    value = Decimal(body)
    if abs(value) >= Decimal("1.797693134862315807937e308"):
        raise Failure(TOO_LARGE)
    near = lambda mark: abs(abs(value) - mark) <= mark / 10**6
    minus = body.startswith("-")
    if near(Decimal("9.9e37")):
        return [number(-span.top if minus else span.top), "true", word(minus)]
    if near(Decimal("9.91e37")):
        raise Failure(NO_READING)
    if abs(value) >= Decimal("9e37"):
        raise Failure(UNDEFINED_MARK)
    if abs(value) >= span.top:
        raise Failure(BEYOND)
    return [number(abs(value) if value == 0 else value), "false", word(minus)]


# Accuracy and choice ------------------------------------------------------------------------------------------------


def half_width(span, ohm, temperature):
    widening = Decimal(1)
    if temperature != "":
        low, high, at = Decimal(span.band[0]), Decimal(span.band[1]), Decimal(temperature)
        if not -60 <= at <= 120:
            raise Failure(OUT_OF_RANGE)
        outside = max(low - at, at - high, Decimal(0))
        if outside > 0:
            if span.coefficient == "":
                raise Failure(MISSING_ARGUMENT)
            widening += Decimal(span.coefficient) * outside
    parts = Decimal(span.of_reading) * abs(ohm) + Decimal(span.of_span) * span.top + Decimal(span.counts) * span.step
    return parts * widening


def expanded(span, nominal, temperature):
    """U at 95 % of one reading: closed forms of a normal, of one rectangular, of the sum of two rectangulars."""
    a = half_width(span, nominal, temperature)
    b = Decimal(0) if span.step_inside else span.step / 2
    if span.factor:
        assert b == 0
        return Decimal(NormalDist().inv_cdf(0.975)) * a / Decimal(span.factor)
    a, b = max(a, b), min(a, b)
    # The sum's density is flat up to a - b and falls linearly to a + b; 5 % lie outside of +-U.
    if b == 0 or Decimal("0.95") * 2 * a <= 2 * (a - b):
        return Decimal("0.95") * a
    return a + b - (Decimal("0.05") * 4 * a * b).sqrt()


def conformance(span, nominal, half_tolerance, temperature):
    a = half_width(span, nominal, temperature)
    if span.factor:
        return Decimal(math.erf(float(half_tolerance / (a / Decimal(span.factor))) / math.sqrt(2)))
    assert span.step_inside
    return min(Decimal(1), half_tolerance / a)


def holds(span, ohm):
    return int((ohm / span.step).to_integral_value(ROUND_HALF_UP)) * span.step < span.top


def check_part(nominal, tolerance):
    for text, low_open, high, high_open in [(nominal, True, Decimal(10) ** 15, False), (tolerance, True, Decimal(1), True)]:
        x = Decimal(text)
        if not x.is_finite():
            raise Failure(NOT_FINITE)
        if x <= 0 or x > high or (high_open and x == high):
            raise Failure(OUT_OF_RANGE)


def choose(meter, nominal, tolerance, temperature):
    check_part(nominal, tolerance)
    n, t = Decimal(nominal), Decimal(tolerance)
    widths = [expanded(span, n, temperature) for span in meter]
    able = [i for i, span in enumerate(meter) if holds(span, n * (1 + t))]
    if not able:
        raise Failure(NO_SPAN_HOLDS)
    return min(able, key=lambda i: (widths[i], i))


def assess(meter, nominal, tolerance, temperature, index):
    chosen = choose(meter, nominal, tolerance, temperature)
    if index >= len(meter):
        raise Failure(NO_SUCH_SPAN)
    span, n, t = meter[index], Decimal(nominal), Decimal(tolerance)
    u = expanded(span, n, temperature)
    counts = min((n / span.step).to_integral_value(ROUND_HALF_UP), span.top / span.step)
    p = conformance(span, n, n * t, temperature)
    outcome, factor = "over-range", Decimal(0)
    if index == chosen:
        outcome, factor = "chosen", Decimal(1)
    elif holds(span, n * (1 + t)):
        outcome, factor = "wider", u / expanded(meter[chosen], n, temperature)
    return [
        word(holds(span, n * (1 + t))), display(span, n)[0], number(counts * span.step), number(counts), number(u),
        number(n * t / u), number(p), word(p >= Decimal("0.95")), outcome, number(factor),
    ]  # fmt: skip


def next_span(meter, index, text):
    if index >= len(meter):
        raise Failure(NO_SUCH_SPAN)
    ohm, _, over, _ = read(meter[index], text)
    if over == "true":
        return ["up", number(index + 1)] if index + 1 < len(meter) else ["beyond highest", number(index)]
    bound = abs(Decimal(ohm)) + half_width(meter[index], Decimal(ohm), "")
    for lower in range(index):
        if bound < Decimal("0.95") * meter[lower].top:
            return ["down", number(lower)]
    return ["stay", number(index)]


class Ranger:
    """The rules at the head of crates/reckohm/src/meter/auto_ranger.rs, in decimal arithmetic."""

    def __init__(self, meter, start, discard, first, widest):
        for text in (first, widest):
            if not Decimal(text).is_finite():
                raise Failure(NOT_FINITE)
        self.first, self.widest = Decimal(first), Decimal(widest)
        if start >= len(meter):
            raise Failure(NO_SUCH_SPAN)
        if any(not Decimal("0.001") <= x <= Decimal("0.9") for x in (self.first, self.widest)):
            raise Failure(OUT_OF_RANGE)
        if self.widest < self.first:
            raise Failure(CONTRADICTION)
        self.meter, self.at, self.discard, self.left = meter, start, discard, 0
        self.now, self.end, self.went_down = self.first, None, False

    def step(self, ohm, over):
        """`ohm` as shown on the span it stands on."""
        if self.left:
            self.left -= 1
            return "again"
        here = self.meter[self.at]
        size = here.top if over else abs(ohm)
        if self.end is not None and not self.end * (1 - self.widest) <= size <= self.end / (1 - self.widest):
            self.now, self.end = self.first, None
        if over:
            if self.at + 1 == len(self.meter):
                return "beyond highest"
            if self.went_down:
                self.now, self.end = min(2 * self.now, self.widest), here.top
            return self.go(self.at + 1, False)
        for lower in range(self.at):
            if size + half_width(here, size, "") < (1 - self.now) * self.meter[lower].top:
                return self.go(lower, True)
        return "below lowest" if self.at == 0 and ohm < here.step else "accept"

    def go(self, to, down):
        self.at, self.left, self.went_down = to, self.discard, down
        return "switch"


def ranged(meter, start, discard, first, widest, ohms, as_shown):
    """What is said after each resistance, and the span for the next, as the display shows it on the span asked for or as it is."""
    ranger = Ranger(meter, start, discard, first, widest)
    said = []
    for text in ohms:
        ohm, over = Decimal(text), False
        if not ohm.is_finite():
            raise Failure(NOT_FINITE)
        if as_shown:
            ohm, _, over, _ = read(meter[ranger.at], display(meter[ranger.at], ohm)[0].encode())
            ohm, over = Decimal(ohm), over == "true"
        else:
            over = abs(ohm) >= meter[ranger.at].top
        said += [ranger.step(ohm, over), number(ranger.at)]
    return said


def hand_held(label, top, step, unit, of_reading, counts):
    return Span(label, top, step, unit, ONE | OL, of_reading, counts=counts, coefficient="0.1")


HAND_HELD = [
    hand_held("200 ohm", "200", "0.1", "1", "0.008", "3"),
    hand_held("2 kohm", "2000", "1", "1000", "0.008", "3"),
    hand_held("20 kohm", "20000", "10", "1000", "0.008", "3"),
    hand_held("200 kohm", "200000", "100", "1000", "0.008", "3"),
    hand_held("2 Mohm", "2000000", "1000", "1000000", "0.01", "3"),
    hand_held("20 Mohm", "20000000", "10000", "1000000", "0.02", "5"),
]


def bench(label, top, step, unit, of_reading, of_span):
    return Span(label, top, step, unit, OL, of_reading, of_span, coefficient="0.1", zeroing=True)


BENCH = [
    bench("100 ohm", "120", "0.001", "1", "0.00015", "0.00008"),
    bench("1 kohm", "1200", "0.01", "1000", "0.00012", "0.00002"),
    bench("10 kohm", "12000", "0.1", "1000", "0.00012", "0.00002"),
    bench("100 kohm", "120000", "1", "1000", "0.00012", "0.00002"),
    bench("1 Mohm", "1200000", "10", "1000000", "0.00015", "0.00002"),
    bench("10 Mohm", "12000000", "100", "1000000", "0.0005", "0.00002"),
    bench("100 Mohm", "120000000", "1000", "1000000", "0.01", "0.00002"),
]
METERS = {"hand_held": HAND_HELD, "bench": BENCH}

ODD_SPANS = [
    Span("2000 ohm", "2000", "1", "1", ONE, "0.01", counts="2"),
    Span("20 kohm by 10", "20000", "10", "1", ONE, "0.01", counts="2"),
    Span("20 kohm by 2", "20000", "2", "1000", BLANK, "0.005", counts="4"),
    Span("20 mohm", "0.02", "0.00001", "0.001", DASHES, "0.01", "0.001", "2", factor="2"),
    Span("6 Mohm by 50", "6000000", "50", "1000", ONE | OL | BLANK | DASHES, "0.002", counts="0.5", step_inside=False),
    Span("2 Gohm", "2000000000", "500000", "1000000000", 0, "0.05", counts="10", band=("20", "26"), coefficient="0.05"),
    Span("nine digits", "1000", "0.000001", "1", OL, "0.000005", "0.000002", factor="2.5"),
    Span("m\u03a9 \u00b5", "12", "0.0001", "0.001", OL | DASHES, "0.001", counts="5", step_inside=False),
]
