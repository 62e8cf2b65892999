"""Jigsaws with a known answer: `python -m benchmarks lay-jigsaw [SEEDS] [processor] [afresh] [ROW…]`.

Each row is a set of jigsaws (`benchmarks/lay_cuts.py`), the spare as a share of the pieces' area, and a time limit;
20 seeds each unless told otherwise; they go through the command. A jigsaw counts as solved if the answer fits and is
proven again here. With `processor` the limit is counted by the processor's clock, on each of two cores. Each result
is kept and the table of `lay.md` written anew, so the run can be stopped and gone on with; `afresh` runs the named
rows again.
"""

from __future__ import annotations

import json
import multiprocessing
import subprocess
import sys
import time
from dataclasses import dataclass
from typing import Any

from benchmarks.kept import Kept, tell
from benchmarks.lay_cuts import KINDS, RARE, Jigsaw, jigsaw
from lastlook import lay


@dataclass(frozen=True)
class Row:
    """One line of the table."""

    name: str
    kinds: tuple[str, ...]
    way: str
    spare: float
    seconds: float
    asked: str = ""


ROWS = (
    Row("both-15", KINDS, "both", 0.15, 10, "20 of 20"),
    Row("both-10", KINDS, "both", 0.10, 30, "17 of 20"),
    Row("both-5", KINDS, "both", 0.05, 60, "14 of 20"),
    Row("along-15", ("rectangle", "fold"), "along", 0.15, 30, "18 of 20"),
    *(Row(f"{kind}-15", (kind,), "both", 0.15, 30) for kind in RARE),
)

HEAD = "| row | jigsaws | spare, shared | limit | by the clock | solved | middle of their times | not solved | asked |"
_CLOCKS = {"wall": "on the wall", "processor": "of each of two cores"}


def as_json(problem: lay.Problem) -> dict[str, Any]:
    """Return a problem as the command reads it."""
    cloth = problem.cloth
    out: dict[str, Any] = {
        "width_mm": cloth.width_mm, "length_mm": cloth.length_mm, "one_way": cloth.one_way,
        "flaws": [[list(spot) for spot in flaw] for flaw in cloth.flaws],
        "fold": {"partial_mm": cloth.partial_mm} if cloth.fold is lay.Fold.PARTIAL else cloth.fold.value,
        "selvedge_mm": cloth.selvedge_mm, "gap_mm": cloth.gap_mm,
    }  # fmt: skip
    if cloth.outline is not None:
        out["outline"] = [list(spot) for spot in cloth.outline]
    if cloth.repeat is not None:
        out["repeat_mm"] = {"across": cloth.repeat.across_mm, "along": cloth.repeat.along_mm}
    return {"cloth": out, "pieces": [_piece(one) for one in problem.pieces]}


def _piece(one: lay.Wanted) -> dict[str, Any]:
    out: dict[str, Any] = {
        "id": one.id, "outline": [list(spot) for spot in one.outline], "quantity": one.quantity,
        "mirrored_pair": one.mirrored_pair, "grain_deg": one.grain_deg, "may_turn": one.may_turn,
    }  # fmt: skip
    if one.on_fold:
        out["on_fold"] = [list(spot) for spot in one.on_fold]
    if one.angles_deg is not None:
        out["angles_deg"] = list(one.angles_deg)
    if one.match:
        out["match"] = {"group": one.match.group, "point": list(one.match.point)}
    if one.pieced:
        out["may_be_pieced"] = {"parts": one.pieced.parts, "seam_mm": one.pieced.seam_mm}
    return out


def solve(made: Jigsaw, seconds: float, seed: int) -> tuple[bool, float]:
    """Return whether the command lays a jigsaw, proven here too, and after how many seconds."""
    words = [sys.executable, "-m", "lastlook", "lay", "-", "--json", "--seconds", f"{seconds:g}", "--seed", str(seed)]
    start = time.monotonic()
    done = subprocess.run(words, input=json.dumps(as_json(made.problem)), capture_output=True, text=True)
    taken = time.monotonic() - start
    answer = json.loads(done.stdout)
    placements = lay.read_placements(answer["placements"]) or ()
    return bool(answer["fits"]) and lay.judge(made.problem, placements).proven, taken


def solve_by_processor(made: Jigsaw, seconds: float) -> tuple[bool, float]:
    """Return the same by the processor's clock: two searches, each for so many seconds of a core of its own.

    On a machine that others use too, the clock on the wall says more about them than about the search.
    """
    with multiprocessing.Pool(2) as pool:
        for fits, taken in pool.imap_unordered(_search, [(made, seconds, seed) for seed in (1, 1001)]):
            if fits:
                return True, taken
    return False, seconds


def _search(job: tuple[Jigsaw, float, int]) -> tuple[bool, float]:
    made, seconds, seed = job
    start = time.process_time()
    found = lay.search(
        made.problem, seed=seed, goal=lay.Goal.FIT, may_go_on=lambda progress: time.process_time() - start < seconds
    )
    proven = found.fits and lay.judge(made.problem, found.placements).proven
    return proven, time.process_time() - start


def main(words: list[str]) -> int:
    """Run what has not been run yet, and tell a line for each row: how many were solved, and in what time."""
    seeds = int(next((word for word in words if word.isdigit()), "20"))
    clock = "processor" if "processor" in words else "wall"
    wanted = [row for row in ROWS if row.name in words] or list(ROWS)
    kept = Kept("lay-jigsaw")
    if "afresh" in words:
        kept.forget(tuple(f"{row.name} {clock}" for row in wanted))
    for row in wanted:
        for seed in range(seeds):
            key = _key(row, clock, seed)
            if key in kept.found:
                continue
            made = jigsaw(row.kinds[seed % len(row.kinds)], seed, row.spare, row.way)
            solved, taken = (
                solve_by_processor(made, row.seconds) if clock == "processor" else solve(made, row.seconds, 1)
            )
            print(f"{row.name} {made.name}: {'solved' if solved else 'not solved'}, {taken:.1f} s", flush=True)
            kept.add(key, [made.name, solved, round(taken, 2)])
            tell("lay-jigsaw", table(kept.found))
    print("\n".join(table(kept.found)))
    return 0


def _key(row: Row, clock: str, seed: int) -> str:
    return f"{row.name} {clock} {seed}"


def table(found: dict[str, Any]) -> list[str]:
    """Return the table of all rows that have results."""
    out = [HEAD, "|---|---|---|---|---|---|---|---|---|"]
    for row in ROWS:
        for clock in ("wall", "processor"):
            mine = [found[key] for seed in range(1000) if (key := _key(row, clock, seed)) in found]
            if not mine:
                continue
            times = sorted(taken for _, solved, taken in mine if solved)
            lost = [name for name, solved, _ in mine if not solved]
            middle = f"{times[len(times) // 2]:.1f} s" if times else "-"
            told = f"| {row.name} | {', '.join(row.kinds)} | {row.spare:.0%}, {row.way} | {row.seconds:g} s"
            out.append(
                f"{told} | {_CLOCKS[clock]} | {len(times)} of {len(mine)} | {middle}"
                f" | {', '.join(lost) or '-'} | {row.asked or '-'} |"
            )
    return out
