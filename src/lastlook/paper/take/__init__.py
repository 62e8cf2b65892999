"""Paper pieces to and from files: SVG, DXF, tables of points, traced outlines."""

from lastlook.paper.take.corners import guess, runs_of
from lastlook.paper.take.dxf import read_dxf, write_dxf
from lastlook.paper.take.marks import with_dart, with_grain, with_notch
from lastlook.paper.take.naming import Drawn, Naming, piece_of
from lastlook.paper.take.outline import Marks, Outline, Taken
from lastlook.paper.take.read_svg import read_svg
from lastlook.paper.take.read_table import read_table
from lastlook.paper.take.traced import traced
from lastlook.paper.take.write_svg import path_text, write_svg

__all__ = [
    "Drawn",
    "Marks",
    "Naming",
    "Outline",
    "Taken",
    "guess",
    "path_text",
    "piece_of",
    "read_dxf",
    "read_svg",
    "read_table",
    "runs_of",
    "traced",
    "with_dart",
    "with_grain",
    "with_notch",
    "write_dxf",
    "write_svg",
]
