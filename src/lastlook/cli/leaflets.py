"""What the commands on a leaflet share: its text fetched, and the one size that is meant."""

from __future__ import annotations

import codecs
import json
import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from lastlook import finding, knit
from lastlook.finding import Certainty, Finding
from lastlook.knit import LeafletReading, SizeReading, compose

MOST_BYTES = 2_000_000
MOST_CONTROLS = 0.02
"""A file with a larger share of control characters is no text."""
MARKS = ((codecs.BOM_UTF8, "utf-8-sig"), (codecs.BOM_UTF32_LE, "utf-32"), (codecs.BOM_UTF32_BE, "utf-32"),
         (codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"))  # fmt: skip
"""What stands at the start of a file and tells how it is written."""


def leaflet_at(place: str) -> str | None:
    """Return the text of a leaflet; None, with one clear line on standard error, where there is none to read."""
    raw, why = _bytes_at(Path(place))
    text = None if why else _decoded(raw)
    if not why and text is None:
        why = "this is not a text file. Save the leaflet as plain text; `lastlook scan` reads pictures."
    elif text is not None and not text.strip():
        why = "the file is empty. Type or paste the leaflet into it."
    if why:
        print(f"{place}: {why}", file=sys.stderr)
        return None
    return text


def _bytes_at(path: Path) -> tuple[bytes, str]:
    """Return what the file holds, or why it can't be read; never more than a leaflet can be long."""
    try:
        with path.open("rb") as file:
            raw = file.read(MOST_BYTES + 1)
    except IsADirectoryError:
        return b"", "this is a folder. Name the text file in it."
    except PermissionError:
        return b"", "the file may not be opened. Allow yourself to read it."
    except (OSError, ValueError):
        return b"", "there is no such file. Give a text file's path."
    if len(raw) > MOST_BYTES:
        return b"", "the file is over 2 MB, longer than any leaflet. Keep the leaflet alone."
    return raw, ""


def _decoded(raw: bytes) -> str | None:
    """Return the text, however it was saved; None where it is none."""
    marked = next((name for mark, name in MARKS if raw.startswith(mark)), None)
    for name in (marked,) if marked else ("utf-8", *_two_bytes(raw), "cp1252"):
        try:
            text = raw.decode(name, errors="replace" if name == "cp1252" else "strict")
        except UnicodeDecodeError:
            continue
        if _is_text(text):
            return text
    return None


def _two_bytes(raw: bytes) -> tuple[str, ...]:
    """Return the two-byte writing whose empty half stands at odd or even places, if any."""
    even, odd = raw[0::2].count(0), raw[1::2].count(0)
    most = 0.6 * (len(raw) // 2)
    if odd > most > 0 and not even:
        return ("utf-16-le",)
    return ("utf-16-be",) if even > most > 0 and not odd else ()


def _is_text(text: str) -> bool:
    """Whether nearly all of it can be printed: no empty bytes, hardly a control character."""
    strange = sum(1 for sign in text if (sign < " " and sign not in "\t\n\r\f\v\x1a") or sign == "\ufffd")
    return "\0" not in text and strange <= MOST_CONTROLS * len(text)


def chosen_size(reading: LeafletReading, wanted: str | None) -> SizeReading | None:
    """Return the size asked for, or the only one; None, with one clear line, where it is not clear which."""
    if wanted is None and len(reading.by_size) == 1:
        return next(iter(reading.by_size.values()))
    if wanted is not None and wanted in reading.by_size:
        return reading.by_size[wanted]
    known = ", ".join(reading.sizes) or "none that could be read"
    lead = f"The leaflet has no size “{wanted}”" if wanted else "The leaflet has several sizes"
    print(f"{lead}; its sizes are: {known}. Choose one with --size.", file=sys.stderr)
    return None


def size_wanted(reading: LeafletReading, wanted: str | None) -> Finding | None:
    """Return the question which of several sizes is meant; None where one was named or there is but one."""
    if wanted is not None or len(reading.by_size) < 2:
        return None
    return Finding(
        "size-unnamed",
        Certainty.UNKNOWN,
        f"Which of the sizes {', '.join(reading.sizes)} is meant is not known yet.",
        "Each has counts of its own.",
        f"Choose one with --size, like --size {reading.sizes[0]}.",
        asks=True,
        readings=tuple(reading.sizes),
    )


def ask(question: Finding, as_json: bool) -> int:
    """Put a question to the maker, and return the exit status of something that stands open."""
    if as_json:
        print(json.dumps({"findings": [finding.as_json(question)]}, ensure_ascii=False, indent=1))
    else:
        print(finding.say(question))
    return 1


def reading_json(
    reading: LeafletReading, size: SizeReading, measures: Sequence[compose.FinishedMeasure], rungs: Sequence[str]
) -> dict[str, Any]:
    """Return one size of a reading as JSON, with measures and what had to be resorted to, as every knitting command."""
    concerns = tuple(one for one in reading.findings if one.size in (None, size.size))
    kept = replace(reading, by_size={size.size: size}, findings=concerns)
    return knit.as_json(kept) | {
        "measures": [
            {
                "name": one.name,
                "target_mm": round(one.target_mm, 1),
                "gets_mm": round(one.gets_mm, 1),
                "plus_minus_mm": round(one.plus_minus_mm, 1),
            }
            for one in measures
        ],
        "rungs": list(rungs),
    }
