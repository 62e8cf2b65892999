"""Find out what went wrong when the count is off, or where you are when the row number is lost.

With --row and --found: what explains the count, and the ways out. With --found alone: the rows at which so many
stitches are on the needle.
"""

from __future__ import annotations

import argparse
import json
from dataclasses import dataclass

from lastlook import finding, knit, outfit
from lastlook.cli import told
from lastlook.cli.design import refuse
from lastlook.cli.leaflets import ask, chosen_size, leaflet_at, reading_json, size_wanted
from lastlook.finding import Certainty, Finding
from lastlook.knit import LeafletReading, SizeReading, compose
from lastlook.knit.compose import rescue as rescues
from lastlook.knit.worked import WorkedPiece
from lastlook.quantity import Gauge, Unread
from lastlook.stock import read_gauge

MOST_MINUTES = 600.0
"""Nobody takes longer for 100 stitches."""
FAR = 3
"""So many times the stitches that a piece ever has are no slip, but another piece or a slip of the pen."""


def add(parser: argparse.ArgumentParser) -> None:
    """Name what the command takes."""
    parser.add_argument("leaflet", metavar="LEAFLET|OUTFIT", help="a text file, or an outfit's folder or zip")
    parser.add_argument("--garment", help="which of an outfit's knittings, if not the first")
    parser.add_argument("--piece", help="the piece on the needles, like 'Left Front'")
    parser.add_argument("--row", type=int, help="the row just finished, counted from the cast-on")
    parser.add_argument("--found", type=int, required=True, help="the stitches on the needle")
    parser.add_argument("--shaped", type=int, help="shaping rows that can be counted in the fabric")
    parser.add_argument("--since", type=int, help="plain rows that can be counted above the last shaping row")
    parser.add_argument("--size", help="the size that is knitted")
    parser.add_argument("--gauge", help="your own, stitches x rows in 10 cm, like 22x30")
    parser.add_argument("--minutes", type=float, help="minutes that 100 stitches take you")
    parser.add_argument("--json", action="store_true", help="answer as JSON")


@dataclass(frozen=True)
class At:
    """What is on the needles."""

    reading: LeafletReading
    size: SizeReading
    gauge: Gauge | None
    minutes_a_stitch: float


def run(args: argparse.Namespace) -> int:
    """Say what explains the count; 0 where it is right, 1 where not, 2 where it can't be read."""
    if args.minutes is not None and not 0 < args.minutes < MOST_MINUTES:
        why = f"{args.minutes:g} minutes for 100 stitches are no pace."
        return refuse([compose.unread(Unread(str(args.minutes), why, "Time some rows, like --minutes 4."))], args.json)
    at = _at(args)
    if isinstance(at, int):
        return at
    piece = _piece(at.size.pieces, args.piece)
    slip = piece if isinstance(piece, Finding) else _out_of_range(piece, args)
    if slip is not None or isinstance(piece, Finding):
        return refuse([slip if slip is not None else piece], args.json)  # type: ignore[list-item]
    if args.row is None:
        return _where(at, piece, args)
    found = rescues.rescue(piece, args.row, args.found, at.gauge, at.minutes_a_stitch)
    if args.json:
        base = reading_json(at.reading, at.size, _measures(at, piece, args), [one.say for one in found.choices])
        own = _as_json(piece, args.row, found)
        told_of = own.pop("findings") + base.pop("findings")
        print(json.dumps(base | own | {"findings": told_of}, ensure_ascii=False, indent=1))
    else:
        print(_in_words(piece, args.row, found))
    return 0 if found.found == found.should_be else 1


def _at(args: argparse.Namespace) -> At | int:
    """Return what is on the needles, of a leaflet or an outfit; the exit status where that can't be told."""
    gauge: Gauge | Unread | None = None if args.gauge is None else read_gauge(args.gauge)
    if isinstance(gauge, Unread):
        return refuse([compose.unread(gauge)], args.json)
    pace = (args.minutes or rescues.ROW_MINUTES_PER_100) / 100
    if told.is_outfit(args.leaflet):
        found = told.knitted_at(args.leaflet, args.garment)
        if found is None:
            return 2
        one = found[1]
        if one.size is None:
            question = size_wanted(one.reading, None)
            return ask(question, args.json) if question else 2
        own = outfit.pace(one)
        if isinstance(own, outfit.Pace) and args.minutes is None:
            pace = own.minutes_a_stitch.best
        return At(one.reading, one.size, gauge or one.working_gauge, pace)
    text = leaflet_at(args.leaflet)
    if text is None:
        return 2
    reading = knit.read(text, size=args.size, gauge=gauge)
    question = size_wanted(reading, args.size)
    if question is not None:
        return ask(question, args.json)
    size = chosen_size(reading, args.size)
    return 2 if size is None else At(reading, size, gauge or reading.gauge, pace)


