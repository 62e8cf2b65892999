"""Flat geometry in millimetres; it knows no craft.

*Measure*: `Path.length_mm`, `area_mm2`, `nearest`, `crossings`, `turn_deg`. *Make*: `polyline`, `polygon`, `arc`,
`cut`, `split`, `shifted`, `swung`, `mirrored`, `mapped`, `grown`, `beside`. Angles are degrees, counter-clockwise.
"""

from lastlook.geometry.arc import arc
from lastlook.geometry.crossing import crossing_of, signed_area_mm2
from lastlook.geometry.curve import Cubic, Line, Segment
from lastlook.geometry.move import mapped, mirrored, shifted, swung
from lastlook.geometry.nearest import Place, nearest
from lastlook.geometry.nofit import Corners, convex_parts, convex_sum, half_planes, widened
from lastlook.geometry.offset import Run, beside, grown, shrunk
from lastlook.geometry.path import FINE_MM, Path, polygon, polyline
from lastlook.geometry.point import Point, between, distance_mm
from lastlook.geometry.region import (
    Box,
    area_parts,
    box_length_mm,
    covered_mm2,
    drawn_in_parts,
    joined,
    open_area_mm2,
    outside_parts,
    part_between,
    simpler,
    simpler_inside,
)
from lastlook.geometry.split import at, crossings, cut, meeting, split
from lastlook.geometry.tangent import (
    direction,
    end_direction,
    ends_along,
    right_of,
    start_direction,
    starts_along,
    turn_deg,
    turned,
)

__all__ = [
    "FINE_MM",
    "Box",
    "Corners",
    "Cubic",
    "Line",
    "Path",
    "Place",
    "Point",
    "Run",
    "Segment",
    "arc",
    "area_parts",
    "at",
    "beside",
    "between",
    "box_length_mm",
    "convex_parts",
    "convex_sum",
    "covered_mm2",
    "crossing_of",
    "crossings",
    "cut",
    "direction",
    "distance_mm",
    "drawn_in_parts",
    "end_direction",
    "ends_along",
    "grown",
    "half_planes",
    "joined",
    "mapped",
    "meeting",
    "mirrored",
    "nearest",
    "open_area_mm2",
    "outside_parts",
    "part_between",
    "polygon",
    "polyline",
    "right_of",
    "shifted",
    "shrunk",
    "signed_area_mm2",
    "simpler",
    "simpler_inside",
    "split",
    "start_direction",
    "starts_along",
    "swung",
    "turn_deg",
    "turned",
    "widened",
]
