"""Draft a skirt from measurements: true-size pieces, their girths, ease and seams.

Lengths are written as on a tape: 71cm, 28in, 28 1/2", 28½. A minus makes an ease smaller than the body:
--ease-hip=-2cm.
"""

from __future__ import annotations

import argparse
import json
import re
import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from lastlook import finding, paper, wearer
from lastlook.finding import Certainty
from lastlook.paper import take
from lastlook.quantity import Units


def add(parser: argparse.ArgumentParser) -> None:
    """Add what can be said of a skirt."""
    parser.add_argument("garment", choices=["skirt"], help="what to draft")
    parser.add_argument("--kind", default="a-line", help="kind of skirt: " + ", ".join(paper.KINDS))
    for name, word in paper.WORDS.items():
        parser.add_argument(f"--{name}", metavar=word.sort.name, help=word.say.replace("%", "%%"))
    parser.add_argument("--cloth", default="", metavar="FIBRE", help="fibre of the cloth: wool, cotton, ...")
    parts = "; ".join(f"{name}: {say}" for name, say in paper.PARTS.items())
    parser.add_argument("--with", dest="parts", default="", metavar="PARTS", help=f"more pieces, with commas: {parts}")
    parser.add_argument("--units", choices=[one.value for one in Units], help="unit of lengths that name none")
    add_out(parser)
    parser.add_argument("--json", action="store_true", help="answer in JSON")


def run(args: argparse.Namespace) -> int:
    """Draft, write the pieces, say what there is to say."""
    said = {name: text for name in paper.WORDS if (text := getattr(args, name.replace("-", "_"))) is not None}
    given = paper.read_given(said, Units(args.units) if args.units else None, args.cloth)
    parts = [part.strip() for part in args.parts.split(",") if part.strip()]
    unread = (*given.findings, *(paper.unknown_word(part) for part in parts if part not in paper.PARTS))
    if unread:
        return say(paper.Drafted(args.kind, (), findings=unread), {}, args.json)
    options = {**given.options, **dict.fromkeys(parts, 1.0)}
    drafted = paper.trued(paper.draft(args.kind, given.measures, options, given.easing))
    drafted = replace(drafted, findings=(*drafted.findings, *_swapped(said, args.units)))
    files = written(drafted, args.out, args.form)
    return 2 if files is None else say(drafted, files, args.json)


def _swapped(said: dict[str, str], units: str | None) -> list[finding.Finding]:
    """Return the question whether waist and hip changed places, where the waist is the larger."""
    girths = {f"{name}_girth": said[name] for name in ("waist", "hip") if name in said}
    _, findings = wearer.read_measures(girths, Units(units) if units else None)
    return [one for one in findings if one.kind == "waist-over-hip"]


def add_out(parser: argparse.ArgumentParser) -> None:
    """Say where pieces are written, and in which form."""
    parser.add_argument("--out", type=Path, metavar="DIR", help="folder to write the pieces into, at true size")
    parser.add_argument(
        "--as", dest="form", choices=["svg", "dxf"], default="svg", help="one SVG a piece, or one DXF of them all"
    )


def written(drafted: paper.Drafted, folder: Path | None, form: str) -> dict[str, str] | None:
    """Write the pieces and return the file of each; None, once it was said, where nothing can be written."""
    if folder is None or not drafted.pieces:
        return {}
    files = {}
    try:
        folder.mkdir(parents=True, exist_ok=True)
        if form == "dxf":
            return _written_dxf(drafted, folder)
        for piece in drafted.pieces:
            path = folder / (re.sub(r"[^a-z0-9]+", "-", piece.name.lower()).strip("-") + ".svg")
            path.write_text(paper.write_svg(piece), encoding="utf-8")
            files[piece.name] = str(path)
    except OSError:
        print(f"Nothing can be written into {folder}. Name a folder of your own with --out.", file=sys.stderr)
        return None
    return files


def _written_dxf(drafted: paper.Drafted, folder: Path) -> dict[str, str] | None:
    text = take.write_dxf(drafted.pieces)
    if isinstance(text, finding.Finding):
        print(f"{text.say} {text.why} {text.attempt}", file=sys.stderr)
        return None
    path = folder / "pieces.dxf"
    path.write_text(text, encoding="utf-8")
    return dict.fromkeys((piece.name for piece in drafted.pieces), str(path))


def say(
    drafted: paper.Drafted, files: dict[str, str], as_json: bool, steps: Sequence[paper.Alteration] | None = None
) -> int:
    """Say what a set of pieces comes to, with the alterations that were made; return the exit status."""
    if as_json:
        made = {} if steps is None else {"alterations": [paper.write_alteration(step) for step in steps]}
        print(json.dumps(paper.as_json(drafted, files) | made, ensure_ascii=False, indent=2))
    else:
        print("\n".join([*(step.say() for step in steps or ()), "", *paper.in_words(drafted, files)]).lstrip("\n"))
        for one in drafted.findings:
            print("\n" + finding.say(one))
    if not drafted.pieces:
        first = next((one for one in drafted.findings if one.certainty is Certainty.PROVEN), drafted.findings[0])
        print(first.say, file=sys.stderr)
        return 2
    return 1 if any(one.certainty in (Certainty.PROVEN, Certainty.UNKNOWN) for one in drafted.findings) else 0
