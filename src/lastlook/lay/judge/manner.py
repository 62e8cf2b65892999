"""How each copy lies: grain, nap, right side, on its fold, its stripes, its parts. One check per question."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from lastlook.finding import Certainty, Finding, Where
from lastlook.lay.cloth import Cloth, Fold
from lastlook.lay.judge.exact import Corners, area_mm2
from lastlook.lay.judge.laid import Copy, Zone, moved, zone_of, zones
from lastlook.lay.placement import BOTH
from lastlook.lay.wanted import Wanted

PRINTED_MM = 0.01
"""What the rounding of printed numbers may cost."""
TURN_DEG = 1e-4
"""An angle is printed to this; 0.0001 degrees move the end of a 2 m piece by 0.004 mm."""


def off(a: float, b: float) -> float:
    """Return how far two directions are apart, 0 to 180 degrees."""
    return abs((a - b + 180) % 360 - 180)


def trouble(kind: str, piece: str, say: str, why: str, attempt: str) -> Finding:
    """Return a proven finding about one piece of a lay."""
    return Finding(kind, Certainty.PROVEN, say, why, attempt, where=Where(piece=piece))


def grain_and_nap(copy: Copy, cloth: Cloth) -> list[Finding]:
    """Return what is wrong with the way round a copy lies."""
    piece = copy.wanted
    if piece.angles_deg is not None:
        allowed = piece.angles_deg if not cloth.one_way else (_the_one(piece.angles_deg),)
        if min(off(copy.angle_deg, angle) for angle in allowed) <= TURN_DEG:
            return []
        why = f"It lies at {copy.angle_deg % 360:g}°; allowed are {', '.join(f'{a:g}°' for a in allowed)}."
        return [trouble("off-grain", piece.id, f"{_name(copy)} lies at a turn it may not have.", why, "Turn it.")]
    if piece.grain_deg is None and not cloth.one_way:
        return []
    grain = piece.grain_deg or 0.0
    way = (-grain if copy.mirrored else grain) + copy.angle_deg
    upright, over = off(way, 0), off(way, 180)
    tilt = piece.tilt_deg + TURN_DEG
    if upright <= tilt or (over <= tilt and piece.may_turn and not cloth.one_way):
        return []
    if over <= tilt:
        reason = "The cloth is one-way." if cloth.one_way else "The piece may not be turned upside down."
        say = f"{_name(copy)} lies upside down."
        return [trouble("against-the-nap", piece.id, say, reason, "Turn it round.")]
    why = f"Its grain lies {min(upright, over):.3g}° off the selvedge; {piece.tilt_deg:g}° are allowed."
    return [trouble("off-grain", piece.id, f"{_name(copy)} lies off the grain.", why, "Lay it along the selvedge.")]


def _the_one(angles: Sequence[float]) -> float:
    """Return the one turn that a one-way cloth leaves of a list: straight if it is listed, else the first."""
    return next((angle for angle in angles if off(angle, 0) <= TURN_DEG), angles[0])


def right_side(copies: Sequence[Copy], cloth: Cloth) -> list[Finding]:
    """Return which pieces come out with left and right in the wrong numbers, where sides differ."""
    found = []
    for piece in {id(copy.wanted): copy.wanted for copy in copies}.values():
        mine = {copy.copy: copy.mirrored for copy in copies if copy.wanted is piece}
        if cloth.sides_alike or piece.on_fold is not None:
            continue
        most = piece.quantity // 2 if piece.mirrored_pair else 0
        mirrored = sum(mine.values())
        if mirrored > most or len(mine) - mirrored > piece.quantity - most:
            say = f"Of {piece.id}, {mirrored} come out mirrored and {len(mine) - mirrored} as drawn."
            why = f"Wanted are {most} mirrored and {piece.quantity - most} as drawn."
            found.append(trouble("wrong-side", piece.id, say, why, "Turn some of them over."))
    return found


def on_its_fold(copy: Copy, cloth: Cloth, length_mm: float) -> list[Finding]:
    """Return what is wrong between a copy and the folds of the cloth."""
    placement, piece = copy.placement, copy.wanted
    places = zones(cloth, length_mm)
    if not places:
        if placement.layer == BOTH:
            say = f"{_name(copy)} is said to lie on two layers, but the cloth lies single."
            return [trouble("off-fold", piece.id, say, "There is no fold.", "Fold the cloth, or lay it open.")]
        return []
    shapes = copy.outlines if placement.layer != BOTH else (moved(placement.outline or piece.outline, placement),)
    zone = zone_of(places, shapes, PRINTED_MM / 2)
    if zone is None:
        say = f"{_name(copy)} lies across a fold of the cloth."
        why = "What lies across a fold is cut as one with its reflection."
        return [trouble("off-fold", piece.id, say, why, "Move it to one side of the fold.")]
    if placement.layer != BOTH:
        return []
    if zone.fold_at is None:
        say = f"{_name(copy)} is said to lie on two layers where the cloth lies single."
        return [trouble("off-fold", piece.id, say, "The folded strip ends before it.", "Move it to the fold.")]
    if piece.on_fold is None or placement.outline is not None:
        return []
    return _edge_on_fold(copy, zone)


def _edge_on_fold(copy: Copy, zone: Zone) -> list[Finding]:
    piece = copy.wanted
    ends = moved(piece.on_fold or (), copy.placement)
    away = max(abs(float(end[zone.axis]) - (zone.fold_at or 0.0)) for end in ends)
    if away <= PRINTED_MM:
        return []
    say = f"The fold edge of {piece.id} lies {away:.2f} mm off the fold."
    why = "Cut so, the opened piece would be too wide or too narrow by twice that."
    return [trouble("off-fold", piece.id, say, why, "Move it to the fold.")]


def stripes(copies: Sequence[Copy], cloth: Cloth) -> list[Finding]:
    """Return which match points lie at another place of the repeat than the first of their group."""
    if cloth.repeat is None:
        return []
    found, first = [], dict[str, Copy]()
    for copy in copies:
        if copy.point is None or copy.wanted.match is None:
            continue
        lead = first.setdefault(copy.wanted.match.group, copy)
        for axis, repeat in ((0, cloth.repeat.along_mm), (1, cloth.repeat.across_mm)):
            if not repeat or lead.point is None:
                continue
            shift = (copy.point[axis] - lead.point[axis] + repeat / 2) % repeat - repeat / 2
            if abs(shift) > 2 * PRINTED_MM:
                way = "along" if axis == 0 else "across"
                say = f"The stripes of {_name(copy)} lie {abs(shift):.2f} mm off those of {_name(lead)}."
                why = f"Their points of “{copy.wanted.match.group}” differ {way} the repeat of {repeat:g} mm."
                found.append(trouble("stripes-apart", copy.wanted.id, say, why, "Move it by that much."))
    return found


def parts(copies: Sequence[Copy]) -> list[Finding]:
    """Return which pieced copies do not make up their piece."""
    found = []
    groups: dict[tuple[str, int], list[Copy]] = {}
    for copy in copies:
        if copy.placement.outline is not None:
            groups.setdefault((copy.wanted.id, copy.copy), []).append(copy)
    for (name, number), group in groups.items():
        why = _parts_differ(group[0].wanted, sorted(group, key=lambda one: one.placement.part))
        if why:
            say = f"The parts of {name}, copy {number}, do not make up the piece."
            found.append(trouble("parts-short", name, say, why, "Lay the parts that were planned."))
    return found


def _parts_differ(piece: Wanted, group: list[Copy]) -> str | None:
    """Return why parts don't make up a piece: each must be the piece between two cuts, with its seams."""
    if piece.pieced is None:
        return "This piece may not be pieced."
    if len(group) > piece.pieced.parts or [one.placement.part for one in group] != list(range(1, len(group) + 1)):
        return f"Parts {[one.placement.part for one in group]} are laid; at most {piece.pieced.parts} are allowed."
    whole = np.array(piece.outline, float)
    axis = int(np.ptp(whole[:, 1]) > np.ptp(whole[:, 0]))
    reached = float(whole[:, axis].min())
    seams = 2 * piece.pieced.seam_mm
    for spot, one in enumerate(group):
        part = np.array(one.placement.outline, float)
        low, high = float(part[:, axis].min()), float(part[:, axis].max())
        if low > reached + PRINTED_MM - (seams if spot else 0):
            return f"Part {spot + 1} begins {low - reached + (seams if spot else 0):.2f} mm too late for its seams."
        if not _alike(part, _between(whole, axis, low, high)):
            return f"Part {spot + 1} has another outline than the piece between {low:.1f} and {high:.1f} mm."
        reached = high
    short = float(whole[:, axis].max()) - reached
    return f"The last part ends {short:.2f} mm before the piece does." if short > PRINTED_MM else None


