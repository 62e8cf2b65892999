"""Alter a leaflet: your own gauge, longer or shorter, wider or narrower; proven again and written down.

LEAFLET is a text file, or an outfit's folder whose first knitting is meant.
"""

from __future__ import annotations

import argparse
import json
from dataclasses import asdict
from pathlib import Path

from lastlook import finding, knit, outfit
from lastlook.cli import told
from lastlook.cli.design import in_words, refuse
from lastlook.cli.leaflets import ask, chosen_size, leaflet_at, size_wanted
from lastlook.finding import Finding
from lastlook.knit import SizeReading, compose
from lastlook.knit.compose import alter
from lastlook.knit.compose import side_by_side as side
from lastlook.quantity import Gauge, Units, Unread, read_length, write_length
from lastlook.stock import read_gauge

NEEDLE_MM = 350.0
"""A pair of straight needles is about 35 cm long."""


def add(parser: argparse.ArgumentParser) -> None:
    """Name what the command takes."""
    parser.add_argument("leaflet", metavar="LEAFLET|OUTFIT", help="a text file, or an outfit's folder or zip")
    parser.add_argument("--gauge", help="your own, stitches x rows in 10 cm, like 22x30")
    parser.add_argument("--size", help="the size to start from")
    parser.add_argument("--longer", action="append", default=[], metavar="WHERE=LENGTH", help="body, sleeve, armhole")
    parser.add_argument("--shorter", action="append", default=[], metavar="WHERE=LENGTH", help="the same places")
    parser.add_argument(
        "--wider", action="append", default=[], metavar="WHERE=LENGTH", help="upper-arm, bust, shoulder"
    )
    parser.add_argument("--narrower", action="append", default=[], metavar="WHERE=LENGTH", help="the same places")
    parser.add_argument("--neck", help="another neck: round or v")
    parser.add_argument("--neck-depth", metavar="LENGTH", help="how deep the neck is to be, from the top")
    parser.add_argument("--opening", help="cardigan opens a pullover's front, pullover closes a cardigan's")
    parser.add_argument("--build", help="round works a pullover in the round to the underarm, pieces in rows")
    parser.add_argument("--made", action="append", default=[], metavar="PIECE=BELOW+ABOVE", help="rows, Back=84+64")
    parser.add_argument("--sleeves-of", metavar="SIZE", help="take the sleeves of another size")
    parser.add_argument("--two", metavar="PIECE,PIECE", help="set two pieces side by side, to be worked at once")
    parser.add_argument("--out", metavar="FILE", help="write the leaflet to a text file")
    parser.add_argument("--json", action="store_true", help="answer as JSON")


def run(args: argparse.Namespace) -> int:
    """Alter; 0 where nothing stands open, 1 where something does, 2 where it can't be read."""
    changes = _changes(args)
    if isinstance(changes, Unread):
        return refuse([compose.unread(changes)], args.json)
    if Path(args.leaflet).is_dir() or args.leaflet.lower().endswith(".zip"):
        found = _of_outfit(args.leaflet, args.size)
        if found is None:
            return 2
        text, size_name = found
    else:
        whole = leaflet_at(args.leaflet)
        if whole is None:
            return 2
        text, size_name = whole, args.size
    style = _style(args)
    if isinstance(style, Unread):
        return refuse([compose.unread(style)], args.json)
    reading = knit.read(text, size=None if args.sleeves_of else size_name)
    asked = size_wanted(reading, size_name)
    if asked is not None:
        return ask(asked, args.json)
    size = chosen_size(reading, size_name)
    if size is not None and args.sleeves_of:
        other = chosen_size(reading, args.sleeves_of)
        size = alter.with_sleeves(size, other) if other else None
    if size is None:
        return 2
    if args.two:
        return _two(args.two, size, changes.gauge or reading.gauge)
    restyled = alter.restyled(size, style, reading.gauge)
    if isinstance(restyled, Finding):
        return refuse([restyled], args.json)
    made = alter.sure(alter.alter(reading, restyled, changes), size)
    wanted = changes.gauge or reading.gauge
    return _show(made, wanted, alter.changed(size.pieces, made.pieces, reading.gauge, wanted), args)


