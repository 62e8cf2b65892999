"""A set of pieces as the JSON that the commands answer with."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from lastlook import finding
from lastlook.paper.drafted import Drafted
from lastlook.paper.paper_piece import PaperPiece
from lastlook.piece import Seam
from lastlook.wearer import Measure

DIGITS = 4
"""A tenth of a micrometre: far finer than paper, coarse enough to be stable."""


def as_json(drafted: Drafted, files: Mapping[str, str] | None = None) -> dict[str, Any]:
    """Return pieces, girths, ease, seams, cloth and findings; `files` names the SVG of each piece."""
    named = files or {}
    return {
        "kind": drafted.kind,
        "pieces": [piece_json(piece, named.get(piece.name)) for piece in drafted.pieces],
        "girths_mm": levels_json(drafted.girths_mm),
        "ease_mm": levels_json(drafted.ease_mm),
        "body_mm": {level.replace(" ", "_"): _body(one) for level, one in drafted.body.items()},
        "seams": [seam_json(seam) for seam in drafted.seams],
        "cloth_mm2": round(drafted.cloth_mm2, 1),
        "findings": [finding.as_json(one) for one in drafted.findings],
    }


def _body(one: Measure | None) -> dict[str, Any] | None:
    """Return what the body was taken as at a level, and how that is known."""
    return None if one is None else {"mm": round(one.mm.best, DIGITS), "known": one.origin.value}


def piece_json(piece: PaperPiece, svg: str | None = None) -> dict[str, Any]:
    """Return one piece: how it is cut, how long its edges are with darts closed, its darts."""
    return {
        "name": piece.name,
        "svg": svg,
        "quantity": piece.quantity,
        "mirrored_pair": piece.mirrored_pair,
        "on_fold": piece.fold_edge,
        "area_mm2": round(piece.cut_line.area_mm2(), 1),
        "edges_mm": {side.name: round(side.sewn_mm, DIGITS) for side in piece.sides},
        "darts": [
            {
                "edge": dart.edge,
                "intake_mm": round(dart.intake_mm, DIGITS),
                "length_mm": round(dart.length_mm, DIGITS),
            }
            for dart in piece.darts
        ],
    }


def seam_json(seam: Seam) -> dict[str, Any]:
    """Return one seam with both lengths and how they meet."""
    return {
        "a": str(seam.mate.a),
        "b": str(seam.mate.b),
        "a_mm": round(seam.a_length, DIGITS),
        "b_mm": round(seam.b_length, DIGITS),
        "difference_mm": round(seam.difference, DIGITS),
        "allowed_mm": round(seam.mate.allowed, DIGITS),
        "meets": seam.meets.value,
    }


def levels_json(levels: Mapping[str, float | None]) -> dict[str, float | None]:
    """Return girths or ease by level, names with an underscore."""
    return {name.replace(" ", "_"): None if mm is None else round(mm, DIGITS) for name, mm in levels.items()}
