"""Compose a knitted garment from measures: checked, row-by-row instructions at your own gauge.

GARMENT is one of those that --help lists. Measures are given as --measure bust=96cm, or come from an outfit's
wearer.
"""

from __future__ import annotations

import argparse
import json
import sys
from pathlib import Path

from lastlook import finding, outfit, wearer
from lastlook.cli import told
from lastlook.finding import Finding
from lastlook.knit import compose
from lastlook.quantity import Gauge, Units, Unread, read_length, write_length
from lastlook.stock import read_gauge

MOST_TEXTURE = 20_000
"""Characters of a stitch pattern's text."""


def add(parser: argparse.ArgumentParser) -> None:
    """Name what the command takes."""
    parser.add_argument("garment", metavar="GARMENT", help=", ".join(compose.GARMENTS))
    parser.add_argument("--gauge", required=True, help="stitches x rows in 10 cm, like 22x30")
    parser.add_argument("--measure", action="append", default=[], metavar="NAME=LENGTH", help="such as bust=96cm")
    parser.add_argument("--wearer", metavar="OUTFIT", help="take the measures from an outfit's folder or zip")
    parser.add_argument("--ease", default="standard", help="; ".join(map(compose.ease_words, compose.EASE.values())))
    parser.add_argument("--neck", default="round", help="round or v")
    parser.add_argument("--sleeve", default="long", help="long, three-quarter, short or none")
    parser.add_argument("--edging", default="rib", help="rib, garter, hem, or a rib like 2x2")
    parser.add_argument("--length", action="append", default=[], metavar="WHERE=LENGTH", help="such as body=36cm")
    parser.add_argument("--crochet", metavar="SC", help="crochet the border: single crochet in 10 cm of a strip")
    parser.add_argument("--buttons", metavar="BUTTONS", help="the buttons at hand, like “7 x 18mm” or “24 ligne”")
    parser.add_argument("--texture", metavar="FILE", help="a stitch pattern as a text: multiple, rows, gauge")
    parser.add_argument("--out", metavar="FILE", help="write the leaflet to a text file")
    parser.add_argument("--json", action="store_true", help="answer as JSON")


def run(args: argparse.Namespace) -> int:
    """Compose; 0 where nothing stands open, 1 where something does, 2 where a word can't be taken."""
    gauge = read_gauge(args.gauge)
    asked = _asked(args, gauge) if isinstance(gauge, Gauge) else gauge
    if isinstance(asked, Unread):
        return refuse([compose.unread(asked)], args.json)
    if args.garment not in compose.GARMENTS:
        why = f"“{args.garment}” is no garment that can be composed."
        slip = Unread(args.garment, why, f"Use one of: {', '.join(compose.GARMENTS)}.")
        return refuse([compose.unread(slip)], args.json)
    who, slips = _who(args)
    if who is None:
        return 2
    if slips:
        return refuse(slips, args.json)
    return show(compose.GARMENTS[args.garment](who, asked), asked.gauge, args)


def show(made: compose.Composed, gauge: Gauge | None, args: argparse.Namespace) -> int:
    """Print what was composed, write its leaflet, and return the exit status."""
    made = compose.proven(made)
    if args.out and made.leaflet and not _write(args.out, made.leaflet):
        return 2
    if args.json:
        print(json.dumps(compose.as_json(made, gauge), ensure_ascii=False, indent=1))
    else:
        if made.leaflet and not args.out:
            print(made.leaflet)
        print(in_words(made))
    if not made.leaflet and all(one.certainty is finding.Certainty.PROVEN for one in made.findings):
        for one in made.findings[:1]:
            print(f"Nothing was written: {one.say}", file=sys.stderr)
        return 2
    return 1 if any(one.asks or one.certainty is not finding.Certainty.NOTE for one in made.findings) else 0


def in_words(made: compose.Composed) -> str:
    """Return measures, rungs and findings."""
    lines = []
    for one in made.measures:
        target, gets = (write_length(mm, Units.CM) for mm in (one.target_mm, one.gets_mm))
        give = write_length(one.plus_minus_mm, Units.CM)
        lines.append(f"{one.name:<20} {gets:>8} ± {give:<7} wanted {target}")
    if made.rungs:
        lines += ["", "Shaping: " + "; ".join(made.rungs) + "."]
    if made.notes:
        lines += ["", "Beside the page:", *(f"  {note}" for note in made.notes)]
    for found in made.findings:
        lines += ["", finding.say(found)]
    return "\n".join(lines)


