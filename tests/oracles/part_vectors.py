#!/usr/bin/env python3
"""Writes vectors/preferred.tsv and vectors/marking.tsv.

Independent of the library: series, colours and letters come from the tables in checks/, all arithmetic is in exact
fractions, and the last step alone is a (correctly rounded) division of whole numbers. So the decimals and the bits here are
what the library must give, not what it gave.

    python3 tests/oracles/part_vectors.py [--check]
"""

import csv
import math
import random
import struct
import sys
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

HERE = Path(__file__).resolve().parent.parent
KIND = dict(OutOfRange=1, NotFinite=2, Empty=3, MissingArgument=6, WrongCount=7, UnexpectedByte=20, UnknownSeries=100,
            UnknownColour=101, MisplacedColour=102, WrongForm=103, DoubtfulCode=104, NoSuchMarking=105)
EXACT = "exact fractions"
LARGEST = 1e15


def table(name):
    with open(HERE / "checks" / name, newline="") as file:
        return list(csv.DictReader(file))


def escape(data):
    if isinstance(data, str):
        data = data.encode("utf-8")
    text = "".join(chr(b) if 32 <= b < 127 and b not in b"|\\" else f"\\x{b:02x}" for b in data)
    return text


def joined(items):
    items = list(items)
    return "\\x" if items == [""] else "|".join(items)


class File:
    def __init__(self, head):
        self.head, self.rows = head, []

    def add(self, function, inputs, outputs, source):
        """A row: numbers and fractions become decimals and bits, texts stay; a name of a kind is an error."""
        inputs = joined(repr(x) if isinstance(x, float) else escape(x) for x in inputs)
        if isinstance(outputs, str):
            row = [function, inputs, "", "", str(KIND[outputs]), source]
        else:
            decimals, bits = [], []
            for output in outputs:
                if isinstance(output, (Fraction, float)):
                    number = float(output)
                    decimals.append(repr(number))
                    bits.append(struct.pack(">d", number).hex())
                else:
                    decimals.append(escape(output))
                    bits.append("-")
            row = [function, inputs, joined(decimals), "|".join(bits), "0", source]
        if row not in self.rows:
            self.rows.append(row)

    def text(self):
        lines = [f"# {line}" for line in self.head]
        lines.append("function\tinputs\toutputs\tbits\tstatus\tsource")
        return "\n".join(lines + ["\t".join(row) for row in self.rows]) + "\n"


# Preferred values

SERIES = {}
for line in table("part_series.csv"):
    SERIES.setdefault(line["series"], []).append(Fraction(line["value"]))
TOLERANCE = {line["series"]: line["tolerance"] for line in table("part_series_tolerance.csv")}


def written(x):
    """The number as it was written: the decimal of at most 15 figures that rounds to it, else exactly the float."""
    if x < sys.float_info.min:
        return Fraction(x)
    short = f"{x:.14e}"
    return Fraction(short) if float(short) == x else Fraction(x)


def candidates(x, series):
    order = math.floor(math.log10(x)) if x > 0 else 0
    return [v * Fraction(10) ** e for e in range(order - 2, order + 3) for v in SERIES[series]]


def neighbours(x, series):
    values = candidates(x, series)
    return max(v for v in values if float(v) <= x), min(v for v in values if float(v) >= x)


def nearest(x, series):
    low, high = neighbours(x, series)
    exact = written(x)
    return low if abs(low - exact) <= abs(high - exact) or float(low) == x else high


def coarsest(x):
    return next((s for s in SERIES if float(neighbours(x, s)[0]) == x), "")


