"""What no leaflet says and hands need: how a pick-up is spread, where yarn may be joined, what will curl, in
which order.

Rules are common practice without a source unless one is named.
"""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.bands import BandEdges, Bands, backing_notes, pick_up_notes
from lastlook.knit.compose.composed import FinishedMeasure
from lastlook.knit.compose.ease import ease_words
from lastlook.knit.compose.shoulder import ShoulderCounts, setting_in
from lastlook.knit.worked import Ended, WorkedPiece
from lastlook.quantity import Units, write_length

TAIL_CM = 20.0
CAST_ON_WIDTHS = 3.0
BIND_OFF_WIDTHS = 3.5
"""A long-tail cast-on takes three times the width and 20 cm, a bind-off three to four widths."""
SEWING = {
    "in pieces": "Sewing: raglan seams row for row, then the underarm bind-offs stitch to stitch, then one seam from"
    " hem through underarm to cuff; neckband and bands after the raglan seams, buttons last.",
    "neck down": "Nothing is sewn: pick the underarm stitches up into the cast-on, one for one, and close the gap at"
    " each end of it with the yarn's tail. Try it on once the sleeves are held; end body and sleeves where they fit.",
    "hem up": "Nothing is sewn but the underarms: graft their held stitches, one for one. Sleeves come first, as their"
    " stitches are knitted in.",
}
YARN_JOINS = {
    "in pieces": "Join a new ball at a side edge that goes into a seam, never at a front edge or in a band.",
    "in one piece": "Join a new ball at the side marker or under the arm, never at a front edge or in a band.",
}
MOST_STRETCH_PERCENT = 5
"""Wool stretched further in pressing goes back at the first wash (wool-shrinkage slides, section 5.1: read)."""
GRIP_MM = 30.0
"""An edging of 3 cm or more keeps stockinette from curling."""


def _texture_notes(asked: Asked) -> list[str]:
    if asked.texture is None:
        return []
    repeat = asked.texture.multiple / asked.stitches_per_mm / 10.0
    return [
        f"A repeat of {asked.texture.name} is {repeat:.1f} cm wide, so that a piece comes to within {repeat / 2:.1f} cm"
        " of its width; edge stitches go into the seams.",
        "In shapings work an over only with its decrease: where there is room for one of them alone, knit both plain.",
    ]


def shoulder_notes(counts: ShoulderCounts, asked: Asked) -> tuple[str, ...]:
    """Return how the shoulders are joined and where the sleeves are pinned before they are set in."""
    groups = ", ".join(str(one) for one in counts.shoulder)
    out = [
        f"Shoulders without steps: leave groups of {groups} sts unworked instead of binding them off, work one row over"
        " all of them, and join back and front by a three-needle bind-off.",
    ]
    if asked.sleeve == "none":
        return tuple(out)
    pins = setting_in(counts, asked)
    if pins:
        out.append(
            "Setting in: pin the middle of the cap's top to the shoulder seam and the bind-offs to each other; "
            f"{'; '.join(pins)}. Ease what is left over between the pins."
        )
    else:
        out.append("Setting in: fold the sleeve's top in half, its fold at the shoulder seam, its ends at the markers.")
    return tuple(out)


def _is_picked_up(piece: WorkedPiece, asked: Asked) -> bool:
    return asked.construction == "neck down" and piece.name == "Sleeves"


def ease_note(asked: Asked, measures: Sequence[FinishedMeasure], body_mm: float | None) -> tuple[str, ...]:
    """Return what was meant by the class of ease, and what comes of it at the bust."""
    bust = next((one.gets_mm for one in measures if one.name == "bust girth"), None)
    if bust is None or body_mm is None:
        return ()
    more = write_length(abs(bust - body_mm), Units.CM)
    here = f"{more} {'more' if bust >= body_mm else 'less'} than the body"
    return (f"Ease at the bust: {ease_words(asked.ease)}; it comes to {here}.",)


def band_notes(edges: BandEdges, bands: Bands, asked: Asked) -> tuple[str, ...]:
    """Return how pick-ups are spread, where the buttons go, and what may back the bands."""
    picks = () if asked.crochet_per_10cm else edges.all(asked)
    out = [f"Pick up evenly — {note}" for note in dict.fromkeys(pick_up_notes(picks))]
    return (*out, *(backing_notes(edges, asked, bands.holes) if bands.holes else ()))


def general_notes(asked: Asked, pieces: Sequence[WorkedPiece], rib_rows: int) -> tuple[str, ...]:
    """Return the notes for any garment in pieces."""
    out = _texture_notes(asked)
    for piece in pieces:
        if piece.cast_on and piece.part_of is None and not _is_picked_up(piece, asked):
            width = asked.gauge.width_mm(piece.cast_on).best / 10.0
            tail = CAST_ON_WIDTHS * width + TAIL_CM
            off = BIND_OFF_WIDTHS * asked.gauge.width_mm(piece.end_stitches).best / 10.0
            last = f", and {off:.0f} cm to bind off" if piece.ended is Ended.BOUND_OFF else ""
            out.append(f"{piece.name}: leave a tail of {tail:.0f} cm for the cast-on{last}.")
    if asked.edging.structure != "hem" and rib_rows / asked.rows_per_mm < GRIP_MM:
        height = rib_rows / asked.rows_per_mm / 10.0
        out.append(f"The edging is {height:.1f} cm high; under 3 cm stockinette still curls above it.")
    out.append(YARN_JOINS["in pieces" if asked.construction == "in pieces" else "in one piece"])
    out.append(
        f"Blocking: pin wool wet to the measures, never more than {MOST_STRETCH_PERCENT} % beyond its own size; do not"
        " pin out ribbing."
    )
    return tuple(out)
