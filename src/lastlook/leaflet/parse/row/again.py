"""Rows that are worked again: repeated, taken from another piece, or with one stitch more or less each time."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.leaflet.instruction import (
    Ending,
    Figure,
    Goal,
    Progress,
    RepeatRows,
    RowOf,
    Step,
)
from lastlook.leaflet.parse.cursor import Cursor, figure
from lastlook.leaflet.parse.lengths import ending, goal
from lastlook.leaflet.parse.row.labels import MANY, numbered_list


def _rep_them(cursor: Cursor, before: list[Step]) -> Step | None:
    """'These 12 rows form one wedge. Repeat them 9 times more.'"""
    since = cursor.pos
    if not cursor.take(r"(?:and )?rep (?:them|these|it|whole)(?= <[^>]*> (?:x|more))"):
        return None
    told = next((step for step in reversed(before[-4:]) if isinstance(step, RepeatRows) and step.pattern), None)
    return _how_often(cursor, RepeatRows(told.last if told else None, rows=told.rows if told else ()), since)


def repeats(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read 'repeat last 2 rows until 30 remain', 'repeat these 8 rows for pattern', 'work the 2 raglan rows of back'."""
    if cursor.see(r"(?:work |k )?<1>th row (?:into|in) back of"):
        return None
    them = _rep_them(cursor, before)
    if them is not None:
        return them
    since = cursor.pos
    thruout = cursor.take(r"<(?P<r>\d)>th row is rep(?: thruout| all through| throughout)?(?: for patt)?")
    if thruout:
        return RepeatRows(rows=(int(thruout["r"]),), pattern=True, span=cursor.span(since))
    needled = any(isinstance(step, RowOf) and step.label and step.label.needle for step in before[-6:])
    again = (
        cursor.take(
            r"(?:and )?(?:cont )?(?:to )?(?:dec|narrow|inc) in (?:this|same) (?:manner|way) (?:on |in )?every (?P<o>alt|<\d>th|<\d>)? ?(?:row|rnd)(?= until)"
        )
        if needled
        else None
    )
    if again:
        every = 2.0 if again["o"] == "alt" else float((again["o"] or "<1>").strip("<>th"))
        return _how_often(cursor, RepeatRows(Figure((every,))), since)
    match = cursor.take(
        r"(?:and )?(?:cont (?:to )?)?(?:work )?(?:rep|cont rep|work|alt|k(?= (?:these|those|last|above))|cont)(?: (?:in|to|by|of))?(?: (?:this|these|those|them|last|foll|above|<1>th|first|previous|both|all|same|rep))* (?:(?P<n>{N}) )?(?:(?:raglan|patt|dec|inc|shape|last|rib|lace|cable) )*(?P<w>row|rnd)(?! (?:<[^>]*>(?! (?:more )?x)|of (?:back|front)|and (?:p|k|plain|next|foll|even) (?:row|rnd)))"
    )  # fmt: skip
    if match and (
        "rep" in match.group() or "these" in match.group() or "last" in match.group() or "alt" in match.group()
    ):
        one = match["n"] is None
        last = (
            figure(match)
            if not one
            else (Figure((1.0,)) if re.search(r"(this|last) (?:\w+ )?(?:row|rnd)", match.group()) else None)
        )
        return _how_often(cursor, RepeatRows(last), since)
    if match:
        cursor.pos = since
    match = cursor.take(
        r"(?:and )?(?:rep|work|cont from|cont rep)(?: (?:from|in|and|including|back|to))* (?:(?:row|rnd)s? (?P<m>"
        + MANY
        + r")(?: (?:inclusive|incl|of patt|in patt))*(?: of (?P<p>back|front|left front|right front|sleeve))?|(?P<m2>"
        + MANY
        + r") (?:row|rnd)s?(?: inclusive)?(?: of (?:rib )?patt)?(?: alt)?|(?:from )?(?P<m3>"
        + MANY
        + r")(?: (?:row|rnd)s?)(?: inclusive)?)"
    )
    if match:
        numbers = numbered_list(match["m"] or match["m2"] or match["m3"])
        return _how_often(cursor, RepeatRows(None, rows=numbers, piece=match.groupdict().get("p") or ""), since)
    match = cursor.take(
        r"(?:and )?(?:work|rep)(?: <2>)?(?: last)? (?P<s>dec|raglan|inc|shape) (?:row|rnd) and (?:p|k|plain|next|foll|even) (?:row|rnd)(?: (?:of|as on|on|for|same as on) (?P<p>back|front|left front|sleeve))?"
    )
    if match:
        return _how_often(
            cursor, RepeatRows(Figure((2.0,)), piece=match["p"] or "", section="raglan" if match["p"] else ""), since
        )
    match = cursor.take(
        r"(?:and )?(?:these |above |last |foll )+(?P<n>{N}) (?:row|rnd) (?:form|make|complete|are|comprise|constitute)s?(?: (?:[a-z]+|<1>)){1,3}(?= [.;,]|$)"
    )
    if match:
        return RepeatRows(figure(match), pattern=True, span=cursor.span(since))
    match = cursor.take(
        r"(?:and )?(?:work|rep|use)(?: (?:in|as))?(?: (?:the|same))* (?:(?P<n>{N}) )?(?P<s>raglan|dec|shape|inc|patt)? ?row (?:of|as|on|for|same as)(?: (?:on|for))? (?P<p>back|front|left front|sleeve)"
    )
    if match:
        found = RepeatRows(figure(match) if match["n"] else None, piece=match["p"], section=match["s"] or "raglan")
        return _how_often(cursor, found, since)
    cursor.pos = since
    return None


