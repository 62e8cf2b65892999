"""Find out what went wrong when the count is off, or where you are when the row number is lost.

With --row and --found: what explains the count, and the ways out. With --found alone: the rows at which so many
stitches are on the needle.
"""

from __future__ import annotations

import argparse
import json

from lastlook import finding, knit
from lastlook.cli import told
from lastlook.cli.leaflets import chosen_size, leaflet_at
from lastlook.finding import Certainty, Finding
from lastlook.knit import compose
from lastlook.knit.compose import rescue as rescues
from lastlook.knit.worked import WorkedPiece
from lastlook.quantity import Gauge, Unread
from lastlook.stock import read_gauge


def add(parser: argparse.ArgumentParser) -> None:
    """Name what the command takes."""
    parser.add_argument("leaflet", metavar="LEAFLET", help="the leaflet as a text file")
    parser.add_argument("--piece", help="the piece on the needles, like 'Left Front'")
    parser.add_argument("--row", type=int, help="the row just finished, counted from the cast-on")
    parser.add_argument("--found", type=int, required=True, help="the stitches on the needle")
    parser.add_argument("--shaped", type=int, help="shaping rows that can be counted in the fabric")
    parser.add_argument("--size", help="the size that is knitted")
    parser.add_argument("--gauge", help="your own, stitches x rows in 10 cm, like 22x30")
    parser.add_argument("--minutes", type=float, help="minutes that 100 stitches take you")
    parser.add_argument("--json", action="store_true", help="answer as JSON")


def run(args: argparse.Namespace) -> int:
    """Say what explains the count; 0 where it is right, 1 where not, 2 where it can't be read."""
    gauge: Gauge | Unread | None = read_gauge(args.gauge) if args.gauge else None
    if isinstance(gauge, Unread):
        told.complain(compose.unread(gauge))
        return 2
    text = leaflet_at(args.leaflet)
    if text is None:
        return 2
    reading = knit.read(text, size=args.size, gauge=gauge)
    size = chosen_size(reading, args.size)
    if size is None:
        return 2
    piece = _piece(size.pieces, args.piece)
    slip = piece if isinstance(piece, Finding) else _out_of_range(piece, args)
    if slip is not None or isinstance(piece, Finding):
        told.complain(slip if slip is not None else piece)  # type: ignore[arg-type]
        return 2
    if args.row is None:
        return _where(piece, args)
    pace = (args.minutes or rescues.ROW_MINUTES_PER_100) / 100
    found = rescues.rescue(piece, args.row, args.found, gauge or reading.gauge, pace)
    print(json.dumps(_as_json(piece, args.row, found), indent=1) if args.json else _in_words(piece, args.row, found))
    return 0 if found.found == found.should_be else 1


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
    elif args.row is not None and not 1 <= args.row <= len(piece.rows):
        say, why = f"{piece.name} has no row {args.row}.", f"It has rows 1 to {len(piece.rows)}."
    else:
        return None
    return Finding("word-unread", Certainty.PROVEN, say, why, "Count again.")


def _where(piece: WorkedPiece, args: argparse.Namespace) -> int:
    spots = rescues.places(piece, args.found, args.shaped)
    if args.json:
        print(json.dumps({"piece": piece.name, "found": args.found, "rows": [list(spot) for spot in spots]}))
    elif spots:
        told_spots = " or ".join(f"row {a}" if a == b else f"rows {a} to {b}" for a, b in spots)
        print(f"{piece.name} has {args.found} stitches after {told_spots}.")
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
        cost = f" ({one.rows} rows, {one.stitches} stitches, about {one.minutes:.0f} minutes)" if one.rows else ""
        lines += [f"  {one.say}{cost}", f"      {one.does}"]
    return "\n".join(lines)


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
