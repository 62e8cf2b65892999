"""Rows set out plainly, whoever worked them: one name for stockinette, decreases on a narrow row given to an
edge."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.knit.compose.alter.shape.holes import is_eyelet, with_holes
from lastlook.knit.worked import Act, Shaping, WorkedPiece, WorkedRow

STOCKINETTE = frozenset({"", "plain", "purl", "knit", "stocking", "stocking stitch", "stockinette st"})
PATTERN = "pattern st"
PATTERNED = re.compile(r"\b(yo|y o|o|yarn over|over|w\.?l|wool forward|cable|twist|bobble|popcorn)\b|repeat from")
"""Words of a row that is neither plain nor purl."""
DEEP = 5
"""A decrease further in from the edge than that is one of several spread along the row."""
HARD = frozenset({Act.BIND_OFF, Act.CAST_ON, Act.HOLD, Act.PICK_UP})
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
    return replace(piece, rows=with_holes(rows))


def _is_spread(row: WorkedRow) -> bool:
    """Whether increases or decreases are spread along the row, by what lies inside it or far from its edge."""
    spread = [one for one in row.shapings if one.act in (Act.INCREASE, Act.DECREASE)]
    inner = [one for one in spread if one.edge == "inside" or one.inset > DEEP]
    return len(spread) == len(row.shapings) and bool(inner) and row.before > NARROW


def _evenly(row: WorkedRow) -> tuple[Shaping, ...]:
    """Return all that a row gains or loses as one shaping spread along it."""
    gains = sum(one.stitches if one.act is Act.INCREASE else -one.stitches for one in row.shapings)
    act = Act.INCREASE if gains > 0 else Act.DECREASE
    return (Shaping(act, "inside", abs(gains)),) if gains else ()


def _shapings(row: WorkedRow) -> tuple[Shaping, ...]:
    if is_eyelet(row):
        return row.shapings
    if _is_spread(row):
        return _evenly(row)
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
    mixed = len({one.edge == "inside" for one in out}) > 1 and not any(one.act in HARD for one in out)
    return _evenly(row) if mixed else tuple(out)