def preferred():
    out = File(["Preferred values. Written by oracles/part_vectors.py from checks/part_series.csv in exact fractions.",
                "Inputs: ohm|series. coarsest: ohm, gives a name or nothing; decade and tolerance: series."])
    rng = random.Random(60063)
    for series, values in SERIES.items():
        out.add("preferred.decade", [series], values, "checks/part_series.csv")
        tolerance = TOLERANCE[series]
        out.add("preferred.tolerance", [series], [Fraction(tolerance) if tolerance else ""],
                "checks/part_series_tolerance.csv")

    def ask(x, series, source=EXACT):
        low, high = neighbours(x, series)
        out.add("preferred.nearest", [x, series], [nearest(x, series)], source)
        out.add("preferred.neighbours", [x, series], [low, high], source)

    for series, values in SERIES.items():
        for _ in range(12):
            ask(float(f"{10 ** rng.uniform(-3, 9):.{rng.randint(1, 5)}e}"), series)
        for _ in range(4):
            ask(math.exp(rng.uniform(-30, 34)), series)
        for _ in range(4):  # ties as written, and the floats beside them
            index, e = rng.randrange(len(values)), rng.randint(-3, 8)
            following = values[index + 1] if index + 1 < len(values) else Fraction(10)
            tie = float((values[index] + following) / 2 * Fraction(10) ** e)
            ask(tie, series, "half-way between two values")
            ask(math.nextafter(tie, math.inf), series, "the float above half-way")
            ask(math.nextafter(tie, 0), series, "the float below half-way")
        for _ in range(4):
            x = float(rng.choice(values) * Fraction(10) ** rng.randint(-12, 12))
            for y in (x, math.nextafter(x, 0), math.nextafter(x, math.inf)):
                low, high = neighbours(y, series)
                out.add("preferred.below", [y, series], [low], "a value and its neighbouring floats")
                out.add("preferred.above", [y, series], [high], "a value and its neighbouring floats")
                out.add("preferred.contains", [y, series], ["true" if float(low) == y else "false"],
                        "a value and its neighbouring floats")
        for x in (LARGEST, math.nextafter(LARGEST, 0), 1e-300, 2.2250738585072014e-308):
            ask(x, series, "near an end of the range")
    for x in (1.0, 2.7, 2700.0, 5.1, 180.0, 1.05, 1.02, 1.01, 9.2, 9.19, 920.0, 4990.0, 0.0047, 3.14, 1e15, 8.2e-7, 2.22,
              47.000000000000007, 7.5, 9.1e14):
        out.add("preferred.coarsest", [x], [coarsest(x)], EXACT)
    wrong = [(0.0, "OutOfRange"), (-0.0, "OutOfRange"), (-4700.0, "OutOfRange"), (math.nextafter(LARGEST, math.inf), "OutOfRange"),
             (1.7976931348623157e308, "OutOfRange"), (math.nan, "NotFinite"), (math.inf, "NotFinite"), (-math.inf, "NotFinite")]
    for x, kind in wrong:
        for function in ("nearest", "below", "above", "neighbours", "contains"):
            out.add(f"preferred.{function}", [x, "E24"], kind, "outside (0, 1e15] ohm")
        out.add("preferred.coarsest", [x], kind, "outside (0, 1e15] ohm")
    for name in ("E13", "", "12", "E 12", "E-12", "E1922", "\u00c912"):
        out.add("preferred.tolerance", [name], "UnknownSeries", "no such series")
        out.add("preferred.nearest", [4700.0, name], "UnknownSeries", "no such series")
    return out


# Markings

COLOURS = {line["colour"]: line for line in table("part_colours.csv") if line["colour"] != "none"}
LETTERS = {line["letter"]: Fraction(Decimal(line["plus"])) for line in table("part_tolerance_letters.csv") if line["source_ids"] != "MEM"}
E96 = [int(line["figures"]) for line in table("part_chip_e96_codes.csv")]
POWERS = {line["letter"]: int(line["exponent"]) for line in table("part_chip_multiplier_letters.csv") if line["accept"] == "yes"}
EDITIONS = ("1974", "2004", "2016")


