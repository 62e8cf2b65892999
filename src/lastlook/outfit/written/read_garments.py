"""Garments as the outfit's document plans them, and pieces as they were made."""

from __future__ import annotations

from typing import Any

from lastlook import paper
from lastlook.finding import Finding
from lastlook.knit.compose.alter import LONGER, WIDER
from lastlook.outfit.outfit import Ease, Knitting, MadePiece, Manner, Sewing
from lastlook.outfit.written.document import Document
from lastlook.outfit.written.read_cuts import read_cuts
from lastlook.outfit.written.read_log import read_log, read_notes
from lastlook.outfit.written.read_skirt import SKIRT, read_elastic, read_envelope, read_opening, read_printed
from lastlook.outfit.written.read_taken import read_taken
from lastlook.outfit.written.read_toiles import read_toiles
from lastlook.outfit.written.table import Table, count, grams, length_mm, one_of, strangers, unread
from lastlook.quantity import Units, Unread, read_length
from lastlook.quantity.length import read_number

KNITTING = (
    *("leaflet", "size", "yarn", "swatch", "ease", "longer", "wider", "readings", "corrections"),
    *("place", "log", "notes"),
)
SEWING = ("kind", "cloth", "eases", "fold", "options", "alterations", "taken", "toiles", "lay", "cut", "ease", *SKIRT)
MADE = ("garment", "piece", "rows", "rows_to_underarm", "cast_on", "stitches", "width", "length", "grams")
FOLDS = ("none", "lengthwise", "both-selvedges-to-middle", "crosswise")


def read_knittings(facts: Table, manner: Manner, folder: Document, findings: list[Finding]) -> tuple[Knitting, ...]:
    """Return the garments to be knitted."""
    return tuple(
        one for name, entry in facts.items() if (one := _knitting(name, entry, manner, folder, findings)) is not None
    )


def _knitting(name: str, entry: Any, manner: Manner, folder: Document, findings: list[Finding]) -> Knitting | None:
    path = f"knitting.{name}."
    if not isinstance(entry, dict):
        findings.append(unread(path.rstrip("."), f"“{name}” is not a table.", f"Begin it with [knitting.{name}]."))
        return None
    findings += strangers(entry, KNITTING, path)
    leaflet = str(entry.get("leaflet", ""))
    if not folder.has(leaflet):
        said = f"The leaflet of “{name}” is not in the folder: “{leaflet}”."
        findings.append(unread(path + "leaflet", said, "Put its text there as a .txt file, as it is printed."))
    readings = {str(key): value for key, value in dict(entry.get("readings", {})).items()}
    return Knitting(
        name=name,
        leaflet=leaflet,
        size=str(entry["size"]) if "size" in entry else None,
        yarn=_word(entry, "yarn"),
        swatch=_word(entry, "swatch"),
        readings=tuple((key, value) for key, value in readings.items() if isinstance(value, int)),
        corrections=tuple((str(key), str(value)) for key, value in dict(entry.get("corrections", {})).items()),
        ease=_ease(dict(entry.get("ease", {})), manner.units, path, findings),
        longer=_by_how_much(dict(entry.get("longer", {})), LONGER, f"{path}longer.", manner.units, findings),
        wider=_by_how_much(dict(entry.get("wider", {})), WIDER, f"{path}wider.", manner.units, findings),
        place=_place(entry.get("place", {}), path, findings),
        log=read_log(entry.get("log", []), path, findings),
        notes=read_notes(entry.get("notes", []), path, findings),
    )


def _place(facts: Any, path: str, findings: list[Finding]) -> tuple[tuple[str, int], ...]:
    """Read how many rows of each piece are done."""
    if not isinstance(facts, dict):
        findings.append(unread(path + "place", "Where the hands are can't be read.", "Write it like Back = 42."))
        return ()
    done = {str(piece): count(facts, piece, f"{path}place.", findings) for piece in facts}
    return tuple((piece, rows) for piece, rows in done.items() if rows is not None)


def _word(entry: Table, key: str) -> str | None:
    return str(entry[key]) if key in entry else None


def _ease(facts: Table, units: Units, path: str, findings: list[Finding]) -> tuple[tuple[str, Ease], ...]:
    """Read ease as 'least to most': `bust = "2 to 4 in"`; a single length is both."""
    out = []
    for level, text in facts.items():
        words = str(text).replace("–", " to ").split(" to ")
        unit = "".join(sign for sign in words[-1] if sign.isalpha() or sign in "\"'")
        ends = [read_length(word if _has_unit(word) else word + unit, units) for word in words]
        slip = next((end for end in ends if isinstance(end, Unread)), None)
        lengths = [end for end in ends if not isinstance(end, Unread)]
        if slip is not None or lengths != sorted(lengths) or len(lengths) > 2:
            said = f"The ease “{text}” at the {level} can't be read."
            findings.append(unread(f"{path}ease.{level}", said, "Write it like 2 to 4 in or 5 to 10 cm."))
            continue
        out.append((level, Ease(lengths[0], lengths[-1])))
    return tuple(out)


