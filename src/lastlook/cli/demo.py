"""Run the main job on the demo outfit: answers, last looks, sheets, screens."""

from __future__ import annotations

import argparse
import shutil
import sys
from pathlib import Path

from lastlook import keep, outfit
from lastlook.cli import serve, told

HOME = "harbour-choir"


def add(parser: argparse.ArgumentParser) -> None:
    """Name what the command takes."""
    parser.add_argument("folder", nargs="?", default=HOME, metavar="FOLDER", help=f"where it goes ({HOME})")
    parser.add_argument("--no-serve", action="store_true", help="end after printing")
    parser.add_argument("--afresh", action="store_true", help="start the demo again from the beginning")


def run(args: argparse.Namespace) -> int:
    """Show it; 0 once it was shown, whatever the answers are."""
    place = Path(args.folder)
    if args.afresh and (place / outfit.MAIN).exists():
        shutil.rmtree(place)
    try:
        if not (place / outfit.MAIN).exists():
            keep.write_folder(outfit.demo(), place)
    except OSError:
        print(f"Nothing can be written into {place}. Name a folder of your own.", file=sys.stderr)
        return 2
    folder = told.folder_at(str(place))
    if folder is None:
        return 2
    derived = told.laid(outfit.derive(outfit.read(folder)))
    keep.write_folder(outfit.with_pieces(derived), place)
    judged = outfit.verdict(derived)
    print(told.answers(judged, derived))
    for look in judged.last_looks:
        print("\n" + told.look(look, derived))
    sheets = place.with_name(place.name + "-sheets")
    printed = told.print_sheets(derived, judged, sheets)
    print(f"\nThe outfit is in {place.resolve()}.\nIts sheets are in {sheets.resolve()}:")
    print("\n".join(f"  {name}" for name, _ in printed.files))
    print("\n".join(f"  {sentence}" for sentence in printed.lacking))
    return 0 if args.no_serve else serve.run(argparse.Namespace(outfit=place, shelf=None, port=None, no_browser=False))
