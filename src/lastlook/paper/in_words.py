"""A set of pieces in words, a line each: pieces, girths with ease, seams."""

from __future__ import annotations

from collections.abc import Mapping

from lastlook.paper.drafted import Drafted
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.tenths import signed, tenths
from lastlook.piece import Seam
from lastlook.quantity import Origin


def in_words(drafted: Drafted, files: Mapping[str, str] | None = None) -> list[str]:
    """Return the lines; `files` names the drawing of each piece."""
    out = [_piece(piece, (files or {}).get(piece.name)) for piece in drafted.pieces]
    if drafted.pieces:
        out += ["", *_girths(drafted), "", *(_seam(seam) for seam in drafted.seams)]
    return out


def _piece(piece: PaperPiece, file: str | None) -> str:
    cut = f"cut {piece.quantity}" + (" as a mirrored pair" if piece.mirrored_pair else "")
    cut += f", {piece.fold_edge} on the fold" if piece.fold_edge else ""
    darts = ", ".join(f"{dart.intake_mm:.1f} x {dart.length_mm:.0f} mm" for dart in piece.darts)
    text = f"{piece.name}: {cut}" + (f"; darts {darts}" if darts else "")
    return text + (f"; {file}" if file else "")


def _girths(drafted: Drafted) -> list[str]:
    out = []
    for level, girth in drafted.girths_mm.items():
        ease, body = drafted.ease_mm.get(level), drafted.body.get(level)
        if girth is not None and ease is not None and body is not None:
            than = "a step takes" if body.name == "stride_girth" else "the body"
            how = "" if body.origin is Origin.MEASURED else ", which is assumed"
            out.append(f"{level}: {girth / 10:.1f} cm, {_over(ease)} than {than}{how}")
        elif girth is not None:
            out.append(f"{level}: {girth / 10:.1f} cm")
    return out


def _over(ease_mm: float) -> str:
    return f"{abs(ease_mm) / 10:.1f} cm {'more' if ease_mm >= 0 else 'less'}"


def _seam(seam: Seam) -> str:
    how = {"exactly": "meet", "by easing": "meet by easing", "on purpose": "differ on purpose", "no": "do not meet"}
    return (
        f"{seam.mate.a} {tenths(seam.a_length)} mm and {seam.mate.b} {tenths(seam.b_length)} mm "
        f"{how[seam.meets.value]} ({signed(seam.difference)} mm)"
    )
