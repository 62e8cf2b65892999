"""Read a knitting leaflet and say whether it works out.

The leaflet is a text file as it was typed, pasted or recognised from paper.
"""

from __future__ import annotations

import argparse
import json
import sys
from pathlib import Path

from lastlook import finding, knit

MOST_BYTES = 2_000_000


def add(parser: argparse.ArgumentParser) -> None:
    """Say what the command takes."""
    parser.add_argument("leaflet", metavar="FILE", help="the leaflet as a text file")
    parser.add_argument("--size", help="work only this size")
    parser.add_argument("--json", action="store_true", help="answer as JSON")


def run(args: argparse.Namespace) -> int:
    """Read, say, and return 0 where it adds up."""
    text = _text(Path(args.leaflet))
    if text is None:
        return 2
    reading = knit.read(text, size=args.size)
    if args.json:
        print(json.dumps(knit.as_json(reading), ensure_ascii=False, indent=1))
    else:
        for one in reading.findings:
            print(finding.say(one, reading.source), end="\n\n")
        for name, size in reading.by_size.items():
            print(f"Size {name}: {size.verdict}")
    good = reading.by_size and all(size.verdict == "adds up" for size in reading.by_size.values())
    return 0 if good else 1


def _text(path: Path) -> str | None:
    """Return the text of a leaflet; None, with one line on standard error, where there is none to read."""
    try:
        raw = path.read_bytes()
    except OSError:
        print(
            f"{path}: there is no such file, or it can't be opened. Give the path of a text file.", file=sys.stderr
        )
        return None
    if not raw.strip():
        print(f"{path}: the file is empty. Type or paste the leaflet into it.", file=sys.stderr)
        return None
    if len(raw) > MOST_BYTES:
        print(f"{path}: the file is over 2 MB, longer than any leaflet. Keep the leaflet alone.", file=sys.stderr)
        return None
    if b"\0" in raw:
        print(f"{path}: this is not a text file. Save the leaflet as plain text.", file=sys.stderr)
        return None
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        return raw.decode("cp1252", errors="replace")
