"""Writes tests/vectors/meter.tsv: what a span makes of display texts and replies, what its clause comes to, which span a
part goes on. Everything is computed here a second time, from the rules and in decimal arithmetic, without the library.

    python3 tests/oracles/meter_vectors.py            writes the file
    python3 tests/oracles/meter_vectors.py --check    fails if the file is not what would be written

The column of bits is the library's own and is kept for rows that are the same; new rows get theirs by
UPDATE_BITS=1 cargo test -p reckohm-tests --test meter_vectors
"""

import random
import re
import sys
from decimal import Decimal, getcontext
from pathlib import Path

from meter_rules import (
    BENCH,
    CONTRADICTION,
    DISPLAY_UNIT,
    EMPTY,
    Failure,
    HAND_HELD,
    MARKS,
    METERS,
    MISSING_ARGUMENT,
    NOT_FINITE,
    NOT_IN_TABLE,
    ODD_SPANS,
    OUT_OF_RANGE,
    RESOLUTION,
    Span,
    TEXT_TOO_LONG,
    UNEXPECTED_BYTE,
    assess,
    choose,
    display,
    half_width,
    next_span,
    number,
    ranged,
    read,
    reply,
)

getcontext().prec = 60
FILE = Path(__file__).parent.parent / "vectors" / "meter.tsv"
HEADINGS = "function\tinputs\toutputs\tbits\tstatus\tsource"
NOTE = """\
# Meters: display texts, replies, accuracy clauses, the choice of a span, leads. Outputs come from
# tests/oracles/meter_vectors.py, a second computation in decimal arithmetic; bits from the library.
# A span is 14 inputs: label, full scale, resolution, display unit (ohm), bits of the marks, fraction of reading, fraction
# of span, counts, coverage factor or nothing, step inside the counts, band from, band to (degree Celsius), coefficient per
# kelvin or nothing, zeroing required. meter.span gives the counts of its full scale; meter.span.read ohm, counts, over,
# negative; meter.span.read_reply ohm, over, negative. A demonstration meter is one input, its name.
# An auto-ranger is five: meter, first span, readings to discard, hysteresis, widest hysteresis; then resistances, each
# measured on the span that was asked for: as its display shows it for .step, as it is for .step_ohm. Out: for each what to
# do, and the span for the next."""


# Rows ---------------------------------------------------------------------------------------------------------------

rows = []


def escape(raw):
    out = "".join(chr(b) if 0x20 <= b <= 0x7E and b not in b"|\\" else f"\\x{b:02x}" for b in raw)
    return out or r"\x"


def add(function, inputs, compute, source):
    raw = [item if isinstance(item, bytes) else item.encode() for item in inputs]
    # A single empty input is written in full; among others it is plainly nothing.
    column = "|".join("" if item == b"" and len(raw) > 1 else escape(item) for item in raw)
    try:
        outputs, status = compute(), 0
    except Failure as failure:
        outputs, status = [], failure.status
    texts = [escape(item.encode()) if item != "" or len(outputs) == 1 else "" for item in outputs]
    marks = ["0" * 16 if re.fullmatch(r"-?[0-9.]+(e[-+]?[0-9]+)?", item) and is_number(function, place) else "-"
             for place, item in enumerate(outputs)]  # fmt: skip
    rows.append([function, column, "|".join(texts), "|".join(marks), str(status), source])


NUMBERS = {
    "meter.span": {0},
    "meter.span.read": {0, 1},
    "meter.span.read_reply": {0},
    "meter.span.display_text": set(),
    "meter.span.clause_half_width_ohm": {0},
    "meter.choose": {0},
    "meter.choice.assessment": {2, 3, 4, 5, 6, 9},
    "meter.next_span": {1},
    "meter.auto_ranger.step": set(range(1, 99, 2)),
    "meter.auto_ranger.step_ohm": set(range(1, 99, 2)),
    "meter.leads.from_wire": {0, 1},
}


def is_number(function, place):
    return place in NUMBERS[function]


