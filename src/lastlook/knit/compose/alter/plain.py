"""Rows set out plainly, whoever worked them: one name for stockinette, decreases on a narrow row given to an
edge."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.knit.worked import Act, Shaping, WorkedPiece, WorkedRow

STOCKINETTE = frozenset({"", "plain", "purl", "knit", "stocking", "stocking stitch", "stockinette st"})
PATTERN = "pattern st"
PATTERNED = re.compile(r"\b(yo|y o|o|yarn over|over|w\.?l|wool forward|cable|twist|bobble|popcorn)\b|repeat from")
"""Words of a row that is neither plain nor purl."""
NARROW = 24
"""On so few stitches a decrease in the middle is one at the edge that it leans along."""


def plain(piece: WorkedPiece) -> WorkedPiece:
    """Return the piece with its rows set out plainly."""
    rows: list[WorkedRow] = []
    for spot, row in enumerate(piece.rows):
        name = "stockinette" if row.structure.lower() in STOCKINETTE else row.structure
        goes_on = bool(rows) and rows[-1].structure == PATTERN and not row.shapings
        if name == "stockinette" and (goes_on or PATTERNED.search(row.words.lower())):
            name = PATTERN
        if spot == 0 and any(one.act is Act.PICK_UP for one in row.shapings) and len(piece.rows) > 1:
            name = piece.rows[1].structure
        rows.append(replace(row, structure=name, shapings=_shapings(row)))
    return replace(piece, rows=tuple(rows))


def _shapings(row: WorkedRow) -> tuple[Shaping, ...]:
    out: list[Shaping] = []
    for one in row.shapings:
        edged = one
        if one.edge == "inside" and one.act is Act.DECREASE and row.before <= NARROW and one.lean and row.after > 1:
            edge = "right" if one.lean == "left" else "left"
            edged = replace(one, edge=edge, inset=min(one.inset, 2))
        same = next((spot for spot, old in enumerate(out) if (old.act, old.edge) == (edged.act, edged.edge)), None)
        if same is None:
            out.append(edged)
        else:
            out[same] = replace(out[same], stitches=out[same].stitches + edged.stitches)
    return tuple(out)
