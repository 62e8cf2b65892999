"""A piece on a fold opened into a whole one, so that its two sides can differ; and folded again.

Left and right are the wearer's: a front is drawn as others see it, a back as seen from behind.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.geometry import Path, Point, mirrored, polyline
from lastlook.paper.alter.alteration import refusal
from lastlook.paper.paper_piece import Notch, PaperPiece
from lastlook.paper.seam_edge import SeamEdge, Use

UPRIGHT_MM = 1e-6


@dataclass(frozen=True)
class Unfold:
    """Draw a piece whole that lay on a fold."""

    piece: str
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with both halves drawn."""
        fold = piece.fold
        if fold is None:
            return refusal(
                piece, f"{piece.name} does not lie on a fold.", "It is drawn whole already.", "Leave it out."
            )
        if abs(fold[0][0] - fold[1][0]) > UPRIGHT_MM:
            return refusal(piece, f"The fold of {piece.name} does not stand upright.", "It slants.", "Straighten it.")
        return _opened(piece, fold[0][0])

    def inverse(self, before: PaperPiece) -> Refold:
        """Return the change that takes this one back."""
        edge = before.fold_edge or "centre"
        return Refold(self.piece, edge)

    def say(self) -> str:
        """Return it in a maker's words."""
        return f"Draw {self.piece} whole instead of on a fold."


@dataclass(frozen=True)
class Refold:
    """Lay a whole piece on a fold again; its right half on the paper is kept."""

    piece: str
    edge: str = "centre"
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the half on the right of the paper."""
        if piece.fold_edge:
            return refusal(piece, f"{piece.name} lies on a fold already.", "It is drawn as a half.", "Leave it out.")
        xs = [spot[0] for side in piece.sides for part in side.parts for spot in (part.start, part.end)]
        middle = (min(xs) + max(xs)) / 2
        return _halved(piece, middle, self.edge)

    def inverse(self, before: PaperPiece) -> Unfold:
        """Return the change that takes this one back."""
        return Unfold(self.piece)

    def say(self) -> str:
        """Return it in a maker's words."""
        return f"Lay {self.piece} on a fold."


def _opened(piece: PaperPiece, x: float) -> PaperPiece:
    at = next(number for number, side in enumerate(piece.sides) if side.use is Use.FOLD)
    walk = [*piece.sides[at + 1 :], *piece.sides[:at]]
    paper_left, paper_right = _wearers_sides(piece.name)
    other = [_mirrored(side, x) for side in reversed(walk)]
    first, last = walk[0], walk[-1]
    whole = [_joined(other[-1], first)]
    whole += [_named(side, paper_right) for side in walk[1:-1]]
    whole.append(_joined(last, other[0]))
    whole += [_named(side, paper_left) for side in other[1:-1]]
    notches = tuple(
        one
        for notch in piece.notches
        for one in (_renamed(notch, paper_right), _renamed(_mirror_notch(notch, x), paper_left))
    )
    return replace(piece, sides=tuple(whole), notches=notches)


def _wearers_sides(name: str) -> tuple[str, str]:
    """Return the wearer's side on the left and on the right of the paper."""
    return ("left", "right") if "back" in name.lower() else ("right", "left")


def _named(side: SeamEdge, which: str) -> SeamEdge:
    return replace(side, name=f"{which} {side.name}")


def _renamed(notch: Notch, which: str) -> Notch:
    return replace(notch, edge=f"{which} {notch.edge}") if notch.edge not in ("waist", "hem") else notch


def _mirror_notch(notch: Notch, x: float) -> Notch:
    return replace(notch, point=_flip(notch.point, x))


def _flip(spot: Point, x: float) -> Point:
    return (2 * x - spot[0], spot[1])


def _mirrored(side: SeamEdge, x: float) -> SeamEdge:
    parts = tuple(mirrored(part, x) for part in reversed(side.parts))
    return replace(side, parts=parts, points=tuple(_flip(point, x) for point in reversed(side.points)))


def _joined(a: SeamEdge, b: SeamEdge) -> SeamEdge:
    """Join two halves of an edge that meet at the fold."""
    parts = (*a.parts[:-1], a.parts[-1] + b.parts[0], *b.parts[1:])
    return replace(b, parts=parts, points=(*a.points, *b.points))


def _halved(piece: PaperPiece, x: float, edge: str) -> PaperPiece | Finding:
    paper_left, paper_right = _wearers_sides(piece.name)
    hem, waist = piece.side("hem"), piece.side("waist")
    if hem is None or waist is None:
        return refusal(piece, f"{piece.name} has no waist or no hem to fold.", "Both cross a fold.", "Name its edges.")
    hems, waists = _half(hem, x), _half(waist, x)
    kept = [side for side in piece.sides if side.name.startswith(f"{paper_right} ")]
    gone = [side for side in piece.sides if side.name.startswith(f"{paper_left} ")]
    alike = [abs(a.sewn_mm - b.sewn_mm) for a, b in zip(kept, gone, strict=False)]
    if len(kept) != len(gone) or max(alike, default=0.0) > 1e-3 or hems is None or waists is None:
        return refusal(
            piece,
            f"{piece.name} can't lie on a fold: its halves differ.",
            "Its two sides are not alike.",
            "Leave it open.",
        )
    hem_half, waist_half = hems[1], waists[0]
    names = tuple(replace(side, name=side.name.removeprefix(f"{paper_right} ")) for side in kept)
    fold = SeamEdge(edge, (polyline((waist_half.end, hem_half.start)),), (), 0.0, Use.FOLD)
    notches = tuple(
        replace(notch, edge=notch.edge.removeprefix(f"{paper_right} "))
        for notch in piece.notches
        if not notch.edge.startswith(f"{paper_left} ") and notch.point[0] >= x
    )
    return replace(piece, sides=(fold, hem_half, *names, waist_half), notches=notches)


def _half(side: SeamEdge, x: float) -> tuple[SeamEdge, SeamEdge] | None:
    """Return an edge cut in two at the fold, in the order of the walk."""
    for number, part in enumerate(side.parts):
        for count in range(1, len(part.segments)):
            if abs(part.segments[count].start[0] - x) < 1e-6:
                first, second = Path(part.segments[:count]), Path(part.segments[count:])
                before = replace(side, parts=(*side.parts[:number], first), points=side.points[:number])
                return before, replace(side, parts=(second, *side.parts[number + 1 :]), points=side.points[number:])
    return None
