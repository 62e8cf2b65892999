"""A piece that came off the needles is a fact: its mates that are not made yet follow it, row for row.

*Below* and *above* are the rows to the underarm and from it to the top, as they were really worked.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from lastlook.finding import Certainty, Finding, Where
from lastlook.knit.compose.alter.changes import Made, is_body, is_sleeve
from lastlook.knit.compose.alter.shape.divided import set_out
from lastlook.knit.compose.alter.shape.profile import underarm_row
from lastlook.knit.compose.alter.shape.recompose import Stretching
from lastlook.knit.reading import SizeReading
from lastlook.knit.worked import WorkedPiece
from lastlook.quantity import Gauge, Missing, Spread, Unread

DRIFT = 0.03
"""From this share on a gauge that changed shows over a sleeve: half a stitch in twenty is 2.5 %; our own bound."""


def read_made(texts: Sequence[str]) -> tuple[Made, ...] | Unread:
    """Return made pieces as typed: `Back=84+64`, or `Back=84` where only the rows to the underarm were counted.

    >>> read_made(["Back=84+64"])
    (Made(piece='Back', below=84, above=64),)
    """
    out = []
    for text in texts:
        match = re.fullmatch(r"\s*([^=]+?)\s*=\s*(\d{1,4})\s*(?:\+\s*(\d{1,4}))?\s*", text)
        if match is None or int(match.group(2)) == 0:
            why = f"“{text}” does not say the rows of a made piece."
            return Unread(text, why, "Write rows to the underarm + rows above it, like Back=84+64.")
        above = int(match.group(3)) if match.group(3) else None
        out.append(Made(match.group(1), int(match.group(2)), above))
    return tuple(out)


def follow(
    size: SizeReading, made: Sequence[Made]
) -> tuple[dict[str, Stretching], tuple[str, ...], tuple[Finding, ...]]:
    """Return what each piece gets to meet the made ones, which pieces are made, and what there is to say.

    A body piece passes its rows below the underarm to the other body pieces, a sleeve to the other sleeve;
    the rows above the underarm are those of every piece.
    """
    pieces = [piece for piece in set_out(size.pieces) if piece.part_of is None]
    more: dict[str, Stretching] = {}
    findings: list[Finding] = []
    done: list[str] = []
    for fact in made:
        plan = next(
            (piece for piece in pieces if piece.name.lower().rstrip("s") == fact.piece.lower().rstrip("s")), None
        )
        if plan is None:
            findings.append(_no_such(fact.piece, pieces))
            continue
        done.append(plan.name)
        below, above = _differences(plan, fact, size)
        if below or above:
            findings.append(_differs(plan, below, above))
        more[plan.name] = Stretching(below, above)
        for piece in pieces:
            if piece.name == plan.name or piece.name in done or not (is_body(piece) or is_sleeve(piece)):
                continue
            old = more.get(piece.name, Stretching())
            alike = is_body(piece) == is_body(plan)
            more[piece.name] = Stretching(below if alike else old.below_rows, above or old.above_rows)
    return more, tuple(done), tuple(findings)


def _differences(plan: WorkedPiece, fact: Made, size: SizeReading) -> tuple[int, int]:
    """Return how many rows more than planned, even, below and above the underarm."""
    below = fact.below - underarm_row(plan)
    whole = len(plan.rows) - underarm_row(plan)
    parts = [part for part in set_out(size.pieces) if part.part_of == plan.name]
    whole += max((len(part.rows) for part in parts), default=0)
    above = 0 if fact.above is None else fact.above - whole
    return 2 * round(below / 2), 2 * round(above / 2)


def gauge_drift(planned: Gauge, now: Gauge, piece: str) -> Finding | None:
    """Return that hands or needle have changed, once 5 cm of a piece can be counted; None where they have not."""
    told = []
    for word, was, counted in (("stitches", planned.stitches, now.stitches), ("rows", planned.rows, now.rows)):
        if isinstance(was, Spread) and isinstance(counted, Spread) and abs(counted.best / was.best - 1) >= DRIFT:
            told.append(f"{counted.best:.1f} {word} for {was.best:.1f}")
    if not told:
        return None
    looser = now.stitches.best < planned.stitches.best
    size = "half a size finer" if looser else "half a size thicker"
    return Finding(
        "gauge-drifted",
        Certainty.PROVEN,
        f"{piece} is being knitted {'looser' if looser else 'tighter'} than planned: {', '.join(told)} in 10 cm.",
        "A sleeve whose mate was knitted by other hands, or on another needle, comes out another size.",
        f"Change to a needle {size} now, or rip the first centimetres and begin again.",
        where=Where(piece=piece),
    )


def has_row_gauge(gauge: Gauge) -> bool:
    """Whether rows can be turned into lengths at all."""
    return not isinstance(gauge.rows, Missing)


def _differs(plan: WorkedPiece, below: int, above: int) -> Finding:
    told = [
        f"{abs(rows)} rows {'more' if rows > 0 else 'fewer'} {where} the underarm"
        for rows, where in ((below, "below"), (above, "above"))
        if rows
    ]
    return Finding(
        "piece-as-made",
        Certainty.NOTE,
        f"{plan.name} has {' and '.join(told)} than planned; the pieces not made yet are written to meet it.",
        "A fact beats a plan: edges that are sewn together have to have the same rows.",
        where=Where(piece=plan.name),
    )


def _no_such(word: str, pieces: Sequence[WorkedPiece]) -> Finding:
    return Finding(
        "word-unread",
        Certainty.PROVEN,
        f"The leaflet has no piece “{word}”.",
        f"Its pieces are: {', '.join(piece.name for piece in pieces)}.",
        "Name one of them.",
    )
