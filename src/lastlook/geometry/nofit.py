"""Convex parts of outlines, and their sums: the ground of every question whether two pieces would overlap.

Piece B, moved by d, overlaps piece A exactly if d lies inside the sum of A and the point reflection of B. Cut
both into convex *parts*, and that sum is a union of convex sums, each the meeting of *half-planes*.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from numpy.typing import NDArray

Corners = NDArray[np.float64]
_FLAT = 1e-9
"""Turns smaller than this, as sine of the angle, count as straight."""


def convex_parts(area: Sequence[tuple[float, float]] | shapely.Polygon) -> list[Corners]:
    """Return convex outlines, counter-clockwise, that make up an outline or a polygon with holes.

    Constrained Delaunay triangles, merged while they stay convex (after Hertel and Mehlhorn 1983).
    """
    polygon = area if isinstance(area, shapely.Polygon) else shapely.Polygon(area)
    cut = shapely.constrained_delaunay_triangles(polygon)
    triangles = [np.array(shapely.get_coordinates(one))[:3] for one in shapely.get_parts(cut)]
    spots: dict[tuple[float, float], int] = {}
    faces: list[list[int]] = []
    for triangle in triangles:
        if _turn(*triangle) < 0:
            triangle = triangle[::-1]
        faces.append([spots.setdefault((float(x), float(y)), len(spots)) for x, y in triangle])
    corners = np.array(list(spots))
    return [_tidy(corners[face]) for face in _merge(faces, corners)]


def _merge(faces: list[list[int]], corners: Corners) -> list[list[int]]:
    owner = {edge: spot for spot, face in enumerate(faces) for edge in _edges(face)}
    inner = [edge for edge in owner if edge[0] < edge[1] and edge[::-1] in owner]
    inner.sort(key=lambda edge: -float(np.hypot(*(corners[edge[0]] - corners[edge[1]]))))
    alive = dict(enumerate(faces))
    for a, b in inner:
        left, right = owner[(a, b)], owner[(b, a)]
        if left == right:
            continue
        joined = _joined(alive[left], alive[right], (a, b))
        if _is_convex_at(joined, corners, (a, b)):
            alive[left] = joined
            for edge in _edges(alive.pop(right)):
                owner[edge] = left
    return list(alive.values())


def _edges(face: list[int]) -> list[tuple[int, int]]:
    return list(zip(face, [*face[1:], face[0]], strict=True))


def _joined(left: list[int], right: list[int], edge: tuple[int, int]) -> list[int]:
    a, b = edge
    spot = left.index(b)
    first = left[spot:] + left[:spot]
    spot = right.index(a)
    second = right[spot:] + right[:spot]
    return first + second[1:-1]


def _is_convex_at(face: list[int], corners: Corners, at: tuple[int, int]) -> bool:
    many = len(face)
    for spot, corner in enumerate(face):
        if corner in at:
            a, b, c = corners[face[spot - 1]], corners[corner], corners[face[(spot + 1) % many]]
            if _turn(a, b, c) < -_FLAT * float(np.hypot(*(b - a)) * np.hypot(*(c - b))):
                return False
    return True


def _turn(a: Corners, b: Corners, c: Corners) -> float:
    return float((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]))


def _tidy(face: Corners) -> Corners:
    """Drop corners where a convex outline runs straight on."""
    before, after = face - np.roll(face, 1, 0), np.roll(face, -1, 0) - face
    turn = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    size = np.hypot(before[:, 0], before[:, 1]) * np.hypot(after[:, 0], after[:, 1])
    kept: Corners = face[turn > _FLAT * size]
    return kept if len(kept) >= 3 else face


def half_planes(outline: Corners) -> tuple[Corners, NDArray[np.float64]]:
    """Return the outward normals and offsets of a convex outline: inside where normal · spot < offset."""
    way = np.roll(outline, -1, 0) - outline
    long = np.maximum(np.hypot(way[:, 0], way[:, 1]), 1e-12)
    normals = np.stack([way[:, 1], -way[:, 0]], 1) / long[:, None]
    return normals, np.sum(normals * outline, 1)


def convex_sum(p: Corners, q: Corners) -> Corners:
    """Return the sum of two convex counter-clockwise outlines, by merging their edges in order of direction."""
    ways = np.concatenate([np.roll(p, -1, 0) - p, np.roll(q, -1, 0) - q])
    turn = np.arctan2(ways[:, 1], ways[:, 0])
    turn = np.where(turn < -1e-12, turn + 2 * np.pi, np.maximum(turn, 0.0))
    ways = ways[np.argsort(turn, kind="stable")]
    first = _lowest(p) + _lowest(q)
    out = first + np.concatenate([np.zeros((1, 2)), np.cumsum(ways, 0)[:-1]])
    return _tidy(out)


def _lowest(p: Corners) -> Corners:
    spot: Corners = p[np.lexsort((p[:, 0], p[:, 1]))[0]]
    return spot


def widened(outline: Corners, by_mm: float) -> Corners:
    """Return a convex outline pushed outwards: exact along its edges, at most 2 % too far round its corners."""
    if not by_mm:
        return outline
    normals, offsets = half_planes(outline)
    ways: list[tuple[float, float, float]] = []
    for spot in range(len(outline)):
        last, here = normals[spot - 1], normals[spot]
        bend = float(np.arctan2(last[0] * here[1] - last[1] * here[0], last @ here))
        start = float(np.arctan2(last[1], last[0]))
        steps = int(np.ceil(bend / (np.pi / 8)))
        for step in range(1, steps):
            angle = start + bend * step / steps
            way = (float(np.cos(angle)), float(np.sin(angle)))
            ways.append((*way, float(np.dot(way, outline[spot]))))
        ways.append((float(here[0]), float(here[1]), float(offsets[spot])))
    table = np.array(ways)
    table[:, 2] += by_mm
    return _corners_of(table)


def _corners_of(table: Corners) -> Corners:
    """Return the corners where consecutive half-planes meet."""
    before = np.roll(table, 1, 0)
    cross = before[:, 0] * table[:, 1] - before[:, 1] * table[:, 0]
    keep = np.abs(cross) > 1e-9
    a, b, c = before[keep], table[keep], cross[keep]
    x = (a[:, 2] * b[:, 1] - a[:, 1] * b[:, 2]) / c
    y = (a[:, 0] * b[:, 2] - a[:, 2] * b[:, 0]) / c
    return np.stack([x, y], 1)
