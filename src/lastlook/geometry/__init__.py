"""Flat geometry in millimetres; it knows no craft.

*Measure*: `Path.length_mm`, `area_mm2`. *Make*: `path`, `point`. Angles are degrees, counter-clockwise.
"""

from lastlook.geometry.curve import Cubic, Line
from lastlook.geometry.path import Path, polygon, polyline
from lastlook.geometry.point import Point, distance_mm

__all__ = ["Cubic", "Line", "Path", "Point", "distance_mm", "polygon", "polyline"]
