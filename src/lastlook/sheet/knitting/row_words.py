"""Rows in words for one size: where the leaflet only names a structure, the row is written out from its counts.

The leaflet's own words stay, but for the label in front of them, which the row's own number replaces, and the figures
of the other sizes. A row that does not add up keeps whatever it says; only what was worked is written.
"""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.knit import Act, Shaping, Side, WorkedPiece, WorkedRow

_LABEL = re.compile(
    r"^\s*(?:next|rows?|rnds?|rounds?|\d+(?:st|nd|rd|th))\b"
    r"(?:(?!needle)[^:—]){0,70}?(?:\([^)]*\)\s*)?(?::|\.?\s*[—–]|\.\s*-)\s*",
    re.I,
)
_AGAIN = re.compile(r"^repeat ((?:rows?|rnds?|rounds?) .+)$", re.I)
"""Rows that the leaflet counts in its own way."""
_SIZES = re.compile(r"(\d[\d½¼¾⅛⅜⅝⅞⅓⅔./ ]*?)\s*[(\[]([^()\[\]]*\d[^()\[\]]*)[)\]]")
_BARE_LABEL = re.compile(r"(?:(?:next|rows?|rnds?|rounds?)\s*\d*|\d+(?:st|nd|rd|th)\s+(?:row|rnd|round))[.:]?", re.I)
_NEXT_ROW = re.compile(
    r"\b(?:rows?|rnds?|rounds?)\s+\d|\b\d+(?:st|nd|rd|th)\s+(?:row|rnd|round)\b|\brep(?:eat)?\b|\n\s*\n", re.I
)
MOST_WORDS = 600
"""Letters of a row that is told needle by needle; longer ones are not looked for."""
_BETWEEN = re.compile(r"\s*[-–,;]\s*")
PLAIN = frozenset({"stockinette", "purl", "knit", "garter", "plain", ""})
RIBS = re.compile(r"rib (\d+)x(\d+)")


def written(piece: WorkedPiece, sizes: int = 1, spot: int = 0, text: str = "") -> WorkedPiece:
    """Return a piece with every row in words of one size; `spot` is the size's place among all of them.

    With the leaflet's `text`, a row that is told needle by needle is given all of its sentences.
    """
    whole = [replace(row, words=_all_words(row, text)) for row in piece.rows]
    return replace(piece, rows=tuple(replace(row, words=row_said(row, sizes, spot)) for row in whole))


def _all_words(row: WorkedRow, text: str) -> str:
    """Return a row's words; where only its label was kept, what stands behind the label up to the next row."""
    if not text or not _BARE_LABEL.fullmatch(row.words.strip()):
        return row.words
    rest = text[row.span.end : row.span.end + MOST_WORDS].lstrip(" .:")
    said = " ".join(_NEXT_ROW.split(rest, maxsplit=1)[0].split()).rstrip(" .")
    return said or row.words


def row_said(row: WorkedRow, sizes: int = 1, spot: int = 0) -> str:
    """Return one row in words."""
    if row.words.strip().lower() not in (row.structure.lower(), ""):
        said = _LABEL.sub("", row.words).strip() or row.words.strip()
        again = _AGAIN.match(said)
        said = f"As {again[1].lower()} of the leaflet’s pattern" if again else said
        return _ended(one_size(said, sizes, spot))
    return _ended(_worked(row))


def one_size(text: str, sizes: int, spot: int) -> str:
    """Return a text with only the figures of one size.

    >>> one_size("Bind off 5 (5-6-6) sts", 4, 2)
    'Bind off 6 sts'
    """

    def pick(match: re.Match[str]) -> str:
        others = _BETWEEN.split(match[2].strip())
        if sizes < 2 or len(others) != sizes - 1 or not all(one[:1].isdigit() for one in others):
            return match[0]
        return [match[1].strip(), *others][spot]

    return _SIZES.sub(pick, text)


def _ended(text: str) -> str:
    first = next((spot for spot, sign in enumerate(text) if sign.isalnum()), 0)
    text = text[:first] + text[first : first + 1].upper() + text[first + 1 :]
    return text if text.endswith((".", "!", "?")) else text + "."