def _by_how_much(
    facts: Table, places: tuple[str, ...], path: str, units: Units, findings: list[Finding]
) -> tuple[tuple[str, float], ...]:
    """Read how much longer or wider a place is to be: `sleeve = "-2 cm"`; a minus is shorter or narrower."""
    out = []
    findings += strangers(facts, places, path)
    for place in (place for place in places if place in facts):
        text = str(facts[place]).strip().replace("−", "-")
        mm = read_length(text.removeprefix("-"), units)
        if isinstance(mm, Unread):
            findings.append(unread(path + place, mm.why, mm.attempt))
            continue
        out.append((place, -mm if text.startswith("-") else mm))
    return tuple(out)


def _has_unit(word: str) -> bool:
    return any(sign.isalpha() or sign in "\"'" for sign in word)


def read_sewings(facts: Table, manner: Manner, findings: list[Finding]) -> tuple[Sewing, ...]:
    """Return the garments to be sewn."""
    out = []
    for name, entry in facts.items():
        path = f"sewing.{name}."
        if not isinstance(entry, dict):
            findings.append(unread(path.rstrip("."), f"“{name}” is not a table.", f"Begin it with [sewing.{name}]."))
            continue
        findings += strangers(entry, SEWING, path)
        out.append(
            Sewing(
                name=name,
                kind=str(entry.get("kind", "a-line")),
                cloth=_word(entry, "cloth"),
                fold=one_of(entry, "fold", FOLDS, path, findings),
                options=_options(dict(entry.get("options", {})), manner.units, path, findings),
                alterations=_alterations(entry.get("alterations", []), path, findings),
                eases=_share(entry, path, findings),
                ease=_ease(dict(entry.get("ease", {})), manner.units, path, findings),
                opening=read_opening(entry, path, manner.units, findings),
                elastic=read_elastic(entry, path, manner.units, findings),
                printed=read_printed(entry, path, manner.units, findings),
                envelope=read_envelope(entry, path, manner.units, findings),
                taken=read_taken(entry.get("taken", []), manner.units, path, findings),
                toiles=read_toiles(entry.get("toiles", []), path, findings),
                lay=_word(entry, "lay"),
                cut=read_cuts(entry.get("cut", []), path, findings),
            )
        )
    return tuple(out)


def _share(facts: Table, path: str, findings: list[Finding]) -> float | None:
    """Read a share written as `4 %`."""
    if "eases" not in facts:
        return None
    value = read_number(str(facts["eases"]).removesuffix("%").strip())
    if value is None or not 0 <= value < 20:
        said = f"“{facts['eases']}” is not how much a cloth eases."
        attempt = "Sew an 11 in edge onto a 10 in one: if it lies flat, write 10 %."
        findings.append(unread(path + "eases", said, attempt))
        return None
    return value / 100


def _options(facts: Table, units: Units, path: str, findings: list[Finding]) -> tuple[tuple[str, float], ...]:
    """Read what a draft is told: counts as they are, lengths in mm under their name with `_mm`."""
    out: list[tuple[str, float]] = []
    for key, value in facts.items():
        if isinstance(value, int | float):
            out.append((key, float(value)))
            continue
        share = read_number(str(value).removesuffix("%").strip()) if str(value).endswith("%") else None
        if share is not None:
            out.append((f"{key}_share", share / 100))
            continue
        mm = length_mm(facts, key, units, f"{path}options.", findings)
        out += [] if mm is None else [(f"{key}_mm", mm)]
    return tuple(out)


def _alterations(entries: Any, path: str, findings: list[Finding]) -> tuple[paper.Alteration, ...]:
    if not isinstance(entries, list):
        attempt = f"Begin each with [[{path}alterations]]."
        findings.append(unread(path + "alterations", "The alterations are not a list.", attempt))
        return ()
    out = []
    for entry in entries:
        read = paper.read_alteration(entry if isinstance(entry, dict) else {})
        if isinstance(read, Finding):
            findings.append(read)
        else:
            out.append(read)
    return tuple(out)


def read_made(entries: Any, manner: Manner, findings: list[Finding]) -> tuple[MadePiece, ...]:
    """Return the pieces that were made."""
    out = []
    for place, entry in enumerate(entries if isinstance(entries, list) else []):
        path = f"made.{place}."
        if not isinstance(entry, dict):
            findings.append(unread(path.rstrip("."), "A made piece is not a table.", "Begin it with [[made]]."))
            continue
        findings += strangers(entry, MADE, path)
        out.append(
            MadePiece(
                garment=str(entry.get("garment", "")),
                piece=str(entry.get("piece", "")),
                rows=count(entry, "rows", path, findings),
                rows_to_underarm=count(entry, "rows_to_underarm", path, findings),
                cast_on=count(entry, "cast_on", path, findings),
                stitches=count(entry, "stitches", path, findings),
                width_mm=length_mm(entry, "width", manner.units, path, findings),
                length_mm=length_mm(entry, "length", manner.units, path, findings),
                grams=grams(entry, "grams", path, findings),
            )
        )
    return tuple(out)
