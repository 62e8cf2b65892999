"""The published sets: `python -m benchmarks lay-sets [SECONDS] [SEEDS] [SET…]`.

The files are read where they are, in `shared/benchmarks/lay` beside the project or under LASTLOOK_SHARED; they are
not part of it. Each set is scaled so that its cloth is 1400 mm wide, for the judge measures in millimetres; every
lay is judged. The seconds are those of the processor's clock, on each of two cores. The published figures are those
of that folder's README (Gardeyn et al. 2025, tables 2 and 3).
"""

from __future__ import annotations

import json
import multiprocessing
import os
import statistics
import sys
import time
from pathlib import Path

from lastlook import lay

GARMENTS = ("shirts", "swim", "trousers", "marques", "albano", "dagli", "mao")
OTHERS = ("shapes0", "fu", "jakobs1")
MEAN_20_MIN = {
    "shirts": 89.66, "swim": 78.26, "trousers": 91.73, "marques": 90.93, "albano": 89.47, "dagli": 89.26,
    "mao": 86.14, "shapes0": 68.60, "fu": 92.24, "jakobs1": 89.09,
}  # fmt: skip
BEST = {
    "shirts": 90.92, "swim": 79.83, "trousers": 92.62, "marques": 92.02, "albano": 89.82, "dagli": 90.17,
    "mao": 86.87, "shapes0": 69.98, "fu": 92.41, "jakobs1": 89.26,
}  # fmt: skip
WIDE_MM = 1400.0


def folder() -> Path:
    """Return where the sets are."""
    root = Path(__file__).resolve().parent.parent
    return Path(os.environ.get("LASTLOOK_SHARED", root.parent / "shared")) / "benchmarks" / "lay"


def problem(name: str) -> lay.Problem:
    """Return a published set as a problem on endless cloth, 1400 mm wide."""
    value = json.loads((folder() / f"{name}.json").read_text(encoding="utf-8"))
    scale = WIDE_MM / value["strip_height"]
    pieces = []
    for item in value["items"]:
        spots = [(x * scale, y * scale) for x, y in item["shape"]["data"]]
        angles = item.get("allowed_orientations") or [0.0, 90.0, 180.0, 270.0]
        entry = {"id": f"p{item['id']}", "outline": spots, "quantity": item["demand"], "angles_deg": angles}
        pieces.append(entry)
    read = lay.read_problem({"cloth": {"width_mm": WIDE_MM}, "pieces": pieces})
    if not isinstance(read, lay.Problem):
        raise ValueError(read[0].say)
    return read


def density(name: str, seed: int, seconds: float) -> float:
    """Return the density in per cent of a proven lay found in so many seconds on two cores; 0 if none."""
    with multiprocessing.Pool(2) as pool:
        lays = pool.starmap(_search, [(name, seed, seconds), (name, seed + 1000, seconds)])
    best = lay.best_of(lays)
    asked = problem(name)
    if not lay.judge(asked, best.placements).proven:
        return 0.0
    area = sum(_area(piece.outline) * piece.quantity for piece in asked.pieces)
    return 100 * area / (WIDE_MM * best.used_length_mm)


def _search(name: str, seed: int, seconds: float) -> lay.Lay:
    until = time.process_time() + seconds
    return lay.search(problem(name), seed=seed, may_go_on=lambda progress: time.process_time() < until)


def _area(outline: lay.Outline) -> float:
    pairs = zip(outline, (*outline[1:], outline[0]), strict=True)
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs)) / 2


def main(words: list[str]) -> int:
    """Print the table, a line for each set, and the mean over the garment sets."""
    numbers = [float(word) for word in words if word.replace(".", "").isdigit()]
    seconds, seeds = (numbers + [60.0, 3.0][len(numbers) :])[:2]
    names = [word for word in words if word in MEAN_20_MIN] or [*GARMENTS, *OTHERS]
    if not folder().is_dir():
        print(f"The published sets are not at {folder()}.", file=sys.stderr)
        return 2
    print("| set | median | by seed | published mean, 20 min | published best |\n|---|---|---|---|---|")
    medians = {}
    for name in names:
        found = [density(name, seed, seconds) for seed in range(1, int(seeds) + 1)]
        medians[name] = statistics.median(found)
        told = " ".join(f"{one:.2f}" for one in found)
        print(f"| {name} | {medians[name]:.2f} | {told} | {MEAN_20_MIN[name]:.2f} | {BEST[name]:.2f} |", flush=True)
    garments = [medians[name] for name in GARMENTS if name in medians]
    if garments:
        print(f"| mean of {len(garments)} garment sets | {statistics.mean(garments):.2f} | | | |")
    return 0
