"""Signs put together into words, each with its rectangle on the levelled page."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lastlook.scan.engine import Corners
from lastlook.scan.scanned import Box, Sign

MARGIN = 2
"""Picture elements left round a word."""


@dataclass(frozen=True)
class Seen:
    """A word as the engine saw it, with its place but without its span yet."""

    signs: tuple[Sign, ...]
    box: Box

    @property
    def text(self) -> str:
        """Return its signs as text."""
        return "".join(sign.text for sign in self.signs)


def words(signs: Sequence[Sign], strip: Corners) -> Iterator[Seen]:
    """Yield the words of a strip from left to right."""
    run: list[int] = []
    for spot in range(len(signs) + 1):
        if spot < len(signs) and signs[spot].text.strip():
            run.append(spot)
        elif run:
            yield Seen(tuple(signs[one] for one in run), _box(signs, run[0], run[-1], strip))
            run = []


def _box(signs: Sequence[Sign], first: int, last: int, strip: Corners) -> Box:
    usual = 1.0 / max(1, len(signs))
    start = (signs[first - 1].at + signs[first].at) / 2 if first else max(0.0, signs[0].at - usual)
    stop = (signs[last].at + signs[last + 1].at) / 2 if last + 1 < len(signs) else min(1.0, signs[last].at + usual)
    places = [_along(strip, share, down) for share in (start, stop) for down in (0, 1)]
    across, deep = [x for x, _ in places], [y for _, y in places]
    return Box(
        max(0, round(min(across)) - MARGIN),
        max(0, round(min(deep)) - MARGIN),
        round(max(across)) + MARGIN,
        round(max(deep)) + MARGIN,
    )


def _along(strip: Corners, share: float, down: int) -> tuple[float, float]:
    """Return a point of the strip's upper (0) or lower (1) side, at a share of its width."""
    left, right = (strip[3], strip[2]) if down else (strip[0], strip[1])
    return left[0] + share * (right[0] - left[0]), left[1] + share * (right[1] - left[1])
