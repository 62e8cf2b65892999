"""Tell the story of a kind of finding: what it means, why it matters, what to do.

Without a kind, all there are are listed.
"""

from __future__ import annotations

import argparse
import difflib
import re
import sys
from importlib import resources

FOLDER = "kinds"


def add(parser: argparse.ArgumentParser) -> None:
    """Say what the command takes."""
    parser.add_argument("kind", nargs="?", help="a kind of finding, such as count-short")


def run(args: argparse.Namespace) -> int:
    """Tell it, and return 0 where the kind is known."""
    pages = _pages()
    if args.kind is None:
        print("\n".join(sorted(pages)))
        return 0
    if args.kind not in pages:
        near = difflib.get_close_matches(args.kind, pages, 3, 0.4)
        hint = f" Near it: {', '.join(near)}." if near else ""
        print(f"There is no kind of finding called {args.kind}.{hint} `lastlook explain` lists all.", file=sys.stderr)
        return 2
    print(_plain(pages[args.kind]))
    return 0


def _pages() -> dict[str, str]:
    folder = resources.files("lastlook.finding").joinpath(FOLDER)
    return {
        page.name.removesuffix(".md"): page.read_text(encoding="utf-8")
        for page in folder.iterdir()
        if page.name.endswith(".md")
    }


def _plain(page: str) -> str:
    """Return a page as a terminal shows it: without marks of its own."""
    text = re.sub(r"<!--.*?-->\n*", "", page)
    text = re.sub(r"^`{3,}.*$\n?", "", text, flags=re.M)
    return re.sub(r"\n{3,}", "\n\n", re.sub(r"^#+ ", "", text, flags=re.M)).strip()
