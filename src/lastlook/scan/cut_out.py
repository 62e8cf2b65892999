"""The cut-out picture of one word, to be looked at beside what was read."""

from __future__ import annotations

import io
from functools import lru_cache

from PIL import Image

from lastlook.scan.scanned import Page, Scanned

ROUND = 6
"""Picture elements shown round the word."""


def cut_out(scanned: Scanned, word: int) -> bytes:
    """Return the picture of one word as PNG."""
    one = scanned.words[word]
    page = _opened(scanned.pages[one.page])
    box = one.box
    wide = ROUND + (box.bottom - box.top) // 2
    part = page.crop(
        (
            max(0, box.left - wide),
            max(0, box.top - ROUND),
            min(page.width, box.right + wide),
            min(page.height, box.bottom + ROUND),
        )
    )
    out = io.BytesIO()
    part.save(out, "PNG")
    return out.getvalue()


@lru_cache(maxsize=4)
def _opened(page: Page) -> Image.Image:
    with Image.open(io.BytesIO(page.picture)) as opened:
        return opened.convert("RGB")
