"""The smaller pieces of a skirt: bands, belts, facings, pockets, lining; one a file."""

from lastlook.paper.draft.parts.with_parts import PARTS, with_parts

__all__ = ["PARTS", "with_parts"]
