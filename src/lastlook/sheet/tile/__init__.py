"""Tiles: true-size pieces parted over pages, and the marks that join them again."""

from lastlook.sheet.tile.field import Field, Tile, Window, fields, window_of
from lastlook.sheet.tile.join import join_tapes, tile_page
from lastlook.sheet.tile.overview import map_of
from lastlook.sheet.tile.square import squares

__all__ = ["Field", "Tile", "Window", "fields", "join_tapes", "map_of", "squares", "tile_page", "window_of"]
