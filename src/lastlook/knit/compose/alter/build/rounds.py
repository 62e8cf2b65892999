"""A pullover in pieces worked in the round instead: one body to the underarm, then back and front for themselves.

The stitches that seams would have taken stay in the body, so that back and front above it keep their counts; how
much wider that makes it is told.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lastlook.finding import Certainty, Finding, Where
from lastlook.knit.compose.alter.changes import is_sleeve
from lastlook.knit.compose.alter.shape.profile import underarm_row
from lastlook.knit.compose.composed import cant_hold
from lastlook.knit.worked import Act, Ended, Shaping, Side, WorkedPiece, WorkedRow
from lastlook.quantity import Gauge

SEAM_STITCHES = 4
"""One at each edge of two side seams."""
SPREAD = (Act.INCREASE, Act.DECREASE)


def in_rounds(
    pieces: Sequence[WorkedPiece], gauge: Gauge
) -> tuple[tuple[WorkedPiece, ...], Finding] | Finding:
    """Return the pieces with body and sleeves in the round to the underarm, and what that changes."""
    named = {piece.name.lower(): piece for piece in pieces if piece.part_of is None}
    back, front = named.get("back"), named.get("front")
    if back is None or front is None:
        return _not_so("It takes a back and one front; a cardigan is open and can't be joined in a round.")
    lower = [piece.rows[: underarm_row(piece)] for piece in (back, front)]
    if len(lower[0]) != len(lower[1]) or not lower[0]:
        return _not_so("Back and front differ in rows below the underarm.")
    rounds = [_together(number, a, b) for number, (a, b) in enumerate(zip(*lower, strict=True), 1)]
    made = [row for row in rounds if row is not None]
    if len(made) < len(rounds):
        return _not_so("Its sides are shaped below the underarm, or back and front differ in their fabric there.")
    cast_on = made[0].before
    body = WorkedPiece("Body", None, 1, cast_on, tuple(made), made[-1].after, Ended.ON_HOLDER, (), (), ())
    out: list[WorkedPiece] = []
    for piece in pieces:
        if piece is back:
            out.append(body)
        if piece is back or piece is front:
            out.append(_upper(piece))
        else:
            out.append(_sleeve(piece) if is_sleeve(piece) else piece)
    return tuple(out), _wider(gauge)


def _together(number: int, a: WorkedRow, b: WorkedRow) -> WorkedRow | None:
    """Return two rows as one round; None where that can't be."""
    both = (*a.shapings, *b.shapings)
    if a.structure != b.structure or any(one.edge != "inside" or one.act not in SPREAD for one in both):
        return None
    gains = sum(one.stitches if one.act is Act.INCREASE else -one.stitches for one in both)
    shapings = (Shaping(Act.INCREASE if gains > 0 else Act.DECREASE, "inside", abs(gains)),) if gains else ()
    before, after = a.before + b.before, a.after + b.after
    return replace(
        a, number=number, side=Side.ROUND, before=before, used=before, gives=after, after=after, shapings=shapings
    )


def _upper(piece: WorkedPiece) -> WorkedPiece:
    """Return what of a piece lies above the underarm, going on from the body's stitches."""
    foot = underarm_row(piece)
    rows = tuple(replace(row, number=number) for number, row in enumerate(piece.rows[foot:], 1))
    edges = tuple(edge for edge in piece.edges if "side" not in edge.name.edge and "cast-on" not in edge.name.edge)
    return replace(piece, cast_on=None, rows=rows, edges=edges, landmarks=())


def _sleeve(piece: WorkedPiece) -> WorkedPiece:
    foot = underarm_row(piece)
    rows = tuple(replace(row, side=Side.ROUND) if spot < foot else row for spot, row in enumerate(piece.rows))
    return replace(piece, rows=rows)


def _not_so(why: str) -> Finding:
    return cant_hold("This garment can't be put into the round as it is.", why, "Keep it in pieces.")


def _wider(gauge: Gauge) -> Finding:
    girth = gauge.width_mm(SEAM_STITCHES).best
    return Finding(
        "seams-in-round",
        Certainty.NOTE,
        f"The body has no side seams, so it measures {girth / 10:.1f} cm more round than in pieces.",
        f"The {SEAM_STITCHES} stitches that two seams take stay in the fabric.",
        "Ask for the bust that much narrower where it matters.",
        where=Where(piece="Body"),
    )
