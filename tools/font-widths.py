"""Cuts a typeface down to the tables that tell how wide its letters are, so that a page measures without carrying outlines.

    python3 tools/font-widths.py FONT.ttf OUT.widths
"""
import struct
import sys

KEPT = (b"cmap", b"head", b"hhea", b"hmtx")


def cut(font: bytes) -> bytes:
    count = struct.unpack(">H", font[4:6])[0]
    entries = (struct.unpack(">4sIII", font[12 + 16 * i:28 + 16 * i]) for i in range(count))
    tables = [(tag, font[at:at + size]) for tag, _, at, size in entries if tag in KEPT]
    directory, body = font[:4] + struct.pack(">HHHH", len(tables), 0, 0, 0), b""
    for tag, table in tables:
        directory += struct.pack(">4sIII", tag, 0, 12 + 16 * len(tables) + len(body), len(table))
        body += table + b"\0" * (-len(table) % 4)
    return directory + body


if __name__ == "__main__":
    with open(sys.argv[1], "rb") as font, open(sys.argv[2], "wb") as out:
        out.write(cut(font.read()))