def tolerance_of(colour, edition):
    text = COLOURS[colour][{"1974": "tolerance_1974", "2004": "tolerance_2004", "2016": "tolerance"}[edition]]
    return Fraction(text) if text else None


def exponent_of(colour, edition):
    return None if colour == "pink" and edition != "2016" else int(COLOURS[colour]["multiplier_exponent"])


def marking(nominal, tolerance=None, tcr=None):
    """The five outputs: nominal, tolerance, coefficient, lower and upper limit, empty where there is none."""
    limits = ["", ""] if tolerance is None else [nominal * (1 - tolerance), nominal * (1 + tolerance)]
    return [nominal, "" if tolerance is None else tolerance, "" if tcr is None else Fraction(tcr), *limits]


def decode(colours, edition):
    """What these bands say as (nominal, tolerance, coefficient), or None."""
    if colours == ["black"]:
        return Fraction(0), None, None
    figures = 2 if len(colours) < 5 else 3
    digits = [COLOURS[c]["digit"] for c in colours[:figures]]
    multiplier, rest = exponent_of(colours[figures], edition), colours[figures + 1:]
    if "" in digits or digits[0] == "0" or multiplier is None:
        return None
    tolerance = tolerance_of(rest[0], edition) if rest else Fraction(1, 5)
    tcr = COLOURS[rest[1]]["tcr_ppm"] if len(rest) > 1 else None
    if tolerance is None or tcr == "":
        return None
    return int("".join(digits)) * Fraction(10) ** multiplier, tolerance, tcr


def spoken(colours, rng):
    """The same bands in one of the ways to write them."""
    style = rng.randrange(5)
    words = [{0: c, 1: c.upper(), 2: c.title(), 3: COLOURS[c]["code"], 4: COLOURS[c]["code"].lower()}[style] for c in colours]
    return rng.choice([" ", ", ", "-", ",", "  ", " - ", "\t"]).join(words)


def in_a_series(x):
    return bool(coarsest(float(x)))


def doubts(colours, said):
    found = []
    if said is None:
        found.append("does not decode")
    if len(colours) > 1 and COLOURS[colours[0]]["digit"] == "":
        found.append("tolerance colour first")
    if said and said[0]:
        if not in_a_series(said[0]):
            found.append("in no series")
        if len(colours) == 4 and said[1] < Fraction("0.05") or len(colours) > 4 and said[1] > Fraction("0.02"):
            found.append("unusual tolerance")
    return found


def both_ways(colours, edition):
    outputs, weights = [], []
    order = ["unusual tolerance", "in no series", "tolerance colour first", "does not decode"]
    for bands in (colours, colours[::-1]):
        said = decode(bands, edition)
        against = doubts(bands, said)
        outputs += [said[0] if said else "", ", ".join(against)]
        weights.append(sum(2 ** order.index(doubt) for doubt in against))
    direction = "" if weights[0] == weights[1] else "forward" if weights[0] < weights[1] else "backward"
    return outputs + [direction]


