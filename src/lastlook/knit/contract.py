"""A reading as JSON: the shape that `lastlook read --json` promises."""

from __future__ import annotations

from typing import Any

from lastlook import finding
from lastlook.finding import Finding, Span
from lastlook.knit.reading import LeafletReading, SizeReading
from lastlook.knit.worked import WorkedPiece
from lastlook.piece import Seam
from lastlook.quantity import Missing


def as_json(reading: LeafletReading) -> dict[str, Any]:
    """Return the reading as plain values."""
    return {
        "title": reading.title,
        "sizes": list(reading.sizes),
        "gauge": _gauge(reading),
        "read": {
            "phrases": reading.phrases,
            "understood": reading.understood,
            "not_understood": [_spot(reading, span) for span in reading.not_understood],
        },
        "by_size": {name: _size(reading, one) for name, one in reading.by_size.items()},
        "findings": [_finding(reading, one) for one in reading.findings],
    }


def _gauge(reading: LeafletReading) -> dict[str, float | None]:
    gauge = reading.gauge
    if gauge is None:
        return {"stitches_per_10cm": None, "rows_per_10cm": None}
    rows = None if isinstance(gauge.rows, Missing) else round(gauge.rows.best, 2)
    return {"stitches_per_10cm": round(gauge.stitches.best, 2), "rows_per_10cm": rows}


def _finding(reading: LeafletReading, one: Finding) -> dict[str, Any]:
    """Return a finding; what concerns no single words stands at the head of the leaflet."""
    told = finding.as_json(one, reading.source)
    return told if told["line"] else {**told, "line": 1, "column": 1}


def _spot(reading: LeafletReading, span: Span) -> dict[str, Any]:
    line, column = reading.source.line_and_column(span.start)
    return {"line": line, "column": column, "text": " ".join(reading.source.words(span).split())}


def _size(reading: LeafletReading, one: SizeReading) -> dict[str, Any]:
    return {
        "verdict": one.verdict,
        "pieces": [_piece(reading, piece) for piece in one.pieces],
        "mates": [_mate(seam) for seam in one.seams],
    }


def _piece(reading: LeafletReading, piece: WorkedPiece) -> dict[str, Any]:
    lines = reading.source.line_and_column
    return {
        "name": piece.name,
        "part_of": piece.part_of,
        "make": piece.make,
        "cast_on": piece.cast_on,
        "rows": len(piece.rows),
        "stitches_after_row": [row.after for row in piece.rows],
        "stitches_used_in_row": [row.used for row in piece.rows],
        "end": {"stitches": piece.end_stitches, "how": piece.ended.value},
        "stated": [
            {"line": lines(one.span.start)[0], "stated": one.stated, "worked": one.worked} for one in piece.stated
        ],
        "landmarks": dict(piece.landmarks),
        "edges": [
            {"name": str(edge.name), "rows": edge.rows, "stitches": edge.stitches, "mm": _round(edge.mm)}
            for edge in piece.edges
        ],
    }


def _mate(seam: Seam) -> dict[str, Any]:
    return {
        "a": str(seam.mate.a),
        "b": str(seam.mate.b),
        "unit": seam.mate.unit.value,
        "a_length": _round(seam.a_length),
        "b_length": _round(seam.b_length),
        "difference": _round(seam.difference),
        "allowed": seam.mate.allowed,
        "meets": seam.meets.value,
    }


def _round(value: float | None) -> float | int | None:
    if value is None:
        return None
    return int(value) if float(value).is_integer() else round(value, 1)
