"""Home-sized jobs: `python -m benchmarks lay-home [LONG_SECONDS]`.

How long until the first proven lay after start-up, and how far the lay after 5 s is behind a long search; all by the
processor's clock of one core.
"""

from __future__ import annotations

import time
from dataclasses import replace

from lastlook import lay

FRONT = ((0.0, 0.0), (700.0, 0.0), (700.0, 170.0), (480.0, 230.0), (240.0, 270.0), (0.0, 320.0))
BACK = ((0.0, 0.0), (700.0, 0.0), (700.0, 180.0), (480.0, 240.0), (240.0, 280.0), (0.0, 330.0))
SKIRT = (
    lay.Wanted("front", FRONT, on_fold=((0.0, 0.0), (700.0, 0.0))),
    lay.Wanted("back", BACK, 2, True, may_turn=True),
    lay.Wanted("band", ((0.0, 0.0), (780.0, 0.0), (780.0, 80.0), (0.0, 80.0))),
    lay.Wanted("pocket", ((0.0, 0.0), (260.0, 0.0), (260.0, 150.0), (200.0, 180.0), (0.0, 180.0)), 2, True),
    lay.Wanted("facing", ((0.0, 0.0), (120.0, 0.0), (100.0, 300.0), (20.0, 300.0)), 2, True, may_turn=True),
)
FLAW = ((300.0, 300.0), (340.0, 300.0), (340.0, 360.0), (300.0, 360.0))
CLOTHS = {
    "single": lay.Cloth(1400.0, selvedge_mm=10.0, gap_mm=5.0),
    "single, a flaw": lay.Cloth(1400.0, flaws=(FLAW,), selvedge_mm=10.0),
    "folded lengthwise": lay.Cloth(1400.0, fold=lay.Fold.LENGTHWISE, selvedge_mm=10.0, gap_mm=5.0),
    "narrow, stripes": lay.Cloth(900.0, selvedge_mm=10.0, repeat=lay.Repeat(None, 60.0)),
}


def shortest(problem: lay.Problem, seconds: float) -> tuple[float, float]:
    """Return the length used after so many seconds, and when the first lay was proven."""
    start = time.process_time()
    first: list[float] = []

    def may_go_on(progress: lay.Progress) -> bool:
        if progress.best is not None and len(progress.best.placements) and not first:
            first.append(time.process_time() - start)
        return time.process_time() - start < seconds

    found = lay.search(problem, seed=1, may_go_on=may_go_on)
    return found.used_length_mm, first[0] if first else seconds


def main(words: list[str]) -> int:
    """Print a line for each cloth."""
    seconds = float(words[0]) if words else 60.0
    print(f"| cloth | first proven | after 5 s | after {seconds:g} s | behind |\n|---|---|---|---|---|")
    for name, cloth in CLOTHS.items():
        match = {one.id: lay.Match("hip", (100.0, 0.0)) if cloth.repeat and one.id != "band" else None for one in SKIRT}
        problem = lay.Problem(cloth, tuple(replace(one, match=match[one.id]) for one in SKIRT))
        if not lay.judge_placed(problem, ()).proven:
            return 1
        soon, first = shortest(problem, 5.0)
        late = min(soon, shortest(problem, seconds)[0])
        print(f"| {name} | {first:.2f} s | {soon:.0f} mm | {late:.0f} mm | {soon / late - 1:.1%} |", flush=True)
    return 0
