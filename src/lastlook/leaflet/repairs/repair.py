"""Repairs of text that came from a picture: lost spaces, and signs that look alike, by the trade's own words.

A *repair* changes how something is written, never how much it is: figures that were read as figures stay as they are.
Where a letter can only stand for a figure (`Kl` for `K1`, `l2` for `12`), the repair says that it makes a number, so
that it is looked at with the doubtful figures.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass, replace

from lastlook.finding import Span
from lastlook.leaflet.repairs.words import allowed, confused, split, understands


@dataclass(frozen=True)
class Repair:
    """One change: where it stands, what was there, what is there now, and why."""

    span: Span
    was: str
    now: str
    why: str
    makes_number: bool = False


@dataclass(frozen=True)
class Repaired:
    """The text with its repairs made; `repairs` have their spans in the text as it was given."""

    text: str
    repairs: tuple[Repair, ...]

    def moved(self, offset: int) -> int:
        """Return where an offset of the given text lies in the repaired one."""
        shift = 0
        for one in self.repairs:
            if one.span.end <= offset:
                shift += len(one.now) - len(one.was)
            elif one.span.start < offset:
                return min(offset, one.span.start + len(one.now)) + shift
        return offset + shift

    def in_place(self) -> tuple[Repair, ...]:
        """Return the repairs with their spans in the repaired text."""
        starts = [(one, self.moved(one.span.start)) for one in self.repairs]
        return tuple(replace(one, span=Span(start, start + len(one.now))) for one, start in starts)


_CHUNK = re.compile(r"\S+")
_BROKEN_BEFORE, _BROKEN_AFTER = re.compile(r"-[ ]*\n[ ]*$"), re.compile(r"-[ ]*\n")
"""The halves of a word that the end of a line broke; the reader joins them."""
_CORE = re.compile(r"^([(\[{*\"'“‘]*)(.*?)([)\]},;:.!?\"'”’*—–-]*)$", re.S)
_STITCH_ONE = re.compile(r"(?<![A-Za-z0-9])([KkPp]|[Ss]l|[Mm])(\.?)[Il|](?=$|[,;.:)\]*])")
_MIXED_FIGURE = re.compile(r"^(?=.*\d)[\dOoIl|]+((?:st|nd|rd|th)?)$")
_COUNTED = re.compile(
    r"\s*(?:more\s+)?(?:sts?|stitch(?:es)?|rows?|rnds?|rounds?|inch(?:es)?|ins?|tog|times?|balls?|oz|ozs|skeins?|"
    r"pairs?|buttons?|cm|each|at)\b",
    re.I,
)
_AFTER_STITCH = re.compile(
    r"(?:^|[\s,(*])(?:[KkPp]|[Ss]l|[Ii]nc|[Dd]ec|[Mm]ake|[Pp]url|[Kk]nit|[Ss]lip|[Rr]ows?|[Rr](?:ou)?nds?|N[o0]s?)\.?\s*$"
)
_FRACTION_HALF = re.compile(r"^[Il|]/([248])$")
_LOST_STOP = re.compile(r"(?<=[a-z]{2})([.;:!?])(?=[A-Z])|(?<=[a-z]{3}),(?=[A-Za-z]{3})|(?<=[a-z]{2}):(?=\d)")
_LONG_DASH = re.compile(r"^([(*]*[A-Za-z]{3,}[.,]?)-(\d+)(?=$|[,.;:)])")
_STUCK_FIGURE = re.compile(r"^([A-Za-z]{2,})(\d+[½¼¾]?)$")
_STUCK_WORD = re.compile(r"^(\d+[½¼¾]?)([A-Za-z]{2,})$")
_ROOMY = re.compile(r"([：；，。！、])(?=[A-Za-z\d(（])|(?<=[A-Za-z\d])(（)")
_ALIKE = str.maketrans({"。": ".", "、": ",", "＊": "*"})


def repair(text: str, may_be: Mapping[int, str] | None = None) -> Repaired:
    """Return the text with what the trade's words can put right.

    `may_be` holds, for an offset, the letters that the picture shows less likely there, the likeliest first.

    >>> repair("KI, pl, slipamarker; l2 mds.").text
    'K1, p1, slip a marker; 12 rnds.'
    """
    found: list[Repair] = []
    for match in _CHUNK.finditer(text):
        start, end = match.span()
        if _BROKEN_BEFORE.search(text[max(0, start - 4) : start]) or _BROKEN_AFTER.match(text, end - 1):
            continue
        now, whys, number = _mended(match.group(), _as_words(text[max(0, start - 24) : start]), _following(text, end))
        if now == match.group() and may_be:
            now, whys = _seen_otherwise(match.group(), [may_be.get(spot, "") for spot in range(*match.span())])
        if now != match.group():
            found.append(Repair(Span(match.start(), match.end()), match.group(), now, "; ".join(whys), number))
    out, spot = [], 0
    for one in found:
        out += [text[spot : one.span.start], one.now]
        spot = one.span.end
    return Repaired("".join([*out, text[spot:]]), tuple(found))


def _following(text: str, end: int) -> str:
    """Return the next two words after an offset as they will stand once repaired."""
    return _as_words(" ".join(["", *text[end : end + 60].split()[:2]]) if text[end : end + 1].strip() == "" else "")


def _as_words(text: str) -> str:
    return " ".join(_word(part)[0] for part in text.split(" "))


def _mended(chunk: str, before: str, after: str) -> tuple[str, list[str], bool]:
    """Return the chunk as it should stand, the reasons, and whether a number was made."""
    whys: list[str] = []
    plain = _narrow(chunk)
    if plain != chunk:
        whys.append("a wide sign of print for a narrow one")
    dashed = _LONG_DASH.sub(r"\1--\2", plain)
    if dashed != plain:
        whys.append("a long dash before a count")
    parts = _spaced(dashed)
    if parts != dashed:
        whys.append("a space was lost after a stop")
    number = False
    out = []
    words = parts.split(" ")
    for spot, part in enumerate(words):
        left = " ".join([before, *words[:spot]]) + " " if spot else before
        right = "".join(" " + word for word in words[spot + 1 :]) + after
        now, why, makes = _figure(part, left, right)
        if not why:
            now, why = _word(part)
        out.append(now)
        whys += [why] if why else []
        number = number or makes
    return " ".join(out), whys, number


def _seen_otherwise(chunk: str, may_be: list[str]) -> tuple[str, list[str]]:
    """Take an unknown word for a known one that its picture allows; words with figures in them are left alone."""
    head, core, tail = _CORE.match(chunk).groups()  # type: ignore[union-attr]
    if not core.replace("ç", "c").isalpha() or understands(core):
        return chunk, []
    made = allowed(core, may_be[len(head) : len(head) + len(core)])
    return (f"{head}{made}{tail}", ["the picture allows it, and the trade knows it"]) if made else (chunk, [])


def _narrow(chunk: str) -> str:
    """Set wide signs, which hold their space in themselves, as narrow ones with a space."""
    roomy = _ROOMY.sub(lambda match: f"{match.group(1)} " if match.group(1) else " (", chunk)
    return "".join(
        unicodedata.normalize("NFKC", sign.translate(_ALIKE)) if unicodedata.east_asian_width(sign) in "FW" else sign
        for sign in roomy
    )


def _spaced(chunk: str) -> str:
    return _LOST_STOP.sub(lambda match: f"{match.group()} ", chunk)


def _figure(part: str, before: str, after: str) -> tuple[str, str, bool]:
    """Put right a letter that can only be a figure: `KI`, `l2`, `dec l st`."""
    first = _STITCH_ONE.sub(r"\g<1>\g<2>1", part)
    if first != part:
        return first, "a letter where the stitch's count stands", True
    head, core, tail = _CORE.match(part).groups()  # type: ignore[union-attr]
    mixed = _MIXED_FIGURE.match(core)
    if mixed and not core.isdigit() and not re.fullmatch(r"\d+(st|nd|rd|th)", core):
        ending = mixed.group(1)
        digits = core.removesuffix(ending) if ending else core
        made = digits.translate(str.maketrans("OoIl|", "00111"))
        return f"{head}{made}{ending}{tail}", "a letter among figures", True
    ones = len(core) if core and set(core) <= set("lI|") and len(core) <= 3 else 0
    if ones and (_COUNTED.match(after) or (ones == 1 and _AFTER_STITCH.search(before))):
        return f"{head}{'1' * ones}{tail}", "a letter where a count stands", True
    half = _FRACTION_HALF.match(core)
    if half:
        return f"{head}1/{half.group(1)}{tail}", "a letter in a fraction", True
    return part, "", False


def _word(part: str) -> tuple[str, str]:
    """Put right a word that the trade does not know and one change makes known."""
    head, core, tail = _CORE.match(part).groups()  # type: ignore[union-attr]
    if not core or understands(core):
        return part, ""
    stuck = _STUCK_FIGURE.match(core) or _STUCK_WORD.match(core)
    if stuck:
        letters = next(one for one in stuck.groups() if one.isalpha())
        if understands(letters) and letters.lower() not in _BOUND_TO_FIGURES:
            return f"{head}{stuck.group(1)} {stuck.group(2)}{tail}", "a space was lost beside a figure"
        return part, ""
    alike = confused(core)
    if alike is not None:
        return f"{head}{alike}{tail}", "signs that look alike"
    if core.isalpha():
        apart = split(core)
        if apart is not None:
            return f"{head}{apart}{tail}", "a space was lost"
    return part, ""


_BOUND_TO_FIGURES = frozenset({"sl", "tog", "st", "nd", "rd", "th", "yo", "kfb", "tw", "inc", "dec", "cm", "mm", "oz"})
"""Letters that stand close beside a figure by custom: `sl1`, `k2tog`, `2nd`, `10cm`."""
