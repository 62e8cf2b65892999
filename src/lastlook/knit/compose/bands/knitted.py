"""Knitted bands: round the neck, along the fronts with their buttonholes, round armholes without sleeves.

A V neck has one band, up the right front, round the neck and down the left front; a round neck has its own.
"""

from __future__ import annotations

from lastlook.finding import Finding
from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.bands.edges import NECKBAND_MM, BandEdges, band_rows, picked
from lastlook.knit.compose.bands.holes import Holes, holes_for
from lastlook.knit.compose.craft.buttons import KNIT_HOLE_SHARE
from lastlook.knit.compose.craft.evenly import times_words
from lastlook.knit.compose.craft.write import edging_words

START = "With right side facing and smaller needles, pick up and k"


def knitted_bands(edges: BandEdges, asked: Asked) -> tuple[list[str], Holes | None] | Finding:
    """Return the bands as pieces of the leaflet, with the buttonholes of the right front; or what does not fit."""
    out: list[str] = []
    holes: Holes | None = None
    if edges.front_rows:
        front = edges.front("right", asked).stitches
        found = holes_for(front, asked.band_stitches_per_mm, _hole(asked), asked.buttons, edges.bust_mm)
        if isinstance(found, Finding):
            return found
        holes = found
        out = _one_band(edges, asked, holes) if asked.neck == "v" else _three_bands(edges, asked, holes)
    else:
        out = [_neckband(edges, asked)]
    if edges.armhole:
        edge = edging_words(structure(asked), band_rows(asked, NECKBAND_MM))
        out.append(f"ARMBANDS (make 2)\n{START} {edges.armhole} sts around armhole. {edge} {_off(asked)}")
    return out, holes


def structure(asked: Asked) -> str:
    """Return what bands are knitted in: garter with a garter edge, else a rib of one and one."""
    return "garter" if asked.edging.structure == "garter" else "rib 1x1"


def _verb(asked: Asked) -> str:
    return "k" if structure(asked) == "garter" else "rib"


def _off(asked: Asked) -> str:
    return "Bind off." if structure(asked) == "garter" else "Bind off in ribbing."


def _hole(asked: Asked) -> int:
    """Return the stitches of a hole: an eyelet takes two, a larger one what it binds off."""
    if asked.buttons is None:
        return 2
    return max(2, round(KNIT_HOLE_SHARE * asked.buttons.diameter_mm * asked.band_stitches_per_mm))


def _is_eyelet(asked: Asked) -> bool:
    """Whether one stitch made over another is hole enough."""
    return asked.buttons is None or round(KNIT_HOLE_SHARE * asked.buttons.diameter_mm * asked.band_stitches_per_mm) <= 1


def _neckband(edges: BandEdges, asked: Asked) -> str:
    edge = edging_words(structure(asked), band_rows(asked, NECKBAND_MM))
    if edges.joined:
        edge = f"Join in a round. {edge.replace(' rows', ' rounds')}"
    off = _off(asked).replace("Bind off", "Bind off loosely")
    return f"NECKBAND\n{edges.lead}{START} {picked(edges.neck)} -- {edges.neck_stitches} sts. {edge} {off}"


def _three_bands(edges: BandEdges, asked: Asked, holes: Holes) -> list[str]:
    left, right = edges.front("left", asked), edges.front("right", asked)
    rows = band_rows(asked, asked.band_mm)
    plain = f"LEFT FRONT BAND\n{START} {picked([left])}. {edging_words(structure(asked), rows)} {_off(asked)}"
    worked = _with_holes(asked, holes, rows, right.stitches)
    return [_neckband(edges, asked), plain, f"RIGHT FRONT BAND\n{START} {picked([right])}. {worked}"]


def _one_band(edges: BandEdges, asked: Asked, holes: Holes) -> list[str]:
    left, right = edges.front("left", asked), edges.front("right", asked)
    picks = [right, *edges.neck, left]
    total = sum(one.stitches for one in picks)
    worked = _with_holes(asked, holes, band_rows(asked, asked.band_mm), total)
    return [f"FRONT BAND\n{edges.lead}{START} {picked(picks)} -- {total} sts. {worked}"]


def _with_holes(asked: Asked, holes: Holes, rows: int, total: int) -> str:
    """Return a band's rows, the holes in its middle on a row with the right side facing."""
    row = _hole_rows(asked, holes, total)
    first = (rows - len(row)) // 2
    first -= 1 - first % 2
    edge, rest = structure(asked), rows - first - len(row)
    lines = [edging_words(edge, first), *row, f"{edging_words(edge, rest)} {_off(asked)} {_sewn_on(holes)}"]
    return "\n".join(lines)


def _sewn_on(holes: Holes) -> str:
    return f"Sew on {len(holes.starts)} button{'s' if len(holes.starts) > 1 else ''}."


def _hole_rows(asked: Asked, holes: Holes, total: int) -> list[str]:
    verb, rest = _verb(asked), total - holes.stitches + holes.after
    start = f"Next row (buttonhole row): {verb.title()} {holes.before}"
    hole = "yo, k 2 tog" if _is_eyelet(asked) else f"bind off {holes.wide} sts"
    runs = [_times(f"{hole}, {verb} {gap}", often) for gap, often in holes.runs]
    there = ", ".join([start, *runs, hole, f"{verb} {rest}"])
    if _is_eyelet(asked):
        return [f"{there} -- {total} sts."]
    made = f"cast on {holes.wide} sts"
    back = [_times(f"{made}, {verb} {gap}", often) for gap, often in reversed(holes.runs)]
    again = ", ".join([f"Next row: {verb.title()} {rest}", *back, made, f"{verb} {holes.before}"])
    return [f"{there}.", f"{again} -- {total} sts."]


def _times(words: str, often: int) -> str:
    return words if often == 1 else f"({words}) {times_words(often)}"
