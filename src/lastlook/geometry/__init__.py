"""Flat geometry in millimetres; it knows no craft.

*Measure*: `Path.length_mm`, `area_mm2`, `nearest`, `crossings`, `turn_deg`. *Make*: `polyline`, `polygon`, `arc`,
`cut`, `split`, `shifted`, `swung`, `mirrored`, `mapped`, `grown`. Angles are degrees, counter-clockwise.
"""

from lastlook.geometry.arc import arc
from lastlook.geometry.curve import Cubic, Line, Segment
from lastlook.geometry.move import mapped, mirrored, shifted, swung
from lastlook.geometry.nearest import Place, nearest
from lastlook.geometry.offset import Run, grown
from lastlook.geometry.path import FINE_MM, Path, polygon, polyline
from lastlook.geometry.point import Point, between, distance_mm
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
    "Cubic",
    "Line",
    "Path",
    "Place",
    "Point",
    "Run",
    "Segment",
    "arc",
    "at",
    "between",
    "crossings",
    "cut",
    "direction",
    "distance_mm",
    "end_direction",
    "ends_along",
    "grown",
    "mapped",
    "meeting",
    "mirrored",
    "nearest",
    "polygon",
    "polyline",
    "right_of",
    "shifted",
    "split",
    "start_direction",
    "starts_along",
    "swung",
    "turn_deg",
    "turned",
]