def _between(corners: Corners, axis: int, low: float, high: float) -> Corners:
    for sign, limit in ((1, high), (-1, -low)):
        out: list[Corners] = []
        for a, b in zip(corners, np.roll(corners, -1, 0), strict=True):
            da, db = sign * a[axis] - limit, sign * b[axis] - limit
            if da <= 0:
                out.append(a)
            if da * db < 0:
                out.append(a + (b - a) * da / (da - db))
        corners = np.array(out)
    return corners


def _alike(p: Corners, q: Corners) -> bool:
    """Whether two outlines are the same within what printing costs: area, and every corner on the other."""
    if len(q) < 3 or abs(abs(area_mm2(p)) - abs(area_mm2(q))) > PRINTED_MM * (np.ptp(q, 0).sum() + 1):
        return False
    return _stray(p, q) <= PRINTED_MM and _stray(q, p) <= PRINTED_MM


def _stray(p: Corners, q: Corners) -> float:
    way = np.roll(q, -1, 0) - q
    away = p[:, None] - q
    share = np.clip(np.sum(away * way, 2) / np.maximum(np.sum(way * way, 1), 1e-30), 0, 1)
    gap = away - share[..., None] * way
    return float(np.sqrt(np.sum(gap * gap, 2)).min(1).max())


def _name(copy: Copy) -> str:
    return copy.wanted.id if copy.wanted.quantity == 1 else f"{copy.wanted.id} {copy.copy}"


def is_folded(cloth: Cloth) -> bool:
    """Whether the cloth lies double anywhere."""
    return cloth.fold is not Fold.NONE
