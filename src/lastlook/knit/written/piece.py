"""One piece with its parts: where it divides, what waits, what comes together again.

A *part* is what is worked by itself after the piece divided. Parts that come together again are worked side by side, or
the one that takes the other's stitches after it.
"""

from __future__ import annotations

from collections.abc import Iterator

from lastlook.knit.worked import Ended, WorkedPiece
from lastlook.knit.written.lines import Scope, Sheet, write_rows

SECTIONS = ("raglan", "armhole", "shoulder", "neck", "cap", "top", "crown", "heel", "toe")
NAMED_EVERY = 40
"""Lines after which the size is named again; a page holds more."""
NAMED = ("FIRST SIDE", "SECOND SIDE", "THIRD PART", "FOURTH PART", "FIFTH PART")


def piece_lines(piece: WorkedPiece, parts: list[WorkedPiece], scope: Scope, crochet: bool) -> list[str]:
    """Return the lines of a piece and its parts; the size is named on every head."""
    sheet = Sheet(scope, [_head(piece, scope)])
    sheet.marks = _marks(piece)
    if piece.cast_on and not (piece.rows and piece.rows[0].before == 0):
        sheet.add(_start(piece, piece.cast_on))
    first = [one for one in parts if one.rows or one.end_stitches]
    groups = _groups(piece, first)
    whole = _is_island(piece, groups) or any(_taken(one) is not None for one in first)
    divides = () if whole else tuple(map(_initial, groups))
    write_rows(sheet, piece, divides, crochet)
    if not parts:
        sheet.add(_end(piece))
    _parts(sheet, piece, first, crochet)
    return _named_often([line for line in sheet.lines if line], scope)


def _named_often(lines: list[str], scope: Scope) -> list[str]:
    """Name the size again so often that it stands on every page that is printed."""
    if not scope.named:
        return lines
    out: list[str] = []
    for number, line in enumerate(lines):
        if number and number % NAMED_EVERY == 0:
            out.append(f"({scope.named.capitalize()}.)")
        out.append(line)
    return out


def _start(piece: WorkedPiece, count: int) -> str:
    """Return how the stitches come onto the needle: cast on, or from the holder where another piece left them."""
    edge = next((one for one in piece.edges if one.name.edge == "cast-on edge"), None)
    held = edge is not None and edge.stitches is None
    return f"Slip the {count} sts from the holder to the needle." if held else f"Cast on {count} sts."


def _head(piece: WorkedPiece, scope: Scope) -> str:
    if piece.name.endswith(", band"):
        # It is picked up along the piece before it, which it follows without a head of its own.
        return f"({scope.named.capitalize()}.)" if scope.named else ""
    name = piece.name.upper()
    if piece.make < 2:
        return scope.head(name)
    return scope.head(name if name.endswith("S") else f"{name}S", f"make {piece.make}")


def _marks(piece: WorkedPiece) -> dict[int, str]:
    """Return after which row a part of the piece begins whose name others refer to."""
    return {row: name for name, row in piece.landmarks if name in SECTIONS and row > 0}


def _initial(part: WorkedPiece) -> int:
    return part.rows[0].before if part.rows else part.end_stitches


def _groups(piece: WorkedPiece, parts: list[WorkedPiece]) -> list[WorkedPiece]:
    """Return the parts that the last row of the piece leaves."""
    left = piece.end_stitches
    out = []
    for one in parts:
        if _initial(one) > left:
            break
        left -= _initial(one)
        out.append(one)
    return out


FINGERS = ("First finger", "Second finger", "Third finger", "Fourth finger")


def _taken(part: WorkedPiece) -> int | None:
    return dict(part.landmarks).get("taken from the hand")


def _fingers(sheet: Sheet, parts: list[WorkedPiece], crochet: bool) -> None:
    """Write the fingers of a glove: what each takes of the hand and what is added for it; then the thumb."""
    fingers = [one for one in parts if _taken(one) is not None]
    for number, one in enumerate(parts):
        took = _taken(one)
        count = _initial(one)
        name = FINGERS[min(number, 3)] if took is not None else "Thumb"
        sheet.add("The fingers follow." if number == 0 else "")
        sheet.add(f"{name}.")
        if sheet.scope.named:
            sheet.add(f"({sheet.scope.named.capitalize()}.)")
        own = count if took is None else took
        own = min(own, sheet.held or own) if took is None else own
        rest = count - own
        which = "remaining" if one is fingers[-1] else "first" if number == 0 else "next"
        start = f"K the {which} {own} sts" if took is not None else f"K the {own} sts from the holder"
        more = f", {'cast on' if number == 0 else 'pick up and k'} {rest} sts" if rest else ""
        sheet.add(f"{start}{more}.")
        sheet.rounds, sheet.next_right, sheet.behind = True, None, 0
        write_rows(sheet, one, (), crochet)
        sheet.add(_end(one))


