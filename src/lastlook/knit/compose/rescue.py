"""Rescue: where the hands are when the row number is lost, and what went wrong when the count is off.

A *mistake* is one slip that explains the count: a shaping left out, done twice, or done on one side only. The
likeliest come first: the fewer slips and the nearer to the needle, the likelier.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lastlook.knit.worked import Act, Shaping, WorkedPiece, WorkedRow
from lastlook.quantity import Gauge

ROW_MINUTES_PER_100 = 4.0
"""Minutes for a row of 100 stitches where no pace was logged: common practice, no source."""
RIP_SHARE = 0.1
"""Ripping a row takes about a tenth of knitting it: common practice, no source."""
TAKING = frozenset({Act.DECREASE, Act.BIND_OFF, Act.HOLD})


@dataclass(frozen=True)
class Mistake:
    """One slip that explains a wrong count."""

    say: str
    row: int
    """Where it happened."""
    likely: float
    """Share of all explanations, 0 to 1."""


@dataclass(frozen=True)
class Choice:
    """One way out, with what it costs and what it does."""

    say: str
    rows: int
    stitches: int
    minutes: float
    does: str


@dataclass(frozen=True)
class Rescue:
    """What a wrong count comes to."""

    should_be: int
    found: int
    mistakes: tuple[Mistake, ...]
    choices: tuple[Choice, ...]


def rescue(
    piece: WorkedPiece, row: int, found: int, gauge: Gauge | None, minutes_per_stitch: float = ROW_MINUTES_PER_100 / 100
) -> Rescue:
    """Return what explains `found` stitches after a row, and the ways out."""
    should = piece.rows[row - 1].after
    if found == should:
        return Rescue(should, found, (), ())
    mistakes = _mistakes(piece.rows[:row], found - should)
    return Rescue(should, found, mistakes, _choices(piece, row, found, mistakes, gauge, minutes_per_stitch))


def places(
    piece: WorkedPiece, stitches: int, shaped: int | None = None, since: int | None = None
) -> tuple[tuple[int, int], ...]:
    """Return the row ranges after which so many stitches are on the needle.

    The marks in the fabric that can be counted are the rows where it was shaped, and the plain rows above the last of
    them: `shaped` and `since`.
    """
    out: list[tuple[int, int]] = []
    seen = plain = 0
    for row in piece.rows:
        seen, plain = (seen + 1, 0) if row.shapings else (seen, plain + 1)
        if row.after != stitches or shaped not in (None, seen) or since not in (None, plain):
            continue
        if out and out[-1][1] == row.number - 1:
            out[-1] = (out[-1][0], row.number)
        else:
            out.append((row.number, row.number))
    return tuple(out)


def _mistakes(rows: Sequence[WorkedRow], off: int) -> tuple[Mistake, ...]:
    """Return single slips that leave `off` stitches too many (below nothing: too few), the likeliest first."""
    raw: list[tuple[str, int, float]] = []
    last = len(rows)
    for row in rows:
        near = 1.0 / (1 + (last - row.number) / 10)
        net = sum(_taken(one) for one in row.shapings)
        if net and net == off:
            raw.append((f"{_named(row)} of row {row.number} was left out", row.number, near))
        if net and -net == off:
            raw.append((f"{_named(row)} of row {row.number} was worked twice", row.number, 0.4 * near))
        if len(row.shapings) > 1:
            for one in row.shapings:
                if _taken(one) == off:
                    raw.append(
                        (f"row {row.number} was shaped on one side only, not at the {one.edge} edge", row.number, near)
                    )
    raw += _several(rows, off)
    if abs(off) == 1:
        word = "an accidental yarn over" if off > 0 else "a dropped or twice-caught stitch"
        raw.append((f"{word} somewhere in the last rows", last, 0.8))
    whole = sum(weight for _, _, weight in raw) or 1.0
    ranked = sorted(raw, key=lambda one: -one[2])[:5]
    return tuple(Mistake(say, row, weight / whole) for say, row, weight in ranked)


def _several(rows: Sequence[WorkedRow], off: int) -> list[tuple[str, int, float]]:
    """Return that the last few shaping rows were all left out, where that explains the count."""
    shaped = [row for row in rows if row.shapings]
    total = 0
    for many, row in enumerate(reversed(shaped), 1):
        total += sum(_taken(one) for one in row.shapings)
        if many > 1 and total == off:
            return [(f"the last {many} shaping rows, from row {row.number} on, were left out", row.number, 0.6 / many)]
    return []


def _taken(one: Shaping) -> int:
    return one.stitches if one.act in TAKING else -one.stitches


def _named(row: WorkedRow) -> str:
    act = row.shapings[0].act
    both = " at both ends" if len({one.edge for one in row.shapings}) == 2 else ""
    return f"the {act.value}{both}"


def _choices(
    piece: WorkedPiece,
    row: int,
    found: int,
    mistakes: Sequence[Mistake],
    gauge: Gauge | None,
    pace: float,
) -> tuple[Choice, ...]:
    off = found - piece.rows[row - 1].after
    out = []
    if mistakes:
        back = max(1, mistakes[0].row)
        rows = piece.rows[back - 1 : row]
        stitches = sum(one.after for one in rows)
        out.append(
            Choice(
                f"Rip back to the end of row {back - 1} and knit on from there.",
                len(rows),
                stitches,
                stitches * pace * (1 + RIP_SHARE),
                "The piece and its seams are as planned.",
            )
        )
    word = "Decrease" if off > 0 else "Increase"
    count = abs(off)
    sides = f"{count // 2} at each edge" if count % 2 == 0 else f"{count} near one edge"
    following = min(len(piece.rows), row + 2)
    out.append(
        Choice(
            f"{word} {count} more in the next rows ({sides}), by row {following}.",
            0,
            0,
            0.0,
            f"{_wide(off, gauge)} off in the rows already knitted; the seam is as long as planned.",
        )
    )
    out.append(
        Choice(
            "Leave it and carry the count on.",
            0,
            0,
            0.0,
            f"{_wide(off, gauge)} {'wider' if off > 0 else 'narrower'} to the top, where {_stitches(count)}"
            f" {'more' if off > 0 else 'fewer'} {'is' if count == 1 else 'are'} left; {_at_seam(piece, row, count)}",
        )
    )
    return tuple(out)


def _wide(off: int, gauge: Gauge | None) -> str:
    if gauge is None:
        return _stitches(abs(off))
    return f"{gauge.width_mm(abs(off)).best / 10:.1f} cm"


def _stitches(count: int) -> str:
    return f"{count} stitch{'' if count == 1 else 'es'}"


def _at_seam(piece: WorkedPiece, row: int, count: int) -> str:
    """Tell what a count that is carried on does to the seams: rows stay, stitches that are bound off later don't."""
    later = [one for each in piece.rows[row:] for one in each.shapings if one.act is Act.BIND_OFF]
    top = piece.end_stitches > 1
    if not later and not top:
        return "the seams along its rows are as long as planned."
    where = "what is bound off above is sewn to its mate" if later else "the top is joined"
    eased = f"{_stitches(count)} {'has' if count == 1 else 'have'} to be eased where {where}"
    return f"the seams along its rows are as long as planned, and {eased}."