def _measures(at: At, piece: WorkedPiece, args: argparse.Namespace) -> list[compose.FinishedMeasure]:
    """Return how wide the piece is at the row, as it should be and as it was found."""
    if at.gauge is None:
        return []
    should, has = at.gauge.width_mm(piece.rows[args.row - 1].after), at.gauge.width_mm(args.found)
    return [compose.FinishedMeasure(f"{piece.name}: width at row {args.row}", should.best, has.best, has.plus_minus)]


def _piece(pieces: tuple[WorkedPiece, ...], wanted: str | None) -> WorkedPiece | Finding:
    knitted = [piece for piece in pieces if piece.rows]
    names = ", ".join(piece.name for piece in knitted)
    word = (wanted or "").lower()
    for alike in (str.__eq__, str.__contains__):
        for piece in knitted:
            if wanted is not None and (alike(piece.name.lower(), word) or alike(word, piece.name.lower())):
                return piece
    if wanted is None and len(knitted) == 1:
        return knitted[0]
    lead = f"The leaflet has no piece “{wanted}”." if wanted else "The leaflet has several pieces."
    return Finding("word-unread", Certainty.PROVEN, lead, f"Its pieces are: {names}.", "Choose one with --piece.")


def _out_of_range(piece: WorkedPiece, args: argparse.Namespace) -> Finding | None:
    if args.found < 0:
        say, why = f"{args.found} stitches are less than nothing.", "A needle holds none or more."
    elif args.found > FAR * (most := max(row.after for row in piece.rows)):
        say, why = f"{args.found} stitches are not {piece.name}.", f"It never has more than {most}."
    elif args.row is not None and not 1 <= args.row <= len(piece.rows):
        say, why = f"{piece.name} has no row {args.row}.", f"It has rows 1 to {len(piece.rows)}."
    elif any(count is not None and count < 0 for count in (args.shaped, args.since)):
        say, why = "Rows counted in the fabric can't be less than none.", "Count them on the right side."
    else:
        return None
    return Finding("word-unread", Certainty.PROVEN, say, why, "Count again.")


def _where(at: At, piece: WorkedPiece, args: argparse.Namespace) -> int:
    spots = rescues.places(piece, args.found, args.shaped, args.since)
    if args.json:
        base = reading_json(at.reading, at.size, [], [])
        own = {"piece": piece.name, "found": args.found, "rows": [list(spot) for spot in spots]}
        print(json.dumps(base | own, ensure_ascii=False, indent=1))
    elif spots:
        told_spots = " or ".join(f"row {a}" if a == b else f"rows {a} to {b}" for a, b in spots)
        print(f"{piece.name} has {args.found} stitches after {told_spots}.")
        if len(spots) > 1 or spots[0][0] != spots[0][1]:
            print(
                "Count the shaping rows (--shaped) or the plain rows above the last one (--since) to tell them apart."
            )
    else:
        print(f"{piece.name} never has {args.found} stitches; give the row with --row to see what explains them.")
    return 0 if len(spots) == 1 and spots[0][0] == spots[0][1] else 1


def _in_words(piece: WorkedPiece, row: int, found: rescues.Rescue) -> str:
    if found.found == found.should_be:
        return f"{piece.name} should have {found.should_be} stitches after row {row}, and has."
    lines = [
        finding.say(_off(piece, row, found)),
        "",
        "What explains it, the likeliest first:",
    ]
    lines += [f"  {one.likely:>4.0%}  {one.say}" for one in found.mistakes] or ["  no single slip; count again"]
    lines += ["", "Ways out:"]
    for one in found.choices:
        cost = f" ({_cost(one)})" if one.rows else ""
        lines += [f"  {one.say}{cost}", f"      {one.does}"]
    return "\n".join(lines)


def _cost(one: rescues.Choice) -> str:
    rows, minutes = f"{one.rows} row{'' if one.rows == 1 else 's'}", max(1, round(one.minutes))
    return f"{rows}, {one.stitches} stitches, about {minutes} minute{'' if minutes == 1 else 's'}"


def _as_json(piece: WorkedPiece, row: int, found: rescues.Rescue) -> dict[str, object]:
    return {
        "piece": piece.name,
        "row": row,
        "should_be": found.should_be,
        "found": found.found,
        "mistakes": [{"say": one.say, "row": one.row, "likely": round(one.likely, 3)} for one in found.mistakes],
        "choices": [
            {
                "say": one.say,
                "rows": one.rows,
                "stitches": one.stitches,
                "minutes": round(one.minutes),
                "does": one.does,
            }
            for one in found.choices
        ],
        "findings": [finding.as_json(_off(piece, row, found))] if found.found != found.should_be else [],
    }


def _off(piece: WorkedPiece, row: int, found: rescues.Rescue) -> Finding:
    return Finding(
        "count-astray",
        Certainty.PROVEN,
        f"{piece.name} should have {found.should_be} stitches after row {row} and has {found.found}.",
        found.mistakes[0].say if found.mistakes else "No single slip explains it.",
        found.choices[0].say if found.choices else None,
    )