def bands_rows(out):
    rng = random.Random(60062)
    for line in table("part_tcr_examples.csv"):
        said = decode(line["bands"].split(), "2016")
        assert float(said[0]) == float(line["ohm"])
        out.add("marking.from_bands", [line["bands"], "2016"], marking(*said), line["source_id"])
    names = list(COLOURS)
    for edition in EDITIONS:
        done = 0
        while done < 45:
            colours = [rng.choice(names) for _ in range(rng.choice([3, 4, 4, 5, 5, 6]))]
            said = decode(colours, edition)
            if said:
                out.add("marking.from_bands", [spoken(colours, rng), edition], marking(*said), EXACT)
                done += 1
            elif rng.random() < 0.04:
                out.add("marking.from_bands", [spoken(colours, rng), edition], "MisplacedColour", "checks/part_colours.csv")
        for colour in names:  # every colour as the tolerance and as the multiplier
            for bands in (["brown", "black", "black", "red", colour], ["red", "red", colour]):
                said = decode(bands, edition)
                out.add("marking.from_bands", [" ".join(bands), edition], marking(*said) if said else "MisplacedColour",
                        "checks/part_colours.csv")
    for word in ("gray", "GRAY", "Grey", "gy"):
        out.add("marking.from_bands", [f"{word} red black brown violet", "2016"], marking(*decode("grey red black brown violet".split(), "2016")), EXACT)
    for text, kind in [("", "Empty"), (" ,- ", "Empty"), ("red", "MisplacedColour"), ("red red", "WrongCount"),
                       ("black black", "WrongCount"), ("red " * 7, "WrongCount"), ("red " * 300, "WrongCount"),
                       ("red purple red", "UnknownColour"), ("red redred red", "UnknownColour"), ("r e d", "UnknownColour"),
                       ("red red red none", "UnknownColour"), ("red;red;red", "UnexpectedByte"), ("2 2 2", "UnexpectedByte"),
                       ("red\nred\nred", "UnexpectedByte"), ("r\u00f6d red red", "UnexpectedByte"), (b"\xff\x00", "UnexpectedByte"),
                       (b"red red red\x00", "UnexpectedByte"), ("gold red violet yellow", "MisplacedColour"),
                       ("black brown red gold", "MisplacedColour"), ("black black black", "MisplacedColour")]:
        out.add("marking.from_bands", [text, "2016"], kind, "refused")
    rows = ["yellow violet red gold", "gold red violet yellow", "brown black black brown brown", "red red blue brown brown",
            "brown brown blue red red", "black", "red red red", "brown black orange", "red violet brown gold",
            "brown black red brown", "orange orange black gold", "silver grey white", "brown green grey silver red green",
            "green green green gold", "violet green black black brown", "brown black black red gold", "white white white white white"]
    for row in rows:
        for edition in EDITIONS:
            out.add("marking.both_ways", [row, edition], both_ways(row.split(), edition), EXACT)
    for _ in range(25):
        colours = [rng.choice(names) for _ in range(rng.choice([3, 4, 5, 6]))]
        out.add("marking.both_ways", [spoken(colours, rng), "2016"], both_ways(colours, "2016"), EXACT)
    for text, kind in [("", "Empty"), ("red red", "WrongCount"), ("red blau red", "UnknownColour"), ("red/red", "UnexpectedByte")]:
        out.add("marking.both_ways", [text, "2016"], kind, "refused")