def read_rows():
    source = "the rules of display texts"
    rng = random.Random(2026)
    say = lambda span, text: add("meter.span.read", [*span.tokens(), text], lambda: read(span, text), source)
    for span in HAND_HELD + BENCH + ODD_SPANS:
        top = int(span.top / span.step)
        for counts in sorted({0, 1, 2, 9, 10, 99, 100, top // 3, top // 2, top - 2, top - 1, top, top + 1, 10 * top}):
            text = f"{counts * span.step / Decimal(10) ** span.power:.{span.decimals(span.power)}f}"
            say(span, text.encode())
        for _ in range(4):
            counts = rng.randrange(top)
            text = f"{counts * span.step / Decimal(10) ** span.power:.{span.decimals(span.power)}f}"
            dressed = rng.choice(["-{}", "+{}", " {}", "{}\r\n", "\t{} ", "{} ", "0{}"]).format(text)
            say(span, dressed.encode())
            say(span, text.replace(".", rng.choice([",", "", ".."]), 1).encode())
            say(span, (text + rng.choice("kKMGmR0")).encode())
            say(span, text[: rng.randrange(len(text)) + 1].encode())
            broken = bytearray(text.encode())
            broken[rng.randrange(len(broken))] = rng.randrange(256)
            say(span, bytes(broken))
    marks = ["OL", "O.L", ".OL", "0L", "0.L", "O L", "ol", "-OL", "+o.l", "O,L", "OL.", "O..L", "OLL", "LO", "1", "1.", "-1",
             "1,", "01", "11", "1 ", "", "  ", ".", "..", "-", "--", "----", "- - -", "-.-", "--.--", "-1-", "over", "INF", "1e3"]  # fmt: skip
    for span in [HAND_HELD[1], BENCH[1], *ODD_SPANS[:7]]:
        for text in marks:
            say(span, text.encode())
    for text in [b"1.462k", b"1.462 K", b"0.001462M", b"1.462M", b"1462k", b"1.462kk", b"1.462 k ohm", b"k", b"1k462", b"1.462m",
                 b"1\x00.462", b"\xff", b"1.462\xce\xa9", b"\xe2\x88\x921.462", b"1|2", b"1\\2", b"1.4\t62", b"1462", b"4700", b"1.46",
                 b"14.62", b"1.4620", b"0001.462", b"2.000", b"1.999", b"-0.000", b"-0.001", b"- 1.462", b"+-1.462", b"1_462",
                 b"9" * 32, b"9" * 33, b"0" * 28 + b"1.462"[:4], b"1.462\x0c", b" " * 27 + b"1.462", b" " * 28 + b"1.462"]:  # fmt: skip
        say(HAND_HELD[1], text)


def reply_rows():
    source = "SCPI-1999, IEEE 488.2 as reprinted"
    wide = Span("wide", "1000000", "0.01", "1", 0, "0.0002", counts="2")
    for text in ["+1.00234567E+03", "1002", "-0.0123", "5.22430E+0", "0.00000E+0", "1.0E3\n", "1,002", "1.0E", "INF", "NAN", "1.0 E3",
                 "9.9E37", "+9.90000000E+37", "-9.9E+37", "9.91e37", "+9.91000E+37", "9.900000302096328E+37", "9.95E37", "1.0E400",
                 "", "1.0E3 OHM", "146", "+146", "-12345", "12.3", "+1.2345", "2.73E+2", "1.50528E-2", "-5.76047E-4", "-9.91E37",
                 "9.909999530030929e37", "9e37", "8.9e37", "-1e38", "1e300", "-1e309", "999999.99", "1e6", "-1e6", "#HA2F", "0.1,0.2",
                 "-0", "-0.0E0", ".5", "5.", "+.5e1", ".", "+", "-e3", "1e+", "1e-", "1e5.0", "1.2.3", "--1", "1;2", "1e-400",
                 "123456.78901234567890123456789", "0.1000000000000000055511151231257827021181583404541015625", " 12 \r\n", "1\x002",
                 "9.8999e37", "9.90001e37", "9.910009e37", "1" * 128, "1" * 129, "0" * 127 + "7", "NINF", "+9.9e+037"]:  # fmt: skip
        add("meter.span.read_reply", [*wide.tokens(), text], lambda: reply(wide, text.encode()), source)
    for span in [*HAND_HELD, *BENCH]:
        for part in ["0.37", "0.9999999", "1", "-0.5"]:
            text = f"{Decimal(part) * span.top:+.8E}"
            add("meter.span.read_reply", [*span.tokens(), text], lambda: reply(span, text.encode()), source)


def shown_rows():
    source = "the rules of display texts"
    for span in [*HAND_HELD, *BENCH, *ODD_SPANS]:
        for part in ["0", "0.31415", "-0.27", "0.9999999999", "1", "-1.5"]:
            ohm = Decimal(number(Decimal(part) * span.top))
            add("meter.span.display_text", [*span.tokens(), number(ohm)], lambda: display(span, ohm), source)
    for bad in ["nan", "inf", "-inf"]:
        add("meter.span.display_text", [*HAND_HELD[0].tokens(), bad], lambda: fail(NOT_FINITE), "our rule")


def fail(status):
    raise Failure(status)


def clause_rows():
    source = "clause times temperature, decimal arithmetic"
    for span in [*HAND_HELD, BENCH[0], BENCH[6], *ODD_SPANS]:
        for part, temperature in [("0", ""), ("0.73", ""), ("-0.73", "23"), ("0.5", "28"), ("0.5", "28.5"), ("0.5", "35"), ("0.9", "0"), ("1", "-60.5")]:
            ohm = number(Decimal(part) * span.top)
            add("meter.span.clause_half_width_ohm", [*span.tokens(), ohm, temperature],
                lambda: [number(half_width(span, Decimal(ohm), temperature))], source)  # fmt: skip
    for ohm, temperature in [("nan", ""), ("inf", "23"), ("-inf", ""), ("100.0", "nan"), ("100.0", "inf")]:
        add("meter.span.clause_half_width_ohm", [*HAND_HELD[0].tokens(), ohm, temperature], lambda: fail(NOT_FINITE), "our rule")


def span_rows():
    base = HAND_HELD[1]
    for span in [*HAND_HELD, *BENCH, *ODD_SPANS]:
        add("meter.span", span.tokens(), lambda: [number(span.top / span.step)], "full scale over resolution")
    for changes, status in [
        ({"label": ""}, EMPTY), ({"label": "0123456789abcdef"}, TEXT_TOO_LONG), ({"label": "a\tb"}, UNEXPECTED_BYTE),
        ({"full_scale": "0"}, OUT_OF_RANGE), ({"full_scale": "-2000"}, OUT_OF_RANGE), ({"full_scale": "1e16"}, OUT_OF_RANGE),
        ({"full_scale": "nan"}, NOT_FINITE), ({"full_scale": "inf"}, NOT_FINITE), ({"full_scale": "2000.5"}, CONTRADICTION),
        ({"full_scale": "9"}, OUT_OF_RANGE), ({"full_scale": "2e9"}, OUT_OF_RANGE), ({"resolution": "0"}, OUT_OF_RANGE),
        ({"resolution": "nan"}, NOT_FINITE), ({"resolution": "3"}, RESOLUTION), ({"resolution": "1.5"}, RESOLUTION),
        ({"unit": "10"}, DISPLAY_UNIT), ({"unit": "0"}, DISPLAY_UNIT), ({"unit": "nan"}, DISPLAY_UNIT),
        ({"unit": "1000000000", "resolution": "0.01"}, CONTRADICTION), ({"marks": 16}, MARKS), ({"marks": 255}, MARKS),
        ({"of_reading": "1"}, OUT_OF_RANGE), ({"of_reading": "-0.1"}, OUT_OF_RANGE), ({"of_reading": "nan"}, NOT_FINITE),
        ({"of_span": "1"}, OUT_OF_RANGE), ({"of_span": "inf"}, NOT_FINITE), ({"counts": "-1"}, OUT_OF_RANGE),
        ({"counts": "1e7"}, OUT_OF_RANGE), ({"counts": "nan"}, NOT_FINITE), ({"factor": "0"}, OUT_OF_RANGE),
        ({"factor": "11"}, OUT_OF_RANGE), ({"factor": "nan"}, NOT_FINITE), ({"band": ("28", "18")}, CONTRADICTION),
        ({"band": ("-61", "18")}, OUT_OF_RANGE), ({"band": ("18", "121")}, OUT_OF_RANGE), ({"band": ("18", "inf")}, NOT_FINITE),
        ({"coefficient": "-0.1"}, OUT_OF_RANGE), ({"coefficient": "1.1"}, OUT_OF_RANGE), ({"coefficient": "nan"}, NOT_FINITE),
        ({"of_reading": "0", "counts": "0"}, MISSING_ARGUMENT),
    ]:  # fmt: skip
        add("meter.span", base._replace(**changes).tokens(), lambda: fail(status), "our rule")


def choice_rows():
    source = "closed forms of the interval, decimal arithmetic"
    parts = [("4700", "0.05", ""), ("4700", "0.05", "35"), ("220", "0.01", ""), ("1000", "0.01", "28"), ("1900", "0.0523", ""),
             ("1900", "0.0525", ""), ("0.47", "0.05", ""), ("1000000", "0.1", "8"), ("18000000", "0.1", ""), ("99.9", "0.001", "")]  # fmt: skip
    for name, meter in METERS.items():
        for part in parts:
            add("meter.choose", [name, *part], lambda: [number(choose(meter, *part))], source)
            for index in range(len(meter)):
                add("meter.choice.assessment", [name, *part, str(index)], lambda: assess(meter, *part, index), source)
        add("meter.choice.assessment", [name, *parts[0], "7"], lambda: assess(meter, *parts[0], 7), source)
    for nominal, tolerance in [("0", "0.05"), ("-1", "0.05"), ("nan", "0.05"), ("inf", "0.05"), ("1000", "0"), ("1000", "1"),
                               ("1000", "nan"), ("2e16", "0.05"), ("20000000", "0.05"), ("1e15", "0.05")]:  # fmt: skip
        add("meter.choose", ["hand_held", nominal, tolerance, ""], lambda: [number(choose(HAND_HELD, nominal, tolerance, ""))], "our rule")
    add("meter.choose", ["hand_held", "1000", "0.05", "-61"], lambda: [number(choose(HAND_HELD, "1000", "0.05", "-61"))], "our rule")


def step_rows():
    source = "95 % of the lower full scale"
    for name, index, text in [
        ("hand_held", 0, "1"), ("hand_held", 0, "-1"), ("hand_held", 0, "199.9"), ("hand_held", 0, "0.0"), ("hand_held", 1, "0.185"),
        ("hand_held", 1, "0.186"), ("hand_held", 1, "-0.002"), ("hand_held", 1, "OL"), ("hand_held", 2, "4.70"), ("hand_held", 2, "1.85"),
        ("hand_held", 2, "1.86"), ("hand_held", 2, "0.00"), ("hand_held", 3, "4.7"), ("hand_held", 3, "0.0"), ("hand_held", 4, "0.005"),
        ("hand_held", 5, "0.00"), ("hand_held", 5, "19.99"), ("hand_held", 5, "1"), ("hand_held", 5, "O.L"), ("hand_held", 6, "1"),
        ("hand_held", 1, "1462"), ("hand_held", 9, "1"), ("bench", 0, "OL"), ("bench", 6, "OL"), ("bench", 6, "4.700"), ("bench", 3, "4.701"),
        ("bench", 2, "4.7012"), ("bench", 1, "0.11000"), ("bench", 1, "0.11397"), ("bench", 1, "0.11398"), ("bench", 5, "-0.0001"),
    ]:  # fmt: skip
        add("meter.next_span", [name, str(index), text], lambda: next_span(METERS[name], index, text.encode()), source)


def ranger_rows():
    source = "the rules of the auto-ranger, in decimal arithmetic"
    rng = random.Random(77)
    sequences = [
        ("hand_held", 5, 0, "0.05", "0.5", "4700 4700 4700 4700"),
        ("hand_held", 0, 0, "0.05", "0.5", "4700 4700 4700 4700"),
        ("hand_held", 0, 2, "0.05", "0.5", "4700 " * 9),
        ("hand_held", 0, 1, "0.05", "0.5", "1e9 " * 14),
        ("hand_held", 5, 1, "0.05", "0.5", "0.04 " * 12),
        ("hand_held", 0, 0, "0.05", "0.5", "0 -0.3 0.1 0.2 199.9 200 -250 -1"),
        ("hand_held", 1, 0, "0.05", "0.5", "2200 1800 " * 6),
        ("hand_held", 1, 0, "0.05", "0.5", "2660 1340 " * 8 + "990 2100 1800 1700"),
        ("hand_held", 1, 1, "0.1", "0.1", "2200 1700 1700 2200 1700 1700 2200"),
        ("hand_held", 1, 0, "0.001", "0.9", "2300 1900 " * 11),
        ("hand_held", 2, 0, "0.05", "0.5", "1850 1860 1850 2100 1870"),
        ("bench", 6, 0, "0.05", "0.5", "4701.2 4701.2 110 110 110 130 13000 13000 13000 13000"),
        ("bench", 6, 3, "0.05", "0.5", "3.3e6 " * 10),
        ("bench", 3, 0, "0.2", "0.4", "9700 9500 12100 9500 7200 7100"),
    ]
    for name in METERS:
        for _ in range(12):
            top = rng.choice(METERS[name]).top
            ohms = " ".join(f"{top * Decimal(rng.randrange(300, 1800)) / 1000:.6g}" for _ in range(24))
            first = rng.choice(["0.05", "0.02", "0.1"])
            sequences.append((name, rng.randrange(len(METERS[name])), rng.randrange(3), first, rng.choice(["0.5", "0.3"]), ohms))
    sequences += [("hand_held", 6, 0, "0.05", "0.5", "1"), ("hand_held", 0, 0, "0", "0.5", "1"), ("hand_held", 0, 0, "0.05", "1", "1"),
                  ("hand_held", 0, 0, "nan", "0.5", "1"), ("hand_held", 0, 0, "0.05", "inf", "1"), ("hand_held", 0, 0, "0.2", "0.1", "1")]  # fmt: skip
    for name, start, discard, first, widest, ohms in sequences:
        for function, as_shown in [("meter.auto_ranger.step", True), ("meter.auto_ranger.step_ohm", False)]:
            add(function, [name, str(start), str(discard), first, widest, *ohms.split()],
                lambda: ranged(METERS[name], start, discard, first, widest, ohms.split(), as_shown), source)  # fmt: skip
    for text in ["nan", "inf", "-inf"]:
        add("meter.auto_ranger.step_ohm", ["bench", "2", "0", "0.05", "0.5", "4700", text],
            lambda: ranged(BENCH, 2, 0, "0.05", "0.5", ["4700", text], False), "our rule")  # fmt: skip


def lead_rows():
    table = Path(__file__).parent.parent / "checks" / "sensor_leads.csv"
    for line in table.read_text().splitlines()[2:]:
        kind, area, ohm_per_km, *_ = line.split(",")
        length = "1.5" if kind == "5" else "25"
        pure = 2 * Decimal(length) / (58 * Decimal(area))
        largest = 2 * Decimal(length) * Decimal(ohm_per_km) / 1000
        add("meter.leads.from_wire", [length, area, kind], lambda: [number(pure), number(largest - pure)],
            "IEC 60228 as reprinted; 1/58 from memory")  # fmt: skip
    for length, area, kind, status in [("1", "0.6", "5", NOT_IN_TABLE), ("1", "500", "1", NOT_IN_TABLE), ("1", "1", "3", NOT_IN_TABLE),
                                       ("0", "1", "5", OUT_OF_RANGE), ("-1", "1", "5", OUT_OF_RANGE), ("2e5", "1", "5", OUT_OF_RANGE),
                                       ("nan", "1", "5", NOT_FINITE), ("1", "nan", "5", NOT_FINITE), ("1", "inf", "5", NOT_FINITE)]:  # fmt: skip
        add("meter.leads.from_wire", [length, area, kind], lambda: fail(status), "our rule")


def main():
    for make in [span_rows, read_rows, reply_rows, shown_rows, clause_rows, choice_rows, step_rows, ranger_rows, lead_rows]:
        make()
    unique = list({(row[0], row[1]): row for row in rows}.values())
    old = FILE.read_text() if FILE.exists() else ""
    kept = {tuple(c[:2]): c[3] for c in (line.split("\t") for line in old.splitlines()) if len(c) == 6}
    for row in unique:
        bits = kept.get((row[0], row[1]), "")
        if row[4] == "0" and bits and [b == "-" for b in bits.split("|")] == [b == "-" for b in row[3].split("|")]:
            row[3] = bits
    text = "\n".join([NOTE, HEADINGS, *("\t".join(row) for row in unique)]) + "\n"
    if "--check" in sys.argv:
        if text != old:
            sys.exit("tests/vectors/meter.tsv is not what tests/oracles/meter_vectors.py writes: run it")
        return
    FILE.write_text(text)
    failures = sum(row[4] != "0" for row in unique)
    print(f"{len(unique)} rows, {failures} of them errors")


if __name__ == "__main__":
    main()
