"""Paper pieces written as DXF by the apparel convention: a block a piece, in mm, curves as chords 0.003 mm off at most.

A piece on the fold is written as the half that is drawn, with its fold on the layer of mirror lines.
"""

from __future__ import annotations

import io
from collections.abc import Sequence
from typing import Any

from lastlook.finding import Finding
from lastlook.geometry import Path, Point
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.take.dxf.layers import NUMBERS
from lastlook.paper.take.outline import unread

CHORD_MM = 0.003
TEXT_MM = 6.0
MM = 4
"""The header's code for millimetres."""


def write_dxf(pieces: Sequence[PaperPiece]) -> str | Finding:
    """Return the pieces as the text of one DXF file, or why it can't be written here."""
    try:
        import ezdxf
    except ImportError:
        why = "Writing DXF needs the package ezdxf."
        return unread("DXF can't be written on this machine.", why, "Install lastlook[dxf].")
    drawing = ezdxf.new("R2000")  # type: ignore[attr-defined]
    drawing.header["$INSUNITS"] = MM
    space = drawing.modelspace()
    for piece in pieces:
        name = _plain(piece.name)
        while name in drawing.blocks:
            name += " again"
        _draw(drawing.blocks.new(name), piece)
        space.add_blockref(name, (0, 0), dxfattribs={"layer": NUMBERS["cut"]})
    out = io.StringIO()
    drawing.write(out)
    return out.getvalue()


def _draw(block: Any, piece: PaperPiece) -> None:
    _line(block, piece.cut_line, "cut")
    _line(block, _open_at_darts(piece), "seam")
    block.add_line(*piece.grain, dxfattribs={"layer": NUMBERS["grain"]})
    if piece.fold:
        block.add_line(*piece.fold, dxfattribs={"layer": NUMBERS["fold"]})
    for notch in piece.notches:
        block.add_point(notch.point, dxfattribs={"layer": NUMBERS["notch"]})
    facts = (f"Piece Name: {piece.name}", f"Quantity: {piece.quantity}", "Units: METRIC")
    for number, words in enumerate(facts):
        x, y = piece.grain[0]
        text = block.add_text(words, height=TEXT_MM, dxfattribs={"layer": NUMBERS["cut"]})
        text.set_placement((x, y - number * 2 * TEXT_MM))


def _open_at_darts(piece: PaperPiece) -> list[Point]:
    """Return the seam line as others draw it: darts as notches cut into the edge, from leg to point to leg."""
    out: list[Point] = []
    for side in piece.sides:
        for number, part in enumerate(side.parts):
            out += part.points(CHORD_MM)[:-1]
            if number < len(side.darts):
                out += [part.end, side.darts[number].point]
    return out


def _line(block: Any, line: Path | list[Point], what: str) -> None:
    spots = line if isinstance(line, list) else list(line.points(CHORD_MM))[:-1]
    block.add_lwpolyline(spots, close=True, dxfattribs={"layer": NUMBERS[what]})


def _plain(name: str) -> str:
    """Return a name that every reader takes for a block: letters, figures, blanks."""
    return "".join(sign if sign.isascii() and (sign.isalnum() or sign in " -_") else "_" for sign in name) or "piece"
