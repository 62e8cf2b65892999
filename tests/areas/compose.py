"""Composing on a page: command lines without `lastlook`, one a line, and what comes of the last.

`FILE` stands for a file in a fresh folder; lines after an empty one are its text. The block's fence may ask for one
part: `leaflet`, `piece NAME`, `measures`, `notes`, `findings`.
"""

from __future__ import annotations

import contextlib
import io
import shlex
import tempfile
from pathlib import Path

from lastlook.cli.main import main


def answer(given: str, asked: str) -> str:
    commands, _, text = given.partition("\n\n")
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "leaflet.txt"
        if text.strip():
            file.write_text(text, encoding="utf-8")
        status, out = 0, ""
        for line in commands.splitlines():
            status, out = _run(line.replace("FILE", str(file)))
        out = out.replace(str(file), "FILE")
    return f"{_part(out, asked)}\nstatus {status}"


def _run(line: str) -> tuple[int, str]:
    out, slips = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(slips):
        status = main(shlex.split(line))
    return status, (out.getvalue() + slips.getvalue()).strip("\n")


def _part(text: str, asked: str) -> str:
    if asked.startswith("piece "):
        name = asked.removeprefix("piece ").upper()
        return next((part for part in text.split("\n\n") if part.startswith(name)), f"no piece {name}")
    if asked == "measures":
        return "\n".join(line for line in text.splitlines() if " wanted " in line or line.startswith("Shaping"))
    if asked == "notes":
        return next((part for part in text.split("\n\n") if part.startswith("Beside the page:")), "no notes")
    return "\n\n".join(_findings(text.split("\n\n"))) if asked == "findings" else text


def _findings(parts: list[str]) -> list[str]:
    out: list[str] = []
    for part in parts:
        first = part.splitlines()[0] if part else ""
        names_kind = first.endswith(")") and "-" in first and first.split(" (")[0].replace("-", "").isalpha()
        if names_kind or (part.startswith("  why") and out):
            out.append(part)
    return out
