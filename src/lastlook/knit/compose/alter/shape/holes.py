"""What is opened inside a row: buttonholes of two rows, and pocket mouths whose stitches a lining replaces.

Both keep their place; a buttonhole keeps its stitches too, since the button stays the same.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence
from dataclasses import replace

from lastlook.knit.worked import Act, Shaping, WorkedRow

WIDEST = 8
"""More stitches than that bound off inside a row are a neck, not a buttonhole."""
USUAL_EDGE = 3
"""Stitches outside a buttonhole where the leaflet's words don't tell: common practice, no source."""
_PLACE = re.compile(r"(\d+)\W{0,3}(?:sts?\W*)?(?:cast|bind) off", re.I)


def with_holes(rows: Sequence[WorkedRow]) -> tuple[WorkedRow, ...]:
    """Return the rows, every buttonhole told with the stitches that lie outside it."""
    out = list(rows)
    for spot, (row, above) in enumerate(itertools.pairwise(rows)):
        if is_hole(row, above):
            place = _PLACE.search(row.words)
            edge = int(place.group(1)) if place and int(place.group(1)) < row.before / 2 else USUAL_EDGE
            out[spot] = replace(row, shapings=(replace(row.shapings[0], inset=edge),))
            out[spot + 1] = replace(above, shapings=(replace(above.shapings[0], inset=edge),))
    return tuple(out)


def is_hole(row: WorkedRow, above: WorkedRow) -> bool:
    """Whether two rows make a buttonhole: bound off inside the first, cast on again in the second."""
    if len(row.shapings) != 1 or len(above.shapings) != 1:
        return False
    off, on = row.shapings[0], above.shapings[0]
    acts = (off.act, on.act) == (Act.BIND_OFF, Act.CAST_ON)
    return acts and off.edge == on.edge == "inside" and off.stitches == on.stitches <= WIDEST


def is_eyelet(row: WorkedRow) -> bool:
    """Whether a row makes one hole by a yarn over beside a decrease."""
    acts = {one.act for one in row.shapings}
    edges = {one.edge for one in row.shapings}
    singles = all(one.stitches == 1 for one in row.shapings)
    return len(row.shapings) == 2 and acts == {Act.INCREASE, Act.DECREASE} and len(edges) == 1 and singles


def pocket(row: WorkedRow) -> int:
    """Return the stitches of a pocket's mouth that a row slips on to a holder and takes from the lining; else 0."""
    held = sum(one.stitches for one in row.shapings if one.act is Act.HOLD and one.edge == "inside")
    taken = sum(one.stitches for one in row.shapings if one.act is Act.PICK_UP and one.edge == "inside")
    return held if held and held == taken and len(row.shapings) == 2 else 0


def opened(row: WorkedRow, stitches: int) -> tuple[Shaping, ...]:
    """Return the shapings of a pocket's mouth over so many stitches."""
    return tuple(replace(one, stitches=stitches) for one in row.shapings)
