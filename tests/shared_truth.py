"""Leaflets that a folder `../shared` holds with their truths, told in the words of our own truths."""

from __future__ import annotations

import os
import re
from pathlib import Path
from typing import Any

import yaml

from tests import corpus

FOLDER = Path(os.environ.get("LASTLOOK_SHARED", corpus.ROOT.parent / "shared")) / "examples" / "leaflets"
Json = dict[str, Any]
ENDS = {
    "holder": "on holder|joined",
    "grafted": "joined|bound off|fastened off|on holder|drawn up",
    "fastened off": "fastened off",
    "drawn up": "drawn up",
    "bound off": "bound off",
}
SEAMS = {"raglan seam": "raglan", "shoulder seam": "shoulder", "side seam": "side", "side edge": "side"}
UNITS = {"rows": "rows", "sts": "stitches"}


def leaflets() -> list[corpus.Leaflet]:
    """Return the shared leaflets, none where the folder is not there."""
    return [_leaflet(path) for path in sorted(FOLDER.glob("*.truth.yaml"))]


def _leaflet(path: Path) -> corpus.Leaflet:
    told = yaml.safe_load(path.read_text(encoding="utf-8"))
    text = path.with_name(told["leaflet"]).read_text(encoding="utf-8")
    wrong = set(told["slip"]["sizes"]) if told["slip"] else set()
    truth: Json = {
        "sizes": told["sizes"],
        "verdict": [corpus.BAD if size in wrong else corpus.GOOD for size in told["sizes"]],
        "understood": 0.95,
        "gauge": _gauge(told["gauge"]),
        "pieces": [_piece(piece) for piece in told["pieces"] if piece["make"]],
        "mates": [_mate(mate) for mate in told["mates"] if _told(mate)],
    }
    if told["slip"]:
        truth["slip"] = _slip(text, told["slip"])
    return corpus.Leaflet(path.name.removesuffix(".truth.yaml"), text, truth)


def _gauge(gauge: Json) -> Json:
    pairs = (("stitches_per_10cm", "sts_per_inch"), ("rows_per_10cm", "rows_per_inch"))
    return {ours: gauge[theirs] / 2.54 * 10 for ours, theirs in pairs if gauge.get(theirs)}


def _piece(piece: Json) -> Json:
    out: Json = {"name": piece["name"], "checkpoints": [_check(one) for one in piece["checkpoints"]]}
    if piece.get("cast_on") and "border" not in piece["name"]:
        out["cast_on"] = piece["cast_on"]
    final = piece.get("final")
    if final and final["state"] in ENDS:
        out["final"] = {"stitches": final["count"], "how": ENDS[final["state"]]}
    return out


def _check(check: Json) -> Json:
    kind = "worked" if check["kind"] == "milestone" else check["kind"]
    out = {"at": check["phrase"], "kind": kind, "worked": check["true_count"]}
    return out if check["stated"] is None else {**out, "stated": check["stated"]}


def _told(mate: Json) -> bool:
    return mate["name"].split(":")[0] in SEAMS and "a_values" in mate and mate["unit"] in UNITS


def _mate(mate: Json) -> Json:
    kind, pieces = mate["name"].split(": ")
    a, b = pieces.split(" / ")
    return {
        "a": a,
        "b": b,
        "about": SEAMS[kind],
        "unit": UNITS[mate["unit"]],
        "a_length": mate["a_values"],
        "b_length": mate["b_values"],
        "within": mate["tolerance"],
        "meets": mate["agree"],
    }


def _slip(text: str, slip: Json) -> Json:
    """The place is told as 'SECTION: quotation'; the quotation is the longest end that stands in the leaflet."""
    parts = slip["where"].split(" ")
    quotes = (" ".join(parts[spot:]) for spot in range(len(parts)))
    quote = next(quote for quote in quotes if corpus.lines(text, quote))
    right = re.sub(r"^ending with a (\w+) side row$", r"\1 side", str(slip["would_be_right"]))
    return {"at": [quote], "sizes": slip["sizes"], "right": right}
