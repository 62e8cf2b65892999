"""A texture or lace as a stitch pattern is printed: its multiple, its rows, and its own gauge where it says one.

An *edge stitch* is worked plain at each side, so that a seam never eats into the repeat.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from lastlook.quantity import Gauge, Origin, Unread, gauge_of

MULTIPLE = re.compile(r"multiple\s+of\s+(\d+)\s*(?:sts?|stitches)?\s*(?:(?:plus|\+)\s*(\d+))?", re.I)
GAUGE = re.compile(
    r"(\d+(?:\.\d+)?)\s*(?:sts?|stitches)\D{1,20}?(\d+(?:\.\d+)?)\s*rows?\s*=\s*(?:10\s*cm|4\s*in)", re.I
)
ROW = re.compile(
    r"^\s*(?:rows?\s+(\d+)|(\d+)(?:st|nd|rd|th)\s+row)\b(?:\s+and\s+[^:]*?row[s]?)?\s*(?:\([^)]*\))?\s*:", re.I
)
AGAIN = re.compile(r"(?P<lead>.*(?:repeat|rep)\s+from\s+\*)(?P<reach>[^*]*)$", re.I | re.S)
LAST = re.compile(r"\s*to\s+last\s+(?:(\d+)\s+)?sts?\s*,\s*(?P<tail>.+)$", re.I | re.S)
END = re.compile(r"\s*,?\s*end(?:ing)?(?:\s+with)?\s+(?P<tail>.+)$", re.I | re.S)
PLAIN = re.compile(r"^(?:k(?:nit)?|p(?:url)?)(?:\s+(?:across|to end|row))?$", re.I)
MOST = 400


@dataclass(frozen=True)
class Texture:
    """A stitch pattern with its repeat."""

    name: str
    multiple: int
    extra: int
    rows: tuple[str, ...]
    """As printed, label and all."""
    gauge: Gauge | None

    @property
    def heading(self) -> str:
        """Return its heading on the page, edge stitches counted in."""
        return f"PATTERN STITCH (multiple of {self.multiple} sts plus {self.extra + 2})"

    def lines(self) -> list[str]:
        """Return its rows with an edge stitch at both sides."""
        return [one for one in (edged(row) for row in self.rows) if one is not None]


def texture_of(text: str) -> Texture | Unread:
    """Return the pattern that a text describes."""
    hint = "Write “Multiple of 8 plus 1”, then each row on a line of its own: “Row 1: …”."
    multiple = MULTIPLE.search(text)
    if multiple is None:
        return Unread("the texture", "The stitch pattern does not say its multiple.", hint)
    rows = _rows(text)
    if not rows:
        return Unread("the texture", "The stitch pattern has no row that could be read.", hint)
    each, extra = int(multiple.group(1)), int(multiple.group(2) or 0)
    if not 1 <= each <= MOST or extra > MOST:
        return Unread("the texture", f"A multiple of {each} plus {extra} is no repeat that hands work.", hint)
    odd = next((row for row in rows if edged(row) is None), None)
    if odd is not None:
        why = f"“{odd[:60]}” does not say how it repeats over the row."
        return Unread("the texture", why, "Write it with “* … ; repeat from * to end” or “to last 2 sts, …”.")
    found = GAUGE.search(text)
    gauge = gauge_of(float(found.group(1)), float(found.group(2)), Origin.MEASURED) if found else None
    title = text.strip().splitlines()[0].strip()
    name = "the texture" if MULTIPLE.search(title) or ROW.match(title) else title.rstrip(".")
    return Texture(name, each, extra, tuple(rows), gauge)


def _rows(text: str) -> list[str]:
    """Return the rows, each on one line; lines without a label go on with the row above."""
    rows: list[str] = []
    for line in text.splitlines():
        if ROW.match(line):
            rows.append(line.strip())
        elif rows and line.strip():
            rows[-1] += f" {line.strip()}"
    return rows


def edged(row: str) -> str | None:
    """Return a row with an edge stitch at both sides; None where it does not say how it repeats.

    >>> edged("Row 1: * K 2, p 2; repeat from * to end.")
    'Row 1: K 1, * k 2, p 2; repeat from * to last 1 st, k 1.'
    """
    label = ROW.match(row)
    if label is None:
        return None
    body = row[label.end() :].strip().rstrip(".").strip()
    head = row[: label.end()].strip()
    if PLAIN.match(body):
        return f"{head} {body}."
    again = AGAIN.match(body)
    if again is None:
        return None
    verb = "p" if _is_wrong(label) else "k"
    lead = again["lead"].strip()
    start = f"{head} {verb.upper()} 1, {_small(lead)}"
    last, end = LAST.match(again["reach"]), END.match(again["reach"])
    if last:
        return f"{start} to last {int(last.group(1) or 1) + 1} sts, {last['tail'].strip()}, {verb} 1."
    if end:
        return f"{start}, end {end['tail'].strip()}, {verb} 1."
    reach = again["reach"].strip(" ,")
    if reach and not re.fullmatch(r"(?:across(?: row)?|to end(?: of row)?)", reach, re.I):
        return None
    return f"{start} to last 1 st, {verb} 1."


def _is_wrong(label: re.Match[str]) -> bool:
    """Whether a row is worked on the wrong side: it says so, or has an even number."""
    words = label.group().lower()
    if "side" in words:
        return "wrong" in words
    return int(label.group(1) or label.group(2)) % 2 == 0


def _small(lead: str) -> str:
    """Return a row's beginning as it goes on after the edge stitch."""
    star = "* " if lead.startswith("*") else ""
    rest = lead.removeprefix("*").strip()
    return star + rest[:1].lower() + rest[1:]
