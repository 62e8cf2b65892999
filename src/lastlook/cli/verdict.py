"""Ask the three questions of an outfit: does it add up, will it fit, is there enough.

OUTFIT is a folder with an outfit.toml in it, or a zip of one.
"""

from __future__ import annotations

import argparse
import json

from lastlook import outfit
from lastlook.cli import told


def add(parser: argparse.ArgumentParser) -> None:
    """Name what the command takes."""
    parser.add_argument("outfit", metavar="OUTFIT", help="the outfit's folder, or a zip of it")
    parser.add_argument("--json", action="store_true", help="answer as JSON")
    parser.add_argument("--no-lay", action="store_true", help="do not search a lay where none holds")


def run(args: argparse.Namespace) -> int:
    """Answer; 0 for three times yes, 1 otherwise, 2 where the outfit can't be read."""
    derived = told.derived_at(args.outfit)
    if derived is None:
        return 2
    if not args.no_lay:
        derived = told.laid(derived)
    judged = outfit.verdict(derived)
    if args.json:
        print(json.dumps(outfit.verdict_json(judged, derived), ensure_ascii=False, indent=2))
    else:
        print(told.answers(judged, derived))
    return 0 if judged.is_yes() else 1