def _worked(row: WorkedRow) -> str:
    """Write a row out from its side, its structure and its shapings."""
    begins = "left" if row.side is Side.WRONG else "right"
    first = [one for one in row.shapings if one.edge == begins]
    last = [one for one in row.shapings if one.edge not in (begins, "inside")]
    inside = [one for one in row.shapings if one.edge == "inside"]
    verb = _verb(row)
    if not row.shapings:
        return _plain(row)
    parts = [_at_start(one, verb) for one in first]
    middle, after = _at_end(last[0], verb, row.side) if last else (f"{verb} to end", "")
    parts.append(middle)
    if after:
        parts.append(after)
    parts += [_within(one) for one in inside]
    return ", ".join(parts)


def _verb(row: WorkedRow) -> str:
    """Return what is done between the shapings."""
    if row.structure in ("stockinette", "plain", ""):
        return "p" if row.side is Side.WRONG else "k"
    if row.structure in ("garter", "knit"):
        return "k"
    return {"purl": "p"}.get(row.structure, "rib" if row.structure.startswith("rib") else "work")


def _plain(row: WorkedRow) -> str:
    rib = RIBS.fullmatch(row.structure)
    if rib:
        return _ribbed(row, int(rib[1]), int(rib[2]))
    if row.structure in PLAIN:
        return {"k": "Knit", "p": "Purl"}[_verb(row)]
    return f"{row.structure}, as it comes"


def _ribbed(row: WorkedRow, knits: int, purls: int) -> str:
    """Return a rib row; over stitches that are left over, the wrong side begins with what the right side ends with."""
    over = row.before % (knits + purls)
    first, second = f"k{knits}", f"p{purls}"
    if over == 0:
        return f"*{first}, {second}; rep from * to end"
    if over == knits and knits == purls:
        if row.side is Side.WRONG:
            first, second = f"p{knits}", f"k{purls}"
        return f"*{first}, {second}; rep from * to last {_last(knits)}, {first}"
    return f"rib {knits}x{purls}, as it comes"


def _last(count: int) -> str:
    return "st" if count == 1 else f"{count} sts"


def _sts(count: int) -> str:
    return "st" if count == 1 else "sts"


def _at_start(one: Shaping, verb: str) -> str:
    edge = f"{verb}{one.inset}, " if one.inset else ""
    match one.act:
        case Act.BIND_OFF:
            return f"bind off {one.stitches} {_sts(one.stitches)}"
        case Act.CAST_ON:
            return f"cast on {one.stitches} {_sts(one.stitches)}"
        case Act.HOLD:
            return f"slip {one.stitches} {_sts(one.stitches)} to a holder"
        case Act.PICK_UP:
            return f"pick up {one.stitches} {_sts(one.stitches)}"
        case Act.INCREASE:
            return f"{edge}inc {one.stitches}"
    return f"{edge}{_decrease(one, verb)}"


def _decrease(one: Shaping, verb: str) -> str:
    """Return a decrease by its lean as seen from the right side; where none was said, by its count alone."""
    if one.lean is None or one.stitches > 1:
        return f"dec {one.stitches}"
    if verb == "p":
        return "p2tog" if one.lean == "right" else "p2tog tbl"
    return "k2tog" if one.lean == "right" else "ssk"


def _at_end(one: Shaping, verb: str, side: Side) -> tuple[str, str]:
    """Return the plain stretch up to a shaping near the end of the row, and the shaping."""
    edge = f", {verb}{one.inset}" if one.inset else ""
    if one.act is Act.DECREASE:
        taken = one.stitches + 1 + one.inset
        return f"{verb} to last {_last(taken)}", f"{_decrease(one, verb)}{edge}"
    if one.act is Act.INCREASE:
        taken = one.inset + 1
        return f"{verb} to last {_last(taken)}", f"inc {one.stitches}{edge}"
    if one.act in (Act.BIND_OFF, Act.HOLD):
        return f"{verb} to last {_last(one.stitches)}", _at_start(one, verb)
    return f"{verb} to end", _at_start(one, verb)


def _within(one: Shaping) -> str:
    """Return a shaping inside the row."""
    count = f"{one.stitches} {_sts(one.stitches)}"
    return {
        Act.DECREASE: f"decreasing {count} evenly on the way",
        Act.INCREASE: f"increasing {count} evenly on the way",
        Act.BIND_OFF: f"binding off {count} on the way",
        Act.CAST_ON: f"casting on {count} on the way",
        Act.HOLD: f"leaving {count} on a holder on the way",
        Act.PICK_UP: f"picking up {count}",
    }[one.act]
