"""A problem as JSON, read with one clear finding for whatever can't be read.

Lengths are mm; `docs/lay.md` is the whole description of the keys.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from lastlook import geometry
from lastlook.finding import Certainty, Finding, Where
from lastlook.lay.cloth import Cloth, Fold, Outline, Point, Repeat
from lastlook.lay.wanted import Match, Pieced, Problem, Wanted

FARTHEST_MM = 90_000.0
"""Coordinates beyond this are no cloth; within it the judge's whole numbers are exact."""
SMALLEST_MM2 = 1.0
MOST_COPIES = 400
MOST_CORNERS = 20_000
_T = TypeVar("_T")

_CLOTH_KEYS = frozenset(
    (
        *("width_mm", "length_mm", "outline", "flaws", "fold", "one_way", "selvedge_mm", "gap_mm", "repeat_mm"),
        *("sides_alike", "shrinkage"),
    )
)
_PIECE_KEYS = frozenset(
    (
        *("id", "outline", "quantity", "mirrored_pair", "on_fold", "grain_deg", "tilt_deg", "may_turn"),
        *("angles_deg", "match", "may_be_pieced", "flaw_free"),
    )
)


WHY = {
    "nap-against-nap": "One of every two pieces would lie against the nap.",
    "copies-too-many": "So many would take hours to search, and days to cut.",
    "outline-crosses": "What is inside such an outline, and what outside, can't be told.",
    "outline-without-area": "Its corners lie on one line, or all on one spot.",
}


class _Unread(Exception):
    """Carries the one finding out of the reader."""

    def __init__(self, fact: str, say: str, attempt: str, kind: str = "lay-unreadable") -> None:
        super().__init__(say)
        why = WHY.get(kind, "A lay can only be proven for a problem that can be read without guessing.")
        self.finding = Finding(kind, Certainty.PROVEN, say, why, attempt, where=Where(fact=fact))


def read_problem(value: Any) -> Problem | tuple[Finding, ...]:
    """Return the problem a JSON value describes, or the findings that say why it can't be read."""
    try:
        return _problem(value)
    except _Unread as trouble:
        return (trouble.finding,)


def _problem(value: Any) -> Problem:
    whole = _mapping(value, "problem")
    _no_others(whole, frozenset({"cloth", "pieces", "accept", "longer"}), "problem")
    pieces = whole.get("pieces")
    if not isinstance(pieces, list) or not pieces:
        raise _Unread("pieces", "The problem names no pieces.", "Write at least one piece under “pieces”.")
    _count_all(pieces)
    read = [_piece(one, f"pieces.{spot}") for spot, one in enumerate(pieces)]
    names = [piece.id for piece in read]
    for name in names:
        if names.count(name) > 1:
            say = f"Two pieces are called “{name}”."
            raise _Unread("pieces", say, "Give each piece its own id; copies are counted by “quantity”.")
    cloth = _cloth(whole.get("cloth"), "cloth")
    if cloth.fold is Fold.CROSSWISE and cloth.one_way:
        say = "The cloth is one-way and folded crosswise, so its two layers run opposite ways."
        raise _Unread("cloth.fold", say, "Fold it lengthwise, or lay it single.", "nap-against-nap")
    if cloth.fold is Fold.CROSSWISE and cloth.length_mm is None:
        say = "The cloth is folded crosswise at half its length, but its length is not given."
        raise _Unread("cloth.length_mm", say, "Write how long the piece of cloth is that is folded.")
    return Problem(cloth, tuple(read))


def _count_all(pieces: list[Any]) -> None:
    """Count the copies before anything heavy is done; thousands of them are no home cutter's job."""
    copies = 0
    for one in pieces:
        quantity = one.get("quantity", 1) if isinstance(one, Mapping) else 1
        copies += quantity if isinstance(quantity, int) and quantity > 0 else 1
    if copies > MOST_COPIES:
        say = f"The problem asks for {copies} copies; at most {MOST_COPIES} can be laid."
        raise _Unread("pieces", say, "Lay the outfit in several lays.", "copies-too-many")