def _how_often(cursor: Cursor, found: RepeatRows, since: int) -> Step:
    for _ in range(5):
        spot = cursor.pos
        cursor.take(r",|for|and(?= until)") if not cursor.see(r"for (?:{N}|about)") else None
        if cursor.take(
            r"(?:for |to form |form |forms? |makes? |is )?(?:the )?patt(?:ern)?(?: (?:st|until|thruout|throughout))?(?= |$)"
        ) and not cursor.see(r"row"):
            found = replace(found, pattern=True)
            if cursor.text[: cursor.pos].rstrip().endswith("until"):
                cursor.pos -= len("until ")
            continue
        if cursor.take(
            r"alt|in (?:this|same|order|patt|rib|sequence|turn)(?: (?:way|manner|order))?|in order|inclusive|asbefore|thruout|all the way"
        ):
            continue
        match = cursor.take(
            r"(?:for )?(?P<n>{N}) (?:x more|more x|further x|x altogether|x in-all|x)(?: (?:more|in-all))?"
        )
        if match:
            text = match.group()
            count = (
                "more"
                if "more" in text or "further" in text
                else "in all"
                if "in-all" in text or "altogether" in text
                else "unclear"
            )
            found = replace(found, goal=Goal(times=figure(match), count=count))
            continue
        far = goal(cursor)
        if far is not None:
            extra = cursor.take(r"and (?P<n>{N}) st on <\d>th needle") if far.until_what else None
            del extra
            found = replace(found, goal=far)
            continue
        last = ending(cursor)
        if last is not None:
            found = replace(found, ending=last)
            continue
        cursor.pos = spot
        break
    grown = cursor.take(
        r", (?:k|work|p|having|with|use) (?P<n>{N})(?: ,? ?(?:and )?{N})*(?: st)? (?:between|before|after) (?:[a-z]++ ?){1,3}(?:instead|in place) of (?P<o>{N})"
    )
    if grown:
        change = (figure(grown) or Figure((2.0,))).whole(0) - (figure(grown, "o") or Figure((0.0,))).whole(0)
        return Progress(change, found.goal, found.last, span=cursor.span(since))
    return replace(found, span=cursor.span(since))


def progress(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read 'continue in this manner, having 1 more st before dec on each row, until all sts have been worked'."""
    since = cursor.pos
    match = cursor.take(
        r"(?:and )?cont (?:to )?(?:dec|inc)(?: <[^>]*>)?(?: st)?(?: in (?:this|same) (?:manner|way)| asbefore)?(?= (?:in |on )?(?:every|each|next and every)| ,)"
    ) or cursor.take(
        r"(?:and )?(?:(?:cont|work|proceed|rep|so on|and so on|keep on|go on)(?: (?:in|to|on|dec|inc|rep|work|as|these|row|<\d>))* ?(?:(?:in|as) (?:this|same|that)(?: (?:manner|way))?|thus|asbefore|dec|so|in foll)|and on|in this (?:manner|way)|so on|cont to dec|cont dec|cont(?: use)? (?:k|plain) and inc row|cont inc and (?:k|plain) row|cont(?= ,? ?(?:use|having) {N} (?:st )?(?:less|more|fewer))|cont to inc(?: {N} st)?(?: by yo)?(?= every| in| on| ,))"
    )
    if match is None:
        return None
    change, found, every, last = 0, Goal(), None, Ending()
    for _ in range(8):
        cursor.take(r",|;|and|:")
        more = cursor.take(
            r"(?:work|having|k|with|use|always|p|making|taking|allow|there being)* ?(?:always )?(?P<n>{N}) (?:st )?(?P<d>more|less|fewer|extra)(?: st)?(?: (?:st|between|before|after|each|every|x|dec|inc|narrow|widen|row|rnd|on|in|of|at|the|end|side|k|group|time|alt|gap|turn|point))*"
        )
        if more:
            change = (1 if more["d"] in ("more", "extra") else -1) * (figure(more) or Figure((1.0,))).whole(0)
            told = re.search(r"(?:every|each) (?P<o>alt|foll alt|<\d+>th) (?:row|rnd)", more.group())
            if told and every is None:
                every = Figure((float(told["o"].strip("<>th")) if told["o"][:1] == "<" else 2.0,))
            continue
        cadence = cursor.take(
            r"(?:on |in )?(?:next and )?(?:every|each) (?:foll )?(?P<o>alt|foll alt|<\d>th)? ?(?:row|rnd)"
        )
        if cadence:
            order = cadence["o"] or ""
            every = Figure((float(order.strip("<>th")) if order[:1] == "<" else 2.0 if order else 1.0,))
            continue
        if cursor.take(
            r"until all (?:the )?(?:side |heel )?st(?: (?:on|at|of) (?:\w++ ?){1,3}?)? (?:(?:having|have|are|been|has|is) ?)*(?:work|k|used|taken|taken in)(?: (?:in|off|up))?(?: on(?: to)? <1> (?:row|needle))?"
        ):
            found = Goal(until_what="all")
            continue
        if cursor.take(
            r"(?:work|k) (?:toward|towards|from) [a-z]+|(?:<[^>]*> )?st (?:each x )?in (?:this|same) (?:way|manner)"
        ):
            continue
        if cursor.take(r"(?:dec|inc) (?:<1> st )?(?:in this (?:way|manner) )?"):
            continue
        far = goal(cursor)
        if far is not None:
            found = far
            continue
        end = ending(cursor)
        if end is not None:
            last = end
            continue
        break
    if not change and found.until is None and found.until_what != "all":
        cursor.pos = since
        return None
    return Progress(change, found, every, last, span=cursor.span(since))
