"""What a maker says of a skirt beyond its draft: its opening, elastic, the printed sizes and the old envelope."""

from __future__ import annotations

from typing import Any

from lastlook.finding import Finding
from lastlook.outfit.written.table import Table, length_mm, one_of, strangers, table, unread
from lastlook.paper import fit, make
from lastlook.quantity import Units

SKIRT = ("opening", "elastic", "printed", "envelope")
AT = ("left side", "right side", "centre back", "centre front")


def read_opening(entry: Table, path: str, units: Units, findings: list[Finding]) -> fit.Opening | None:
    """Return how the skirt opens, None where that was not settled."""
    facts = _table(entry, "opening", ("kind", "length", "at"), path, findings)
    if not facts:
        return None
    here = f"{path}opening."
    kind = one_of(facts, "kind", tuple(fit.LEAST_MM), here, findings)
    length = length_mm(facts, "length", units, here, findings)
    return fit.Opening(kind, length or 0.0, one_of(facts, "at", AT, here, findings))


def read_elastic(entry: Table, path: str, units: Units, findings: list[Finding]) -> fit.Elastic | None:
    """Return the elastic in the waist, None where there is none."""
    facts = _table(entry, "elastic", ("length", "sort"), path, findings)
    here = f"{path}elastic."
    length = length_mm(facts, "length", units, here, findings)
    if not length:
        return None
    return fit.Elastic(length, one_of(facts, "sort", ("knit", "braid", "woven"), here, findings))


def read_printed(entry: Table, path: str, units: Units, findings: list[Finding]) -> fit.Printed | None:
    """Return the sizes that the pattern prints, and the height that it was drawn for."""
    facts = _table(entry, "printed", ("height", "sizes"), path, findings)
    if not facts:
        return None
    here = f"{path}printed."
    sizes = []
    for place, row in enumerate(_rows(facts, "sizes", here, findings)):
        spot = f"{here}sizes.{place}."
        findings += strangers(row, ("name", "waist", "hip", "length"), spot)
        waist, hip, length = (length_mm(row, key, units, spot, findings) for key in ("waist", "hip", "length"))
        if waist is None or hip is None:
            said = f"Size “{row.get('name', place + 1)}” does not say its waist and its hip."
            findings.append(unread(spot.rstrip("."), said, "Copy both from the envelope."))
            continue
        sizes.append(fit.PrintedSize(str(row.get("name", place + 1)), waist, hip, length))
    height = one_of(facts, "height", tuple(fit.HEIGHT_CLASSES_MM), here, findings) if "height" in facts else None
    return fit.Printed(tuple(sizes), height)


def read_envelope(entry: Table, path: str, units: Units, findings: list[Finding]) -> make.Envelope | None:
    """Return what the envelope of a second-hand pattern says."""
    facts = _table(entry, "envelope", ("pieces", "finished_length", "edges"), path, findings)
    if not facts:
        return None
    here = f"{path}envelope."
    names = facts.get("pieces", [])
    if not isinstance(names, list):
        findings.append(unread(here + "pieces", "The pieces are not a list.", 'Write it like ["Front", "Back"].'))
        names = []
    edges = table(facts, "edges", findings, here)
    lengths = {str(key): length_mm(edges, key, units, f"{here}edges.", findings) for key in edges}
    return make.Envelope(
        tuple(str(name) for name in names),
        length_mm(facts, "finished_length", units, here, findings),
        {key: mm for key, mm in lengths.items() if mm is not None},
    )


def _table(entry: Table, key: str, known: tuple[str, ...], path: str, findings: list[Finding]) -> Table:
    facts = table(entry, key, findings, path)
    findings += strangers(facts, known, f"{path}{key}.")
    return facts


def _rows(facts: Table, key: str, path: str, findings: list[Finding]) -> list[dict[str, Any]]:
    value = facts.get(key, [])
    if isinstance(value, list) and all(isinstance(row, dict) for row in value):
        return value
    findings.append(unread(path + key, f"The {key} are not a list of tables.", f"Begin each with [[{path}{key}]]."))
    return []
