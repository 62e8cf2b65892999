"""Hostile placements against the judge: `python -m benchmarks lay-judge [COUNT] [SEED]`.

Pairs of random outlines, many of them hooked, thin or alike, are laid touching, a hair apart, a hair too near, or
one inside the other. The oracle is a geometry engine that the judge does not use: an overlap in which a disc of
0.01 mm across finds room must never pass, and what is clear by a thousandth of a millimetre must never be refused.
"""

from __future__ import annotations

import math
import random
import time

import shapely
from shapely import affinity

from lastlook import lay

ALLOWED_MM = 0.01
CLEAR_MM = 0.001
NUDGES = (0.0, 1e-7, 1e-5, 1e-3, 0.004, 0.0099, 0.0101, 0.011, 0.02, 0.1, 1.0, 30.0)


def outline(chance: random.Random) -> lay.Outline:
    """Return a random simple outline: a rectangle, a star, a hook, a sliver or a comb."""
    size = chance.choice([3.0, 40.0, 400.0])
    kind = chance.randrange(5)
    if kind == 0:
        return ((0, 0), (size, 0), (size, size / 3), (0, size / 3))
    if kind == 1:
        many = chance.randint(3, 12)
        turns = sorted(chance.uniform(0, 2 * math.pi) for _ in range(many))
        spots = [
            (size * math.cos(t) * chance.uniform(0.2, 1), size * math.sin(t) * chance.uniform(0.2, 1)) for t in turns
        ]
        return tuple(spots)
    if kind == 2:
        thin = size * chance.choice([0.02, 0.2])
        return ((0, 0), (size, 0), (size, size), (size - thin, size), (size - thin, thin), (0, thin))
    if kind == 3:
        return ((0, 0), (size, size * 1e-3), (size, size * 2e-3))
    teeth = [(size * k / 6, size * (0.2 if k % 2 else 0.9)) for k in range(7)]
    return ((0, 0), (size, 0), *reversed(teeth))


def sound(spots: lay.Outline) -> bool:
    """Whether an outline is one the problem's reader would take."""
    shape = shapely.Polygon(spots)
    return bool(shape.is_valid and shape.area > 1 and shape.exterior.is_ccw)


def hostile(chance: random.Random) -> tuple[lay.Problem, tuple[lay.Placement, ...]]:
    """Return two outlines, the second laid where it just about meets the first."""
    shapes = []
    while len(shapes) < 2:
        one = outline(chance)
        if sound(one):
            shapes.append(one)
    if chance.random() < 0.2:
        shapes[1] = shapes[0]
    angle = chance.choice([0.0, 90.0, 180.0, 45.0, chance.uniform(0, 360)])
    side = chance.random() < 0.3
    first = affinity.translate(shapely.Polygon(shapes[0]), 5000, 5000)
    second = shapely.Polygon([(x, -y) for x, y in shapes[1]] if side else shapes[1])
    second = affinity.rotate(second, angle, origin=(0, 0))
    way = chance.uniform(0, 2 * math.pi)
    x, y = _meeting(first, second, (math.cos(way), math.sin(way)))
    nudge = chance.choice(NUDGES) * chance.choice([-1, 1])
    x, y = x + math.cos(way) * nudge, y + math.sin(way) * nudge
    cloth = lay.Cloth(10_000.0, 10_000.0, sides_alike=True)
    pieces = tuple(lay.Wanted(name, one, grain_deg=None) for name, one in zip("ab", shapes, strict=True))
    placed = (lay.Placement("a", 1, 5000.0, 5000.0), lay.Placement("b", 1, x, y, angle, side))
    return lay.Problem(cloth, pieces), placed


def _meeting(first: shapely.Polygon, second: shapely.Polygon, way: tuple[float, float]) -> tuple[float, float]:
    """Return where the second shape, coming along a way from far off, first touches the first, to a millionth."""
    near, far = 0.0, 2000.0
    for _ in range(34):
        middle = (near + far) / 2
        moved = affinity.translate(second, 5000 + way[0] * middle, 5000 + way[1] * middle)
        near, far = (middle, far) if moved.intersects(first) else (near, middle)
    return 5000 + way[0] * far, 5000 + way[1] * far


def verdict(problem: lay.Problem, placed: tuple[lay.Placement, ...]) -> str:
    """Return "overlap", "clear" or "either" by the oracle."""
    shapes = []
    for one in placed:
        piece = problem.piece(one.id)
        spots = [] if piece is None else [(x, -y) for x, y in piece.outline] if one.mirrored else piece.outline
        turned = affinity.rotate(shapely.Polygon(spots), one.angle_deg, origin=(0, 0))
        shapes.append(affinity.translate(turned, one.x, one.y))
    if shapes[0].distance(shapes[1]) > CLEAR_MM:
        return "clear"
    common = shapes[0].intersection(shapes[1])
    return "overlap" if not common.buffer(-ALLOWED_MM / 2).is_empty else "either"


def main(words: list[str]) -> int:
    """Lay so many hostile pairs and print how the judge and the oracle agree."""
    count = int(words[0]) if words else 20_000
    chance = random.Random(int(words[1]) if len(words) > 1 else 1)
    start = time.monotonic()
    tally: dict[tuple[str, bool], int] = {}
    for _ in range(count):
        problem, placed = hostile(chance)
        x, y = placed[1].x, placed[1].y
        for sway in range(10):
            one = lay.Placement(
                "b", 1, x + chance.gauss(0, 0.01) * (sway > 0), y, placed[1].angle_deg, placed[1].mirrored
            )
            proven = lay.judge(problem, (placed[0], one)).proven
            key = (verdict(problem, (placed[0], one)), proven)
            tally[key] = tally.get(key, 0) + 1
    passed_overlaps, refused_clear = tally.get(("overlap", True), 0), tally.get(("clear", False), 0)
    print(f"{sum(tally.values())} placements in {time.monotonic() - start:.0f} s")
    for key in sorted(tally):
        print(f"  oracle {key[0]:8} judge {'proven' if key[1] else 'refused':8} {tally[key]}")
    print(f"overlaps passed: {passed_overlaps}; clear ones refused: {refused_clear}")
    return 1 if passed_overlaps or refused_clear else 0
