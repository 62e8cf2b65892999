"""Run the main job on the demo outfit: answers, last looks, sheets, screens."""

from __future__ import annotations

import argparse
import shutil
from pathlib import Path

from lastlook import keep, outfit
from lastlook.cli import told

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
    if not (place / outfit.MAIN).exists():
        keep.write_folder(outfit.demo(), place)
    folder = told.folder_at(str(place))
    if folder is None:
        return 2
    derived = told.laid(outfit.derive(outfit.read(folder)))
    judged = outfit.verdict(derived)
    print(told.answers(judged, derived))
    for look in judged.last_looks:
        print("\n" + told.look(look, derived))
    sheets = told.print_sheets(derived, judged, place / "sheets")
    print(f"\nThe outfit is in {place.resolve()}, its sheets in {(place / 'sheets').resolve()}:")
    print("\n".join(f"  {name}" for name in sheets))
    return 0 if args.no_serve else told.serve(place)
