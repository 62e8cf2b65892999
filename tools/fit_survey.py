"""Fit what one body measure says about another, from the open 1988 survey, and write the shipped table.

    python tools/fit_survey.py [FOLDER]

FOLDER holds `ansur1_1988_female.csv` and `ansur2_female.csv` (default: ../shared/reference beside the checkout).
Only means, spreads and covariances of all women together are written, no person's row.
"""

from __future__ import annotations

import csv
import sys
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parent.parent
OUT = ROOT / "src" / "lastlook" / "wearer" / "tables" / "survey_1988_women.csv"
COLUMNS = {
    "stature": "STATURE",
    "bust_girth": "CHEST_CIRC",
    "waist_girth": "WAIST_CIRC_NATURAL",
    "hip_girth": "BUTTOCK_CIRC",
    "upper_bust_girth": "CHEST_CIRC_AT_SCYE",
    "under_bust_girth": "CHEST_CIRC-BELOW_BUST_",
    "upper_arm_girth": "ARM_CIRC-AXILLARY",
    "elbow_girth": "ELBOW_CIRC-EXTENDED",
    "wrist_girth": "WRIST_CIRC-STYLION",
    "hand_girth": "HAND_CIRC_AT_METACARPALE",
    "hand_length": "HAND_LNTH",
    "head_girth": "HEAD_CIRC",
    "neck_girth": "NECK_CIRC-OVER_LARYNX",
    "neck_base_girth": "NECK_CIRC-BASE",
    "shoulder_length": "SHOULDER_LNTH",
    "back_width": "INTRSCY_DIST",
    "mid_armhole_back_width": "INTRSCY_MID_DIST",
    "scye_depth": "SCYE_DEPTH",
    "armscye_girth": "SCYE_CIRC_OVER_ACROMION",
    "back_waist_length": "WAIST_NAT_LNTH",
    "front_waist_length": "WST_NAT_FRONT",
    "neck_to_bust_point": "NECK_TO_BUSTPOINT_LNTH",
    "bust_point_width": "BUSTPOINT_TO_BUSTPOINT_BRTH",
    "arm_length": "SLEEVE-OUTSEAM_LNTH",
    "centre_back_to_wrist": "SPINE_TO_WRIST_LNTH_(SL)",
    "underarm_length": "AXILLA_HT - WRIST_HT",
    "cervical_height": "CERVIC_HT",
    "waist_height": "WAIST_HT_NATURAL",
    "hip_height": "BUTT_HT",
    "waist_to_hip": "WAIST_HT_NATURAL - BUTT_HT",
    "knee_height": "PATELLA-MID_HT",
    "crotch_height": "CROTCH_HT",
    "body_rise": "WAIST_HT_SIT_NATURAL",
    "total_crotch_length": "CROTCH_NAT_WAIST",
    "thigh_girth": "THIGH_CIRC-PROXIMAL",
    "knee_girth": "KNEE_CIRC",
    "calf_girth": "CALF_CIRC",
    "ankle_girth": "ANKLE_CIRC",
    "foot_length": "FOOT_LNTH",
    "ball_girth": "FOOT_CIRC",
}
LATER = {
    "stature": "stature",
    "bust_girth": "chestcircumference",
    "hip_girth": "buttockcircumference",
    "wrist_girth": "wristcircumference",
    "hand_girth": "handcircumference",
    "hand_length": "handlength",
    "head_girth": "headcircumference",
    "neck_girth": "neckcircumference",
    "neck_base_girth": "neckcircumferencebase",
    "shoulder_length": "shoulderlength",
    "back_width": "interscyei",
    "mid_armhole_back_width": "interscyeii",
    "arm_length": "sleeveoutseam",
    "centre_back_to_wrist": "sleevelengthspinewrist",
    "cervical_height": "cervicaleheight",
    "hip_height": "buttockheight",
    "knee_height": "kneeheightmidpatella",
    "crotch_height": "crotchheight",
    "thigh_girth": "thighcircumference",
    "calf_girth": "calfcircumference",
    "ankle_girth": "anklecircumference",
    "foot_length": "footlength",
    "ball_girth": "balloffootcircumference",
}
"""What the 2012 survey took in the same way; it has no natural waist, no relaxed upper arm and no scye depth."""


def _read(file: Path, columns: dict[str, str]) -> dict[str, np.ndarray]:
    with file.open(encoding="utf-8-sig", newline="") as stream:
        rows = list(csv.DictReader(stream))
    out = {}
    for name, column in columns.items():
        first, _, second = column.partition(" - ")
        values = np.array([float(row[first]) for row in rows])
        values[values < 0] = np.nan
        if second:
            other = np.array([float(row[second]) for row in rows])
            values -= np.where(other < 0, np.nan, other)
        out[name] = values
    return out


def _drift_mm(older: dict[str, np.ndarray], later: dict[str, np.ndarray], name: str) -> float | None:
    """How far the 1988 relation to stature, bust and hip misses the 2012 women on average."""
    known = ["stature", "bust_girth", "hip_girth"]
    if name not in later or name in known:
        return None
    x = np.column_stack([np.ones(len(older[name])), *(older[one] for one in known)])
    whole = ~np.isnan(x).any(axis=1) & ~np.isnan(older[name])
    fit, *_ = np.linalg.lstsq(x[whole], older[name][whole], rcond=None)
    there = np.column_stack([np.ones(len(later[name])), *(later[one] for one in known)])
    return float(np.mean(later[name] - there @ fit))


def main() -> int:
    """Read both surveys, fit, write the table."""
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else ROOT.parent / "shared" / "reference"
    older = _read(folder / "ansur1_1988_female.csv", COLUMNS)
    later = _read(folder / "ansur2_female.csv", LATER)
    names = list(COLUMNS)
    table = np.column_stack([older[name] for name in names])
    table = table[~np.isnan(table).any(axis=1)]
    covariance = np.cov(table, rowvar=False)
    with OUT.open("w", encoding="utf-8", newline="") as stream:
        writer = csv.writer(stream, lineterminator="\n")
        writer.writerow(["measure", "column", "women", "mean_mm", "least_mm", "most_mm", "drift_mm", *names])
        for spot, name in enumerate(names):
            column = table[:, spot]
            drift = _drift_mm(older, later, name)
            head = [name, COLUMNS[name], len(table), f"{column.mean():.2f}", int(column.min()), int(column.max())]
            covariances = [f"{covariance[spot, other]:.1f}" if other <= spot else "" for other in range(len(names))]
            writer.writerow([*head, "" if drift is None else f"{drift:.1f}", *covariances])
    print(f"{len(table)} women, {len(names)} measures: {OUT.relative_to(ROOT)}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