def _parts(sheet: Sheet, piece: WorkedPiece, parts: list[WorkedPiece], crochet: bool) -> None:
    if any(_taken(one) is not None for one in parts):
        _fingers(sheet, parts, crochet)
        return
    groups = _groups(piece, parts)
    later = parts[len(groups) :]
    if later and _alike(groups):
        sheet.add(sheet.scope.head("BOTH SIDES"))
        sheet.add("Work both sides at once, each with its own ball.")
        write_rows(sheet, groups[0], (), crochet)
    else:
        waits = _waits(groups, later)
        for number, one in enumerate(reversed(groups) if waits else groups):
            sheet.add(sheet.scope.head(NAMED[min(number, 4)]))
            count = _initial(one)
            sheet.held = waits
            if number == 0:
                which = "last" if waits else "these" if _is_island(piece, groups) else "the first"
                sheet.add(f"Work on {'the ' * bool(waits)}{which} {count} sts only.")
            else:
                sheet.add(_center(piece, groups))
                island = _is_island(piece, groups)
                sheet.add("Join yarn." if island else f"Join yarn to the remaining {count} sts.")
            sheet.behind, sheet.next_right = 0, None
            write_rows(sheet, one, (), crochet)
            sheet.add(_end(one) or (f"Leave these {one.end_stitches} sts on a holder." if waits and later else ""))
    for one in later:
        sheet.add(f"({sheet.scope.named.capitalize()}.)" if sheet.scope.named else "")
        takes = bool(_waits(groups, later))
        sheet.held = _waits(groups, later)
        write_rows(sheet, one, () if takes else tuple(group.end_stitches for group in groups), crochet)
        sheet.add(_end(one))


def _is_island(piece: WorkedPiece, groups: list[WorkedPiece]) -> bool:
    """Whether the first group lies between two turns, as a thumb does: stitches wait on both sides of it."""
    if len(groups) != 2 or len(piece.rows) < 2:
        return False
    before, last = piece.rows[-2:]
    return before.used < before.before and last.used < last.before and last.gives == _initial(groups[0])


def _center(piece: WorkedPiece, groups: list[WorkedPiece]) -> str:
    """Return what stays on the holder of a row that turned: the stitches that are in no group."""
    last = piece.rows[-1] if piece.rows else None
    if last is None or last.used >= last.before or len(groups) != 2:
        return ""
    center = piece.end_stitches - sum(_initial(one) for one in groups)
    return f"Leave the center {center} sts on the holder." if center > 0 else ""


def _waits(groups: list[WorkedPiece], later: list[WorkedPiece]) -> int:
    """Return how many stitches the first of two groups takes from the second, which is then worked first."""
    if len(groups) != 2 or groups[1].ended is not Ended.ON_HOLDER:
        return 0
    count = groups[1].end_stitches
    rows = [row for one in (groups[0], *later) for row in one.rows]
    return count if any(row.gives - row.used == count for row in rows) else 0


def _alike(groups: list[WorkedPiece]) -> bool:
    told = [[(row.used, row.gives) for row in one.rows] for one in groups]
    return len(told) > 1 and all(one == told[0] for one in told) and all(one.ended is Ended.JOINED for one in groups)


def _end(piece: WorkedPiece) -> str:
    count = piece.rows[-1].after if piece.rows and piece.ended is Ended.BOUND_OFF else piece.end_stitches
    ends = {
        Ended.BOUND_OFF: f"Bind off {count} sts.",
        Ended.FASTENED_OFF: "Fasten off.",
        Ended.ON_HOLDER: f"Leave these {count} sts on a holder.",
        Ended.DRAWN_UP: f"Break yarn, draw through the remaining {count} sts and fasten off.",
    }
    if piece.ended is Ended.JOINED and piece.part_of is None and piece.rows and count:
        return f"Graft the {count} sts."
    return ends.get(piece.ended, "")


def parts_of(pieces: tuple[WorkedPiece, ...]) -> Iterator[tuple[WorkedPiece, list[WorkedPiece]]]:
    """Yield every piece with its parts."""
    for piece in pieces:
        if piece.part_of is None:
            yield piece, [one for one in pieces if one.part_of == piece.name]
