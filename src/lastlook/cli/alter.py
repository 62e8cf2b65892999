"""Alter paper pieces and see what became of girths and seams; the pieces given stay as they are.

Each --do is one alteration, in their order: --do "widen piece=Front by=8mm at=waist". Pieces are drawings of ours, any
SVG, a DXF, a table of points, or an outfit; --piece says what a foreign outline is, as for `lastlook true`.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from lastlook import outfit, paper
from lastlook.cli.draft import add_out, say, written
from lastlook.cli.told import complain, derived_at, laid
from lastlook.finding import Certainty, Finding
from lastlook.quantity import Units

MOST_BYTES = 20_000_000


def add(parser: argparse.ArgumentParser) -> None:
    """Say what the command takes."""
    add_place(parser)
    parser.add_argument(
        "--do", action="append", default=[], metavar="ALTERATION", help="an alteration; may be repeated"
    )
    parser.add_argument(
        "--reserve", action="store_true", help="of an outfit: as much more side allowance as its cloth has room for"
    )
    add_out(parser)
    parser.add_argument("--json", action="store_true", help="answer in JSON")


def run(args: argparse.Namespace) -> int:
    """Alter, write, say."""
    drafted = set_at(args)
    if drafted is None:
        return 2
    read = [*(_reserve(args) if args.reserve else ()), *(paper.read_words(words) for words in args.do)]
    unread = tuple(one for one in read if isinstance(one, Finding))
    if unread or not drafted.pieces:
        return say(paper.Drafted("taken in", (), findings=unread or drafted.findings), {}, args.json)
    steps = [one for one in read if not isinstance(one, Finding)]
    after = paper.trued(paper.alter(drafted, steps))
    files = written(after, args.out, args.form)
    return 2 if files is None else say(after, files, args.json, steps)


def add_place(parser: argparse.ArgumentParser) -> None:
    """Say where pieces come from, and what is known of them."""
    parser.add_argument(
        "place", nargs="+", metavar="PIECES", help="SVG, DXF or points of pieces, or one outfit's folder or zip"
    )
    parser.add_argument("--garment", metavar="NAME", help="which of the outfit's sewn garments, if there are several")
    parser.add_argument(
        "--piece", action="append", default=[], metavar="WORDS", help="what a foreign outline is; may be repeated"
    )
    parser.add_argument(
        "--measure", action="append", default=[], metavar="NAME=LENGTH", help="of the body: waist=71cm, hip-depth=20cm"
    )
    parser.add_argument("--cloth", default="", metavar="FIBRE", help="fibre of the cloth: wool, cotton, ...")
    parser.add_argument(
        "--envelope", metavar="WORDS", help="what a second-hand envelope says: pieces=Front,Back length=62cm"
    )
    parser.add_argument("--units", choices=[one.value for one in Units], help="unit of lengths that name none")


def set_at(args: argparse.Namespace) -> paper.Drafted | None:
    """Return the pieces at these places as one garment; None, once it was said why, where an outfit has none."""
    places: list[str] = args.place
    if len(places) == 1 and not _is_drawing(places[0]):
        return _of_outfit(places[0], args.garment)
    units = Units(args.units) if args.units else None
    given = paper.read_given(dict(one.partition("=")[::2] for one in args.measure), units, args.cloth)
    said = [outfit.read_piece_words(words, units or Units.CM) for words in args.piece]
    envelope = outfit.read_envelope_words(args.envelope, units or Units.CM) if args.envelope else None
    files = [_read(Path(place)) for place in places]
    refused = [one for one in (*given.findings, *said, envelope, *files) if isinstance(one, Finding)]
    if refused:
        return paper.Drafted("taken in", (), findings=tuple(refused))
    told = outfit.Told(
        tuple(one for one in said if not isinstance(one, Finding)),
        given.measures,
        given.easing,
        units or Units.CM,
        None if isinstance(envelope, Finding) else envelope,
    )
    return outfit.garment_of([one for one in files if not isinstance(one, Finding)], told)


def _is_drawing(place: str) -> bool:
    return any(place.lower().endswith(ending) for ending in outfit.FILES)


def _read(path: Path) -> tuple[str, bytes] | Finding:
    try:
        raw = path.read_bytes() if path.stat().st_size <= MOST_BYTES else None
    except OSError:
        return _nothing(f"{path} is not there, or can't be opened.")
    return _nothing(f"{path} is larger than any pattern piece.") if raw is None else (str(path), raw)


def _of_outfit(place: str, garment: str | None) -> paper.Drafted | None:
    derived = derived_at(place)
    if derived is None:
        return None
    sewn = _named(derived, garment)
    if sewn is None:
        named = f" called {garment}" if garment else ""
        complain(_nothing(f"The outfit has no sewn garment{named} with pieces."))
        return None
    return sewn.drafted


def _named(derived: outfit.Derived, garment: str | None) -> outfit.Sewn | None:
    found = [one for one in derived.sewn if one.drafted.pieces and one.plan.name == (garment or one.plan.name)]
    return found[0] if found else None


def _reserve(args: argparse.Namespace) -> list[paper.Alteration | Finding]:
    """Return the alterations that make the side allowances as wide as the outfit's cloth has room for."""
    derived = None if _is_drawing(args.place[0]) else derived_at(args.place[0])
    if derived is None:
        return [_nothing("Only an outfit with its cloth can say how much room there is for a reserve.")]
    derived = laid(derived)
    one = _named(derived, args.garment)
    offer = outfit.wider_sides(one, derived.outfit.manner.units, lambda _: True) if one else None
    if offer is None:
        return [_nothing("The cloth has no room for more allowance at the sides, or no lay is proven yet.")]
    print(offer.say, file=sys.stderr)
    return [paper.read_alteration(dict(edit.value)) for edit in offer.edits if isinstance(edit.value, tuple)]


def _nothing(say: str) -> Finding:
    return Finding(
        "pieces-unread",
        Certainty.PROVEN,
        say,
        "There is nothing to alter.",
        "Give SVG, DXF or points of pieces, or an outfit.",
    )
