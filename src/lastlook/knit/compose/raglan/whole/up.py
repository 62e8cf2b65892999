"""A raglan in one piece from the hem up: sleeves first, then the body, both joined for the yoke; from the neck on
it is worked back and forth.
"""

from __future__ import annotations

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.evenly import to_repeat
from lastlook.knit.compose.raglan.counts import RaglanCounts
from lastlook.knit.compose.raglan.whole.knitting import (
    PLACED,
    Knitting,
    evened,
    lower_body,
    piece_name,
    side_shapings,
    sleeve_edges,
    whole_edges,
)
from lastlook.knit.compose.raglan.whole.section import Section, edged, onwards
from lastlook.knit.compose.raglan.whole.sleeve import INC_ROUND, cuff_of, sleeve_shapings
from lastlook.knit.compose.raglan.whole.yoke import OVER_ALL, Yoke, words, yoke_of
from lastlook.knit.worked import Act, Ended, Shaping, Side

CAREFUL = "Join, being careful not to twist."


def hem_up(counts: RaglanCounts, asked: Asked) -> tuple[Section, ...]:
    """Return sleeves and body of a raglan worked from the hem up."""
    return _sleeves(counts, asked), _body_and_yoke(counts, asked)


def _sleeves(counts: RaglanCounts, asked: Asked) -> Section:
    cuff, under = cuff_of(counts, asked), counts.underarm
    knitting = Knitting(cuff, Side.ROUND, [])
    start = f"With smaller needles cast on {cuff} sts. {CAREFUL}"
    knitting.lines.append(f"{start} {edged(knitting, asked, counts.cuff_rows)} {onwards(knitting)}")
    times, odd = divmod(counts.sleeve - cuff, 2)
    shapings = sleeve_shapings(times, counts.sleeve_rows - counts.cuff_rows, counts.sleeve_free_rows)
    evened(knitting, cuff + odd)
    for change in shapings[1:]:
        edges = tuple(Shaping(Act.INCREASE, edge, 1) for edge in ("right", "left")) if change else ()
        knitting.work(INC_ROUND if change else "", edges)
    knitting.needle.mark("underarm")
    held = f"slip next {under} sts on to a stitch holder"
    holds = tuple(Shaping(Act.HOLD, edge, under) for edge in ("right", "left"))
    knitting.work(f"{held}, k to last {under} sts, {held}", holds)
    knitting.say(f"Place remaining {knitting.stitches} sts on a spare needle.")
    piece = knitting.needle.off("Sleeves", Ended.ON_HOLDER, sleeve_edges(counts), make=2)
    return Section("SLEEVES (make 2)", tuple(knitting.lines), piece)


def _body_and_yoke(counts: RaglanCounts, asked: Asked) -> Section:
    yoke = yoke_of(counts, asked.neck)
    right, left = _fronts(counts, asked)
    flat = asked.opening == "cardigan"
    change = (counts.back - counts.hem) // 2
    above = right + counts.back + left - 4 * change
    hem = to_repeat(above, asked.edging.repeat, asked.edging.extra if flat else 0)
    knitting = Knitting(hem, Side.RIGHT if flat else Side.ROUND, [])
    start = f"With smaller needles cast on {hem} sts.{'' if flat else f' {CAREFUL}'}"
    knitting.lines.append(f"{start} {edged(knitting, asked, counts.rib_rows)} {onwards(knitting)}")
    evened(knitting, above)
    three = [right - change, counts.back - 2 * change, left - change]
    knitting.work(_marked(knitting, three))
    lower_body(knitting, side_shapings(change, counts.side_rows - counts.rib_rows)[2:])
    knitting.needle.mark("underarm")
    _join_sleeves(knitting, counts, right, left)
    for pair in yoke.pairs[: yoke.below_neck - 1]:
        knitting.pair(pair, "dec")
    _open_neck(knitting, yoke, counts.neck_center, asked)
    knitting.needle.mark("neck")
    for pair in yoke.pairs[yoke.below_neck :]:
        knitting.pair(pair, "dec")
    knitting.say(f"Bind off remaining {knitting.stitches} sts.")
    name = piece_name(asked)
    piece = knitting.needle.off(name, Ended.BOUND_OFF, whole_edges(name, counts))
    return Section(name.upper(), tuple(knitting.lines), piece)


def _fronts(counts: RaglanCounts, asked: Asked) -> tuple[int, int]:
    """Return right and left front at the underarm; the middle of a pullover's neck is at the left front's end."""
    if asked.opening == "cardigan":
        return counts.front, counts.front
    right = (counts.back - counts.neck_center) // 2
    return right, counts.back - right


def _marked(knitting: Knitting, three: list[int]) -> str:
    verb = "p" if knitting.needle.side is Side.WRONG else "k"
    return PLACED.join(f"{verb} {part}" for part in three)


def _join_sleeves(knitting: Knitting, counts: RaglanCounts, right: int, left: int) -> None:
    under, sleeve = counts.underarm, counts.sleeve - 2 * counts.underarm
    knitting.say(f"Remove the markers on the next {knitting.row}.")
    knitting.parts = [right - under, sleeve, counts.back - 2 * under, sleeve, left - under]
    over = f"place a marker, slip next {2 * under} sts on to a stitch holder"
    first, second = (f"{over}, k {sleeve} sts of {hand} sleeve from holder" for hand in ("right", "left"))
    told = f"k {right - under}, {first}, place a marker, k {counts.back - 2 * under}, {second}, place a marker"
    knitting.work(
        f"{told}, k {left - under}",
        (Shaping(Act.HOLD, "inside", 4 * under), Shaping(Act.PICK_UP, "inside", 2 * sleeve)),
    )
    knitting.work("")


def _open_neck(knitting: Knitting, yoke: Yoke, center: int, asked: Asked) -> None:
    """Bind off the front of the neck: at the end of the last round, or half at each front edge of a cardigan."""
    pair = yoke.pairs[yoke.below_neck - 1]
    for spot, hand in ((0, "right"), (1, "left")):
        shapings = (pair.body[spot], pair.sleeve[spot], 0)
        verb = "p" if knitting.needle.side is Side.WRONG else "k"
        told = words(knitting.needle.side, "dec", shapings)
        more: tuple[Shaping, ...] = ()
        if center and asked.opening == "cardigan":
            over = f"{OVER_ALL.format(verb=verb)}, {verb} to end"
            told, more = f"bind off {center} sts, {told or over}", (Shaping(Act.BIND_OFF, hand, center),)
            knitting.parts[0 if spot == 0 else 4] -= center
        elif center and spot == 1:
            told = f"{(told or 'k to end').removesuffix('k to end')}k to last {center} sts, bind off {center} sts"
            more = (Shaping(Act.BIND_OFF, "left", center),)
            knitting.parts[4] -= center
        knitting.yoke_row("dec", shapings, told, more)
    if asked.opening == "pullover":
        knitting.say("Now work back and forth in rows.")
        knitting.open()
