"""Turn photographs or scans of a leaflet's pages into text.

Pages are given in order: JPEG, PNG, TIFF, or a PDF of several. No figure is ever changed: doubtful ones are listed.
"""

from __future__ import annotations

import argparse
import base64
import json
import sys
from pathlib import Path
from typing import Any

from lastlook import finding, scan
from lastlook.finding import Certainty, Finding, SourceText

BLOCKS = frozenset({"letter-reader-missing", "picture-empty", "picture-unreadable", "picture-too-large"})
"""Kinds that mean a page can't be read at all."""


def add(parser: argparse.ArgumentParser) -> None:
    """Say what the command takes."""
    parser.add_argument("pages", metavar="PAGE", nargs="+", help="a picture of a page; several in their order")
    parser.add_argument("--out", metavar="FILE.txt", help="write the text here instead of showing it")
    parser.add_argument("--check", metavar="FILE.html", help="write the side-by-side check: paper left, text right")
    parser.add_argument("--json", action="store_true", help="answer as JSON")


def run(args: argparse.Namespace) -> int:
    """Read the pages, say what is doubtful, and return 0 where nothing is."""
    scanned = scan.read_pages([_bytes(name) for name in args.pages], args.pages)
    blocked = [one for one in scanned.findings if one.kind in BLOCKS]
    if blocked or not scanned.is_readable:
        for one in blocked or scanned.findings:
            print(f"{one.say} {one.why} {one.attempt or ''}".strip(), file=sys.stderr)
        return 2
    proofs = scan.settle(scanned)
    told = [*scanned.findings, *proofs]
    if not _written(args, scanned, proofs):
        return 2
    if args.json:
        print(json.dumps(_as_json(scanned, told), ensure_ascii=False, indent=1))
    else:
        _say(args, scanned, told)
    return 1 if any(one.certainty is not Certainty.NOTE for one in told) else 0


def _bytes(name: str) -> bytes:
    try:
        return Path(name).read_bytes()
    except OSError:
        print(f"{name}: there is no such file, or it can't be opened. Give the path of a picture.", file=sys.stderr)
        raise SystemExit(2) from None


def _written(args: argparse.Namespace, scanned: scan.Scanned, proofs: tuple[Finding, ...]) -> bool:
    """Write the files that were asked for; say on standard error which can't be written."""
    wanted = [(args.out, scanned.text)] if args.out else []
    if args.check:
        wanted.append((args.check, scan.check_page(scanned, Path(args.pages[0]).stem, proofs)))
    for name, text in wanted:
        try:
            Path(name).write_text(text, encoding="utf-8")
        except OSError:
            print(f"{name}: nothing can be written there. Name a file in a folder that exists.", file=sys.stderr)
            return False
    return True


def _say(args: argparse.Namespace, scanned: scan.Scanned, told: list[Finding]) -> None:
    """Show the text on standard output, and what is to be looked at beside it on standard error."""
    if not args.out:
        print(scanned.text, end="")
    source = SourceText(scanned.text)
    for one in told:
        print("\n" + finding.say(one, source), file=sys.stderr)
    for repair in scanned.repairs:
        line, _ = source.line_and_column(repair.span.start)
        print(f"  line {line:>3}: {repair.was} -> {repair.now} ({repair.why})", file=sys.stderr)


def _as_json(scanned: scan.Scanned, told: list[Finding]) -> dict[str, Any]:
    source = SourceText(scanned.text)
    doubts = [
        {
            **_place(source, one.span.start),
            "read": one.read,
            "rivals": list(one.rivals),
            "certainty": round(one.certainty, 3),
            "page": scanned.words[one.word].page + 1,
            "picture": "data:image/png;base64," + base64.b64encode(scan.cut_out(scanned, one.word)).decode(),
        }
        for one in scanned.doubtful
    ]
    return {
        "text": scanned.text,
        "pages": [{"width": one.width, "height": one.height, "tilt": one.tilt_degrees} for one in scanned.pages],
        "words": [_word(scanned, one) for one in scanned.words],
        "repairs": [
            {**_place(source, one.span.start), "was": one.was, "now": one.now, "why": one.why}
            for one in scanned.repairs
        ],
        "doubtful": doubts,
        "findings": [finding.as_json(one, source) for one in told],
    }


def _place(source: SourceText, offset: int) -> dict[str, int]:
    line, column = source.line_and_column(offset)
    return {"line": line, "column": column}


def _word(scanned: scan.Scanned, word: scan.Word) -> dict[str, Any]:
    box = word.box
    return {
        "text": scanned.text[word.span.start : word.span.end],
        "seen": word.seen,
        "page": word.page + 1,
        "box": [box.left, box.top, box.right, box.bottom],
        "certainty": round(word.certainty, 3),
    }
