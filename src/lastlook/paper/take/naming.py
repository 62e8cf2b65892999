"""A foreign outline made into a piece: its edges named, its fold and allowance said, its darts kept.

What the maker says outranks the guess. Where the outline is the cutting line, the allowances are taken off again,
each edge by its own width, and the seam line is what remains.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from enum import Enum

from lastlook.finding import Finding
from lastlook.geometry import (
    Line,
    Path,
    Point,
    Run,
    at,
    crossing_of,
    cut,
    distance_mm,
    nearest,
    shrunk,
    signed_area_mm2,
)
from lastlook.paper.paper_piece import Level, Notch, PaperPiece
from lastlook.paper.seam_edge import SeamEdge, Use
from lastlook.paper.take.corners import dart_at, guess, runs_of
from lastlook.paper.take.outline import LEAST_MM2, Marks, Outline
from lastlook.paper.take.refused import alike, crossing, opened, too_wide

LEAST_EDGES = 3
NEAR_MM = 1.0
"""A fold line ends this near to the ends of its edge."""
FURTHEST_MM = 60.0
"""A notch on the cutting line belongs to a seam line at most this far off."""


class Drawn(Enum):
    """What line the outline is."""

    SEAM = "seam"
    CUT = "cut"


@dataclass(frozen=True)
class Naming:
    """What the maker says of an outline."""

    name: str
    drawn: Drawn = Drawn.SEAM
    edges: Mapping[int, str] = field(default_factory=dict)
    """Names of runs by their number, from 0; the rest is guessed."""
    fold: str | None = None
    allowance_mm: float = 15.0
    allowances_mm: Mapping[str, float] = field(default_factory=dict)
    quantity: int = 1
    mirrored_pair: bool = False
    grain: tuple[Point, Point] | None = None
    depths_mm: Mapping[str, float] = field(default_factory=dict)
    """How far below the waist each level of the body lies: 'high hip', 'hip', 'knee'."""


def piece_of(outline: Outline, naming: Naming) -> PaperPiece | Finding:
    """Return the piece, or why the outline is none."""
    path = outline.path
    if not path.is_closed():
        return opened(naming.name, path)
    spot = crossing_of(path.points(0.2)[:-1])
    if spot is not None:
        return crossing(naming.name, spot)
    runs = runs_of(path)
    names = [naming.edges.get(number, one) for number, one in enumerate(guess(runs))]
    sides = _numbered(_gathered(runs, names, naming))
    sides = [_as_marked(side, outline.marks, naming) for side in sides]
    if len(sides) < LEAST_EDGES:
        return alike(naming.name, sides)
    if naming.drawn is Drawn.CUT:
        off = _taken_off(sides)
        if off is None:
            return too_wide(naming.name, sides)
        sides = off
    top, low = _top(sides), min(spot[1] for side in sides for spot in (side.start, side.end))
    levels = tuple(Level(name, top - mm) for name, mm in naming.depths_mm.items() if top - mm > low)
    return PaperPiece(
        naming.name,
        tuple(sides),
        naming.quantity,
        naming.mirrored_pair,
        _notches(sides, outline.marks.notches),
        levels,
        naming.grain or outline.marks.grain or _upright(sides),
    )


def _top(sides: Sequence[SeamEdge]) -> float:
    """Return the height that depths are told from: the middle between both ends of the waist, or the highest corner."""
    waist = [spot[1] for side in sides if side.name == "waist" for spot in (side.start, side.end)]
    return sum(waist) / len(waist) if waist else max(spot[1] for side in sides for spot in (side.start, side.end))


def _as_marked(side: SeamEdge, marks: Marks, naming: Naming) -> SeamEdge:
    """Return an edge on the fold where the file's fold line lies along it, its allowance up to the cutting line."""
    if naming.fold is None and marks.fold is not None and _lies_along(side, marks.fold):
        return replace(side, use=Use.FOLD, allowance_mm=0.0)
    if marks.cut is None or side.use is Use.FOLD or side.name in naming.allowances_mm:
        return side
    middle = at(side.parts[0], len(side.parts[0].segments) / 2)
    return replace(side, allowance_mm=round(nearest(marks.cut, middle).away_mm, 3))


def _lies_along(side: SeamEdge, fold: tuple[Point, Point]) -> bool:
    return all(min(distance_mm(spot, end) for end in fold) < NEAR_MM for spot in (side.start, side.end))


def _notches(sides: Sequence[SeamEdge], spots: Sequence[Point]) -> tuple[Notch, ...]:
    """Return the file's notches, each on the edge it is nearest to, moved on to the seam line."""
    out = []
    for number, spot in enumerate(spots, 1):
        places = [(nearest(part, spot), side, part) for side in sides for part in side.parts]
        place, side, part = min(places, key=lambda one: one[0].away_mm)
        if place.away_mm < FURTHEST_MM:
            out.append(Notch(f"{side.name} {number}", side.name, at(part, place.spot)))
    return tuple(out)


