"""Stitches that wait, are taken up again, are divided over needles or joined into a round."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.finding import Span
from lastlook.leaflet.instruction import ONE, Hold, Needles, Resume, Rounds, Step
from lastlook.leaflet.parse.cursor import Cursor, figure
from lastlook.leaflet.trade.sizelist import Figure, read_values


def holding(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read stitches left on holders, taken up again, divided over needles, joined into a round."""
    since = cursor.pos
    back = _resume(cursor) if cursor.see(ON_NEEDLE) else None
    found = back or _hold(cursor) or _resume(cursor) or _divide(cursor)
    return replace(found, span=cursor.span(since)) if found else None


ONTO = r"(?:off )?(?:on|onto|to|upon|in)(?: to)? (?:(?:another|<1>|separate|extra|dpn|spare|needle|different|large|holders|hold|<2>|<3>|alt|one|first|each|thread|stitch|dp|strand|of|contrast|yarn|waste|left|hand|sleeve) ?)+(?:for (?:(?:later use|front neck|back neck|neck(?:band)?|front|back|hood|collar|pocket|front of neck|back of neck|thumb|sleeve|center|left|right|instep|shoulder|underarm|first|lining|border|band|second|half|alt|side) ?)+)?(?:to be (?:used|worked|k) (?:\w++ ?){1,2})?(?=[,;.(:)]| and|and|--|$|turn|leave|join|k |p |bo)"


def _hold(cursor: Cursor) -> Step | None:
    half = cursor.take(
        r"(?:and )?(?:divide|separate) (?:st|work) (?:in|into) (?:half|<2>(?: equal)?(?: parts| halves)?)(?: (?:for|at) (?:neck|v neck|front|opening))?(?: ,)?(?: and)? ?(?:sl|place|put|leave) (?:<1> |first |<1>th |one )?(?:side|half|set|st)(?: of st)? "
        + ONTO
    )
    if half:
        return Hold(None, "half")
    whole = cursor.take(
        r"(?:and )?(?:divide|leave|place|sl|put|keep|arrange)(?: (?:rem|alt|others?|st|these|instep|all))+(?: (?:evenly|equally))?"
        r"(?: (?:on|onto|to|<\d>|needle|dpn|hold|and|leave|them|place|spare|hold))* for (?:instep|front|top of foot|foot|upper)(?: (?:of foot|needle|later|use))*"
    )
    if whole:
        return Hold(None, "instep")
    match = cursor.take(
        r"(?:and )?(?:divide|leave|leaving|place|sl|put|keep) (?:rem |alt |left |<1>th |last |next )*(?P<n>{N})(?: (?:rem )?st)?(?: (?:evenly|equally|on|onto|to|<\d>|needle|dpn|hold|and|leave|them|place))* for (?:instep|front|top of foot|heel|foot|upper)(?: (?:of foot|needle|later|use))*"
    )
    if match:
        return Hold(figure(match), "instep")
    match = cursor.take(
        r"(?:and )?(?:leave|place|sl|put|keep|run|take(?= <[^>]*> st on(?:to)? (?:separate|another|extra|hold|spare)))(?: (?:these|those|rem|all|alt|the|next|rest of|balance of|left|center|front|<1>th|last))*(?: (?P<n>{N}))?(?: (?:st|rem|center|neck|shoulder|of|back|front|left|sleeve|raglan|before opening|after opening))* "
        + ONTO
    )
    if match:
        text = match.group()
        which = (
            "center" if "center" in text else "all" if " rem" in text or "these" in text or not match["n"] else "next"
        )
        if which == "all" and "next" in text:
            which = "next"
        return Hold(figure(match) if match["n"] else None, which)
    match = cursor.take(
        r"(?:and )?(?:,? ?leave )(?:the )?(?:rem |left |alt |rest of |balance of |center )?(?:(?P<n>{N}) )?(?:rem |alt )?st(?: of (?:\w++ ?){1,2})?(?: (?:unworked|on (?:hold|needle|left needle)|for (?:\w++ ?){1,3}|until later|to be worked later))?(?= [,;.(]|$| and)"
    )
    if match:
        return Hold(figure(match) if match["n"] else None, "center" if "center" in match.group() else "all")
    return None


BACK_TO = (
    r"(?:and )?(?:now )?(?:use rs (?:of work )?facing ,? ?)?(?:return|go back|come back|join|rejoin|attach|turn back)"
    r"(?: (?:in|yarn|new|ball|of|at|neck|inner|inside|center|front|armhole|edge|end|another|second|,))* (?:to|at) (?P<w>rem |alt |left |<1>th |<2>th |right |last |these |those )*"
    r"(?:set of )?(?:(?P<n>{N}) )?(?:rem |alt |left )*(?:front |neck |back |shoulder |sleeve )?st(?P<tail>(?: (?:which|that|were|was|previously|left|rem|waiting|unworked|on(?:to)?|at|for|of|from|hold|needle|neck|inner|inside|center|front|back|armhole|shoulder|heel|instep|side|edge|end|right|only|<2>th|<1>th|first|second))*)"
)
ON_NEEDLE = (
    r"(?:and )?(?:sl|place|put|take|return)(?: (?:rem|alt|left|held|these|those|<2>th|other|last|neck|front|back|set|of))*(?: (?P<n>{N}))?(?: (?:rem|left|alt|held|st|from hold|on hold|from))* "
    r"(?:back )(?:on|onto|to)(?: to)?(?: (?:no|<[^>]*>|left|left hand|larger|smaller|hand|<1>|working|same))* ?needle(?: (?:no )?<[^>]*>)?"
)