def letters_rows(out):
    rng = random.Random(757)
    for line in table("part_letter_codes.csv"):
        nominal = Fraction(line["ohm"])
        if line["kind"] in ("letter_and_digit", "rkm_tolerance", "rkm_four_figures"):
            said = marking(nominal, Fraction(line["tolerance"]) if line["tolerance"] else None)
            out.add("marking.from_letters", [line["code"]], said, line["source_id"])
            out.add("marking.to_letters", [float(nominal), line["tolerance"], ""], [line["code"]], line["source_id"])
    for _ in range(50):
        order, count = rng.randint(-2, 14), rng.randint(1, 4)
        digits = str(rng.randint(10 ** (count - 1), 10 ** count - 1))
        before = order % 3 + 1
        text = (digits + "00")[:max(count, before)]
        code = text[:before] + "RKMGT"[order // 3] + text[before:] if order >= 0 else "R" + "0" * (-order - 1) + digits
        if order < 0 and -order - 1 + count > 4:
            continue
        nominal = int(digits) * Fraction(10) ** (order - count + 1)
        letter = rng.choice(["", *LETTERS])
        out.add("marking.from_letters", [code + letter], marking(nominal, LETTERS.get(letter)), EXACT)
    out.add("marking.from_letters", ["0R47"], marking(Fraction("0.47")), EXACT)
    out.add("marking.from_letters", ["0R047J"], marking(Fraction("0.047"), Fraction("0.05")), EXACT)
    for letter in "ELPWNQTSZ":
        out.add("marking.from_letters", ["4K7" + letter], "DoubtfulCode", "no source for this letter")
    for text, kind in [("", "Empty"), ("472", "WrongForm"), ("47J", "WrongForm"), ("J", "WrongForm"), ("R", "WrongForm"), ("K47", "WrongForm"),
                       ("M1", "WrongForm"), ("R0", "WrongForm"), ("0R0", "WrongForm"), ("0R", "WrongForm"), ("000K", "WrongForm"),
                       ("0K47", "WrongForm"), ("04K7", "WrongForm"), ("00R47", "WrongForm"), ("1000R", "WrongForm"),
                       ("123R45", "WrongForm"), ("1R2345", "WrongForm"), ("R00470", "WrongForm"), ("4k7", "WrongForm"), ("4m7", "WrongForm"),
                       ("4K7j", "WrongForm"), ("4L7", "DoubtfulCode"), ("4K7H", "UnexpectedByte"), ("4K7JJ", "UnexpectedByte"),
                       ("4K7 J", "UnexpectedByte"), (" 4K7", "UnexpectedByte"), ("4.7K", "UnexpectedByte"), ("4,7", "UnexpectedByte"), ("-4K7", "UnexpectedByte"),
                       ("4K7\u03a9", "UnexpectedByte"), (b"4K7\x00", "UnexpectedByte"), (b"\xfe", "UnexpectedByte"), ("4K7K7", "UnexpectedByte")]:
        out.add("marking.from_letters", [text], kind, "refused")
    for nominal, tolerance, kind in [(12345.0, "", "NoSuchMarking"), (1e15, "", "NoSuchMarking"), (0.00047, "", "NoSuchMarking"), (4700.0, "0.03", "NoSuchMarking"),
                                     (4700.0, "0.0001", "NoSuchMarking"), (0.0, "", "OutOfRange"), (-1.0, "", "OutOfRange"), (math.nan, "", "NotFinite"),
                                     (0.3333333333333333, "", "NoSuchMarking"), (4700.0, "5.0", "OutOfRange"), (4700.0, "0.0", "OutOfRange")]:
        out.add("marking.to_letters", [nominal, tolerance, ""], kind, "refused")


def chip_rows(out):
    rng = random.Random(60115)
    for line in table("part_letter_codes.csv"):
        nominal, code = Fraction(line["ohm"]), line["code"]
        tolerance = Fraction(line["tolerance"]) if line["tolerance"] else None
        if line["kind"] in ("chip3", "chip4", "chip_zero", "chip_e96"):
            out.add("marking.from_chip", [code, ""], marking(nominal, tolerance), line["source_id"])
        if line["kind"] == "chip_e96_mil_rs":
            out.add("marking.from_chip", [code, "military"], marking(nominal, tolerance), line["source_id"])
            out.add("marking.from_chip", [code, ""], "DoubtfulCode", line["source_id"])
    for _ in range(30):
        digits, power = rng.randint(10, 99), rng.randint(0, 9)
        out.add("marking.from_chip", [f"{digits}{power}", ""], marking(digits * Fraction(10) ** power), EXACT)
        digits = rng.randint(100, 999)
        out.add("marking.from_chip", [f"{digits}{power}", ""], marking(digits * Fraction(10) ** power), EXACT)
        place, letter = rng.randint(1, 96), rng.choice(list(POWERS))
        out.add("marking.from_chip", [f"{place:02}{letter}", ""], marking(E96[place - 1] * Fraction(10) ** POWERS[letter], Fraction("0.01")), EXACT)
        at, figures = rng.randint(0, 3), str(rng.randint(100, 999))
        out.add("marking.from_chip", [f"{figures[:at]}R{figures[at:]}", ""], marking(int(figures) * Fraction(10) ** (at - 3)), EXACT)
    for code in ("R47", "4R7", "R047", "0R47", "R05", "0R5", "100R", "R001"):
        nominal = Fraction(("0" + code).replace("R", ".") + "0")
        out.add("marking.from_chip", [code, ""], marking(nominal), EXACT)
    out.add("marking.from_chip", ["0000", ""], marking(Fraction(0)), "the rule for four figures")
    for letter, scheme, power in [("R", "military", -1), ("S", "military", -2), ("R", "common list", -2), ("S", "common list", -1), ("H", "common list", 1),
                                  ("G", "large values", 6), ("H", "large values", 7), ("H", "military", None), ("G", "military", None),
                                  ("G", "common list", None), ("R", "large values", None), ("S", "large values", None)]:
        outputs = "DoubtfulCode" if power is None else marking(499 * Fraction(10) ** power, Fraction("0.01"))
        out.add("marking.from_chip", [f"68{letter}", scheme], outputs, "checks/part_chip_multiplier_letters.csv")
        out.add("marking.from_chip", [f"68{letter}", ""], "DoubtfulCode", "checks/part_chip_multiplier_letters.csv")
    for text, kind in [("", "Empty"), ("5", "WrongForm"), ("00", "WrongForm"), ("47", "WrongForm"), ("12345", "WrongForm"), ("012", "WrongForm"), ("0123", "WrongForm"), ("01R5", "WrongForm"),
                       ("R00", "WrongForm"), ("0R0", "WrongForm"), ("R000", "WrongForm"), ("00A", "WrongForm"), ("97A", "WrongForm"), ("99F", "WrongForm"), ("01a", "WrongForm"), ("4r7", "WrongForm"),
                       ("01J", "UnexpectedByte"), ("01M", "UnexpectedByte"), ("4K7", "UnexpectedByte"), ("R4R", "UnexpectedByte"), ("12A4", "UnexpectedByte"), ("4.7", "UnexpectedByte"),
                       ("10R", "DoubtfulCode"), (" 472", "UnexpectedByte"), (b"47\x00", "UnexpectedByte"), (b"\xce\xa9", "UnexpectedByte")]:
        out.add("marking.from_chip", [text, ""], kind, "refused")
    for nominal, tolerance, code in [(4700.0, "", "472"), (4700.0, "0.05", "472"), (4700.0, "0.01", "4701"), (4990.0, "", "4991"), (10.0, "0.05", "100"), (10.0, "0.02", "10R0"),
                                     (4.7, "", "4R7"), (0.47, "", "R47"), (0.047, "", "R047"), (0.05, "", "R05"), (0.332, "0.01", "R332"), (1.5, "0.01", "1R50"), (99e9, "", "999"), (9.99e11, "", "9999"), (0.001, "", "R001")]:
        out.add("marking.to_chip", [nominal, tolerance, ""], [code], "by hand")
    for nominal in (12345.0, 4701.0, 1e12, 0.0001, 0.0047):
        out.add("marking.to_chip", [nominal, "", ""], "NoSuchMarking", "refused")


def writing_rows(out):
    rng = random.Random(1974)
    digit = {COLOURS[c]["digit"]: c for c in COLOURS if COLOURS[c]["digit"]}
    for edition in EDITIONS:
        power = {exponent_of(c, edition): c for c in COLOURS}
        power.pop(None, None)
        tolerances = {tolerance_of(c, edition): c for c in COLOURS}
        tolerances.pop(None, None)
        coefficients = {COLOURS[c]["tcr_ppm"]: c for c in COLOURS if COLOURS[c]["tcr_ppm"]}
        for _ in range(30):
            tolerance = rng.choice([*tolerances, Fraction(1, 5)])
            figures = 2 if tolerance > Fraction("0.02") else 3
            value, e = rng.randint(10 ** (figures - 1), 10 ** figures - 1), rng.choice(list(power))
            nominal = value * Fraction(10) ** e
            bands = [digit[d] for d in str(value)] + [power[e]]
            if tolerance != Fraction(1, 5):
                bands.append(tolerances[tolerance])
            tcr = ""
            if figures == 3 and rng.random() < 0.4:
                tcr = rng.choice(list(coefficients))
                bands.append(coefficients[tcr])
            out.add("marking.to_bands", [float(nominal), repr(float(tolerance)), tcr, edition], [" ".join(bands)], EXACT)
    for nominal, tolerance, tcr, edition, kind in [
            (4700.0, "", "", "2016", "MissingArgument"), (4702.0, "0.01", "", "2016", "NoSuchMarking"), (4700.0, "0.03", "", "2016", "NoSuchMarking"),
            (4700.0, "0.0002", "", "2004", "NoSuchMarking"), (0.123, "0.01", "", "2004", "NoSuchMarking"), (1e13, "0.01", "", "2016", "NoSuchMarking"),
            (499.0, "0.2", "", "2016", "NoSuchMarking"), (4700.0, "0.01", "33", "2016", "NoSuchMarking"), (4700.0, "0.2", "100", "2016", "NoSuchMarking"),
            (4700.0, "0.01", "0", "2016", "OutOfRange"), (4700.0, "0.01", "10001", "2016", "OutOfRange"), (1e16, "0.01", "", "2016", "OutOfRange")]:
        out.add("marking.to_bands", [nominal, tolerance, tcr, edition], kind, "refused")
    out.add("marking.to_bands", [0.1, "0.01", "", "2004"], ["brown black silver brown"], "only four bands can say it")
    out.add("marking.to_bands", [0.1, "0.01", "", "2016"], ["brown black black pink brown"], "COMPUTED")
    out.add("marking.to_bands", [5.2e11, "0.05", "", "2016"], ["green red black white gold"], "only five bands can say it")
    for _ in range(60):
        digits, e = rng.randint(1, 99999), rng.randint(-4, 7)
        tolerance = Fraction(rng.randint(1, 9999), 10000)
        nominal = float(digits * Fraction(10) ** e)
        exact = [digits * Fraction(10) ** e * (1 - tolerance), digits * Fraction(10) ** e * (1 + tolerance)]
        out.add("verdict.limits.from_tolerance", [nominal, repr(float(tolerance))], exact, EXACT)
    for nominal, tolerance, kind in [(0.0, "0.05", "OutOfRange"), (4700.0, "0.0", "OutOfRange"), (4700.0, "1.0", "OutOfRange"), (4700.0, "nan", "NotFinite"), (math.inf, "0.05", "NotFinite")]:
        out.add("verdict.limits.from_tolerance", [nominal, tolerance], kind, "refused")


def markings():
    out = File(["Markings. Written by oracles/part_vectors.py from the tables in checks/ in exact fractions.",
                "from_bands: text|edition, from_letters: text, from_chip: text|scheme (empty: none) give",
                "nominal|tolerance|coefficient in ppm/K|lower limit|upper limit, empty where there is none.",
                "to_bands: nominal|tolerance|coefficient|edition; to_letters, to_chip: nominal|tolerance|coefficient.",
                "both_ways: text|edition gives nominal|doubts|nominal|doubts|more plausible direction, forward first."])
    bands_rows(out)
    letters_rows(out)
    chip_rows(out)
    writing_rows(out)
    return out


def main():
    stale = []
    for name, file in (("preferred.tsv", preferred()), ("marking.tsv", markings())):
        path = HERE / "vectors" / name
        if "--check" in sys.argv[1:]:
            if not path.exists() or path.read_text() != file.text():
                stale.append(name)
        else:
            path.write_text(file.text())
            print(f"vectors/{name}: {len(file.rows)} rows")
    if stale:
        sys.exit(f"{', '.join(stale)} differ from what python3 tests/oracles/part_vectors.py writes")


if __name__ == "__main__":
    main()