def _gathered(runs: Sequence[Path], names: Sequence[str], naming: Naming) -> list[SeamEdge]:
    """Join neighbouring runs of one name into an edge; the legs of a dart part it."""
    start = next((n for n in range(len(runs)) if names[n] and names[n - 1] not in ("", names[n])), 0)
    order = [(start + n) % len(runs) for n in range(len(runs))]
    sides: list[SeamEdge] = []
    number = 0
    while number < len(order):
        here = order[number]
        if names[here] == "" and dart_at(runs, here) and sides and number + 2 < len(order):
            after = runs[order[number + 2]]
            sides[-1] = _with_part(sides[-1], after, runs[here].end)
            number += 3
            continue
        name = names[here] or "side"
        if sides and sides[-1].name == name:
            sides[-1] = _longer(sides[-1], runs[here])
        else:
            sides.append(_edge(name, runs[here], naming))
        number += 1
    return sides


def _edge(name: str, run: Path, naming: Naming) -> SeamEdge:
    use = Use.FOLD if name == naming.fold else Use.HEM if name == "hem" else Use.SEAM
    width = 0.0 if use is Use.FOLD else naming.allowances_mm.get(name, naming.allowance_mm)
    return SeamEdge(name, (run,), (), width, use)


def _with_part(side: SeamEdge, part: Path, point: Point) -> SeamEdge:
    return SeamEdge(side.name, (*side.parts, part), (*side.points, point), side.allowance_mm, side.use)


def _longer(side: SeamEdge, run: Path) -> SeamEdge:
    parts = (*side.parts[:-1], side.parts[-1] + run)
    return SeamEdge(side.name, parts, side.points, side.allowance_mm, side.use)


def _numbered(sides: list[SeamEdge]) -> list[SeamEdge]:
    """Give edges of one name that lie apart different names: by left and right where they are sides."""
    out: list[SeamEdge] = []
    for side in sides:
        others = [one for one in sides if one.name == side.name and one is not side]
        name = side.name
        if others and name == "side" and len(others) == 1:
            name = "left side" if side.start[0] < others[0].start[0] else "right side"
        elif others:
            name = f"{name} {sum(one.name.split(' ')[0] == side.name for one in out) + 1}"
        out.append(SeamEdge(name, side.parts, side.points, side.allowance_mm, side.use))
    return out


def _taken_off(sides: list[SeamEdge]) -> list[SeamEdge] | None:
    """Return the edges at the seam line, the allowances taken off; darts keep their points; None if nothing is left."""
    runs = [Run(_whole(side), side.allowance_mm) for side in sides]
    inner = shrunk(runs)
    if not _is_sound(inner, sum(run.path.length_mm() for run in runs)):
        return None
    return [
        SeamEdge(side.name, _parted(line, side), side.points, side.allowance_mm, side.use)
        for side, line in zip(sides, inner, strict=True)
    ]


def _is_sound(lines: Sequence[Path], before_mm: float) -> bool:
    """Whether lines follow each other round one inside, none of them turned about or grown."""
    spots = [spot for line in lines for spot in line.points(0.2)[:-1]]
    meets = all(distance_mm(a.end, b.start) < 1 for a, b in zip(lines, [*lines[1:], lines[0]], strict=True))
    short = min(line.length_mm() for line in lines)
    if not meets or short < 1 or sum(line.length_mm() for line in lines) > before_mm:
        return False
    return crossing_of(spots) is None and signed_area_mm2(spots) > LEAST_MM2


def _whole(side: SeamEdge) -> Path:
    """Return an edge with straight lines over its darts."""
    whole = side.parts[0]
    for part in side.parts[1:]:
        whole = Path((*whole.segments, Line(whole.end, part.start), *part.segments))
    return whole


def _parted(line: Path, side: SeamEdge) -> tuple[Path, ...]:
    """Cut the moved edge again at the legs of its darts."""
    parts: list[Path] = []
    rest = line
    for before, after in zip(side.parts, side.parts[1:], strict=False):
        first, rest = cut(rest, nearest(rest, before.end).spot)
        _, rest = cut(rest, nearest(rest, after.start).spot)
        parts.append(first)
    return (*parts, rest)


def _upright(sides: Sequence[SeamEdge]) -> tuple[Point, Point]:
    xs = [spot[0] for side in sides for spot in (side.start, side.end)]
    ys = [spot[1] for side in sides for spot in (side.start, side.end)]
    x, high, low = (min(xs) + max(xs)) / 2, max(ys), min(ys)
    return ((x, high - (high - low) / 4), (x, low + (high - low) / 4))
