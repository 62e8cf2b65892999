"""Walk every seam of paper pieces before they are cut, and say what closes those that do not meet.

Pieces are drawings of ours, any SVG, a DXF, a table of points, or an outfit. What a foreign outline is, is said with
--piece "front.svg name=Front edges=1:waist,2:centre,3:hem,4:side fold=centre line=cut allowance=1.5cm".
"""

from __future__ import annotations

import argparse

from lastlook import paper
from lastlook.cli.alter import add_place, set_at
from lastlook.cli.draft import add_out, say, written


def add(parser: argparse.ArgumentParser) -> None:
    """Say what the command takes."""
    add_place(parser)
    parser.add_argument("--close", action="store_true", help="make the first alteration offered for each open seam")
    add_out(parser)
    parser.add_argument("--json", action="store_true", help="answer in JSON")


def run(args: argparse.Namespace) -> int:
    """Walk, close if asked, say."""
    drafted = set_at(args)
    if drafted is None:
        return 2
    steps: tuple[paper.Alteration, ...] = ()
    if args.close:
        steps, drafted = paper.closed(drafted)
    trued = paper.trued(drafted) if drafted.pieces else drafted
    files = written(trued, args.out, args.form)
    return 2 if files is None else say(trued, files, args.json, steps)