def _cloth(value: Any, fact: str) -> Cloth:
    given = _mapping(value, fact)
    _no_others(given, _CLOTH_KEYS, fact)
    width = _length(given.get("width_mm"), f"{fact}.width_mm")
    length = _maybe(given.get("length_mm"), lambda v: _length(v, f"{fact}.length_mm"))
    outline = _maybe(given.get("outline"), lambda v: _outline(v, f"{fact}.outline"))
    flaws = given.get("flaws") or []
    if not isinstance(flaws, list):
        raise _Unread(f"{fact}.flaws", "The flaws are not a list of outlines.", "Write [[[x, y], …], …].")
    read = tuple(_outline(one, f"{fact}.flaws.{spot}") for spot, one in enumerate(flaws))
    fold, partial = _fold(given.get("fold", "none"), f"{fact}.fold", width)
    if outline is not None and length is None:
        length = max(x for x, _ in outline)
    selvedge = _amount(given.get("selvedge_mm", 0), f"{fact}.selvedge_mm")
    if 2 * selvedge >= width:
        say = f"Two selvedges of {selvedge:g} mm leave nothing of a cloth {width:g} mm wide."
        raise _Unread(f"{fact}.selvedge_mm", say, "Measure the selvedge again.")
    cloth = Cloth(
        width, length, outline, read, fold, partial,
        one_way=_flag(given.get("one_way", False), f"{fact}.one_way"),
        selvedge_mm=selvedge,
        gap_mm=_amount(given.get("gap_mm", 0), f"{fact}.gap_mm"),
        repeat=_maybe(given.get("repeat_mm"), lambda v: _repeat(v, f"{fact}.repeat_mm")),
        sides_alike=_flag(given.get("sides_alike", False), f"{fact}.sides_alike"),
    )  # fmt: skip
    return _shrunk(cloth, given.get("shrinkage"), f"{fact}.shrinkage")


def _shrunk(cloth: Cloth, value: Any, fact: str) -> Cloth:
    """Return the cloth as it will be after washing: what is lost along and across, as shares."""
    if value is None:
        return cloth
    given = _mapping(value, fact)
    _no_others(given, frozenset({"along", "across"}), fact)
    along, across = (1 - _share(given.get(way, 0), f"{fact}.{way}") for way in ("along", "across"))

    def shrink(outline: Outline) -> Outline:
        return tuple((x * along, y * across) for x, y in outline)

    repeat = cloth.repeat and Repeat(
        cloth.repeat.across_mm and cloth.repeat.across_mm * across,
        cloth.repeat.along_mm and cloth.repeat.along_mm * along,
        shrink((cloth.repeat.offset,))[0],
    )
    return Cloth(
        cloth.width_mm * across, cloth.length_mm and cloth.length_mm * along,
        cloth.outline and shrink(cloth.outline), tuple(map(shrink, cloth.flaws)), cloth.fold,
        min(cloth.partial_mm, cloth.width_mm * across / 2), cloth.one_way, cloth.selvedge_mm * across, cloth.gap_mm,
        repeat, cloth.sides_alike,
    )  # fmt: skip


def _fold(value: Any, fact: str, width: float) -> tuple[Fold, float]:
    if isinstance(value, Mapping) and set(value) == {"partial_mm"}:
        depth = _length(value["partial_mm"], f"{fact}.partial_mm")
        if 2 * depth > width:
            say = f"A strip of {depth:g} mm can't be folded over on a cloth {width:g} mm wide."
            raise _Unread(fact, say, f"Fold over {width / 2:g} mm at most.")
        return Fold.PARTIAL, depth
    names = [fold.value for fold in Fold if fold is not Fold.PARTIAL]
    if value in names:
        return Fold(value), 0.0
    say = f"The fold {value!r} is none that is known."
    raise _Unread(fact, say, f"Write one of {', '.join(names)}, or {{'partial_mm': width}}.")


def _repeat(value: Any, fact: str) -> Repeat | None:
    given = _mapping(value, fact)
    _no_others(given, frozenset({"across", "along", "offset"}), fact)
    across = _maybe(given.get("across"), lambda v: _length(v, f"{fact}.across"))
    along = _maybe(given.get("along"), lambda v: _length(v, f"{fact}.along"))
    offset = _point(given.get("offset", [0, 0]), f"{fact}.offset")
    return Repeat(across, along, offset) if across or along else None


