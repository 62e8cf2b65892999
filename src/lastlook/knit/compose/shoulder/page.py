"""A shouldered garment as a leaflet."""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.evenly import even
from lastlook.knit.compose.craft.write import edging_words
from lastlook.knit.compose.raglan.finishing import band_rows
from lastlook.knit.compose.raglan.leaflet import body_of, heading, page_head, wrapped
from lastlook.knit.compose.shoulder.counts import ShoulderCounts
from lastlook.knit.worked import WorkedPiece


def write_shouldered(title: str, pieces: Sequence[WorkedPiece], counts: ShoulderCounts, asked: Asked, size: str) -> str:
    """Return the leaflet."""
    parts = [title.upper(), *page_head(asked, size)]
    for piece in pieces:
        if piece.part_of is None:
            parts.append("\n".join([heading(piece), *body_of(piece, pieces)]))
    parts += _bands(counts, asked)
    sleeves = "Sew in sleeves. Sew side and sleeve seams." if asked.sleeve != "none" else "Sew side seams."
    parts.append(f"FINISHING\nBlock the pieces to measurements, but not the ribbing. Sew shoulders. {sleeves}")
    return "\n\n".join(wrapped(part) for part in parts) + "\n"


def _bands(counts: ShoulderCounts, asked: Asked) -> list[str]:
    along = even(counts.neck_rows * asked.stitches_per_mm / asked.rows_per_mm)
    center = counts.neck_center if asked.opening == "pullover" else 2 * counts.front_center
    total = 2 * ((counts.neck + center + 2 * along + 1) // 2)
    start = "With right side facing and smaller needles, pick up and k"
    rib = edging_words("rib 1x1", band_rows(asked))
    out = [f"NECKBAND\nSew one shoulder. {start} {total} sts around neck. {rib} Bind off loosely in ribbing."]
    if asked.opening == "cardigan":
        rows = counts.side_rows + counts.armhole_rows - counts.neck_rows
        edge = even(rows * asked.stitches_per_mm / asked.rows_per_mm)
        for hand in ("left", "right"):
            out.append(
                f"{hand.upper()} FRONT BAND\n{start} {edge} sts along {hand} front edge. {rib} Bind off in ribbing."
            )
    if asked.sleeve == "none":
        arm = 2 * even(counts.armhole_rows * asked.stitches_per_mm / asked.rows_per_mm + counts.underarm)
        out.append(f"ARMBANDS (make 2)\n{start} {arm} sts around armhole. {rib} Bind off in ribbing.")
    return out
