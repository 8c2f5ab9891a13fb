"""Every function of the C header, called with hostile numbers, bytes, codes, counts and null pointers.

Usage: hostile.py HEADER SHARED_LIBRARY. The calls are made from the declarations in the header, so a new function needs
nothing here. Each has to give a status that the header knows and to come back; on failure every output is as it was, and no
output of numbers ever holds a NaN. Structs get bytes at random: no bits of one are illegal.
"""

import ctypes
import faulthandler
import math
import random
import re
import struct
import sys

# Room for eight of the largest struct, and for every text.
ROOM = 1 << 14
ELEMENTS = 8
CALLS = 600
# So many pieces of memory of each sort are made, once.
PIECES = 40
SECONDS = 120

NUMBERS = [
    *(math.nan, math.inf, -math.inf, 0.0, -0.0, 5e-324, -5e-324, 2.2250738585072014e-308, 1e-300, 1e300, -1e300),
    *(1.7976931348623157e308, -1.7976931348623157e308, 1.0, -1.0, 0.5, 0.05, 0.95, 0.999, 1e-9, 12.0, 1e15, 1.1e15),
    *(4700.0, 1e6, 2000.0, 1e3, 0.001, 2.0**53 + 2, 1e154, 1e-154, 25.0, 1e-45, 3.4e38),
]
# Such as go together: calls with nothing else succeed now and then.
MILD = [2000.0, 1.0, 1000.0, 0.05, 0.05, 0.5, 0.5, 25.0, 100.0]
CODES = [0, 1, 2, 3, 4, 5, 8, 12, 15, 24, 48, 96, 192, 255, 256, 1974, 2004, 2016, 77, 2**31, 2**32 - 1]
TEXTS = [
    *(b"", b"\0", b"4K7J", b"472", b"01C", b"E24", b"red violet gold gold", b"1.462", b"OL", b"1.0E", b"9.9E37", b"-0.000"),
    *(b"1" * 600, b"\xff\xfe\x80", "Ω 4,7 µ".encode(), b"1e999999999999999999999", b"----", b" \t,-", b"NAN", b"+INF"),
]
SCALARS = {
    "double": ctypes.c_double,
    "float": ctypes.c_float,
    "uint8_t": ctypes.c_uint8,
    "uint16_t": ctypes.c_uint16,
    "uint32_t": ctypes.c_uint32,
    "uint64_t": ctypes.c_uint64,
    "int32_t": ctypes.c_int32,
    "int64_t": ctypes.c_int64,
    "size_t": ctypes.c_size_t,
}
FORMATS = {"double": "d", "float": "f"}


class Parameter:
    def __init__(self, text):
        words = re.fullmatch(r"(const )?(struct )?(\w+) (\**)(\w+)", text.strip())
        if words is None:
            raise SystemExit(f"a parameter of the header is not understood: {text}")
        self.constant, _, self.type, stars, self.name = words.groups()
        self.pointer = bool(stars)
        if not self.pointer and self.type not in SCALARS:
            raise SystemExit(f"a parameter of the header is of an unknown type: {text}; say in SCALARS what it is in C")


def declarations(header):
    plain = re.sub(r"/\*.*?\*/", "", header, flags=re.S)
    found = re.findall(r"^(\w+) (rko_\w+)\(([^)]*)\);", plain, flags=re.M)
    statuses = {int(number) for number in re.findall(r"^#define RKO_[A-Z_]+ (\d+)$", plain, flags=re.M)} | {0}
    functions = [
        (result, name, [Parameter(text) for text in re.sub(r"\s+", " ", text).split(",")])
        for result, name, text in found
        if text.strip() != "void"
    ]
    return functions, statuses


