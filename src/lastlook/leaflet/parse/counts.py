"""Counts that are printed: totals after a step, on one needle, on each side, or a number of rows."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.leaflet.instruction import ONE, Printed, Step
from lastlook.leaflet.parse.cursor import Cursor, figure

AFTER = (
    r"(?: (?:on (?:(?:each|<\d+>th|heel|left|right|hand|all|your|spare|<\d>|your) )*needle(?: in-all)?|on (?:heel|instep|needle|hold|each side|each shoulder|each|each front)|"
    r"in-all|{LEFT}|now|for (?:each|both|all|every) (?:side|size|shoulder|front)s?|each side(?: of (?:\w++ ?){1,2})?|for [a-z]+(?: [a-z]+){0,2}(?= [,;.)]|$)|at end of (?:last |this )?row|altogether|total|"
    r"each shoulder|dec|inc|in (?:each|row|rnd|this row)|having been dec|at top|on both sides|between [a-z]+(?: [a-z]+){0,2}(?= [,;.)]|$)|on row|over|bo))*"
)


def printed(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read a printed count."""
    since = cursor.pos
    found = _bracketed(cursor) or _said(cursor) or _dashed(cursor, before)
    if found is None:
        cursor.pos = since
        return None
    return replace(found, span=cursor.span(since))


def _bracketed(cursor: Cursor) -> Printed | None:
    match = cursor.take(
        r"(?:,|--|\.|:)? ?\( (?:there (?:are|is|be) |you (?:should )?(?:now )?having |having |leave |= |total |making |about |these |this is |this leave )*(?P<n>{N}) (?P<w>st|row|rnd|sc|dc|loops)(?: (?:now|are))?"
        + AFTER
        + r" ?\.? ?\)"
    )
    if match is None:
        return None
    return _of(match.group(), Printed(figure(match) or ONE))


def before_stop(cursor: Cursor) -> bool:
    """Whether a clause begins here."""
    return cursor.pos == 0 or cursor.text[max(0, cursor.pos - 3) : cursor.pos].endswith((". ", "; ", "-- ", ", "))


def _said(cursor: Cursor) -> Printed | None:
    match = cursor.take(
        r"(?:at end of (?:<[^>]*>th |this |last )?(?:row|rnd) ?,? ?)?(?:and |when |until |so that |that )?(?:there (?:(?:should|still|only|will|must|are|is|be|ought to|now|having) ?)+|you (?:(?:should|will|must|ought to|now|having|have|to) ?)+|(?:this |which |that )?(?:leave(?! (?:rem |alt |last )?<[^>]*> (?:rem )?st (?:on hold|on needle|for|unworked))|leaves|giving|gives|makes|making|having)(?: (?:you|now))?) ?"
        r"(?P<n>{N})(?: (?P<w>st|row|rnd|loops|sc|patt))?" + AFTER + r"(?=(?: [,;.()]| and|--| --|$))"
    )  # fmt: skip
    if match is not None and cursor.see(r",? ?(?:and )?{N}(?: st)? on <\d>th"):
        return None
    if match is None:
        alone = (
            cursor.take(r"(?P<n>{N}) st (?:{LEFT}|now)(?: on (?:heel )?needle)?(?=(?: [,;.)]| --|$))")
            if before_stop(cursor)
            else None
        )
        if alone is not None:
            return Printed(figure(alone) or ONE)
        left = cursor.take(
            r"when (?P<n>{N}) st (?:(?:should|will|must|ought to|are|be) ?)*{LEFT}?(?: (?:on needle|in-all))?(?=(?: [,;.()]| --|$))"
        )
        return Printed(figure(left) or ONE) if left else None
    told = re.match(
        r"(?:at end of (?:\S+ )?(?:row|rnd) ?,? ?)?(?:and |when |until |so that |that )?(?:this |which |that )?(?:leave|giv|mak)",
        match.group(),
    )
    if (
        match["w"] is None
        and not told
        and not match.group().startswith("when there will be")
        and not any(word in match.group() for word in ("needle", "left", "rem", "in-all"))
    ):
        return None
    return _of(match.group(), Printed(figure(match) or ONE))


def _dashed(cursor: Cursor, before: list[Step]) -> Printed | None:
    match = cursor.take(r"(?P<n>{N}) (?P<w>st|row|rnd|sc|dc)" + AFTER + r"(?=(?: [,;.()]| --| and|$))")
    if match is None or not before:
        return None
    return _of(match.group(), Printed(figure(match) or ONE))


def _of(text: str, found: Printed) -> Printed:
    if re.match(r"[^<]*<[^>]*> (?:row|rnd)", text):
        return replace(found, of="rows")
    if "dec" in text or "inc" in text.replace("inch", "") or "bo" in text.split():
        return replace(found, of="difference")
    if "each side" in text or "each shoulder" in text or "each front" in text or "both sides" in text:
        return replace(found, of="each side")
    if "heel" in text or "instep" in text or "hold" in text or "between" in text:
        return replace(found, of="part")
    if "th needle" in text or "on <" in text or "each needle" in text or "on each" in text:
        return replace(found, of="needle")
    return found