def _asked(args: argparse.Namespace, gauge: Gauge) -> compose.Asked | Unread:
    ease, edging = compose.ease_of(args.ease), compose.edging_of(args.edging)
    if isinstance(ease, Unread):
        return ease
    if isinstance(edging, Unread):
        return edging
    for pair in _choices(args):
        slip = _one_of(*pair)
        if slip:
            return slip
    lengths = _lengths(args.length)
    if isinstance(lengths, Unread):
        return lengths
    crochet = read_gauge(args.crochet) if args.crochet else None
    if isinstance(crochet, Unread):
        return crochet
    buttons = compose.buttons_of(args.buttons) if args.buttons else None
    if isinstance(buttons, Unread):
        return buttons
    texture = _texture(args.texture) if args.texture else None
    if isinstance(texture, Unread):
        return texture
    own = texture.gauge if texture else None
    per_10cm = crochet.stitches.best if crochet else None
    return compose.Asked(
        own or gauge,
        neck=args.neck,
        sleeve=args.sleeve,
        edging=edging,
        ease=ease,
        lengths_mm=lengths,
        crochet_per_10cm=per_10cm,
        buttons=buttons,
        texture=texture,
        band_gauge=gauge if own else None,
    )


def _texture(place: str) -> compose.Texture | Unread:
    try:
        with Path(place).open(encoding="utf-8", errors="replace") as stream:
            text = stream.read(MOST_TEXTURE)
    except OSError as slip:
        return Unread(place, f"{place} can't be read: {slip.strerror}.", "Name a text file with the stitch pattern.")
    return compose.texture_of(text)


def _lengths(texts: list[str]) -> dict[str, float] | Unread:
    lengths: dict[str, float] = {}
    for text in texts:
        where, _, length = text.partition("=")
        mm = read_length(length)
        name = where.strip().lower().replace("-", " ")
        if name not in compose.LENGTHS:
            return Unread(
                text, f"“{where}” is no length that can be set.", f"Use one of: {', '.join(compose.LENGTHS)}."
            )
        if isinstance(mm, Unread):
            return mm
        trouble = compose.length_trouble(name, mm)
        if trouble:
            return trouble
        lengths[name] = mm
    return lengths


def _choices(args: argparse.Namespace) -> list[tuple[str, str, tuple[str, ...]]]:
    return [
        ("neck", args.neck, ("round", "v")),
        ("sleeve", args.sleeve, ("long", "three-quarter", "short", "none")),
    ]


def _one_of(what: str, word: str, known: tuple[str, ...]) -> Unread | None:
    return None if word in known else Unread(word, f"“{word}” is no {what}.", f"Use one of: {', '.join(known)}.")


def _who(args: argparse.Namespace) -> tuple[wearer.Wearer | None, list[Finding]]:
    """Return the wearer: of the outfit, with measures given on the line before hers."""
    base: tuple[wearer.Measure, ...] = ()
    if args.wearer:
        folder = told.folder_at(args.wearer)
        if folder is None:
            return None, []
        base = outfit.read(folder).wearer.measures
    words = {}
    for text in args.measure:
        name, _, length = text.partition("=")
        words[name.strip()] = length.strip()
    body, slips = wearer.read_measures(words, None)
    new = {one.name for one in body.measures}
    together = (*body.measures, *(one for one in base if one.name not in new))
    return wearer.Wearer("the wearer", together), [one for one in slips if not one.asks]


def refuse(findings: list[Finding], as_json: bool) -> int:
    """Say what can't be taken."""
    if as_json:
        print(json.dumps({"findings": [finding.as_json(one) for one in findings]}, ensure_ascii=False, indent=1))
    for one in findings:
        told.complain(one)
    return 2


def _write(place: str, text: str) -> bool:
    try:
        Path(place).write_text(text, encoding="utf-8")
    except OSError as slip:
        print(f"{place} can't be written: {slip.strerror}. Name another file.", file=sys.stderr)
        return False
    return True
