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


def run(args: argparse.Namespace) -> int:
    """Write the sheets; 0 where all are there, 1 where one can't be printed yet, 2 where nothing can be read."""
    folder = told.folder_at(args.outfit)
    if folder is None:
        return 2
    derived = outfit.derive(outfit.read(folder))
    if told.is_unreadable(derived.outfit):
        return 2
    derived = told.laid(derived)
    paper = sheet.Paper[args.paper.upper()] if args.paper else None
    printed = sheet.sheets_of(derived, outfit.verdict(derived), paper)
    place = Path(args.into)
    try:
        place.mkdir(parents=True, exist_ok=True)
        for name, data in printed.files:
            (place / name).write_bytes(data)
    except OSError as trouble:
        print(f"The sheets can't be written into {place}: {trouble.strerror}. Name another folder.", file=sys.stderr)
        return 2
    print("\n".join(str(place / name) for name, _ in printed.files))
    for sentence in printed.lacking:
        print(sentence)
    return 1 if printed.lacking else 0