def _resume(cursor: Cursor) -> Step | None:
    match = cursor.take(BACK_TO)
    if match and (match["w"] or match["n"] or match["tail"]):
        return Resume(
            figure(match) if match["n"] else None, "first" if match["w"] in ("<1>th ", "these ", "those ") else "rem"
        )
    if match:
        cursor.pos -= len(match.group())
    match = cursor.take(ON_NEEDLE)
    if match:
        return Resume(figure(match) if match["n"] else None, "rem")
    match = cursor.take(
        r"(?:and )?(?:sl|place|put|take)(?: (?:up|back))? (?P<n>{N}) (?:(?:left|right|back|front|sleeve|thumb|instep|heel) )?st (?:from|off) (?:(?:<1>|<1>th|left|right|back|front|sleeve|st|alt|center) )*hold(?: (?:on|to|onto|back)(?: (?:to|on))?(?: (?:[a-z]+|no <\d+>|<\d+>)){0,4}? ?needle)?"
    ) or cursor.take(
        r"(?:and )?(?:sl|place|put|take) (?P<n>{N}) (?:thumb|instep|heel|held|sole) st (?:on|onto|to) (?:<[234]> )?(?:dpn|needle)"
    )
    if match:
        return Resume(figure(match), "rem")
    match = cursor.take(
        r"(?:turn ,? ?)?(?:and )?work (?:back and (?:forth|fwd) )?(?:on|over) (?:these |heel |sole )?(?P<n>{N}) st(?: of (?:back|front|heel|sleeve))?(?: only)?(?= [,;.:]|$)"
    )
    if match:
        return Resume(figure(match), "first")
    if cursor.take(r"(?:and )?(?:cont |work )(?:on )?(?:<1>th|first) set of st"):
        return Resume(None, "first")
    match = cursor.take(
        r"(?:and )?(?:use rs (?:of work )?facing ,? ?)?(?:join|rejoin|attach|return|sl|place|take|cont|work|go back|with|now work|for|to|pu)(?: (?:in|on|back|to|with|at|yarn|up|onto|work|cont|,|alt|first|and|neck edge|inner end|inside|center|edge|end|of|<\d> needle|needle|no <\d+>|larger|smaller|hold|next|start|beg|ws|rs|facing|pick|new|ball|another|same))* (?:the )?(?P<w>rem|alt|left|first|<1>th|<2>th|last|these|those|held|hold)(?: (?P<n>{N}))?(?: (?P<m>{N}))? st(?: (?:left|only|on needle|for (?:\w++ ?){1,3}(?=[,;.:])|of (?:\w++ ?){1,3}(?=[,;.:])|from hold|on hold|from (?:front|back) hold|again|onto needle|to needle|on(?:to)? (?:no <\d+> )?needle|to correspond|held))*(?! (?:k|p|in|even|as|every|until|of|for))"
    )
    if match:
        which = "first" if match["w"] in ("first", "<1>th", "these", "those") else "rem"
        n = figure(match) if match["n"] else None
        return Resume(n, which)
    if cursor.take(
        r"(?:pu|take) (?:the )?(?:rem |held )?st (?:from|off|on) (?:alt|hold|<2>th)(?: needle)?(?= ?[,;.]|$)"
    ):
        return Resume(None, "rem")
    begun = cursor.take(
        r"(?:and )?(?:beg|work|cont) (?:front|back|shoulder|side|sleeve) on (?:rem|these|alt|first) (?P<n>{N})? ?st"
    )
    if begun:
        return Resume(figure(begun) if begun["n"] else None, "rem")
    match = cursor.take(
        r"(?:on|over)(?: (?:these|those|first|<1>th|<2>th|last|rem|set|of|group|each))+ (?P<n>{N}) st(?: only)?(?: ,)?(?= (?:dec|work|k|cont|inc|bo|p|rib)\b)"
    )
    if match:
        return Resume(figure(match), "first")
    match = cursor.take(
        r"(?:cont|work)(?: (?:in|on|patt|stst|garter|even|over|across|for))* (?:(?:<1>th|first|these|last|those) )?(?P<n>{N})? ?st (?:only|for (?:first |<1>th )?(?:left|right|<1>th|<2>th|one)(?: (?:side|shoulder|front|half|back|of|neck))*)"
    )
    if match:
        return Resume(figure(match) if match["n"] else None, "first")
    if cursor.take(
        r"(?:join|rejoin|attach)(?: (?:yarn|in|new|ball|of|skein|another|alt))* (?:at|to) (?:neck|inner|center|inside|armhole|side|front|inner neck)(?: (?:edge|end|st|front))*(?: of (?:rem|alt|left|<2>th|right|hold)(?: (?:st|side|<1>th|shoulder|front|needle))*)?"
    ):
        return Resume(None, "rem")
    return None


