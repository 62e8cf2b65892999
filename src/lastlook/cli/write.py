"""Write a leaflet out for one size, row by row, in your own terms, and read it again to be sure.

What is written is the trade's notation, so that `lastlook read` reads it like any other leaflet.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from lastlook import knit
from lastlook.cli.leaflets import chosen_size, leaflet_at
from lastlook.knit import English, Hand, Manner
from lastlook.quantity import Units


def add(parser: argparse.ArgumentParser) -> None:
    """Name what the command takes."""
    parser.add_argument("leaflet", metavar="FILE", help="the leaflet as a text file")
    parser.add_argument("--size", help="the size to write out; the only one where there is but one")
    parser.add_argument("--terms", choices=("us", "uk"), default="us", help="whose terms (us)")
    parser.add_argument("--units", choices=("in", "cm"), default="in", help="which tape (in)")
    parser.add_argument("--hand", choices=("right", "left"), default="right", help="which hand leads (right)")
    parser.add_argument("--out", metavar="FILE.txt", type=Path, help="write it into this file")


def run(args: argparse.Namespace) -> int:
    """Write it out; 0 where the leaflet adds up in that size, 1 otherwise, 2 where it can't be read."""
    text = leaflet_at(args.leaflet)
    if text is None:
        return 2
    reading = knit.read(text)
    size = chosen_size(reading, args.size)
    if size is None:
        return 2
    manner = Manner(
        English.BRITISH if args.terms == "uk" else English.AMERICAN,
        Units.CM if args.units == "cm" else Units.INCHES,
        Hand.LEFT if args.hand == "left" else Hand.RIGHT,
    )
    written = knit.written(reading, size.size, manner)
    if args.out is None:
        print(written.text, end="")
    else:
        try:
            args.out.write_text(written.text, encoding="utf-8")
        except OSError as trouble:
            print(f"{args.out} can't be written: {trouble.strerror}. Name another file.", file=sys.stderr)
            return 2
    if size.verdict != "adds up":
        said = f"Size {size.size}: {size.verdict}. Look at `lastlook read {args.leaflet}` before you knit from this."
        print(said, file=sys.stderr)
        return 1
    for piece, row in written.strays:
        said = (
            f"{piece}, from row {row}: what is written here gives other counts than the leaflet. Keep to the leaflet."
        )
        print(said, file=sys.stderr)
    return 1 if written.strays else 0
