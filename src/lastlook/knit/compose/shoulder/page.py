"""A shouldered garment as a leaflet."""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.raglan.leaflet import body_of, heading, page_head, turned, wrapped
from lastlook.knit.worked import WorkedPiece


def write_shouldered(title: str, pieces: Sequence[WorkedPiece], bands: Sequence[str], asked: Asked, size: str) -> str:
    """Return the leaflet."""
    parts = [title.upper(), *page_head(asked, size)]
    for piece in pieces:
        if piece.part_of is None:
            parts.append("\n".join([heading(piece), *body_of(piece, pieces)]))
    parts += bands
    sleeves = "Sew in sleeves. Sew side and sleeve seams." if asked.sleeve != "none" else "Sew side seams."
    how = f"Block the pieces to measurements, but not the ribbing. Sew shoulders. {sleeves}"
    parts.append(f"FINISHING\n{how} {turned(asked)}".rstrip())
    return "\n\n".join(wrapped(part) for part in parts) + "\n"
