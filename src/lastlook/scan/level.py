"""A page stood upright and level: which way up it is, how far it is tilted, and where its strips then lie."""

from __future__ import annotations

import io
import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import mean, median

from PIL import Image

from lastlook.scan import engine
from lastlook.scan.engine import Corners
from lastlook.scan.order import Lying
from lastlook.scan.scanned import Page, Sign

SURE = 0.8
"""Print that stands upright is read with more certainty than this; below it the other ways up are tried."""
SAMPLE = 5
KEPT_SIDE = 2200
"""The longest side of the picture that is kept to be looked at."""
LEVEL_ENOUGH_DEGREES = 0.1


@dataclass(frozen=True)
class Levelled:
    """A page upright: its picture as it was read, its strips there, and the levelled page with the way to it."""

    picture: Image.Image
    strips: tuple[Corners, ...]
    page: Page
    lying: tuple[Lying, ...]
    levelled: tuple[Corners, ...]
    """The strips' corners on `page`."""


def levelled(picture: Image.Image) -> Levelled:
    """Stand a picture upright and level."""
    upright, strips = _upright(picture)
    angle = tilt(strips)
    turned = upright
    if abs(angle) > LEVEL_ENOUGH_DEGREES:
        turned = upright.rotate(angle, Image.Resampling.BICUBIC, expand=True, fillcolor=(200, 200, 200))
    shrunk = min(1.0, KEPT_SIDE / max(turned.size))
    kept = turned.resize((max(1, round(turned.width * shrunk)), max(1, round(turned.height * shrunk))))
    out = io.BytesIO()
    kept.save(out, "JPEG", quality=85)
    moved = tuple(_moved(strip, angle, upright.size, kept.size, turned.size) for strip in strips)
    page = Page(out.getvalue(), kept.width, kept.height, round(angle, 1))
    return Levelled(upright, tuple(strips), page, tuple(_lying(which, one) for which, one in enumerate(moved)), moved)


def tilt(strips: Sequence[Corners]) -> float:
    """Return the degrees by which print falls to the right: the median over its longer half."""
    lengths = [math.dist(one[0], one[1]) for one in strips]
    if not lengths:
        return 0.0
    long = [one for one, length in zip(strips, lengths, strict=True) if length >= median(lengths)]
    return median(math.degrees(math.atan2(one[1][1] - one[0][1], one[1][0] - one[0][0])) for one in long)


def _upright(picture: Image.Image) -> tuple[Image.Image, list[Corners]]:
    """Try the other ways up where the first is read with doubt, and take the one that reads best."""
    strips = engine.strips(picture)
    best = (_sureness(picture, strips), picture, strips)
    if not strips or (best[0] >= SURE and not _stand_on_end(strips)):
        return picture, strips
    for quarter in (Image.Transpose.ROTATE_90, Image.Transpose.ROTATE_270, Image.Transpose.ROTATE_180):
        turned = picture.transpose(quarter)
        found = engine.strips(turned)
        if _stand_on_end(found):
            continue
        sure = _sureness(turned, found)
        if sure > best[0] or _stand_on_end(best[2]):
            best = (sure, turned, found)
    return best[1], best[2]


def _stand_on_end(strips: Sequence[Corners]) -> bool:
    """Whether most of the print is taller than it is wide."""
    tall = [one for one in strips if math.dist(one[0], one[3]) > 1.5 * math.dist(one[0], one[1])]
    return len(tall) * 2 > len(strips)


def _sureness(picture: Image.Image, strips: Sequence[Corners]) -> float:
    longest = sorted(strips, key=lambda one: -math.dist(one[0], one[1]))[:SAMPLE]
    signs: list[Sign] = [sign for one in longest for sign in engine.spelled(picture, one)]
    return mean(sign.certainty for sign in signs) if signs else 0.0


def _moved(
    strip: Corners, angle: float, was: tuple[int, int], kept: tuple[int, int], turned: tuple[int, int]
) -> Corners:
    """Return a strip's corners on the levelled page."""
    turn = math.radians(angle) if abs(angle) > LEVEL_ENOUGH_DEGREES else 0.0
    across, down = math.cos(turn), math.sin(turn)
    scale = kept[0] / turned[0]
    out = []
    for x, y in strip:
        dx, dy = x - was[0] / 2, y - was[1] / 2
        out.append(
            ((dx * across + dy * down + turned[0] / 2) * scale, (dy * across - dx * down + turned[1] / 2) * scale)
        )
    return tuple(out)


def _lying(which: int, strip: Corners) -> Lying:
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = strip
    height = (math.dist((x0, y0), (x3, y3)) + math.dist((x1, y1), (x2, y2))) / 2
    return Lying(which, min(x0, x3), max(x1, x2), (y0 + y1 + y2 + y3) / 4, height)
