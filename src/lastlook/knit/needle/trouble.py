"""What does not add up while a piece is worked, as a value; the words for the maker are put on later."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import Span


@dataclass(frozen=True)
class Trouble:
    """A kind of finding with the place and the two numbers."""

    kind: str
    span: Span
    piece: str
    row: int | None
    worked: float
    stated: float
    words: str = ""
    blind: bool = False
    """Whether words before it in the piece were not understood, so that it may come from them."""
    follows: bool = False
    """Whether it is only what follows from a trouble told before."""
    far: bool = False
    """Whether the two numbers lie so far apart that the words were rather misread, unless something bears it out."""

    @property
    def doubted(self) -> bool:
        """Whether it may come from the reading and not from the print."""
        return self.blind or self.far


NEAR = {"row-short": (3, 0.03), "row-long": (3, 0.03), "count-short": (8, 0.15), "count-over": (8, 0.15),
        "goal-unreachable": (3, 0.0), "length-too-short": (6, 0.35)}  # fmt: skip
"""How far apart the numbers of a slip lie: so many stitches, or such a share of them (our own 1,200 changed figures;
real slips are one stitch, one repeat or one digit out)."""


def is_far(kind: str, worked: float, stated: float) -> bool:
    """Whether two numbers lie further apart than one slip of the print makes them."""
    if kind not in NEAR:
        return False
    stitches, share = NEAR[kind]
    return abs(worked - stated) > max(stitches, share * max(worked, stated))
