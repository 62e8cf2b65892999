"""Paper pieces taken in from elsewhere, as the outfit's document keeps them: the file, and what the maker says of it.

An edge is named by its number in the file's outline, from 1. Places along an edge are told from its left end where
it lies across, from its upper end where it stands upright.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from lastlook.finding import Finding
from lastlook.outfit.written.table import Table, count, length_mm, one_of, strangers, table, unread
from lastlook.quantity import Units, Unread, read_length

KEYS = (
    *("file", "outline", "name", "line", "allowance", "quantity", "pair", "fold", "grain", "hip", "lengthen"),
    *("edges", "allowances", "darts", "notches"),
)
LINES = ("seam", "cut")
GRAINS = ("upright", "level")
MOST_EDGES = 400


@dataclass(frozen=True)
class DartSaid:
    """A dart as the maker tells it: where its mouth begins along the edge, how wide it is, how deep it goes."""

    edge: str
    from_mm: float
    wide_mm: float
    deep_mm: float


@dataclass(frozen=True)
class NotchSaid:
    """A notch, so far along an edge."""

    edge: str
    at_mm: float


@dataclass(frozen=True)
class TakenPiece:
    """One outline of a file, and what it is."""

    file: str
    outline: int = 1
    """Which of the file's closed outlines, the largest first, from 1."""
    name: str = ""
    line: str = "seam"
    """Whether the outline is the 'seam' or the 'cut' line."""
    allowance_mm: float = 15.0
    quantity: int = 1
    pair: bool = False
    """Whether half of them are mirrored."""
    fold: str | None = None
    """The edge that lies on the fold."""
    grain: str = "upright"
    """'upright', 'level', or the name of the edge that it runs along."""
    hip_mm: float | None = None
    """How far below the waist the hip lies; None where the wearer's own counts."""
    lengthen_mm: float | None = None
    """How far below the waist the printed line to lengthen at lies."""
    edges: tuple[tuple[int, str], ...] = ()
    allowances: tuple[tuple[str, float], ...] = ()
    darts: tuple[DartSaid, ...] = ()
    notches: tuple[NotchSaid, ...] = ()


def read_taken(entries: Any, units: Units, path: str, findings: list[Finding]) -> tuple[TakenPiece, ...]:
    """Return the pieces that were taken in; what can't be read of one is said."""
    if not isinstance(entries, list):
        findings.append(unread(path + "taken", "The pieces are not a list.", f"Begin each with [[{path}taken]]."))
        return ()
    out = []
    for spot, entry in enumerate(entries):
        if isinstance(entry, dict):
            out.append(_piece(entry, units, f"{path}taken.{spot}.", findings))
        else:
            findings.append(unread(f"{path}taken.{spot}", "A piece is not a table.", "Give it a file and a name."))
    return tuple(out)


def _piece(entry: Table, units: Units, path: str, findings: list[Finding]) -> TakenPiece:
    findings += strangers(entry, KEYS, path)
    allowance = length_mm(entry, "allowance", units, path, findings)
    return TakenPiece(
        file=str(entry.get("file", "")),
        outline=count(entry, "outline", path, findings) or 1,
        name=str(entry.get("name", "")),
        line=one_of(entry, "line", LINES, path, findings),
        allowance_mm=15.0 if allowance is None else allowance,
        quantity=count(entry, "quantity", path, findings) or 1,
        pair=str(entry.get("pair", "no")).lower() in ("yes", "true"),
        fold=str(entry["fold"]) if entry.get("fold") else None,
        grain=str(entry.get("grain", "upright")),
        hip_mm=length_mm(entry, "hip", units, path, findings),
        lengthen_mm=length_mm(entry, "lengthen", units, path, findings),
        edges=_edges(table(entry, "edges", findings, path), f"{path}edges.", findings),
        allowances=_lengths(table(entry, "allowances", findings, path), units, f"{path}allowances.", findings),
        darts=_darts(entry.get("darts", []), units, path, findings),
        notches=_notches(entry.get("notches", []), units, path, findings),
    )


def _edges(facts: Table, path: str, findings: list[Finding]) -> tuple[tuple[int, str], ...]:
    out = []
    for key, name in facts.items():
        if key.isascii() and key.isdigit() and 1 <= int(key) <= MOST_EDGES:
            out.append((int(key), str(name)))
        else:
            findings.append(unread(path + key, f"“{key}” is no number of an edge.", 'Write it like 1 = "waist".'))
    return tuple(out)


def _lengths(facts: Table, units: Units, path: str, findings: list[Finding]) -> tuple[tuple[str, float], ...]:
    found = [(str(key), length_mm(facts, key, units, path, findings)) for key in facts]
    return tuple((key, mm) for key, mm in found if mm is not None)


def _darts(entries: Any, units: Units, path: str, findings: list[Finding]) -> tuple[DartSaid, ...]:
    out = []
    for spot, entry in enumerate(entries if isinstance(entries, list) else []):
        at = f"{path}darts.{spot}."
        found = _needed(entry, ("from", "wide", "deep"), units, at, findings)
        if found:
            out.append(DartSaid(str(entry.get("edge", "waist")), *found))
    return tuple(out)


def _notches(entries: Any, units: Units, path: str, findings: list[Finding]) -> tuple[NotchSaid, ...]:
    out = []
    for spot, entry in enumerate(entries if isinstance(entries, list) else []):
        found = _needed(entry, ("at",), units, f"{path}notches.{spot}.", findings)
        if found:
            out.append(NotchSaid(str(entry.get("edge", "side")), *found))
    return tuple(out)


def _needed(entry: Any, keys: tuple[str, ...], units: Units, path: str, findings: list[Finding]) -> list[float]:
    """Return the lengths under the keys, nothing where one of them is missing or can't be read."""
    facts = entry if isinstance(entry, dict) else {}
    out = []
    for key in keys:
        mm = read_length(str(facts.get(key, "")), units)
        if isinstance(mm, Unread):
            findings.append(unread(path + key, mm.why, mm.attempt))
            return []
        out.append(mm)
    return out
