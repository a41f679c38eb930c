#!/bin/sh
# Makes the two typefaces that Tautline embeds in its PDFs, and the licence text beside them.
#
# Needs Debian's fonts-noto-core (20201225-1 was used) and python3-fonttools (4.38.0 was used):
#   apt-get install fonts-noto-core python3-fonttools
#
# Source: Noto Sans Regular and Bold. Noto Sans has no arrows and few signs of arithmetic; those come
# from Noto Sans Math Regular, for both weights. Hinting, kerning and all other layout tables are left out:
# the page writer places text by advance widths alone. The result is a Modified Version under the
# SIL Open Font License 1.1 and therefore carries a name of its own, "Tautline Sans".
set -eu
here=$(cd "$(dirname "$0")/.." && pwd)
FONTS=${FONTS:-/usr/share/fonts/truetype/noto} \
NOTICE=${NOTICE:-/usr/share/doc/fonts-noto-core/copyright} \
OUT="$here/src/Tautline.Papers/Fonts" \
exec "${PYTHON:-/usr/bin/python3}" - <<'PYTHON'
import os, tempfile
from fontTools import subset
from fontTools.merge import Merger
from fontTools.ttLib import TTFont

FONTS, NOTICE, OUT = os.environ["FONTS"], os.environ["NOTICE"], os.environ["OUT"]

# Latin-1, Latin Extended-A, the typographic marks a sheet uses, prime marks, eighths and superscripts.
TEXT = (list(range(0x20, 0x7F)) + list(range(0xA0, 0x180))
        + [ord(c) for c in "\u2010\u2011\u2012\u2013\u2014\u2018\u2019\u201a\u201c\u201d\u201e"
                           "\u2020\u2022\u2026\u2030\u2032\u2033\u2039\u203a\u2044\u20ac\u2122"
                           "\u215b\u215c\u215d\u215e\u2007\u2009\u202f\u2219"])
SIGNS = [ord(c) for c in "\u2190\u2191\u2192\u2193\u2194\u2195\u2196\u2197\u2198\u2199"
                         "\u2205\u2212\u221a\u2220\u2248\u2260\u2264\u2265\u22a5\u2206"]

def cut(path, wanted):
    options = subset.Options(hinting=False, layout_features=[], name_IDs=[0, 1, 2, 3, 4, 5, 6, 13, 14],
                             notdef_outline=True, glyph_names=False, recalc_timestamp=False,
                             drop_tables=["GSUB", "GPOS", "GDEF", "MATH", "STAT", "DSIG", "gasp", "meta"])
    font = subset.load_font(path, options)
    held = set(font.getBestCmap())
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=[c for c in wanted if c in held])
    cutter.subset(font)
    place = tempfile.mktemp(suffix=".ttf")
    font.save(place)
    return place, held

def rename(font, style):
    names = font["name"]
    notice = names.getDebugName(0)
    names.names = []
    values = {0: notice, 1: "Tautline Sans", 2: style, 3: "Tautline Sans " + style + " 1",
              4: "Tautline Sans " + style, 5: "Version 1.0; cut from Noto Sans 2.004 and Noto Sans Math",
              6: "TautlineSans-" + style,
              13: "This Font Software is licensed under the SIL Open Font License, Version 1.1.",
              14: "https://openfontlicense.org"}
    for number, text in values.items():
        names.setName(text, number, 3, 1, 0x409)

def metrics_of(path):
    font = TTFont(path)
    return {(t, f): getattr(font[t], f) for t, f in METRICS}

# The line height and style marks stay those of Noto Sans, whatever the merged-in signs say.
METRICS = [("hhea", "ascent"), ("hhea", "descent"), ("hhea", "lineGap"),
           ("OS/2", "sTypoAscender"), ("OS/2", "sTypoDescender"), ("OS/2", "sTypoLineGap"),
           ("OS/2", "usWinAscent"), ("OS/2", "usWinDescent"), ("OS/2", "usWeightClass"), ("OS/2", "fsSelection"),
           ("OS/2", "fsType"), ("head", "macStyle"), ("head", "created"), ("head", "modified"), ("head", "fontRevision"),
           ("post", "underlinePosition"), ("post", "underlineThickness")]

for style in ("Regular", "Bold"):
    source = f"{FONTS}/NotoSans-{style}.ttf"
    letters, held = cut(source, TEXT + SIGNS)
    signs, _ = cut(f"{FONTS}/NotoSansMath-Regular.ttf", [c for c in TEXT + SIGNS if c not in held])
    font = Merger().merge([letters, signs])
    font.recalcTimestamp = False
    for (table, field), value in metrics_of(source).items():
        setattr(font[table], field, value)
    font["post"].formatType = 3.0
    for tag in ("GSUB", "GPOS", "GDEF"):
        if tag in font:
            del font[tag]
    rename(font, style)
    font.save(f"{OUT}/TautlineSans-{style}.ttf")
    left_out = sorted(set(TEXT + SIGNS) - set(font.getBestCmap()))
    print(style, os.path.getsize(f"{OUT}/TautlineSans-{style}.ttf"), "bytes,", len(font.getBestCmap()), "characters,",
          "not found:", " ".join(f"{c:04X}" for c in left_out) or "none")

def licence_text():
    lines, inside = [], False
    for line in open(NOTICE, encoding="utf-8"):
        if line.startswith("License: OFL-1.1") and not inside:
            inside = True
        elif inside and not line.startswith(" "):
            if len(lines) > 20:
                return lines
            lines, inside = [], False
        elif inside:
            lines.append("" if line.strip() == "." else line.strip())
    return lines

with open(f"{OUT}/OFL.txt", "w", encoding="utf-8") as out:
    out.write("Copyright 2010, 2012-2020 Google Inc., 2015-2020 Google LLC (Noto Sans, Noto Sans Math)\n"
              "Tautline Sans is a Modified Version of these.\n\n"
              "This Font Software is licensed under the SIL Open Font License, Version 1.1.\n\n"
              "SIL OPEN FONT LICENSE Version 1.1 - 26 February 2007\n\n")
    out.write("\n".join(licence_text()) + "\n")
PYTHON

for style in Regular Bold; do
  python3 "$here/tools/font-widths.py" "$here/src/Tautline.Papers/Fonts/TautlineSans-$style.ttf" "$here/src/Tautline.Documents/Fonts/TautlineSans-$style.widths"
done
