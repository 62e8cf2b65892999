"""DXF in and out, by the published apparel convention: one block a piece, one layer for each kind of line."""

from lastlook.paper.take.dxf.read import read_dxf
from lastlook.paper.take.dxf.write import write_dxf

__all__ = ["read_dxf", "write_dxf"]
