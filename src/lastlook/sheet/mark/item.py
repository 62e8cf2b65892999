"""What a sheet is made of, as values: strokes, words and groups of them.

Everything is in millimetres of the paper, x to the right and y *downwards* from the top left corner; type sizes
are points. A *matrix* (a, b, c, d, e, f) takes (x, y) to (ax + cy + e, bx + dy + f). A *drawing* is a picture with
a size, a title and a description for whoever can't see it.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from lastlook.geometry import Path, Point

Matrix = tuple[float, float, float, float, float, float]
STILL: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)

INK = "#22313f"
"""Blue-black, as from a bottle."""
SOFT = "#7d8790"
"""The same ink thinned: what stands behind."""
PENCIL = "#b3322a"
"""The one accent: a red pencil."""
TISSUE = "#f6efdd"
"""Pattern tissue."""
SHADE = "#e6dcc3"
"""Tissue twice folded."""
PAPER = "#ffffff"


@dataclass(frozen=True)
class Ink:
    """How a stroke is drawn; None leaves the line or the filling out."""

    line: str | None = INK
    width_mm: float = 0.25
    fill: str | None = None
    dash: tuple[float, ...] = ()


class Face(Enum):
    """The founts at hand."""

    TEXT = "text"
    BOLD = "bold"
    ITALIC = "italic"
    HEAD = "head"
    HEAD_LIGHT = "head-light"
    HEAD_ITALIC = "head-italic"


class Align(Enum):
    """Which part of the words stands at their point."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True)
class Style:
    """How words are set."""

    size_pt: float = 9.0
    face: Face = Face.TEXT
    colour: str = INK


@dataclass(frozen=True)
class Stroke:
    """Paths drawn in one ink; insides of closed ones are filled by the even-odd rule."""

    paths: tuple[Path, ...]
    ink: Ink = Ink()


@dataclass(frozen=True)
class Words:
    """One line of text with its base line at `at`, turned clockwise by `turn_deg`."""

    at: Point
    text: str
    style: Style = Style()
    align: Align = Align.START
    turn_deg: float = 0.0


@dataclass(frozen=True)
class Group:
    """Items moved together, cut off outside `clip` (x, y, width, height before moving)."""

    items: tuple[Item, ...]
    matrix: Matrix = STILL
    clip: tuple[float, float, float, float] | None = None
    name: str | None = None
    """What a screen may hold on to: 'piece Front 1'."""
    shared: str | None = None
    """Groups with the same key hold the same items, and are kept once in a finished PDF."""


Item = Stroke | Words | Group


@dataclass(frozen=True)
class Drawing:
    """A picture that stands by itself."""

    title: str
    description: str
    width_mm: float
    height_mm: float
    items: tuple[Item, ...]

    def at(self, x_mm: float, y_mm: float) -> Group:
        """Return the drawing as a group with its top left corner at that point of a page."""
        return Group(self.items, (1.0, 0.0, 0.0, 1.0, x_mm, y_mm))
