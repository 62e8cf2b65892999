"""How fast every kind of skirt is drafted, altered and trued: all pieces, seams, girths and cutting lines each time.

`python -m benchmarks skirts` prints the median and the slowest of twenty rounds, in milliseconds; 50 is the mark for
an alteration.
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable

from lastlook import paper

BODY = {"waist_girth": 710.0, "hip_girth": 970.0, "waist_to_hip": 200.0, "waist_to_knee": 580.0}
OPTIONS = {"length_mm": 620.0, "pocket": 1.0, "lining": 1.0, "belt": 1.0, "band_mm": 700.0}
ROUNDS = 20
MARK_MS = 50.0


def main(words: list[str]) -> int:
    """Print one line a kind; the status is 1 if an alteration takes longer than the mark."""
    slow = False
    print("| kind | pieces | draft ms | alter ms | slowest | for a figure ms | true ms |")
    print("|---|---|---|---|---|---|---|")
    for kind in paper.KINDS:
        drafted = paper.draft(kind, BODY, OPTIONS)
        steps = [one for one in map(paper.read_words, LINES) if not hasattr(one, "certainty")]
        draft_ms = _timed(lambda kind=kind: _all_of(paper.draft(kind, BODY, OPTIONS)))
        alter_ms = _timed(lambda one=drafted, two=steps: _all_of(paper.alter(one, two)))
        bent = [one for one in map(paper.read_words, FIGURE) if not hasattr(one, "certainty")]
        figure_ms = _timed(lambda one=drafted, two=bent: _all_of(paper.alter(one, two)))
        true_ms = _timed(lambda one=drafted: paper.true(one))
        slow |= max(statistics.median(alter_ms), statistics.median(figure_ms)) > MARK_MS
        print(
            f"| {kind} | {len(drafted.pieces)} | {statistics.median(draft_ms):.1f} | {statistics.median(alter_ms):.1f} "
            f"| {max(alter_ms):.1f} | {statistics.median(figure_ms):.1f} | {statistics.median(true_ms):.1f} |"
        )
    return 1 if slow else 0


LINES = ("lengthen piece=all by=2cm", "widen piece=all by=5mm at=hip", "allowance piece=all by=5mm edge=side")
FIGURE = ("full-seat by=2cm", "full-abdomen by=1cm", "sway-back by=1cm")
"""Those that solve: the waist is brought back to its length."""


def _all_of(drafted: paper.Drafted) -> float:
    """Ask for everything that a screen shows."""
    lines = sum(piece.cut_line.length_mm() + piece.seam_line.length_mm() for piece in drafted.pieces)
    return lines + len(drafted.seams) + len(drafted.girths_mm) + len(drafted.ease_mm)


def _timed(work: Callable[[], object]) -> list[float]:
    out = []
    for _ in range(ROUNDS):
        start = time.perf_counter()
        work()
        out.append((time.perf_counter() - start) * 1000)
    return out
