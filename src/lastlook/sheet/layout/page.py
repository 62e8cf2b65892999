"""Pages, and sheets of them: what is printed, before it becomes bytes."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from lastlook.sheet.mark import Item


class Paper(Enum):
    """Papers that home printers take: width and height in mm, upright (ISO 216; ANSI/ASME Y14.1)."""

    A4 = (210.0, 297.0)
    LETTER = (215.9, 279.4)

    @property
    def width_mm(self) -> float:
        """Return the width, upright."""
        return self.value[0]

    @property
    def height_mm(self) -> float:
        """Return the height, upright."""
        return self.value[1]


@dataclass(frozen=True)
class Page:
    """One side of paper."""

    width_mm: float
    height_mm: float
    items: tuple[Item, ...]
    label: str = ""
    """What the page is called in the table of contents of a PDF."""


@dataclass(frozen=True)
class Sheet:
    """Pages that belong together and are printed at their true size."""

    title: str
    pages: tuple[Page, ...]
    language: str = "en"