def _show(
    made: compose.Composed, gauge: Gauge | None, changed: tuple[alter.Change, ...], args: argparse.Namespace
) -> int:
    """Print the page with what changed on it, write it, and return the exit status."""
    if args.out and made.leaflet and not told.write_text(args.out, made.leaflet):
        return 2
    if args.json:
        table = [asdict(one) for one in changed] if made.leaflet else []
        print(json.dumps(compose.as_json(made, gauge) | {"changed": table}, ensure_ascii=False, indent=1))
    else:
        page = [made.leaflet] if made.leaflet and not args.out else []
        print("\n".join([*page, *(_changed(changed) if made.leaflet else []), in_words(made)]))
    if not made.leaflet and all(one.certainty is finding.Certainty.PROVEN for one in made.findings):
        for one in made.findings[:1]:
            told.complain(one)
        return 2
    return 1 if any(one.asks or one.certainty is not finding.Certainty.NOTE for one in made.findings) else 0


def _changed(changed: tuple[alter.Change, ...]) -> list[str]:
    """Return what changed as a table, as printed and now."""
    if not changed:
        return ["Nothing changed.", ""]
    lines = ["What changed, as printed and now:"]
    for one in changed:
        lines.append(f"  {one.piece:<16} {one.what:<19} {_figure(one.was):>18} {_figure(one.now):>18}")
    return [*lines, ""]


def _figure(one: alter.Figure | None) -> str:
    if one is None:
        return "-"
    length = "" if one.mm is None else f" ({write_length(one.mm, Units.CM)})"
    return f"{one.count} {one.unit}{length}"


def _style(args: argparse.Namespace) -> alter.Style | Unread:
    """Return what the front is to be."""
    for what, word, known in (("neck", args.neck, alter.NECKS), ("opening", args.opening, alter.OPENINGS)):
        if word is not None and word not in known:
            return Unread(word, f"“{word}” is no {what} that can be made here.", f"Use one of: {', '.join(known)}.")
    depth = None if args.neck_depth is None else read_length(args.neck_depth)
    if isinstance(depth, Unread):
        return depth
    if depth is not None and not 20 <= depth <= 500:
        return Unread(args.neck_depth, f"No neck is {args.neck_depth} deep.", "Write its depth, like 8cm.")
    return alter.Style(args.neck, depth, args.opening)


def _two(words: str, size: SizeReading, gauge: Gauge | None) -> int:
    """Print two pieces side by side."""
    names = [word.strip() for word in words.split(",")]
    if len(names) != 2:
        return refuse([compose.unread(Unread(words, f"“{words}” names no two pieces.", "Write two names."))], False)
    pairs = side.side_by_side(size.pieces, (names[0], names[1]))
    if isinstance(pairs, str):
        return refuse([compose.unread(Unread(words, pairs, "Name two of them."))], False)
    print(side.told(pairs, (names[0], names[1])))
    if gauge is not None:
        both = [piece for piece in size.pieces if piece.name.lower() in {name.lower() for name in names}]
        print("\n" + side.needle_note(both, gauge, NEEDLE_MM))
    return 0


def _changes(args: argparse.Namespace) -> alter.Changes | Unread:
    gauge: Gauge | Unread | None = None if args.gauge is None else read_gauge(args.gauge)
    if isinstance(gauge, Unread):
        return gauge
    both: list[dict[str, float]] = []
    for more, less, known in (
        (args.longer, args.shorter, alter.LONGER),
        (args.wider, args.narrower, alter.WIDER),
    ):
        total: dict[str, float] = {}
        for texts, sign in ((more, 1.0), (less, -1.0)):
            part = alter.read_changes(texts, known, sign)
            if isinstance(part, Unread):
                return part
            for name, mm in part.items():
                total[name] = total.get(name, 0.0) + mm
        both.append(total)
    made = alter.read_made(args.made)
    if args.build is not None and args.build not in alter.BUILDS:
        return Unread(args.build, f"“{args.build}” is no way to build a garment.", "Use round or pieces.")
    return made if isinstance(made, Unread) else alter.Changes(gauge, both[0], both[1], made, args.build)


def _of_outfit(place: str, size: str | None) -> tuple[str, str | None] | None:
    """Return the leaflet of an outfit's first knitting, and its size."""
    folder = told.folder_at(place)
    if folder is None:
        return None
    whole = outfit.read(folder)
    if told.is_unreadable(whole):
        return None
    if not whole.knittings:
        print(f"{place} has no knitting in it. Name a leaflet's file instead.")
        return None
    plan = whole.knittings[0]
    return folder.text(plan.leaflet) or "", size or plan.size
