"""Invented pages printed, photographed and read: what the maker is told of one kind, or the text.

Lines `KEY = VALUE` before the first blank line say how the page is taken (`tilt = 3`) or printed (`size = 20`);
`picture = empty|text|torn|vast|sky` hands over something else than a page, `engine = absent` takes the engine away.
The rest is printed. Asked for `figures`,
each doubtful figure is shown; the engine's share of certainty is rounded away, so that answers stay the same.
"""

from __future__ import annotations

import contextlib
import io
import re
from dataclasses import fields
from unittest import mock

import numpy as np
from PIL import Image

from lastlook import scan
from lastlook.finding import SourceText, Span, say
from lastlook.leaflet import repair
from lastlook.scan.doubt import doubtful, said
from lastlook.scan.scanned import Box, Page, Scanned, Sign, Word
from tests.photograph import Camera, Print, set_pages, taken


def answer(given: str, asked: str) -> str:
    if asked.startswith("figures"):
        return _of_signs(given, asked)
    told, _, text = given.partition("\n\n")
    facts = dict(re.findall(r"^(\w+) = (\S+)$", told, re.M))
    absent = mock.patch("lastlook.scan.engine.is_at_hand", return_value=False)
    with absent if facts.pop("engine", "") == "absent" else contextlib.nullcontext():
        read = scan.read_pages([_picture(facts, text if told != given else given)], ["page 1"])
    if asked == "text":
        return read.text
    found = next((one for one in read.findings if one.kind == asked), None)
    shown = say(found, SourceText(read.text)) if found else f"no {asked}; said: {[one.kind for one in read.findings]}"
    return re.sub(r"\d+% sure", "so much sure", shown)


def _picture(facts: dict[str, str], text: str) -> bytes:
    kind = facts.get("picture", "")
    if kind:
        return _other(kind)
    chosen = {one.name: float(facts[one.name]) for one in fields(Camera) if one.name in facts}
    how = Print(size=int(facts.get("size", "34")), columns=int(facts.get("columns", "1")))
    return taken(set_pages(text, how)[0][0], Camera(**{**chosen, "quality": 92, "seed": 1}))  # type: ignore[arg-type]


def _other(kind: str) -> bytes:
    if kind == "empty":
        return b""
    if kind == "text":
        return b"K 2, p 2 to the end of the row."
    if kind == "vast":
        return _saved(Image.new("1", (10_000, 10_000), 1), "PNG")
    sky = Image.fromarray((np.add.outer(np.arange(500), np.arange(800)) % 200).astype(np.uint8)).convert("RGB")
    whole = _saved(sky, "JPEG")
    return whole[: len(whole) // 2] if kind == "torn" else whole


def _saved(picture: Image.Image, kind: str) -> bytes:
    out = io.BytesIO()
    picture.save(out, kind)
    return out.getvalue()


def _of_signs(given: str, asked: str) -> str:
    """Take text in which `{6:8}` is a sign read as 6 that may be 8, list its doubts, and put them to the counts."""
    scanned = uncertain(given)
    source = SourceText(scanned.text)
    if asked == "figures settled":
        return "\n\n".join(say(one, source) for one in scan.settle(scanned)) or "nothing settled"
    return "\n\n".join(say(said(one, source, 0), source) for one in scanned.doubtful) or "nothing doubtful"


def uncertain(marked: str) -> Scanned:
    """Return what a page would give whose signs `{6:8}` were read as 6 with doubt."""
    seen: list[str] = []
    words: list[Word] = []
    length = 0
    for chunk in re.findall(r"(?:\{.:.\}|\S)+|\s+", marked):
        if chunk.isspace():
            seen.append(chunk)
            length += len(chunk)
            continue
        signs = tuple(
            Sign(pair[0], 0.6, ((pair[1], 0.35),)) if pair[0] else Sign(pair[2], 1.0)
            for pair in re.findall(r"\{(.):(.)\}|(.)", chunk)
        )
        text = "".join(sign.text for sign in signs)
        words.append(Word(text, Span(length, length + len(text)), 0, Box(0, 0, 10, 10), signs))
        seen.append(text)
        length += len(text)
    mended = repair("".join(seen))
    moved = tuple(
        Word(one.seen, Span(mended.moved(one.span.start), mended.moved(one.span.end)), 0, one.box, one.signs)
        for one in words
    )
    repairs = mended.in_place()
    page = Page(_saved(Image.new("RGB", (40, 40), "white"), "JPEG"), 40, 40, 0.0)
    return Scanned(mended.text, (page,), moved, repairs, doubtful(mended.text, moved, repairs))
