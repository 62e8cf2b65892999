"""Alter paper pieces and see what became of girths and seams; the pieces given stay as they are.

Each --do is one alteration, in their order: --do "widen piece=Front by=8mm at=waist".
"""

from __future__ import annotations

import argparse
import json
from collections.abc import Sequence
from pathlib import Path

from lastlook import finding, paper
from lastlook.cli.draft import write_pieces
from lastlook.cli.told import complain, derived_at
from lastlook.finding import Certainty, Finding

MOST_BYTES = 20_000_000


def add(parser: argparse.ArgumentParser) -> None:
    """Say what the command takes."""
    add_place(parser)
    parser.add_argument(
        "--do", action="append", default=[], metavar="ALTERATION", help="an alteration; may be repeated"
    )
    parser.add_argument("--out", type=Path, metavar="DIR", help="folder to write the altered pieces into")
    parser.add_argument("--json", action="store_true", help="answer in JSON")


def run(args: argparse.Namespace) -> int:
    """Alter, write, say."""
    drafted = set_at(args.place, args.garment)
    if drafted is None:
        return 2
    read = [paper.read_words(words) for words in args.do]
    unread = [one for one in read if isinstance(one, Finding)]
    for one in unread:
        complain(one)
    if unread:
        return 2
    steps = [one for one in read if not isinstance(one, Finding)]
    after = paper.trued(paper.alter(drafted, steps))
    files = write_pieces(after, args.out) if args.out else {}
    if args.json:
        answer = paper.as_json(after, files) | {"alterations": [paper.write_alteration(step) for step in steps]}
        print(json.dumps(answer, ensure_ascii=False, indent=2))
    else:
        print("\n".join([*(step.say() for step in steps), "", *paper.in_words(after, files)]))
        for one in after.findings:
            print("\n" + finding.say(one))
    return 1 if stands_open(after) else 0


def add_place(parser: argparse.ArgumentParser) -> None:
    """Say where pieces come from: their drawings, or an outfit."""
    parser.add_argument("place", nargs="+", metavar="PIECES", help="SVG files of pieces, or one outfit's folder or zip")
    parser.add_argument("--garment", metavar="NAME", help="which of the outfit's sewn garments, if there are several")


def stands_open(drafted: paper.Drafted) -> bool:
    """Whether something was found that is wrong or not known."""
    return any(one.certainty in (Certainty.PROVEN, Certainty.UNKNOWN) for one in drafted.findings)


def set_at(places: Sequence[str], garment: str | None) -> paper.Drafted | None:
    """Return the pieces at these places as one garment; None, once it was said why, where there are none."""
    if len(places) == 1 and not places[0].lower().endswith(".svg"):
        return _of_outfit(places[0], garment)
    pieces: list[paper.PaperPiece] = []
    for place in places:
        taken = _taken(Path(place))
        if taken is None:
            return None
        pieces += taken
    return paper.set_of(pieces)


def _of_outfit(place: str, garment: str | None) -> paper.Drafted | None:
    derived = derived_at(place)
    if derived is None:
        return None
    sewn = [one for one in derived.sewn if one.drafted.pieces and one.plan.name == (garment or one.plan.name)]
    if not sewn:
        named = f" called {garment}" if garment else ""
        complain(_nothing(f"The outfit has no sewn garment{named} with pieces."))
        return None
    return sewn[0].drafted


def _taken(path: Path) -> list[paper.PaperPiece] | None:
    try:
        raw = path.read_bytes() if path.stat().st_size <= MOST_BYTES else None
    except OSError:
        complain(_nothing(f"{path} is not there, or can't be opened."))
        return None
    if raw is None:
        complain(_nothing(f"{path} is larger than any pattern piece."))
        return None
    taken = paper.read_svg(raw.decode("utf-8", errors="replace"))
    if taken.pieces:
        return list(taken.pieces)
    for one in taken.findings:
        complain(one)
    if any(one.kind == "pieces-unread" for one in taken.findings):
        return None
    made = [paper.piece_of(one, paper.Naming(one.name or path.stem)) for one in taken.closed[:1] or taken.outlines[:1]]
    for shape in made:
        if isinstance(shape, Finding):
            complain(shape)
    pieces = [shape for shape in made if not isinstance(shape, Finding)]
    return pieces or None


def _nothing(say: str) -> Finding:
    return Finding(
        "pieces-unread", Certainty.PROVEN, say, "There is nothing to alter.", "Give SVG files of pieces, or an outfit."
    )