def numbers(chance, form):
    """Memory of hostile numbers."""
    size = struct.calcsize(form)
    fitting = []
    for number in NUMBERS:
        try:
            fitting.append(struct.pack(form, number))
        except OverflowError:
            fitting.append(struct.pack(form, math.inf))
    return b"".join(chance.choice(fitting) for _ in range(ROOM // size))


def structs(chance):
    """Memory as whatever else: zeros, bytes at random, small whole numbers, and numbers with some among them."""
    kind = chance.randrange(8)
    if kind == 0:
        return bytes(ROOM)
    if kind == 1:
        return chance.randbytes(ROOM)
    if kind < 4:
        width = chance.choice([1, 4, 8])
        return b"".join(chance.choice(CODES[:8]).to_bytes(width, "little") for _ in range(ROOM // width))
    words = [struct.pack("d", chance.choice(NUMBERS)) for _ in range(ROOM // 8)]
    for place in range(chance.randrange(3), len(words), chance.randrange(2, 9)):
        words[place] = chance.choice(CODES).to_bytes(4, "little") * 2
    return b"".join(words)


def pieces(chance):
    """What inputs point to, by the type pointed to; None for all others."""
    made = {kind: [numbers(chance, form) for _ in range(PIECES)] for kind, form in FORMATS.items()}
    return {**made, "char": TEXTS, None: [structs(chance) for _ in range(2 * PIECES)]}


def call(chance, function, parameters, memory, filled):
    mild = chance.randrange(2)
    arguments, outputs, kept, text = [], [], [], None
    for place, parameter in enumerate(parameters):
        last = place == len(parameters) - 1
        if parameter.pointer:
            if chance.randrange(12 if not last else 2) == 0:
                arguments.append(ctypes.c_void_p(None))
                text = b"" if parameter.type == "char" else text
                continue
            if parameter.constant:
                inside = chance.choice(memory.get(parameter.type, memory[None]))
                # Bytes that an earlier call has filled are mostly legal ones.
                if parameter.type in filled and chance.randrange(3):
                    inside = chance.choice(filled[parameter.type])
                text = inside if parameter.type == "char" else text
            else:
                inside = b"\x5a" * ROOM
                if parameter.type in filled and chance.randrange(2):
                    inside = chance.choice(filled[parameter.type])
            buffer = ctypes.create_string_buffer(inside, max(len(inside), 1))
            kept.append(buffer)
            arguments.append(ctypes.cast(buffer, ctypes.c_void_p))
            if not parameter.constant:
                outputs.append((parameter, buffer, inside, last))
        elif parameter.type == "size_t":
            if text is not None and "count" not in parameter.name:
                arguments.append(ctypes.c_size_t(len(text)))
                text = None
            else:
                most = 1 if text is not None else ELEMENTS
                arguments.append(ctypes.c_size_t(chance.choice([0, 1, most, 2**64 - 1])))
        elif parameter.type in FORMATS:
            arguments.append(SCALARS[parameter.type](chance.choice(MILD if mild else NUMBERS)))
        else:
            arguments.append(SCALARS[parameter.type](chance.choice(CODES)))
    return function(*arguments), outputs


def main():
    header_path, library_path = sys.argv[1:]
    with open(header_path, encoding="utf-8") as file:
        functions, statuses = declarations(file.read())
    library = ctypes.CDLL(library_path)
    chance = random.Random(20260417)
    memory, filled, wrong, succeeded = pieces(chance), {}, [], set()
    for result, name, parameters in functions * 2:
        if result != "rko_status":
            continue
        function = getattr(library, name)
        function.restype = ctypes.c_int32
        # If it never comes back, or ends the process, this says where.
        sys.stderr.write(f"\r{name:60}")
        sys.stderr.flush()
        faulthandler.enable()
        faulthandler.dump_traceback_later(SECONDS, exit=True)
        for _ in range(CALLS):
            status, outputs = call(chance, function, parameters, memory, filled)
            if status not in statuses:
                wrong.append(f"{name} gave the status {status}, which the header does not have")
            for parameter, buffer, before, last in outputs:
                if status == 0:
                    succeeded.add(name)
                    form = FORMATS.get(parameter.type)
                    if form and any(map(math.isnan, struct.unpack_from(f"{ELEMENTS}{form}", buffer))):
                        wrong.append(f"{name} wrote a NaN to {parameter.name}")
                    if parameter.type.startswith("rko_") and not last:
                        filled.setdefault(parameter.type, []).append(buffer.raw)
                        del filled[parameter.type][:-40]
                elif not (last and parameter.type == "rko_detail") and buffer.raw[: len(before)] != before:
                    wrong.append(f"{name} changed {parameter.name} and gave {status}")
        faulthandler.cancel_dump_traceback_later()
    sys.stderr.write("\r" + " " * 60 + "\r")
    for line in sorted(set(wrong)):
        print(line)
    asked = {name for result, name, _ in functions if result == "rko_status"}
    if not asked:
        raise SystemExit(f"no function found in {header_path}")
    print(f"{len(asked)} functions, {2 * CALLS} calls each, {len(succeeded)} functions succeeded at least once")
    if never := sorted(asked - succeeded):
        print("never succeeded:", ", ".join(never))
    if wrong:
        raise SystemExit(f"{len(set(wrong))} things wrong")


main()
