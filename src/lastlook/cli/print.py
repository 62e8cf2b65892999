"""Print the sheets of an outfit: booklets, cutting sheets, paper pieces at true size, last looks, drawings.

OUTFIT is a folder with an outfit.toml in it, or a zip of one. The files go into FOLDER, which is made if need be.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from lastlook import outfit, sheet
from lastlook.cli import told


def add(parser: argparse.ArgumentParser) -> None:
    """Name what the command takes."""
    parser.add_argument("outfit", metavar="OUTFIT", help="the outfit's folder, or a zip of it")
    parser.add_argument("--into", metavar="FOLDER", default="sheets", help="where the sheets go (sheets)")
    papers = [paper.name.lower() for paper in sheet.Paper]
    parser.add_argument("--paper", choices=papers, help="for everything but the paper pieces, which come on both")
    parser.add_argument(
        "--only", metavar="WORD", help="only files with this word in their name: booklet, cutting, skirt"
    )
    parser.add_argument(
        "--piece", metavar="NAME", action="append", default=[], help="a paper piece to print again; may be given twice"
    )


def run(args: argparse.Namespace) -> int:
    """Write the sheets; 0 where all are there, 1 where one can't be printed yet, 2 where nothing can be read."""
    derived = told.derived_at(args.outfit)
    if derived is None:
        return 2
    derived = told.laid(derived)
    if not _has_pieces(derived, args.piece):
        return 2
    paper = sheet.Paper[args.paper.upper()] if args.paper else None
    printed = sheet.sheets_of(derived, outfit.verdict(derived), paper, tuple(args.piece))
    files = [(name, data) for name, data in printed.files if not args.only or args.only.lower() in name]
    if not files:
        print(f"No sheet has “{args.only}” in its name. There are: {_names(printed)}.", file=sys.stderr)
        print("\n".join(printed.lacking), file=sys.stderr)
        return 2
    place = Path(args.into)
    try:
        place.mkdir(parents=True, exist_ok=True)
        for name, data in files:
            (place / name).write_bytes(data)
    except OSError as trouble:
        print(f"The sheets can't be written into {place}: {trouble.strerror}. Name another folder.", file=sys.stderr)
        return 2
    print("\n".join(str(place / name) for name, _ in files))
    for sentence in () if args.only else printed.lacking:
        print(sentence)
    return 1 if printed.lacking and not args.only else 0


def _has_pieces(derived: outfit.Derived, wanted: list[str]) -> bool:
    """Whether every paper piece that is wanted is there; the first that is not is told."""
    known = [piece.name for one in derived.sewn for piece in one.drafted.pieces]
    for name in wanted:
        if name.lower() not in {one.lower() for one in known}:
            there = ", ".join(known) or "none yet"
            print(f"No paper piece is called “{name}”. The pieces are: {there}.", file=sys.stderr)
            return False
    return True


def _names(printed: sheet.Printed) -> str:
    return ", ".join(name for name, _ in printed.files)
