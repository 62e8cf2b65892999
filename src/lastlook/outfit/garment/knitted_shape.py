"""What a knitted garment comes to at the heights that matter: underarm, hem, upper arm, lengths.

The *flat width* of a piece and the *assembled girth* are two numbers: each seamed edge costs one stitch
(common practice, no source). A piece that was made lends its measured width and its real rows.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from lastlook.knit import Act, Shaping, Side, WorkedPiece, WorkedRow
from lastlook.outfit.outfit import MadePiece
from lastlook.quantity import Gauge, Missing, Spread, exactly

SEAM_STS = 1
"""Stitches that a seamed edge takes (common practice, no source)."""
TAPE_MM = 5.0
"""How near a tape comes on knitted fabric (common practice, no source)."""


@dataclass(frozen=True)
class Heights:
    """One piece, in counts: where the underarm is and how many stitches lie there."""

    piece: WorkedPiece
    hem_sts: int
    underarm_sts: int
    rows_to_underarm: int
    rows: int
    top_sts: int
    made: MadePiece | None = None
    seamless: bool = False
    """Whether it was worked in rounds, or back and fronts on one needle: no seam takes from its width."""

    def width(self, gauge: Gauge, seams: int) -> Spread:
        """Return the flat width at the underarm in mm, less what `seams` seamed edges take."""
        seams = 0 if self.seamless else seams
        loss = gauge.width_mm(seams * SEAM_STS)
        if self.made and self.made.width_mm is not None:
            measured = Spread(self.made.width_mm, self.made.width_mm - TAPE_MM, self.made.width_mm + TAPE_MM)
            return measured - loss.best
        return gauge.width_mm(self.underarm_sts - seams * SEAM_STS)


def heights(piece: WorkedPiece, made: MadePiece | None = None) -> Heights | None:
    """Return the heights of a piece, None where it has no rows."""
    if not piece.rows:
        return None
    row = underarm_row(piece)
    at_underarm = next((one.before for one in piece.rows if one.number == row), piece.rows[-1].after)
    if row is None and is_sleeve(piece):
        at_underarm = max(one.after for one in piece.rows)
    joined = _joined_row(piece) if is_whole(piece) else None
    if joined is not None:
        at_underarm, row = min(joined.before, joined.after), joined.number
    rows = made.rows if made and made.rows is not None else piece.rows[-1].number
    changed = rows - piece.rows[-1].number
    to_underarm = (row - 1 if row else piece.rows[-1].number) + changed
    if made and made.rows_to_underarm is not None:
        to_underarm = made.rows_to_underarm
    return Heights(
        piece=piece,
        hem_sts=piece.cast_on or piece.rows[0].before,
        underarm_sts=at_underarm,
        rows_to_underarm=to_underarm,
        rows=rows,
        top_sts=piece.rows[-1].after,
        made=made,
        seamless=is_whole(piece) or piece.rows[0].side is Side.ROUND or piece.rows[-1].side is Side.ROUND,
    )


def _joined_row(piece: WorkedPiece) -> WorkedRow | None:
    """Return the row of a seamless garment in which its sleeves leave the body or come to it."""
    return next((row for row in piece.rows if any(_is_held(one) for one in row.shapings)), None)


def _is_held(one: Shaping) -> bool:
    return one.act is Act.HOLD and one.stitches > 1


def underarm_row(piece: WorkedPiece) -> int | None:
    """Return the row of the first bind-off at a side edge, None where there is none."""
    named = dict(piece.landmarks).get("underarm")
    if named is not None:
        return named + 1
    for row in piece.rows:
        edge_acts = [one for one in row.shapings if one.act in (Act.BIND_OFF, Act.HOLD) and one.edge != "inside"]
        if edge_acts and row.after > 0 and max(one.stitches for one in edge_acts) > 1:
            return row.number
    return None


def is_body(piece: WorkedPiece) -> bool:
    """Whether a piece goes round the body."""
    words = piece.name.lower().split()
    return piece.part_of is None and ("back" in words or "front" in words) and "band" not in words


def is_whole(piece: WorkedPiece) -> bool:
    """Whether a piece is back and fronts and yoke on one needle."""
    words = piece.name.lower().split()
    return piece.part_of is None and "body" in words and "yoke" in words


def is_sleeve(piece: WorkedPiece) -> bool:
    """Whether a piece is a sleeve."""
    return piece.part_of is None and "sleeve" in piece.name.lower()


def girth_at_underarm(body: Iterable[Heights], gauge: Gauge) -> Spread | Missing:
    """Return the assembled girth of back and fronts at the underarm, in mm.

    The same gauge is in every piece, so their ranges add up and don't even out.
    """
    parts = list(body)
    whole = next((one for one in parts if is_whole(one.piece)), None)
    if whole is not None:
        return whole.width(gauge, 0)
    if not parts or not any("back" in one.piece.name.lower() for one in parts):
        return Missing("the girth at the bust", "Add the back and the fronts to the leaflet's text.")
    total = exactly(0.0)
    for one in parts:
        side_seams = 1 if "left" in one.piece.name.lower() or "right" in one.piece.name.lower() else 2
        width = one.width(gauge, side_seams) * one.piece.make
        total = Spread(total.best + width.best, total.low + width.low, total.high + width.high)
    return total


def length_mm(rows: int, gauge: Gauge) -> Spread | Missing:
    """Return the length of so many rows in mm."""
    return gauge.length_mm(rows)
