"""A shape taken in from elsewhere: a closed outline, where it lay in the file, and what is said about it."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import Certainty, Finding
from lastlook.geometry import Path, Point, distance_mm, mapped
from lastlook.paper.paper_piece import PaperPiece

JOINED_MM = 0.05
"""Ends nearer than this are one corner."""
MOST_POINTS = 100_000
LEAST_MM2 = 100.0
"""A closed shape smaller than 1 cm2 is a mark, not a piece."""


@dataclass(frozen=True)
class Marks:
    """What a file says of an outline beside its line."""

    grain: tuple[Point, Point] | None = None
    fold: tuple[Point, Point] | None = None
    notches: tuple[Point, ...] = ()
    cut: Path | None = None
    """The cutting line round a seam line."""


@dataclass(frozen=True)
class Outline:
    """A closed or open line of the file, in mm, y upwards."""

    path: Path
    name: str = ""
    layer: str = ""
    marks: Marks = Marks()


@dataclass(frozen=True)
class Taken:
    """What a file gave: whole pieces where it was one of ours, else its lines."""

    pieces: tuple[PaperPiece, ...] = ()
    outlines: tuple[Outline, ...] = ()
    findings: tuple[Finding, ...] = ()

    @property
    def closed(self) -> tuple[Outline, ...]:
        """Return the closed outlines large enough to be pieces, the largest first."""
        whole = [one for one in self.outlines if one.path.is_closed() and abs(one.path.area_mm2()) >= LEAST_MM2]
        return tuple(sorted(whole, key=lambda one: -abs(one.path.area_mm2())))


def unread(say: str, why: str, attempt: str) -> Finding:
    """Return why a file of pieces can't be taken in."""
    return Finding("pieces-unread", Certainty.PROVEN, say, why, attempt)


def too_many(count: int) -> Finding:
    """Return that a file holds more points than any pattern has."""
    return unread(
        f"The drawing holds more than {MOST_POINTS} points and was not taken in.",
        f"A pattern piece has a few hundred; this has {count}.",
        "Simplify the outline to curves before saving it.",
    )


def closed(path: Path) -> Path:
    """Return a path whose ends all but touch as a closed one, walked counter-clockwise."""
    if not path.is_closed() and distance_mm(path.start, path.end) <= JOINED_MM:
        last = mapped(Path(path.segments[-1:]), lambda spot: path.start if spot == path.end else spot)
        path = Path((*path.segments[:-1], *last.segments))
    return path.reversed() if path.is_closed() and path.area_mm2() < 0 else path
