"""Colours beside the stitches: which yarn a stitch is worked in changes no count, so the counts are read without it.

`With black k 1, grey k 3` and `k2 C1, k2 C2` are k 1, k 3 and k 2, k 2; the words stay in the source.
Colour names: common practice, no source.
"""

from __future__ import annotations

from lastlook.leaflet.trade.lexeme import Lexeme

_PRINTED = (
    "white black navy gold red blue green gray grey yellow pink brown natural maroon scarlet cream beige fawn orange "
    "lemon turquoise mauve lilac violet purple crimson royal emerald olive khaki copper silver oxford heather rust tan "
    "camel charcoal ivory rose wine cardinal peach coral aqua nile jade buff biscuit oatmeal saxe light dark pale "
    "bright medium deep contrast contrasting main background ground mc cc maincolor color"
)
NAMES = frozenset(_PRINTED.split())
LEADS = frozenset({"with", "use", "in", "using"})
STITCHES = frozenset({"k", "p", "sl"})
CLOSES = frozenset({",", ";", ".", ")", "*", "(", "and"})


def without_colors(stream: list[Lexeme]) -> list[Lexeme]:
    """Leave out the colours that stand before or after counted stitches."""
    out: list[Lexeme] = []
    spot = 0
    while spot < len(stream):
        after = _before_a_stitch(stream, spot) or _after_a_stitch(stream, spot, out)
        if after:
            spot = after
            continue
        out.append(stream[spot])
        spot += 1
    return out


def _before_a_stitch(stream: list[Lexeme], spot: int) -> int:
    """Return where the stitch stands if colours lead to a counted one from here, 0 otherwise."""
    start = spot + 1 if stream[spot].canon in LEADS else spot
    stop = start
    while stop < len(stream) and stream[stop].canon in NAMES:
        stop += 1
    counted = stop + 1 < len(stream) and stream[stop].canon in STITCHES and stream[stop + 1].figures
    return stop if stop > start and counted else 0


def _after_a_stitch(stream: list[Lexeme], spot: int, out: list[Lexeme]) -> int:
    """Return what comes after the colour of the counted stitch just passed, 0 if there is none."""
    counted = len(out) > 1 and out[-1].figures and out[-2].canon in STITCHES
    if not counted:
        return 0
    start = spot + 1 if stream[spot].canon in LEADS else spot
    stop = start
    while stop < len(stream) and stream[stop].canon in NAMES:
        stop += 1
    if stop == start and stop < len(stream) and len(stream[stop].canon) == 1 and stream[stop].capital:
        stop += 1
        if stop < len(stream) and stream[stop].figures and stream[stop].tight:
            stop += 1
    closed = stop == len(stream) or stream[stop].canon in CLOSES
    return stop if stop > start and closed else 0