NEEDLES = (
    r"(?:and )?(?:divide|arrange|place|distribute|having|sl)(?: (?:rest of|alt|st|these|them|rem|all|them|having|{N}|evenly|equally|on|onto|into))* "
    r"(?:on(?: to)?|onto|over|between|equally on) (?:alt )?(?:<[234]> |three |four )(?:dpn |dp )?needle(?: (?:no <\d+>|evenly|equally))*"
)
LEAD = r"(?:,|and|, and|--|\(|having|there are|there should be|you having|you should having|you must having|:|;)"
SHARE = (
    rf"(?:{LEAD} ){{0,6}}(?P<n>{{N}})(?: st)? (?:on|in) "
    r"(?:(?:<\d>th|first|each of next|each|alt|last|<2>|<3>|<1>|heel|instep|front|back) ?)+(?:of (?:alt|rem|<2>) )?(?:needle)?(?: \))?"
)
SHARES_BEGIN = (
    r"(?:there (?:are|is|be|should be) |having |you (?:should |must |will )?having )?{N}(?: st)? on (?:<1>th|first) (?:needle)?",
    r"\( {N}(?: st)? on (?:<1>th|first|each|<1>)\b",
    r"{N}(?: st)? on (?:each of )?<[12]>(?: needle)? (?:,|and) {N}(?: st)? on (?:<[12]>|alt|<\d>th)",
    r"{N} on each needle",
)


def _divide(cursor: Cursor) -> Step | None:
    each = cursor.take(
        r"(?:namely |viz |having |that is |,|\( ){0,6}(?P<n>{N})(?: st)? on each of (?P<m>{N})(?: [a-z]+)? needle(?: \))?"
    )
    if each:
        return Needles((figure(each) or ONE,) * min(6, (figure(each, "m") or ONE).whole(0)))
    listed = _bare_list(cursor)
    if listed:
        return listed
    match = cursor.take(NEEDLES)
    if match or any(cursor.see(pattern) for pattern in SHARES_BEGIN):
        parts, spans = _shares(cursor, match.group() if match else "")
        if match or len(parts) > 1:
            return Needles(parts, spans)
        return None
    return _joined(cursor)


def _bare_list(cursor: Cursor) -> Step | None:
    """Read '(20, 24, 20)' after the needles that the stitches lie on."""
    if not re.search(r"needle(?: (?:[(:,]|--))? $", cursor.text[max(0, cursor.pos - 24) : cursor.pos]):
        return None
    match = cursor.take(
        r"(?:\(|:|,|--)? ?(?P<all>{N}(?: ?[-,.&/]? ?(?:and )?{N}){2,3})(?: st)?(?: \.)?(?: \)|(?= [,.;]))"
    )
    return Needles(tuple(read_values(one) for one in re.findall(r"<[^>]*>", match["all"]))) if match else None


def _shares(cursor: Cursor, told: str) -> tuple[tuple[Figure, ...], tuple[Span, ...]]:
    """Read how many stitches lie on each needle."""
    parts: list[Figure] = []
    spans: list[Span] = []
    while part := cursor.take(SHARE):
        often = 2 if re.search(r"on (?:each of )?(?:alt |rem )?<2>(?!th)|of (?:alt|rem) <2>(?!th)", part.group()) else 1
        parts += [figure(part) or ONE] * often
        spans += [cursor.canon.span(part.start("n"), cursor.pos - 1)] * often
    if len(parts) == 1 and re.search(r"<[\d|]+>(?: st)? on each", cursor.text[max(0, cursor.pos - 40) : cursor.pos]):
        many = re.search(r"<([34])> (?:dpn |dp )?needle", told)
        parts = parts * (int(many.group(1)) if many else 3)
        spans = spans * len(parts)
    each = cursor.take(r"\( (?P<n>{N})(?: st)? (?:on )?each(?: needle)? \)")
    return ((figure(each) or ONE,) * 3, ()) if each else (tuple(parts), tuple(spans))


def _joined(cursor: Cursor) -> Step | None:
    match = cursor.take(
        r"(?:and )?(?:join|taking care|being careful|form|work)(?: (?:in|into|to|a|rnd|st|ends|work|needle|for|circle|and|,|be|being|careful|care|taking|not|twist|twisting|it|on|is|that|st|are|carefully|together))* (?:rnd|twist(?:ed|ing)?(?: (?:st|it|work))?|circle|work)(?=[ ,;.]|$)"
    )
    if match and ("twist" in match.group() or "rnd" in match.group() or "circle" in match.group()):
        return Rounds()
    if match:
        cursor.pos -= len(match.group())
    return None
