"""Walk every seam of paper pieces before they are cut, and say what closes those that do not meet."""

from __future__ import annotations

import argparse
import json
from pathlib import Path

from lastlook import finding, paper
from lastlook.cli.alter import add_place, set_at, stands_open
from lastlook.cli.draft import write_pieces


def add(parser: argparse.ArgumentParser) -> None:
    """Say what the command takes."""
    add_place(parser)
    parser.add_argument("--close", action="store_true", help="make the first alteration offered for each open seam")
    parser.add_argument("--out", type=Path, metavar="DIR", help="folder to write the pieces into, closed if asked")
    parser.add_argument("--json", action="store_true", help="answer in JSON")


def run(args: argparse.Namespace) -> int:
    """Walk, close if asked, say."""
    drafted = set_at(args.place, args.garment)
    if drafted is None:
        return 2
    steps: tuple[paper.Alteration, ...] = ()
    if args.close:
        steps, drafted = paper.closed(drafted)
    trued = paper.trued(drafted)
    files = write_pieces(trued, args.out) if args.out else {}
    if args.json:
        answer = paper.as_json(trued, files) | {"alterations": [paper.write_alteration(step) for step in steps]}
        print(json.dumps(answer, ensure_ascii=False, indent=2))
    else:
        print("\n".join([*(step.say() for step in steps), *paper.in_words(trued, files)]))
        for one in trued.findings:
            print("\n" + finding.say(one))
    return 1 if stands_open(trued) else 0
