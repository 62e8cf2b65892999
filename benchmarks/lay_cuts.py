"""Jigsaws: a cloth cut up into garment-like pieces, so that a lay is known to exist, then given some spare.

A cut is a line across a piece that bends like an armhole, a hip or a slanted seam. Pieces that lie along the fold
become half pieces on the fold; all others of a folded cloth become mirrored pairs.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass, replace

import shapely
from shapely import affinity
from shapely.ops import split

from lastlook import lay

KINDS = ("rectangle", "flaws", "remnant", "fold")
RARE = ("partial", "both-selvedges", "stripes", "belt")
FEWEST, MOST = 6, 14
SMALLEST_SHARE = 0.012
THINNEST_MM = 45.0
KEPT_OFF_MM = 6.0


@dataclass(frozen=True)
class Jigsaw:
    """A problem with its known answer."""

    name: str
    problem: lay.Problem
    answer: tuple[lay.Placement, ...]


def jigsaw(kind: str, seed: int, spare: float, along_only: str = "both") -> Jigsaw:
    """Return a jigsaw whose cloth has `spare` more area than its pieces; shared both ways, or all "along"."""
    chance = random.Random(f"{kind} {seed}")
    for _ in range(200):
        made = _cut_up(kind, chance, spare, along_only)
        if made is not None and lay.judge(made.problem, made.answer).proven:
            return replace(made, name=f"{kind} {seed}")
    raise RuntimeError(f"no jigsaw of kind {kind} from seed {seed}")


def _cut_up(kind: str, chance: random.Random, spare: float, along_only: str) -> Jigsaw | None:
    wide = chance.choice([900.0, 1120.0, 1400.0])
    long = chance.uniform(900, 1700)
    stretch = (1 + spare, 1.0) if along_only == "along" else (math.sqrt(1 + spare),) * 2
    if kind in ("fold", "partial", "both-selvedges"):
        return _cut_folded(kind, chance, (wide, long), stretch)
    ground = _remnant(chance, wide, long) if kind == "remnant" else shapely.box(0, 0, long, wide)
    pieces = _pieces(chance, ground, chance.randint(FEWEST, MOST))
    flaws: list[shapely.Polygon] = []
    if kind in ("flaws", "remnant"):
        flaws = _flaws(chance, pieces, chance.randint(1, 2))
        kept_off = shapely.union_all([one.buffer(KEPT_OFF_MM, quad_segs=1) for one in flaws])
        pieces = [_largest(piece.difference(kept_off)) for piece in pieces]
    one_way = chance.random() < 0.5
    repeat = lay.Repeat(None, chance.choice([40.0, 60.0, 100.0])) if kind == "stripes" else None
    outline = _points(affinity.scale(ground, *stretch, origin=(0, 0))) if kind == "remnant" else None
    cloth = lay.Cloth(
        wide * stretch[1], long * stretch[0], outline, tuple(_points(one) for one in flaws), one_way=one_way,
        repeat=repeat,
    )  # fmt: skip
    wanted, answer = [], []
    for number, shape in enumerate(pieces):
        if min(_size(shape)) < THINNEST_MM:
            return None
        one, placed = _taken_out(chance, f"p{number}", shape, one_way)
        if repeat and number < 4 and repeat.along_mm:
            one = _matched(one, placed, repeat.along_mm)
        wanted.append(one)
        answer.append(placed)
    if kind == "belt":
        cloth, wanted, answer = _belted(cloth, wanted, answer)
    return Jigsaw(kind, lay.Problem(cloth, tuple(wanted)), tuple(answer))


def _belted(
    cloth: lay.Cloth, wanted: list[lay.Wanted], answer: list[lay.Placement]
) -> tuple[lay.Cloth, list[lay.Wanted], list[lay.Placement]]:
    """Add a strip at the far selvedge that holds a belt's two halves, longer together than the cloth is."""
    band, seam = 70.0, 15.0
    length = cloth.length_mm or 0.0
    half = length / 2 - 10
    belt = 2 * half - 2 * seam
    whole = lay.Wanted("belt", ((0, 0), (belt, 0), (belt, band), (0, band)), may_turn=True, pieced=lay.Pieced(2, seam))
    top = cloth.width_mm
    parts = [((0.0, 0.0), (belt / 2 + seam, 0.0), (belt / 2 + seam, band), (0.0, band)),
             ((belt / 2 - seam, 0.0), (belt, 0.0), (belt, band), (belt / 2 - seam, band))]  # fmt: skip
    spots = [0.0, half + 5 - (belt / 2 - seam)]
    placed = [lay.Placement("belt", 1, x, top, part=n, outline=part)
              for n, (x, part) in enumerate(zip(spots, parts, strict=True), 1)]  # fmt: skip
    return replace(cloth, width_mm=cloth.width_mm + band), [*wanted, whole], [*answer, *placed]