def _piece(value: Any, fact: str) -> Wanted:
    given = _mapping(value, fact)
    name = given.get("id")
    if not isinstance(name, str) or not name.strip():
        raise _Unread(f"{fact}.id", "A piece has no name.", "Write its “id” as a word.")
    _no_others(given, _PIECE_KEYS, fact)
    outline = _outline(given.get("outline"), f"{fact}.outline", name)
    fold = _maybe(given.get("on_fold"), lambda v: _fold_edge(v, f"{fact}.on_fold", name, outline))
    pair = _flag(given.get("mirrored_pair", False), f"{fact}.mirrored_pair")
    quantity = _whole(given.get("quantity", 1), f"{fact}.quantity", name)
    if pair and quantity % 2:
        say = f"{name} is wanted in mirrored pairs, but {quantity} times."
        raise _Unread(f"{fact}.quantity", say, "Write an even quantity, or “mirrored_pair” false.")
    return Wanted(
        name, outline, quantity, pair, fold,
        grain_deg=_maybe(given.get("grain_deg", 0), lambda v: _number(v, f"{fact}.grain_deg")),
        tilt_deg=min(_amount(given.get("tilt_deg", 0), f"{fact}.tilt_deg"), 180.0),
        may_turn=_flag(given.get("may_turn", False), f"{fact}.may_turn"),
        angles_deg=_maybe(given.get("angles_deg"), lambda v: _angles(v, f"{fact}.angles_deg", name)),
        match=_maybe(given.get("match"), lambda v: _match(v, f"{fact}.match")),
        pieced=_maybe(given.get("may_be_pieced"), lambda v: _pieced(v, f"{fact}.may_be_pieced")),
        flaw_free=_maybe(given.get("flaw_free"), lambda v: _areas(v, f"{fact}.flaw_free")),
    )  # fmt: skip


