"""Paper pieces to and from files: SVG, DXF, tables of points, traced outlines."""

from lastlook.paper.take.write_svg import path_text, write_svg

__all__ = ["path_text", "write_svg"]
