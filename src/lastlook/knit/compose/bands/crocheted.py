"""Crocheted borders, row by row, from a strip's own gauge; US terms.

Along an edge there are as many single crochet as its length holds at the strip's gauge, whatever its rows; an outer
corner takes three, in every row. A single crochet is about as high as it is wide: common practice, no source.
Buttonholes are chains over skipped stitches on the right front.
"""

from __future__ import annotations

from lastlook.finding import Finding
from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.bands.edges import BandEdges
from lastlook.knit.compose.bands.holes import PLAIN_MM, Holes, holes_for
from lastlook.knit.compose.craft.buttons import CROCHET_HOLE_SHARE

CORNER = 3
NECK_MM = 20.0


def crochet_border(edges: BandEdges, asked: Asked, per_10cm: float) -> tuple[list[str], Holes] | Finding:
    """Return the border of a cardigan's fronts and neck, with its buttonholes; or what does not fit."""
    per_mm = per_10cm / 100.0
    front, neck = round(edges.front_mm * per_mm), _around(edges, asked, per_mm)
    diameter = asked.buttons.diameter_mm if asked.buttons else PLAIN_MM
    wide = max(2, round(CROCHET_HOLE_SHARE * diameter * per_mm))
    holes = holes_for(front, per_mm, wide, asked.buttons, edges.bust_mm)
    if isinstance(holes, Finding):
        return holes
    rows = max(4, round(asked.band_mm * per_mm))
    hole_row = rows // 2 + 1 - rows // 2 % 2
    corners = 0 if asked.neck == "v" else 2
    in_corner = f" {CORNER} sc in corner," if corners else ""
    total = 2 * front + neck + corners * CORNER
    lines = [
        "CROCHET BORDER",
        f"{edges.lead}Row 1: With right side facing, work {front} sc along right front edge,{in_corner} {neck} sc"
        f" around neck,{in_corner} {front} sc along left front edge -- {total} sc. Ch 1, turn.",
    ]
    for number in range(2, rows + 1):
        total += corners * (CORNER - 1)
        end = f"Fasten off. Sew on {len(holes.starts)} buttons." if number == rows else "Ch 1, turn."
        unit = "sts" if number == hole_row else "sc"
        lines.append(f"{_row(number, hole_row, holes, bool(corners))} -- {total} {unit}. {end}")
    return ["\n".join(lines)], holes


def _row(number: int, hole_row: int, holes: Holes, has_corners: bool) -> str:
    """Return one row after the first."""
    corner = f"{CORNER} sc in center sc at each corner" if has_corners else ""
    if number == hole_row:
        shaped = f", working {corner}" if corner else ""
        start = f"Row {number} (buttonhole row): Sc in first {holes.before} sc"
        return f"{start}, {_holes(holes)} sc in each sc to end{shaped}"
    if number == hole_row + 1:
        more = f" and {corner}" if corner else ""
        return f"Row {number}: Sc in each sc, working {holes.wide} sc over each ch-{holes.wide}{more}"
    return f"Row {number}: Sc in each sc" + (f", working {corner}" if corner else "")


def _holes(holes: Holes) -> str:
    hole = f"ch {holes.wide}, skip {holes.wide} sc,"
    parts = []
    for gap, often in holes.runs:
        again = {1: "", 2: "; repeat from * once more", 3: "; repeat from * twice more"}
        told = again.get(often, f"; repeat from * {often - 1} times more")
        parts.append(f"{'* ' if often > 1 else ''}{hole} sc in next {gap} sc{told},")
    return " ".join([*parts, hole])


def crochet_rounds(edges: BandEdges, asked: Asked, per_10cm: float) -> list[str]:
    """Return borders in rounds: round the neck of a pullover, and armholes that get no sleeve."""
    out = [_round("NECK EDGING", "neck", edges.neck_stitches, asked, per_10cm, edges.lead)]
    if edges.armhole:
        out.append(_round("ARMHOLE EDGING (make 2)", "armhole", edges.armhole, asked, per_10cm, ""))
    return out


def _round(name: str, where: str, stitches: int, asked: Asked, per_10cm: float, lead: str) -> str:
    rounds = max(3, round(NECK_MM * per_10cm / 100.0))
    count = max(8, round(stitches / asked.band_stitches_per_mm * per_10cm / 100.0))
    lines = [name, f"{lead}Round 1: With right side facing, work {count} sc around {where}, join with sl st."]
    for number in range(2, rounds + 1):
        end = " Fasten off." if number == rounds else ""
        lines.append(f"Round {number}: Ch 1, sc in each sc, join with sl st -- {count} sc.{end}")
    return "\n".join(lines)


def _around(edges: BandEdges, asked: Asked, per_mm: float) -> int:
    return max(8, round(edges.neck_stitches / asked.band_stitches_per_mm * per_mm))