def _cut_folded(
    kind: str, chance: random.Random, size: tuple[float, float], stretch: tuple[float, ...]
) -> Jigsaw | None:
    """Cut up what lies double (and, partly folded, what lies single), and open it out as pairs and fold pieces."""
    wide, long = size
    deep = {"fold": wide / 2, "partial": wide * chance.uniform(0.28, 0.4), "both-selvedges": wide / 4}[kind]
    deep_now = deep * stretch[1]
    fold = {"fold": lay.Fold.LENGTHWISE, "partial": lay.Fold.PARTIAL, "both-selvedges": lay.Fold.BOTH_TO_MIDDLE}[kind]
    one_way = chance.random() < 0.5
    cloth = lay.Cloth(wide * stretch[1], long * stretch[0], fold=fold, one_way=one_way,
                      partial_mm=deep_now if kind == "partial" else 0.0)  # fmt: skip
    many = chance.randint(4, 8)
    wanted: list[lay.Wanted] = []
    answer: list[lay.Placement] = []
    bands = [(0.0, deep, deep_now)]
    if kind == "both-selvedges":
        bands.append((0.0, deep, -1.0))
    for spot, (low, high, fold_at) in enumerate(bands):
        for shape in _pieces(chance, shapely.box(0, low, long, high), max(3, many // len(bands))):
            if min(_size(shape)) < THINNEST_MM:
                return None
            one, placed = _folded_piece(chance, f"d{spot}{len(wanted)}", shape, deep, fold_at, cloth)
            wanted.append(one)
            answer.append(placed)
    if kind == "partial":
        rest = shapely.box(0, 2 * deep, long, wide)
        for shape in _pieces(chance, rest, max(2, many // 2)):
            moved = affinity.translate(shape, 0, 2 * deep_now - 2 * deep)
            one, placed = _taken_out(chance, f"s{len(wanted)}", moved, one_way)
            wanted.append(one)
            answer.append(placed)
    return Jigsaw(kind, lay.Problem(cloth, tuple(wanted)), tuple(answer))


def _folded_piece(
    chance: random.Random, name: str, shape: shapely.Polygon, deep: float, fold_at: float, cloth: lay.Cloth
) -> tuple[lay.Wanted, lay.Placement]:
    """Return a piece that lies double in its known place: on the fold if it has an edge there, else a pair."""
    upper = fold_at < 0
    at = 3 * cloth.width_mm / 4 if upper else fold_at
    shape = affinity.translate(shape, 0, at - deep) if not upper else affinity.affine_transform(
        shape, (1, 0, 0, -1, 0, at + deep)
    )  # fmt: skip
    spots = _points(shape)
    on_edge = [spot for spot in spots if abs(spot[1] - at) < 1e-3]
    x0, y0 = min(x for x, _ in spots), min(y for _, y in spots)
    outline = tuple((x - x0, y - y0) for x, y in spots)
    may_turn = not cloth.one_way and chance.random() < 0.6
    placed = lay.Placement(name, 1, x0, y0, layer=lay.BOTH)
    if len(on_edge) == 2:
        ends = sorted(on_edge)
        fold = ((ends[0][0] - x0, at - y0), (ends[1][0] - x0, at - y0))
        return lay.Wanted(name, outline, on_fold=fold, may_turn=may_turn), placed
    return lay.Wanted(name, outline, 2, True, may_turn=may_turn), placed


def _taken_out(
    chance: random.Random, name: str, shape: shapely.Polygon, one_way: bool
) -> tuple[lay.Wanted, lay.Placement]:
    """Return a piece in its own coordinates, perhaps the other way round, and where it lay."""
    spots = _points(shape)
    may_turn = not one_way and chance.random() < 0.7
    if may_turn and chance.random() < 0.5:
        x1, y1 = max(x for x, _ in spots), max(y for _, y in spots)
        outline = tuple((x1 - x, y1 - y) for x, y in spots)
        return lay.Wanted(name, outline, may_turn=True), lay.Placement(name, 1, x1, y1, 180.0)
    x0, y0 = min(x for x, _ in spots), min(y for _, y in spots)
    outline = tuple((x - x0, y - y0) for x, y in spots)
    return lay.Wanted(name, outline, may_turn=may_turn), lay.Placement(name, 1, x0, y0)


def _matched(one: lay.Wanted, placed: lay.Placement, repeat: float) -> lay.Wanted:
    """Give a piece the match point that lies on a line of the repeat in its known place."""
    sign = -1 if placed.angle_deg else 1
    xs = [x for x, _ in one.outline]
    middle = placed.x + sign * (min(xs) + max(xs)) / 2
    at = round(middle / repeat) * repeat
    return replace(one, match=lay.Match("hip", (sign * (at - placed.x), one.outline[0][1])))


def _pieces(chance: random.Random, ground: shapely.Polygon, many: int) -> list[shapely.Polygon]:
    """Cut a polygon into so many, always the largest next."""
    pieces, whole = [ground], ground.area
    tries = 0
    while len(pieces) < many and tries < 300:
        tries += 1
        pieces.sort(key=lambda one: -one.area * chance.uniform(0.6, 1.0))
        halves = _cut(chance, pieces[0])
        if halves is not None and min(one.area for one in halves) > SMALLEST_SHARE * whole:
            pieces[:1] = halves
    return pieces


def _cut(chance: random.Random, piece: shapely.Polygon) -> list[shapely.Polygon] | None:
    """Cut a polygon across its longer way along a line that bends, None if it would fall into more than two."""
    x0, y0, x1, y1 = piece.bounds
    across = (x1 - x0) > (y1 - y0) * chance.uniform(0.7, 1.4)
    share = chance.uniform(0.3, 0.7)
    tilt, bow = chance.uniform(-0.12, 0.12), chance.choice([0.0, 0.0, 0.07, -0.07, 0.12, -0.12])
    line = []
    for spot in (-0.1, 0.0, 0.2, 0.4, 0.6, 0.8, 1.0, 1.1):
        middle = share + tilt * (spot - 0.5) + bow * math.sin(math.pi * min(max(spot, 0), 1)) * (1 + tilt)
        if across:
            line.append((x0 + (x1 - x0) * middle, y0 + (y1 - y0) * spot))
        else:
            line.append((x0 + (x1 - x0) * spot, y0 + (y1 - y0) * middle))
    if not bow:
        line = [line[0], line[-1]]
    halves = [one for one in split(piece, shapely.LineString(line)).geoms if isinstance(one, shapely.Polygon)]
    if len(halves) != 2 or any(min(_size(one)) < THINNEST_MM for one in halves):
        return None
    return halves


def _size(shape: shapely.Polygon) -> tuple[float, float]:
    x0, y0, x1, y1 = shape.bounds
    return x1 - x0, y1 - y0


def _remnant(chance: random.Random, wide: float, long: float) -> shapely.Polygon:
    """Return a cloth with a slanted end and a missing corner."""
    slant, bite = chance.uniform(40, 200), chance.uniform(80, 300)
    return shapely.Polygon([(0, 0), (long - slant, 0), (long, wide - bite), (long - bite * 1.3, wide), (0, wide)])


def _flaws(chance: random.Random, pieces: list[shapely.Polygon], many: int) -> list[shapely.Polygon]:
    """Return flaws on the seams between pieces, so that the pieces beside them go round them."""
    out = []
    for _ in range(many):
        piece = chance.choice(pieces)
        spot = piece.exterior.interpolate(chance.random(), normalized=True)
        out.append(shapely.Polygon(spot.buffer(chance.uniform(8, 22), quad_segs=2)))
    return out


def _largest(shape: shapely.Geometry) -> shapely.Polygon:
    parts = [one for one in getattr(shape, "geoms", [shape]) if isinstance(one, shapely.Polygon)]
    return max(parts, key=lambda one: one.area)


def _points(shape: shapely.Polygon) -> tuple[tuple[float, float], ...]:
    ring = shapely.orient_polygons(shape).exterior.coords[:-1]
    return tuple((round(float(x), 4), round(float(y), 4)) for x, y in ring)
