"""Invented things to print: a skirt in three pieces, a pullover's back, a lay, and what stands open."""

from __future__ import annotations

from lastlook.geometry import Cubic, Line, Path, polyline
from lastlook.paper import Level, Notch, PaperPiece, SeamEdge, Use


def _straight(*points: tuple[float, float]) -> Path:
    return polyline(points)


def skirt() -> tuple[PaperPiece, ...]:
    """Return an A-line front and back on the fold and a straight band."""
    return (_panel("Front", 178.0, 12.0), _panel("Back", 172.0, 22.0), _band())


def _panel(name: str, waist: float, intake: float) -> PaperPiece:
    """Half a panel: centre on the left at x = 0, waist at y = 0, hem at y = -620."""
    wide, hip, hem = waist + intake, 246.0, 310.0
    mouth = wide * 0.45
    first, second = (mouth + intake, 3.0), (mouth, 2.0)
    waist_parts = (
        Path((Cubic((wide, 12.0), (wide - 25, 8.0), (first[0] + 20, 4.0), first),)),
        Path((Cubic(second, (mouth - 20, 1.0), (20.0, 0.0), (0.0, 0.0)),)),
    )
    side = Path(
        (Line((hem, -612.0), (hip, -200.0)), Cubic((hip, -200.0), (hip - 8, -130.0), (wide + 14, -60.0), (wide, 12.0)))
    )
    hem_edge = Path((Cubic((0.0, -620.0), (110.0, -620.0), (220.0, -618.0), (hem, -612.0)),))
    sides = (
        SeamEdge("hem", (hem_edge,), (), 40.0, Use.HEM),
        SeamEdge("side", (side,), (), 15.0),
        SeamEdge("waist", waist_parts, ((mouth + intake / 2, -100.0),), 15.0),
        SeamEdge("centre", (_straight((0.0, 0.0), (0.0, -620.0)),), (), 0.0, Use.FOLD),
    )
    notches = (Notch("hip", "side", (hip, -200.0)),)
    grain = ((90.0, -160.0), (90.0, -540.0))
    return PaperPiece(name, sides, 1, False, notches, (Level("hip", -200.0),), grain)


def _band() -> PaperPiece:
    sides = (
        SeamEdge("waist", (_straight((0.0, 0.0), (740.0, 0.0)),), (), 15.0),
        SeamEdge("end", (_straight((740.0, 0.0), (740.0, 60.0)),), (), 15.0, Use.OPEN),
        SeamEdge("inside", (_straight((740.0, 60.0), (0.0, 60.0)),), (), 15.0),
        SeamEdge("lap", (_straight((0.0, 60.0), (0.0, 0.0)),), (), 15.0, Use.OPEN),
    )
    notches = (Notch("side", "waist", (355.0, 0.0)),)
    return PaperPiece("Waistband", sides, 1, False, notches, (), ((120.0, 15.0), (620.0, 15.0)), role="band")
