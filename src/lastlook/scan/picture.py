"""Pictures from files: JPEG, PNG, TIFF and the pages of a PDF, each upright, in colour and of a bounded size.

What can't be opened becomes one finding that names the page as it was given.
"""

from __future__ import annotations

import io
import warnings

import pypdfium2
from PIL import Image, ImageOps, ImageSequence, UnidentifiedImageError

from lastlook.finding import Certainty, Finding

MOST_ELEMENTS = 80_000_000
"""A leaflet's page at 600 to the inch has 35 million; a telephone's largest pictures have 50 million."""
MOST_BYTES = 60_000_000
LONGEST_SIDE = 4000
"""Letters of 6 points are still 25 high when a page of 300 mm is this tall."""
SHORTEST_SIDE = 40
MOST_PAGES = 40
PDF_DOTS_PER_INCH = 250


def pictures(data: bytes, name: str) -> list[Image.Image] | Finding:
    """Return the pictures that a file holds, in order, or the finding that says why there are none."""
    if not data:
        return Finding(
            "picture-empty",
            Certainty.PROVEN,
            f"{name} is empty.",
            "It holds not one byte, so there is no picture in it.",
            "Take or save the picture again, and look at it before you hand it over.",
        )
    if len(data) > MOST_BYTES:
        return _too_large(name, f"The file has {len(data) / 1e6:.0f} MB; {MOST_BYTES / 1e6:.0f} MB are taken.")
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            return _of_pdf(data, name) if data[:1024].lstrip().startswith(b"%PDF-") else _of_image(data, name)
    except Image.DecompressionBombError:
        return _too_large(name, f"It has over {2 * MOST_ELEMENTS / 1e6:.0f} million picture elements.")
    except (UnidentifiedImageError, OSError, ValueError, SyntaxError, EOFError, pypdfium2.PdfiumError):
        return Finding(
            "picture-unreadable",
            Certainty.PROVEN,
            f"{name} can't be opened as a picture.",
            "JPEG, PNG, TIFF and PDF are read; this is another kind of file, or a part of it is missing.",
            "Save the page as JPEG or PNG, or photograph it again.",
        )


def _too_large(name: str, why: str) -> Finding:
    return Finding(
        "picture-too-large",
        Certainty.PROVEN,
        f"{name} is larger than any page needs.",
        why,
        "Scan at 300 dots to the inch, or let your photograph program halve its size.",
    )


def _of_image(data: bytes, name: str) -> list[Image.Image] | Finding:
    with Image.open(io.BytesIO(data)) as opened:
        elements = opened.width * opened.height
        if elements > MOST_ELEMENTS:
            most = f"at most {MOST_ELEMENTS / 1e6:.0f} million are taken"
            return _too_large(name, f"It has {elements / 1e6:.0f} million picture elements; {most}.")
        if opened.format == "JPEG":
            opened.draft("RGB", (LONGEST_SIDE, LONGEST_SIDE))
        frames = ImageSequence.Iterator(opened) if opened.format == "TIFF" else [opened]
        out = [_ready(frame) for _, frame in zip(range(MOST_PAGES), frames, strict=False)]
    return out if all(min(one.size) >= SHORTEST_SIDE for one in out) else _too_small(name, out[0])


def _too_small(name: str, one: Image.Image) -> Finding:
    return Finding(
        "picture-empty",
        Certainty.PROVEN,
        f"{name} has no room for a line of print.",
        f"It is {one.width} by {one.height} picture elements.",
        "Hand over the picture itself, not the small likeness that stands for it.",
    )


def _of_pdf(data: bytes, name: str) -> list[Image.Image]:
    document = pypdfium2.PdfDocument(data)
    try:
        out = []
        for number in range(min(len(document), MOST_PAGES)):
            page = document[number]
            longest = max(page.get_width(), page.get_height())
            scale = min(PDF_DOTS_PER_INCH / 72, LONGEST_SIDE / longest)
            out.append(_ready(page.render(scale=scale).to_pil()))
        return out
    finally:
        document.close()


def _ready(frame: Image.Image) -> Image.Image:
    upright = ImageOps.exif_transpose(frame) or frame
    if upright.mode in ("RGBA", "LA", "PA") or "transparency" in upright.info:
        clear = upright.convert("RGBA")
        upright = Image.new("RGB", clear.size, "white")
        upright.paste(clear, mask=clear.getchannel("A"))
    elif upright.mode.startswith(("I", "F")):
        upright = ImageOps.autocontrast(upright.convert("F").point(lambda value: value / 256).convert("L"))
    colour = upright.convert("RGB")
    colour.thumbnail((LONGEST_SIDE, LONGEST_SIDE), Image.Resampling.LANCZOS)
    return colour
