"""What the hands made as worked pieces: one for the whole, one for each part where it divides."""

from __future__ import annotations

from lastlook.knit.needle import Event, Hands, Live, Row
from lastlook.knit.prove.edges import edges_of
from lastlook.knit.worked import Act, Ended, Shaping, Side, Stated, WorkedPiece, WorkedRow
from lastlook.quantity import Gauge

ACTS = {
    "dec": Act.DECREASE,
    "inc": Act.INCREASE,
    "bind off": Act.BIND_OFF,
    "cast on": Act.CAST_ON,
    "hold": Act.HOLD,
    "pick up": Act.PICK_UP,
}
SIDES = {"right": Side.RIGHT, "wrong": Side.WRONG, "round": Side.ROUND}
ENDS = {end.value: end for end in Ended}
ORDER = ("first side", "second side", "third part", "fourth part", "fifth part")


def finished(hands: Hands, gauge: Gauge | None) -> tuple[WorkedPiece, ...]:
    """Return the piece, and its parts."""
    if not hands.parts:
        return ()
    stated = tuple(Stated(one.span, one.stated, one.worked) for one in hands.counts)
    parted = len(hands.parts) > 1
    main = hands.parts[0]
    marks = [("underarm", hands.armhole_row)] if hands.armhole_row is not None else []
    marks += [(name, row - 1) for name, row in hands.sections.items() if name != "turned"]
    ended = ENDS.get("joined" if parted else main.ended, Ended.OPEN)
    whole = WorkedPiece(
        hands.name, None, hands.make, hands.cast_on or hands.picked_up or None,
        _rows(main), main.n, ended, stated, edges_of(hands, gauge),
        tuple((name, row) for name, row in marks if row is not None),
    )  # fmt: skip
    parts = [
        WorkedPiece(f"{hands.name}, {ORDER[min(number, 4)]}", hands.name, hands.make, None,
                    _rows(live), live.n,
                    ENDS.get(live.ended, Ended.OPEN), (), (),
                    (("starts after row", live.base), ("starts at stitch", round(live.offset)), *_taken(hands, live)))
        for number, live in enumerate(hands.parts[1:])
    ]  # fmt: skip
    return (whole, *parts)


def _taken(hands: Hands, live: Live) -> tuple[tuple[str, int], ...]:
    """Return how many stitches of the hand a finger took; nothing for a part that is no finger."""
    made = hands.fingers.made if hands.fingers else ()
    return tuple(("taken from the hand", took) for one, took in made if one is live)


def _rows(live: Live) -> tuple[WorkedRow, ...]:
    return tuple(_row(row) for row in live.rows)


def _row(row: Row) -> WorkedRow:
    shapings = tuple(_shaping(event) for event in row.events) if row.events else ()
    return WorkedRow(
        row.number,
        SIDES[row.side],
        row.before,
        row.used,
        row.gives,
        row.after,
        shapings,
        row.span,
        row.structure,
        row.words or row.structure,
    )


def _shaping(event: Event) -> Shaping:
    return Shaping(ACTS.get(event.act, Act.DECREASE), event.edge, event.n, event.inset, event.lean or None)
