"""Compose garments for every woman of the 1988 survey, at two gauges, and prove every hard constraint.

    python -m benchmarks compose [FOLDER [GARMENT …]]

FOLDER holds `ansur1_1988_female.csv` (default: ../shared/reference beside the checkout).
"""

from __future__ import annotations

import csv
import itertools
import statistics
import sys
import time
from collections import Counter
from pathlib import Path

from lastlook import stock, wearer
from lastlook.knit import compose
from lastlook.knit.compose.composed import Composed
from lastlook.knit.worked import WorkedPiece, WorkedRow
from lastlook.piece import Meets, Unit
from lastlook.quantity import Unread

ROOT = Path(__file__).resolve().parent.parent
TAKEN = {
    "bust_girth": "CHEST_CIRC",
    "waist_girth": "WAIST_CIRC_NATURAL",
    "hip_girth": "BUTTOCK_CIRC",
    "upper_arm_girth": "ARM_CIRC-AXILLARY",
    "wrist_girth": "WRIST_CIRC-STYLION",
    "neck_base_girth": "NECK_CIRC-BASE",
    "scye_depth": "SCYE_DEPTH",
    "back_waist_length": "WAIST_NAT_LNTH",
    "back_width": "INTRSCY_DIST",
    "centre_back_to_wrist": "SPINE_TO_WRIST_LNTH_(SL)",
    "foot_length": "FOOT_LNTH",
    "ball_girth": "FOOT_CIRC",
    "ankle_girth": "ANKLE_CIRC",
    "head_girth": "HEAD_CIRC",
    "hand_girth": "HAND_CIRC_AT_METACARPALE",
    "hand_length": "HAND_LNTH",
}
GAUGES = ("22x30", "16x22")
SEAMS = {"from the": 4, "Socks": 1, "Hat": 0, "Mittens": 0}
"""Seams that a garment has at the least, by words of its title; all others have six."""
RAGLANS = ("raglan-pullover", "raglan-cardigan")


def women(folder: Path) -> list[wearer.Wearer]:
    """Return every woman with her own measures."""
    out = []
    with (folder / "ansur1_1988_female.csv").open(encoding="utf-8-sig", newline="") as stream:
        for row in csv.DictReader(stream):
            taken = {name: float(row[column]) for name, column in TAKEN.items()}
            taken["underarm_length"] = float(row["AXILLA_HT"]) - float(row["WRIST_HT"])
            taken["waist_to_hip"] = float(row["WAIST_HT_NATURAL"]) - float(row["BUTT_HT"])
            measures = tuple(wearer.by_tape(name, mm) for name, mm in taken.items() if mm > 0)
            out.append(wearer.Wearer(row["SUBJECT_NUMBER"], measures))
    return out


def broken(made: Composed) -> list[str]:
    """Return every hard constraint that a composed garment breaks, from its rows alone."""
    out = [str(seam.mate.a) for seam in made.seams if seam.meets is Meets.NO]
    out += [str(seam.mate.a) for seam in made.seams if seam.difference and seam.mate.unit is not Unit.MM]
    pieces = {piece.name: piece for piece in made.pieces}
    for piece in made.pieces:
        out += [f"{piece.name} breaks at row {row.number}" for row in _breaks(piece)]
    least = next((seams for words, seams in SEAMS.items() if words in made.title), 6)
    if len(made.seams) < least:
        out.append(f"only {len(made.seams)} seams")
    a, b = pieces.get("Left Front"), pieces.get("Right Front")
    if a and b and (a.cast_on != b.cast_on or _taken(a) != _taken(b)):
        out.append("fronts do not mirror")
    whole = [pieces[name] for name in ("Sleeves", "Back") if name in pieces]
    if any(piece.end_stitches < 2 for piece in whole):
        out.append("a top has no stitches")
    if any((piece.cast_on or 0) % 2 for piece in whole):
        out.append("an odd cast-on under k 1, p 1")
    return out


def _breaks(piece: WorkedPiece) -> list[WorkedRow]:
    rows = piece.rows
    return [b for a, b in itertools.pairwise(rows) if a.after != b.before or b.after < 1]


def _taken(piece: WorkedPiece) -> Counter[str]:
    out: Counter[str] = Counter()
    for row in piece.rows:
        for one in row.shapings:
            out[one.act.value] += one.stitches
    return out


def main(words: list[str]) -> int:
    """Run the proof and print its table."""
    folder = Path(words[0]) if words else ROOT.parent / "shared" / "reference"
    if not (folder / "ansur1_1988_female.csv").exists():
        print(f"The survey is not in {folder}; name its folder.", file=sys.stderr)
        return 2
    everybody = women(folder)
    print(f"{len(everybody)} women of the 1988 survey, standard ease, own measures\n")
    print("| garment | gauge | served | broken | girth off, median | worst | rungs needed |")
    print("|---|---|---|---|---|---|---|")
    start, bad = time.perf_counter(), 0
    for name in words[1:] or RAGLANS:
        for text in GAUGES:
            bad += _row(everybody, name, text)
    print(f"\n{time.perf_counter() - start:.1f} s in all")
    return 1 if bad else 0


def _row(everybody: list[wearer.Wearer], name: str, text: str) -> int:
    gauge = stock.read_gauge(text)
    assert not isinstance(gauge, Unread)
    asked = compose.Asked(gauge)
    served, offs, rungs, faults, why = 0, [], Counter[str](), 0, Counter[str]()
    for who in everybody:
        made = compose.GARMENTS[name](who, asked)
        if not made.leaflet:
            why.update(one.kind for one in made.findings)
            continue
        served += 1
        girth = made.measures[0].name
        offs.append(max(abs(one.miss_mm) for one in made.measures if one.name == girth))
        rungs.update(made.rungs)
        found = broken(made)
        if found:
            faults += 1
            why.update(found)
    told = "; ".join(f"{rung} {count}" for rung, count in rungs.most_common())
    print(
        f"| {name} | {text} | {served} of {len(everybody)} | {faults} | {statistics.median(offs):.1f} mm"
        f" | {max(offs):.1f} mm | {told} |"
    )
    for reason, count in why.most_common(5):
        print(f"    {count} x {reason}", file=sys.stderr)
    return faults + len(everybody) - served
