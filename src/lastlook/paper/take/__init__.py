"""Paper pieces to and from files: SVG, DXF, tables of points, traced outlines."""

from lastlook.paper.take.outline import Outline, Taken
from lastlook.paper.take.read_svg import read_svg
from lastlook.paper.take.write_svg import path_text, write_svg

__all__ = ["Outline", "Taken", "path_text", "read_svg", "write_svg"]
