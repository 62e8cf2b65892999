"""How wide words are in the founts that the sheets carry, and how they break into lines.

The widths were written down when the founts were cut; a sign that no fount has is set as a question mark.
"""

from __future__ import annotations

import json
import unicodedata
from functools import cache
from pathlib import Path

from lastlook.sheet.mark import Face, Style

FONTS = Path(__file__).resolve().parent.parent / "fonts"
MM_PER_PT = 25.4 / 72
UNKNOWN = "?"
STAND_INS = {"−": "–", "≤": "<=", "≥": ">=", "≈": "~", "→": "->", "←": "<-", "✓": "v", "″": "”", "′": "’"}
"""What is set for signs that a face may lack."""


@cache
def widths() -> dict[str, dict[str, int]]:
    """Return the advance of every sign of every face, in thousandths of the type size."""
    table: dict[str, dict[str, int]] = json.loads((FONTS / "widths.json").read_text(encoding="utf-8"))
    return table


def printable(text: str, face: Face) -> str:
    """Return the text with only signs that the face has."""
    table = widths()[face.value]
    if all(sign in table for sign in text):
        return text
    whole = unicodedata.normalize("NFC", text)
    out = []
    for sign in whole:
        if sign in table:
            out.append(sign)
        elif sign in STAND_INS:
            out.append(STAND_INS[sign])
        elif sign.isspace():
            out.append(" ")
        elif unicodedata.category(sign)[0] != "C":
            plain = unicodedata.normalize("NFKD", sign)
            out.append("".join(one if one in table else UNKNOWN for one in plain))
    return "".join(out)


def width_mm(text: str, style: Style) -> float:
    """Return how wide a line of text is set, in mm."""
    table = widths()[style.face.value]
    return sum(table.get(sign, 600) for sign in printable(text, style.face)) * style.size_pt / 1000 * MM_PER_PT


def wrap(text: str, style: Style, room_mm: float) -> list[str]:
    """Break a text into lines no wider than the room; a word that is wider is broken where it must be."""
    lines: list[str] = []
    for paragraph in text.split("\n"):
        current = ""
        for word in paragraph.split(" "):
            wider = f"{current} {word}" if current else word
            if width_mm(wider, style) <= room_mm:
                current = wider
                continue
            if current:
                lines.append(current)
            *full, current = _pieces(word, style, room_mm)
            lines += full
        lines.append(current)
    return lines


def shortened(text: str, style: Style, room_mm: float) -> str:
    """Return the text on one line, its end left out if the room is too small."""
    if width_mm(text, style) <= room_mm:
        return text
    while text and width_mm(text + "…", style) > room_mm:
        text = text[:-1]
    return text.rstrip() + "…"


def _pieces(word: str, style: Style, room_mm: float) -> list[str]:
    pieces = [""]
    for sign in word:
        if pieces[-1] and width_mm(pieces[-1] + sign, style) > room_mm:
            pieces.append("")
        pieces[-1] += sign
    return pieces
