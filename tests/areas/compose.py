"""Composing on a page: the words of a command line without `lastlook`, and what comes of them.

The block's fence may ask for one part: `leaflet`, `piece NAME`, `measures`, `findings`.
"""

from __future__ import annotations

import contextlib
import io
import shlex

from lastlook.cli.main import main


def answer(given: str, asked: str) -> str:
    out, slips = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(slips):
        status = main(shlex.split(given))
    text = (out.getvalue() + slips.getvalue()).strip("\n")
    if asked.startswith("piece "):
        name = asked.removeprefix("piece ").upper()
        text = next((part for part in text.split("\n\n") if part.startswith(name)), f"no piece {name}")
    elif asked == "measures":
        text = "\n".join(line for line in text.splitlines() if " wanted " in line or line.startswith("Shaping"))
    elif asked == "findings":
        parts = text.split("\n\n")
        text = "\n\n".join(_findings(parts))
    return f"{text}\nstatus {status}"


def _findings(parts: list[str]) -> list[str]:
    out: list[str] = []
    for part in parts:
        first = part.splitlines()[0] if part else ""
        names_kind = first.endswith(")") and "-" in first and first.split(" (")[0].replace("-", "").isalpha()
        if names_kind or (part.startswith("  why") and out):
            out.append(part)
    return out
