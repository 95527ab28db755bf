#!/usr/bin/env python3
"""Writes widths.json beside this file: the advance widths of the bundled fonts.

Reads the TrueType tables head, hhea, hmtx, OS/2 and cmap (format 4) directly, so that it needs
nothing but Python. Widths are in font units by code point in decimal; `unitsPerEm` and `capHeight`
(the height of H, from glyf) turn them into paper millimetres for a given capital height.
Run it again after changing a font file or CHARACTERS.
"""

import json
import pathlib
import struct

HERE = pathlib.Path(__file__).resolve().parent
FONTS = {"regular": "DejaVuSansCondensed.ttf", "bold": "DejaVuSansCondensed-Bold.ttf"}
CHARACTERS = [*range(0x20, 0x7F), *range(0xA0, 0x100), *map(ord, "′″–—•≥≤Ø×°³²½¼¾")]


def tables(data):
    count = struct.unpack_from(">H", data, 4)[0]
    found = {}
    for i in range(count):
        tag, _, offset, length = struct.unpack_from(">4sIII", data, 12 + 16 * i)
        found[tag.decode()] = data[offset : offset + length]
    return found


def format4(cmap):
    for i in range(struct.unpack_from(">H", cmap, 2)[0]):
        platform, encoding, offset = struct.unpack_from(">HHI", cmap, 4 + 8 * i)
        if (platform, encoding) == (3, 1) and struct.unpack_from(">H", cmap, offset)[0] == 4:
            return cmap[offset:]
    raise SystemExit("no Windows BMP character map of format 4")


def glyph(table, code):
    segments = struct.unpack_from(">H", table, 6)[0] // 2
    ends = 14
    starts = ends + 2 * segments + 2
    deltas = starts + 2 * segments
    ranges = deltas + 2 * segments
    for i in range(segments):
        if struct.unpack_from(">H", table, ends + 2 * i)[0] < code:
            continue
        start = struct.unpack_from(">H", table, starts + 2 * i)[0]
        if start > code:
            break
        delta = struct.unpack_from(">H", table, deltas + 2 * i)[0]
        step = struct.unpack_from(">H", table, ranges + 2 * i)[0]
        if step == 0:
            return (code + delta) & 0xFFFF
        found = struct.unpack_from(">H", table, ranges + 2 * i + step + 2 * (code - start))[0]
        return (found + delta) & 0xFFFF if found else 0
    raise SystemExit(f"the font has no character U+{code:04X}")


def top_of(found, index):
    wide = struct.unpack_from(">h", found["head"], 50)[0]
    offset = struct.unpack_from(">I", found["loca"], 4 * index)[0] if wide else (
        2 * struct.unpack_from(">H", found["loca"], 2 * index)[0])
    return struct.unpack_from(">h", found["glyf"], offset + 8)[0]


def measure(path):
    found = tables(path.read_bytes())
    metrics = struct.unpack_from(">H", found["hhea"], 34)[0]
    cmap = format4(found["cmap"])

    def width(code):
        index = min(glyph(cmap, code), metrics - 1)
        return struct.unpack_from(">H", found["hmtx"], 4 * index)[0]

    return {
        "file": path.name,
        "unitsPerEm": struct.unpack_from(">H", found["head"], 18)[0],
        "capHeight": top_of(found, glyph(cmap, ord("H"))),
        "widths": {str(c): width(c) for c in sorted(set(CHARACTERS))},
    }


result = {name: measure(HERE / file) for name, file in FONTS.items()}
(HERE / "widths.json").write_text(json.dumps(result, separators=(",", ":")) + "\n", encoding="utf-8")
