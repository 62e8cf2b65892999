"""Make the fonts that the sheets and screens carry: subsets of Noto Sans and Old Standard, with their widths.

Run by hand, with `fonttools` and `brotli` installed, when a sign is wanted that the fonts lack:

    python tools/make_fonts.py NOTO_FOLDER OLD_STANDARD_FOLDER

Both families are under the SIL Open Font License 1.1, whose text lies beside the fonts. The subsets keep the
outlines as they are, drop the signs of scripts that the sheets never set, and carry names of their own, as the
licence wants of a changed font.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path

from fontTools import subset
from fontTools.ttLib import TTFont

TARGET = Path(__file__).resolve().parent.parent / "src" / "lastlook" / "sheet" / "fonts"
FACES = {
    "text": (0, "NotoSans-Regular.ttf"),
    "bold": (0, "NotoSans-Bold.ttf"),
    "italic": (0, "NotoSans-Italic.ttf"),
    "head": (1, "OldStandard-Bold.ttf"),
    "head-light": (1, "OldStandard-Regular.ttf"),
    "head-italic": (1, "OldStandard-Italic.ttf"),
}
SIGNS = [
    *range(0x20, 0x7F),
    *range(0xA0, 0x180),  # Latin of western and central Europe
    *range(0x218, 0x21C),
    *range(0x391, 0x3CA),  # Greek
    *range(0x400, 0x460),  # Cyrillic
    *range(0x1E80, 0x1E86),
    *range(0x2010, 0x2027),  # dashes, quotes, dots
    0x2032, 0x2033, 0x2044, 0x20AC, 0x2116, 0x2122,
    *range(0x2070, 0x208A),  # raised and lowered digits
    *range(0x2150, 0x215F),  # fractions
    *range(0x2190, 0x2194),  # arrows
    0x2212, 0x2248, 0x2260, 0x2264, 0x2265,
]  # fmt: skip


def main(folders: list[str]) -> None:
    """Write every face as TTF and WOFF2, and one table of widths."""
    widths: dict[str, dict[str, int]] = {}
    for name, (family, file) in FACES.items():
        options = subset.Options(
            layout_features=["kern", "liga", "tnum", "lnum", "mark"],
            hinting=False,
            name_IDs=["*"],
            notdef_outline=True,
        )
        font = subset.load_font(str(Path(folders[family]) / file), options)
        cutter = subset.Subsetter(options)
        cutter.populate(unicodes=SIGNS)
        cutter.subset(font)
        _rename(font, name)
        font.flavor = None
        font.save(TARGET / f"{name}.ttf")
        widths[name] = _widths(font)
        font.flavor = "woff2"
        font.save(TARGET / f"{name}.woff2")
    (TARGET / "widths.json").write_text(json.dumps(widths, ensure_ascii=False, sort_keys=True) + "\n", encoding="utf-8")


def _rename(font: TTFont, face: str) -> None:
    """Give the subset a name of its own; copyright and licence stay as they are."""
    names = font["name"]
    for record in list(names.names):
        if record.nameID in (0, 7, 8, 9, 10, 13, 14):
            continue
        fresh = {
            1: "Last Look " + face,
            2: "Regular",
            4: "Last Look " + face,
            6: "LastLook-" + face,
            5: "Version 1",
        }
        if record.nameID in fresh:
            names.setName(fresh[record.nameID], record.nameID, record.platformID, record.platEncID, record.langID)
        else:
            names.removeNames(record.nameID)


def _widths(font: TTFont) -> dict[str, int]:
    """Return the advance of every sign in thousandths of the type size."""
    em = font["head"].unitsPerEm
    return {chr(code): round(font["hmtx"][glyph][0] * 1000 / em) for code, glyph in font.getBestCmap().items()}


if __name__ == "__main__":
    main(sys.argv[1:])
