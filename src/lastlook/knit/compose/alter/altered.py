"""A leaflet that was read, altered: every piece in new stitches and rows, its seams walked again, written down."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lastlook.finding import Certainty, Finding, Where
from lastlook.knit.compose.alter.build import in_pieces, in_rounds
from lastlook.knit.compose.alter.cap import cap_over_mm, printed_over_mm, refit, refitted
from lastlook.knit.compose.alter.changes import Changes, is_band, is_body, is_sleeve, stretching
from lastlook.knit.compose.alter.made import follow
from lastlook.knit.compose.alter.settled import settled
from lastlook.knit.compose.alter.shape.band import (
    band,
    is_crochet,
    is_picked_up,
    is_told_of_another,
    left_out,
    plain_band,
    shaped_inside,
)
from lastlook.knit.compose.alter.shape.divided import set_out
from lastlook.knit.compose.alter.shape.profile import rows_to_spare, stretches, underarm_row
from lastlook.knit.compose.alter.shape.recompose import Foot, Stretching, is_above, recompose
from lastlook.knit.compose.alter.shape.scale import Scale
from lastlook.knit.compose.alter.shape.shoulder import has_armhole, has_shoulders
from lastlook.knit.compose.alter.unaltered import unaltered
from lastlook.knit.compose.alter.written import write_altered
from lastlook.knit.compose.composed import Composed, FinishedMeasure, cant_hold, not_composed, off_target
from lastlook.knit.reading import LeafletReading, SizeReading
from lastlook.knit.worked import WorkedPiece
from lastlook.piece import Seam
from lastlook.quantity import Gauge, Missing, Spread

PLAIN = ("stockinette", "rib", "garter", "seed", "moss", "reverse")


def alter(reading: LeafletReading, size: SizeReading, changes: Changes) -> Composed:
    """Return the leaflet with the changes."""
    title = reading.title or "A leaflet"
    printed, wanted = reading.gauge, changes.gauge or reading.gauge
    if printed is None or wanted is None or isinstance(printed.rows, Missing) or isinstance(wanted.rows, Missing):
        return not_composed(title, size.size, [_no_gauge(title)])
    blocked = unaltered(size.pieces)
    if blocked is not None:
        return not_composed(title, size.size, [blocked])
    bands = [piece for piece in size.pieces if is_picked_up(piece) and not is_crochet(piece)]
    crocheted = [piece for piece in size.pieces if is_crochet(piece) and piece.rows]
    told_of = [piece for piece in size.pieces if is_told_of_another(piece)]
    left_alone = [*bands, *crocheted, *told_of]
    knitted = set_out([piece for piece in size.pieces if piece not in left_alone])
    across, up = wanted.stitches.best / 100.0, wanted.rows.best / 100.0
    following, done, told = follow(size, changes.made)
    asked = _asked(knitted, changes, across, up, following)
    clash = [one for piece in knitted if (one := _too_much(piece, asked[id(piece)]))]
    clash += [one for one in told if one.kind == "word-unread"]
    if changes.wider_mm.get("shoulder") and not any(has_shoulders(piece) for piece in knitted if is_body(piece)):
        clash.append(_no_shoulders(title))
    if clash:
        return not_composed(title, size.size, clash)
    scale = Scale(wanted.stitches.best / printed.stitches.best, wanted.rows.best / printed.rows.best)
    mates = tuple(seam.mate for seam in size.seams)
    try:
        pieces, caps = _with_cap(knitted, scale, settled(knitted, scale, asked), (printed, wanted), size.seams)
    except ValueError:
        return not_composed(title, size.size, [_runs_out()])
    measures = _all_measures(knitted, pieces, printed, wanted, asked)
    findings = [
        *told,
        *caps,
        *(_not_carried(piece) for piece in knitted if _pattern(piece) and piece.part_of is None),
        *off_target(measures, 100.0 / wanted.rows.best + 200.0 / wanted.stitches.best),
        *(plain_band(piece) for piece in bands if shaped_inside(piece)),
        *(left_out(piece) for piece in crocheted),
        *(plain_band(piece) for piece in told_of),
    ]
    whole = (*pieces, *(band(piece, scale) for piece in bands))
    built = _built(whole, changes.build, wanted)
    if isinstance(built, Finding):
        return not_composed(title, size.size, [built])
    whole, built_so = built
    findings += built_so
    left = [piece for piece in whole if piece.name not in done and piece.part_of not in done]
    leaflet = write_altered(title, left, wanted, size.size)
    return Composed(title, size.size, leaflet, whole, mates, measures, (), tuple(findings))


def _built(
    pieces: tuple[WorkedPiece, ...], build: str | None, gauge: Gauge
) -> tuple[tuple[WorkedPiece, ...], list[Finding]] | Finding:
    """Return the pieces built as is asked, with what there is to say of it."""
    if build is None:
        return pieces, []
    made = in_rounds(pieces, gauge) if build == "round" else in_pieces(pieces)
    return made if isinstance(made, Finding) else (made[0], [made[1]])


def measures_of(size: SizeReading, printed: Gauge, wanted: Gauge) -> tuple[FinishedMeasure, ...]:
    """Return the flat measures of a size as it is knitted at another gauge, against those that were printed."""
    if isinstance(printed.rows, Missing) or isinstance(wanted.rows, Missing):
        return ()
    pieces = [piece for piece in set_out(size.pieces) if not is_picked_up(piece) and not is_crochet(piece)]
    plain = {id(piece): Stretching() for piece in pieces}
    return _all_measures(pieces, tuple(pieces), printed, wanted, plain)


def _all_measures(
    knitted: list[WorkedPiece],
    pieces: tuple[WorkedPiece, ...],
    printed: Gauge,
    wanted: Gauge,
    asked: dict[int, Stretching],
) -> tuple[FinishedMeasure, ...]:
    """Return the measures of every whole piece; one that divides has no top of its own."""
    divided = {piece.part_of for piece in knitted}
    return tuple(
        one
        for old, new in zip(knitted, pieces, strict=True)
        if not is_band(old) and old.part_of is None
        for one in _measures(old, new, printed, wanted, asked[id(old)])
        if "top" not in one.name or old.name not in divided
    )


def _asked(
    knitted: list[WorkedPiece], changes: Changes, across: float, up: float, following: dict[str, Stretching]
) -> dict[int, Stretching]:
    """Return what each piece gets; of a piece that divides, the longer part takes a change of the armhole."""
    out = {id(piece): stretching(piece, changes, across, up) for piece in knitted}
    for piece in knitted:
        more = following.get(piece.part_of or piece.name)
        if more is not None:
            old = out[id(piece)]
            below = 0 if piece.part_of else more.below_rows
            rows = {"below_rows": old.below_rows + below, "above_rows": old.above_rows + more.above_rows}
            out[id(piece)] = replace(old, **rows)
    out = _at_shoulders(knitted, round(changes.wider_mm.get("shoulder", 0.0) * across), out)
    for piece in knitted:
        parts = [one for one in knitted if one.part_of == piece.name]
        if not parts:
            continue
        in_parts = max(len(one.rows) for one in parts) > _above(piece)
        for one in [piece] if in_parts else parts:
            out[id(one)] = replace(out[id(one)], above_rows=0)
    return out


def _all(knitted: list[WorkedPiece], scale: Scale, asked: dict[int, Stretching]) -> tuple[WorkedPiece, ...]:
    """Return every piece, the parts of a divided one going on from where it stopped."""
    out: list[WorkedPiece] = []
    for piece in knitted:
        spot = next((spot for spot, one in enumerate(knitted[: len(out)]) if one.name == piece.part_of), None)
        foot = Foot()
        if spot is not None:
            rows = _above(out[spot]) - asked[id(knitted[spot])].above_rows
            foot = Foot(_above(knitted[spot]), rows, _side(piece, knitted, spot, out[spot], scale))
        out.append(recompose(piece, scale, asked[id(piece)], foot))
    return tuple(_long_edges(old, new, knitted, out) for old, new in zip(knitted, out, strict=True))


def _at_shoulders(knitted: list[WorkedPiece], stitches: int, asked: dict[int, Stretching]) -> dict[int, Stretching]:
    """Return what each piece gets, with shoulders so much wider; of a piece that divides, where its armhole is."""
    out = dict(asked)
    for piece in knitted if stitches else ():
        if not is_body(piece):
            continue
        parts = [one for one in knitted if one.part_of == piece.name]
        whole = next((one for one in knitted if one.name == piece.part_of), piece)
        shaped_below = any(has_armhole(stretches(whole), edge) for edge in ("left", "right"))
        here = stitches if (piece is whole) == shaped_below else 0
        shoulder = 0 if parts else stitches
        out[id(piece)] = replace(out[id(piece)], shoulder=shoulder, armhole=here)
    return out


def _with_cap(
    knitted: list[WorkedPiece],
    scale: Scale,
    asked: dict[int, Stretching],
    gauges: tuple[Gauge, Gauge],
    seams: Sequence[Seam],
) -> tuple[tuple[WorkedPiece, ...], list[Finding]]:
    """Return every piece, a set-in cap as much longer than its armhole as it was."""
    printed, wanted = gauges
    pieces = _all(knitted, scale, asked)
    sleeve = next((piece for piece in knitted if is_sleeve(piece)), None)
    was, laid = cap_over_mm(knitted, printed), printed_over_mm(seams)
    if sleeve is None or was is None or laid is None:
        return pieces, []

    def higher(rows: int) -> dict[int, Stretching]:
        more = asked[id(sleeve)]
        return {**asked, id(sleeve): replace(more, above_rows=more.above_rows + rows)}

    def over(rows: int) -> float | None:
        try:
            return cap_over_mm(_all(knitted, scale, higher(rows)), wanted)
        except ValueError:
            return None

    rows = refit(over, was, laid, 100.0 / wanted.rows.best) if isinstance(wanted.rows, Spread) else 0
    return (_all(knitted, scale, higher(rows)), [refitted(rows, sleeve.name)]) if rows else (pieces, [])


def _side(piece: WorkedPiece, knitted: list[WorkedPiece], spot: int, whole: WorkedPiece, scale: Scale) -> int | None:
    """Return the stitches of one side of a divided piece, where both have as many: what the center leaves."""
    sides = [one.rows[0].before for one in knitted if one.part_of == piece.part_of]
    center = knitted[spot].end_stitches - sum(sides)
    if len(sides) != 2 or sides[0] != sides[1] or center < 0:
        return None
    middle = scale.count(center)
    return (whole.end_stitches - middle - (whole.end_stitches - middle) % 2) // 2


def _long_edges(old: WorkedPiece, new: WorkedPiece, olds: list[WorkedPiece], news: list[WorkedPiece]) -> WorkedPiece:
    """Return a divided piece whose edges that go on along its parts are as long as the rows of both."""
    parts = [(a, b) for a, b in zip(olds, news, strict=True) if a.part_of == old.name]
    if not parts:
        return new
    old_above, new_above = (_above(one) + len(part.rows) for one, part in zip((old, new), parts[0], strict=True))
    edges = []
    for was, now in zip(old.edges, new.edges, strict=True):
        goes_on = was.rows is not None and is_above(was) and was.rows > _above(old)
        edges.append(replace(now, rows=new_above - old_above + (was.rows or 0)) if goes_on else now)
    return replace(new, edges=tuple(edges))


def _above(piece: WorkedPiece) -> int:
    return len(piece.rows) - underarm_row(piece)


def _measures(
    old: WorkedPiece, new: WorkedPiece, printed: Gauge, wanted: Gauge, more: Stretching
) -> list[FinishedMeasure]:
    """Return widths and lengths of one piece, flat, against those of the leaflet and what was asked beyond."""
    under_old, under_new = underarm_row(old), underarm_row(new)
    out = []
    extra = more.all_through * 100.0 / wanted.stitches.best
    if old.cast_on and new.cast_on:
        target = printed.width_mm(old.cast_on).best + extra
        out.append(_across(f"{old.name}: width at cast-on", target, new.cast_on, wanted))
    if under_old and under_new:
        wide_old, wide_new = old.rows[under_old - 1].after, new.rows[under_new - 1].after
        target = printed.width_mm(wide_old).best + extra + more.at_underarm * 100.0 / wanted.stitches.best
        out.append(_across(f"{old.name}: width at underarm", target, wide_new, wanted))
        out.append(_down(f"{old.name}: length to underarm", under_old, under_new, printed, wanted, more.below_rows))
    above_old, above_new = len(old.rows) - under_old, len(new.rows) - under_new
    if above_old and under_old:
        out.append(_down(f"{old.name}: underarm to top", above_old, above_new, printed, wanted, more.above_rows))
    return out


def _across(name: str, target_mm: float, stitches: int, wanted: Gauge) -> FinishedMeasure:
    width = wanted.width_mm(stitches)
    return FinishedMeasure(name, target_mm, width.best, width.plus_minus)


def _down(name: str, old: int, new: int, printed: Gauge, wanted: Gauge, extra_rows: int) -> FinishedMeasure:
    was, now, extra = printed.length_mm(old), wanted.length_mm(new), wanted.length_mm(extra_rows)
    if isinstance(was, Missing) or isinstance(now, Missing) or isinstance(extra, Missing):
        raise TypeError("a leaflet is altered only where both row gauges are known")
    return FinishedMeasure(name, was.best + extra.best, now.best, now.plus_minus)


def _too_much(piece: WorkedPiece, more: Stretching) -> Finding | None:
    """Return a clash where a piece is to lose more rows or stitches than it has to give."""
    underarm = underarm_row(piece)
    spare = rows_to_spare(piece)
    if more.below_rows < 0 and -more.below_rows > spare and piece.part_of is None and _is_shaped_by_changes(piece):
        return cant_hold(
            f"{piece.name} is to lose {-more.below_rows} rows below the underarm, and has {spare} plain ones to spare.",
            "Only plain rows can be left out without the shaping going with them.",
            "Shorten it by less.",
        )
    least = min((row.after for row in piece.rows[:underarm]), default=99)
    if -(more.at_underarm + more.all_through) >= least - 4:
        return cant_hold(
            f"{piece.name} is to lose {-(more.at_underarm + more.all_through)} stitches, and has {least} at its least.",
            "A piece needs some stitches to stay one.",
            "Narrow it by less.",
        )
    return None


def _is_shaped_by_changes(piece: WorkedPiece) -> bool:
    return is_body(piece) or is_sleeve(piece)


def _pattern(piece: WorkedPiece) -> str | None:
    return next((row.structure for row in piece.rows if not row.structure.lower().startswith(PLAIN)), None)


def _not_carried(piece: WorkedPiece) -> Finding:
    name = _pattern(piece)
    return Finding(
        "pattern-not-carried",
        Certainty.DOUBTFUL,
        f"{piece.name} is knitted in “{name}”, whose repeat is not fitted to the new counts.",
        "The widths are right, but a repeat may end in the middle of itself.",
        "Centre the pattern on the new count, or keep to stockinette.",
        where=Where(piece=piece.name),
    )


def _no_shoulders(title: str) -> Finding:
    return cant_hold(
        f"{title} has no shoulders of its own to make narrower or wider.",
        "Shoulders are bound off above a shaped armhole; a raglan or a straight top has none.",
        "Ask for another upper arm or bust instead.",
    )


def _runs_out() -> Finding:
    return cant_hold(
        "At this gauge a piece runs out of stitches before its shaping is done.",
        "Its shaping is written for more stitches than are left once all counts are scaled.",
        "Use a gauge with more stitches, or a larger size.",
    )


def _no_gauge(title: str) -> Finding:
    return Finding(
        "gauge-missing",
        Certainty.UNKNOWN,
        f"What {title} becomes on your needles is not known: a stitch or row gauge is missing.",
        "Rows and stitches are turned from the leaflet's gauge into yours; both have to be known.",
        "Give your own as stitches x rows, like 22x30; if the leaflet prints none, knit its first piece's swatch.",
    )
