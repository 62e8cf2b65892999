"""Words set in the founts that the sheets carry."""

from lastlook.sheet.type.width import FONTS, MM_PER_PT, printable, shortened, width_mm, wrap

__all__ = ["FONTS", "MM_PER_PT", "printable", "shortened", "width_mm", "wrap"]
