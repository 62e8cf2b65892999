"""Printed pages and photographs of them, made here: words set in columns, then tilted, blurred and badly lit.

A *print* is how a page is set (fount, size, columns, measure); a *camera* is what the taking does to it. Both are
values, and with the same seed the same picture comes out, so the truth of every picture is known to the letter.
"""

from __future__ import annotations

import io
import math
import random
import re
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from PIL import Image, ImageDraw, ImageFilter, ImageFont

import lastlook

OWN_FOUNT = Path(lastlook.__file__).parent / "sheet" / "fonts" / "text.ttf"
PAPER, INK = (243, 236, 220), (38, 34, 31)


@dataclass(frozen=True)
class Print:
    """How a page is set, in picture elements; 33 a letter's size is 8 points at 300 to the inch."""

    fount: str = str(OWN_FOUNT)
    size: int = 34
    columns: int = 1
    measure: int = 1500
    """The width of one column."""
    gutter: int = 90
    leading: float = 1.28
    margin: int = 130
    longest: int = 2300
    """The most height that the words of a page may take."""


@dataclass(frozen=True)
class Camera:
    """What the taking does: degrees of tilt, share of perspective, blur and noise, light lost across the page."""

    tilt: float = 0.0
    perspective: float = 0.0
    blur: float = 0.0
    noise: float = 0.0
    shade: float = 0.0
    scale: float = 1.0
    quality: int = 92
    seed: int = 1


def set_pages(text: str, how: Print) -> list[tuple[Image.Image, str]]:
    """Return pages, each with the lines printed on it in reading order."""
    font = ImageFont.truetype(how.fount, how.size)
    lines = [part for block in re.split(r"\n\s*\n", text.strip()) for part in [*_broken(block, font, how.measure), ""]]
    lines = lines[:-1]
    tall = int(how.longest / (how.size * how.leading))
    room = tall * how.columns
    return [_page(lines[start : start + room], font, how) for start in range(0, len(lines), room)]


def _broken(line: str, font: ImageFont.FreeTypeFont, measure: int) -> list[str]:
    out: list[str] = []
    for word in line.split():
        if out and font.getlength(f"{out[-1]} {word}") <= measure:
            out[-1] = f"{out[-1]} {word}"
        else:
            out.append(word)
    return out or [""]


def _page(lines: list[str], font: ImageFont.FreeTypeFont, how: Print) -> tuple[Image.Image, str]:
    deep = math.ceil(len(lines) / how.columns)
    step = int(how.size * how.leading)
    width = 2 * how.margin + how.columns * how.measure + (how.columns - 1) * how.gutter
    page = Image.new("RGB", (width, 2 * how.margin + max(deep, 12) * step), PAPER)
    pen = ImageDraw.Draw(page)
    for column in range(how.columns):
        left = how.margin + column * (how.measure + how.gutter)
        for row, line in enumerate(lines[column * deep : (column + 1) * deep]):
            pen.text((left, how.margin + row * step), line, font=font, fill=INK)
    return page, "\n".join(line for line in lines if line)


def taken(page: Image.Image, camera: Camera) -> bytes:
    """Return the page as a photograph of it, in JPEG."""
    chance = np.random.default_rng(camera.seed)
    ground = (120, 104, 92)
    if camera.perspective:
        page = _leant(page, camera.perspective, ground)
    if camera.tilt:
        page = page.rotate(camera.tilt, Image.Resampling.BICUBIC, expand=True, fillcolor=ground)
    if camera.scale != 1:
        size = (int(page.width * camera.scale), int(page.height * camera.scale))
        page = page.resize(size, Image.Resampling.LANCZOS)
    if camera.blur:
        page = page.filter(ImageFilter.GaussianBlur(camera.blur))
    light = np.asarray(page, dtype=np.float32)
    if camera.shade:
        across = np.linspace(1.0, 1.0 - camera.shade, page.width)[None, :, None]
        down = np.linspace(1.0, 1.0 - camera.shade / 2, page.height)[:, None, None]
        light = light * across * down
    if camera.noise:
        light = light + chance.normal(0.0, camera.noise, light.shape)
    out = io.BytesIO()
    Image.fromarray(np.clip(light, 0, 255).astype(np.uint8)).save(out, "JPEG", quality=camera.quality)
    return out.getvalue()


def _leant(page: Image.Image, share: float, ground: tuple[int, int, int]) -> Image.Image:
    """Return the page as a camera sees it that is not held straight above."""
    width, height = page.size
    off = share * width
    seen = [(off, off / 2), (width - off / 3, 0), (width, height), (0, height - off / 3)]
    flat = [(0, 0), (width, 0), (width, height), (0, height)]
    rows: list[list[float]] = []
    for (x, y), (u, v) in zip(seen, flat, strict=True):
        rows += [[x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]]
    goal = [part for corner in flat for part in corner]
    told = np.linalg.solve(np.array(rows, dtype=float), np.array(goal, dtype=float))
    return page.transform(
        page.size, Image.Transform.PERSPECTIVE, list(told), Image.Resampling.BICUBIC, fillcolor=ground
    )


def run_together(text: str, share: float, seed: int) -> str:
    """Return the text as a careless compositor sets it: the space after some stops and commas is lost."""
    chance = random.Random(seed)
    out = [
        "" if sign == " " and text[spot - 1] in ".," and text[spot - 2].isalpha() and chance.random() < share else sign
        for spot, sign in enumerate(text)
    ]
    return "".join(out)