def _fold_edge(value: Any, fact: str, name: str, outline: Outline) -> tuple[Point, Point]:
    if not isinstance(value, list) or len(value) != 2:
        raise _Unread(fact, f"The fold of {name} is not two points.", "Write [[x, y], [x, y]].")
    a, b = _point(value[0], fact), _point(value[1], fact)
    long = math.dist(a, b)
    if long < 1:
        raise _Unread(fact, f"The fold of {name} has no length.", "Give the two ends of its fold edge.")
    sides = [((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / long for x, y in outline]
    if min(sides) < -0.01 and max(sides) > 0.01:
        say = f"{name} lies on both sides of its own fold."
        raise _Unread(fact, say, "Give the half piece that lies on one side, and the fold as one of its edges.")
    if sum(abs(side) <= 0.01 for side in sides) < 2:
        raise _Unread(fact, f"No edge of {name} lies on its fold.", "Give the two ends of its fold edge.")
    return a, b


def _areas(value: Any, fact: str) -> tuple[Outline, ...]:
    if not isinstance(value, list):
        raise _Unread(fact, "The flaw-free parts are not a list of outlines.", "Write [[[x, y], …], …].")
    return tuple(_outline(one, f"{fact}.{spot}") for spot, one in enumerate(value))


def _match(value: Any, fact: str) -> Match:
    given = _mapping(value, fact)
    _no_others(given, frozenset({"group", "point"}), fact)
    return Match(str(given.get("group", "")), _point(given.get("point"), f"{fact}.point"))


def _pieced(value: Any, fact: str) -> Pieced:
    given = _mapping(value, fact)
    _no_others(given, frozenset({"parts", "seam_mm"}), fact)
    parts = _whole(given.get("parts"), f"{fact}.parts", "A pieced piece")
    if not 2 <= parts <= 6:
        raise _Unread(f"{fact}.parts", f"A piece in {parts} parts can't be laid.", "Write 2 to 6 parts.")
    return Pieced(parts, _amount(given.get("seam_mm", 0), f"{fact}.seam_mm"))


def _angles(value: Any, fact: str, name: str) -> tuple[float, ...]:
    if not isinstance(value, list) or not value or len(value) > 360:
        raise _Unread(fact, f"The turns of {name} are not a list of angles.", "Write [0, 180] or the like.")
    return tuple(_number(one, fact) for one in value)


def _outline(value: Any, fact: str, name: str = "The outline") -> Outline:
    if not isinstance(value, list) or len(value) < 3:
        raise _Unread(fact, f"{name} has fewer than three corners.", "Write its corners as [[x, y], …].")
    if len(value) > MOST_CORNERS:
        say = f"{name} has {len(value)} corners; at most {MOST_CORNERS} can be laid."
        raise _Unread(fact, say, "Trace it with fewer points: one every few millimetres is enough.")
    spots: list[Point] = []
    for one in value:
        spot = _point(one, fact)
        if not spots or math.dist(spot, spots[-1]) > 1e-6:
            spots.append(spot)
    while len(spots) > 1 and math.dist(spots[0], spots[-1]) <= 1e-6:
        spots.pop()
    flat = len(spots) < 3 or _is_flat(spots)
    cross = None if flat else geometry.crossing_of(spots)
    if cross:
        say = f"{name} crosses or touches itself near x {cross[0]:.1f}, y {cross[1]:.1f} mm."
        raise _Unread(fact, say, "Trace it again, corner after corner, all the way round.", "outline-crosses")
    if flat or abs(geometry.signed_area_mm2(spots)) < SMALLEST_MM2:
        raise _Unread(fact, f"{name} has no area.", "Trace it again, corner after corner.", "outline-without-area")
    return tuple(spots if geometry.signed_area_mm2(spots) > 0 else reversed(spots))


def _is_flat(spots: list[Point]) -> bool:
    """Whether all corners lie on one line, to a thousandth of a millimetre."""
    (x0, y0), far = spots[0], max(spots, key=lambda one: math.dist(one, spots[0]))
    long = math.dist(spots[0], far)
    return all(abs((far[0] - x0) * (y - y0) - (far[1] - y0) * (x - x0)) <= 1e-3 * long for x, y in spots)


def _point(value: Any, fact: str) -> Point:
    if not isinstance(value, list | tuple) or len(value) != 2:
        raise _Unread(fact, f"{str(value)[:60]} is no point.", "Write [x, y] in mm.")
    return _coordinate(value[0], fact), _coordinate(value[1], fact)


def _coordinate(value: Any, fact: str) -> float:
    number = _number(value, fact)
    if abs(number) > FARTHEST_MM:
        raise _Unread(fact, f"{number:g} mm is farther than any cloth reaches.", "Write millimetres.")
    return number


def _number(value: Any, fact: str) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise _Unread(fact, f"{str(value)[:60]!r} at {fact} is no number.", "Write a number.")
    if isinstance(value, int) and abs(value) > 10**12:
        raise _Unread(fact, f"The number at {fact} is too big to be a length.", "Write millimetres.")
    if not math.isfinite(value):
        raise _Unread(fact, f"{value} at {fact} is no number to measure by.", "Write a finite number.")
    return float(value)


def _length(value: Any, fact: str) -> float:
    number = _coordinate(value, fact)
    if number <= 0:
        raise _Unread(fact, f"{fact} is {number:g} mm.", "Write a length above zero.")
    return number


def _amount(value: Any, fact: str) -> float:
    number = _coordinate(value, fact)
    if number < 0:
        raise _Unread(fact, f"{fact} is {number:g}, less than nothing.", "Write zero or more.")
    return number


def _share(value: Any, fact: str) -> float:
    number = _amount(value, fact)
    if number >= 0.5:
        raise _Unread(fact, f"{fact} is {number:g}: no cloth loses half of itself.", "Write 0.04 for 4 %.")
    return number


def _whole(value: Any, fact: str, name: str) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or value < 1:
        raise _Unread(fact, f"{name} is wanted {str(value)[:40]} times.", "Write a whole number from 1.")
    return value


def _flag(value: Any, fact: str) -> bool:
    if not isinstance(value, bool):
        raise _Unread(fact, f"{str(value)[:40]!r} at {fact} is neither true nor false.", "Write true or false.")
    return value


def _mapping(value: Any, fact: str) -> Mapping[str, Any]:
    if not isinstance(value, Mapping):
        raise _Unread(fact, f"The {fact} is not written as keys and values.", "See the page about the lay.")
    return value


def _no_others(given: Mapping[str, Any], known: frozenset[str], fact: str) -> None:
    for key in given:
        if key not in known and key not in ("name", "note"):
            say = f"The key “{str(key)[:40]}” of {fact} is not known."
            raise _Unread(f"{fact}.{key}"[:80], say, f"The keys known here: {', '.join(sorted(known))}.")


def _maybe(value: Any, read: Callable[[Any], _T]) -> _T | None:
    return None if value is None else read(value)
