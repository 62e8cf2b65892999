"""Read a knitting leaflet and say whether it works out.

The leaflet is a text file as it was typed, pasted or recognised from paper.
"""

from __future__ import annotations

import argparse
import json

from lastlook import finding, knit
from lastlook.cli.leaflets import leaflet_at
from lastlook.finding import Certainty


def add(parser: argparse.ArgumentParser) -> None:
    """Say what the command takes."""
    parser.add_argument("leaflet", metavar="FILE", help="the leaflet as a text file")
    parser.add_argument("--size", help="work only this size")
    parser.add_argument("--json", action="store_true", help="answer as JSON")
    parser.add_argument("--notes", action="store_true", help="tell the readings that were taken, too")


def run(args: argparse.Namespace) -> int:
    """Read, say, and return 0 where it adds up."""
    text = leaflet_at(args.leaflet)
    if text is None:
        return 2
    reading = knit.read(text, size=args.size)
    if args.json:
        print(json.dumps(knit.as_json(reading), ensure_ascii=False, indent=1))
    else:
        _told(reading, args.notes)
    good = reading.by_size and all(one.verdict == "adds up" for one in reading.by_size.values())
    return 0 if good else 1


def _told(reading: knit.LeafletReading, notes: bool) -> None:
    """Print the pieces, the findings and the verdict of each size."""
    print(reading.title or "A leaflet without a title", end="\n\n")
    for one in reading.findings:
        if notes or one.certainty is not Certainty.NOTE:
            print(finding.say(one, reading.source), end="\n\n")
    for name, size in reading.by_size.items():
        print(f"Size {name}: {size.verdict}")
        for piece in size.pieces:
            start = f"cast on {piece.cast_on}" if piece.cast_on else "goes on"
            end = f"{piece.end_stitches} stitches {piece.ended.value}"
            print(f"  {piece.name}: {start}, {len(piece.rows)} rows, {end}")
    left = reading.phrases - reading.understood
    print(f"\n{reading.understood} of {reading.phrases} phrases understood" + (f", {left} not." if left else "."))
