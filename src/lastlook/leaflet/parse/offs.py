"""Casting on, binding off, and how pieces end."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.finding import Span
from lastlook.leaflet.instruction import (
    ONE,
    BindOffs,
    Cadence,
    CastOn,
    Finish,
    Goal,
    Hold,
    Needles,
    Nothing,
    Resume,
    Rounds,
    Step,
)
from lastlook.leaflet.parse.cursor import Cursor, figure
from lastlook.leaflet.sizelist import Figure

HOW = r"(?: (?:in|on|as) (?:rib|patt|k|p|ws|rs|k row|p row|knit|each st|foll|moss|garter|next row)(?: \w+)?| ways|knitways| purlways| even| right across| all across)*"
BEG = r"(?:at |on |from )?(?:(?:the )?beg of |beg |every )(?:each of |every )?(?:the )?"
EDGE = r"(?:at )?(?:each |both |every )?(?P<e>neck|front|center front|center|armhole|side|raglan|same|this|that|shoulder|inner|outer|sleeve|underarm|lower|shaped|alt)(?: (?:front|neck|armhole|side))? edge(?: of (?:each|both) (?:side|front))?"


def offs(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read one sort of casting on, binding off or ending."""
    since = cursor.pos
    found = (
        _cast_on(cursor, before) or _at_edge(cursor) or _bind_off(cursor) or _more(cursor, before) or _finish(cursor)
    )
    return replace(found, span=cursor.span(since)) if found else None


def _cast_on(cursor: Cursor, before: list[Step]) -> Step | None:
    since = cursor.pos
    lead = cursor.take(
        r"(?:and )?at (?P<e>end|beg) of (?:last|next|this|same|each|foll|each of next)? ?(?P<m>{N})? ?row ,? ?co (?P<n>{N})(?: st)?(?: for [a-z]+(?=[ ,;.]))?"
    )
    if lead:
        return CastOn(figure(lead) or ONE, rows=None if lead["m"] is None else figure(lead, "m"), edge=lead["e"])
    match = cursor.take(
        r"(?:(?:use|on|with) (?:(?!co )(?:\w++|<[^>]*>|,) ){1,16}?)?(?:and )?(?:co|set up)(?: on)?(?: each)? (?P<n>{N})(?: (?:st|ch))?(?: (?:on (?:each|every|one|<\d+>) (?:of )?(?:<\d+> )?needle|use \w+ (?:yarn|no <\d+> needle)|in (?:mc|cc|color)))?"
    )
    if match is None:
        again = cursor.take(r"(?:make|with|on|ch|work) (?P<n>{N}) (?:ch|st) (?:for )?(?:foundation|on needle)")
        return CastOn(figure(again) or ONE) if again else None
    n = figure(match) or ONE
    rows = cursor.take(r"(?:st )?" + BEG + r"(?:next|foll) (?P<n>{N})? ?(?:row|rnd)")
    if rows:
        return CastOn(n, rows=figure(rows) or ONE, edge="beg")
    edge = cursor.take(
        r"(?:st )?"
        + EDGE
        + r" (?:on |in )?(?:next row and every|next and every|every) (?:foll )?(?:alt |<2>th )?row (?:until|to) (?:there are )?(?P<n>{N})(?: st)?(?: on needle)?"
    )
    if edge:
        return CastOn(n, edge=edge["e"], until=figure(edge))
    ends = cursor.take(
        r"(?:st )?at (?P<e>end|beg|both end|each end|each side)(?: of (?P<w>next|each|every|this|row|same)(?: of)?(?: next| foll)?(?: (?P<m>{N}))?(?: row)?)?"
    )
    if ends:
        far = cursor.take(r"until (?:there are )?(?P<n>{N})(?: st)?(?: on needle)?")
        count = figure(ends, "m") if ends["m"] else ONE
        return CastOn(n, rows=count, edge=ends["e"], until=figure(far) if far else None)
    if (
        cursor.see(r",? ?(?:k|p|work|rib) ")
        and "use" not in match.group()
        and any(not isinstance(step, Nothing) for step in before)
        and cursor.see(r", (?:k|p|work) (?:to end|{N} |across|rem)")
    ):
        cursor.pos = since
        return None
    cursor.take(
        r"for (?:(?:left |right )?(?:underarm|sleeve|neck|border|front|back|thumb|buttonhole|shoulder|armhole|cuff|hem|body|bottom|facing|one side|lower edge)(?: edge)?)(?: of \w+)?|in place of (?:those|st) bo|over (?:bo|those bo|buttonhole|these)(?: st)?"
    )
    return CastOn(n)


def _at_edge(cursor: Cursor) -> Step | None:
    """Read 'at arm edge bind off 4 sts, k to end'."""
    since = cursor.pos
    cursor.take(r"(?:and )?(?:cont to |next row|on next row)(?: ,| :)?")
    match = cursor.take(r"(?:on next row |in next row |and )?" + EDGE + r" ?,? bo (?P<n>{N})(?: st)?")
    if match is None:
        cursor.pos = since
        return None
    both = "each" in match.group() or "both" in match.group()
    found = BindOffs(figure(match) or ONE, edge=match["e"], both=both)
    times = cursor.take(r"(?P<n>{N}) x(?: more)?") or cursor.take(r"every (?P<o>alt) row (?P<n>{N}) x")
    if times:
        found = replace(found, times=figure(times))
    elif cursor.take(r"on (?:next|this) row"):
        pass
    _to_end(cursor)
    return found


def _to_end(cursor: Cursor) -> None:
    cursor.take(
        r"(?:,|and|, and) (?:k|p|work|rib|patt|cont)(?: (?:in \w+|even|across))?(?: to (?:the )?end(?: of row)?| rem(?: st)?| across(?: row)?)(?! use)"
    )


def _bind_off(cursor: Cursor) -> Step | None:
    since = cursor.pos
    lead = cursor.take(
        BEG + r"(?:next|foll) (?P<m>{N}) ?(?:row|rnd) ?,? ?bo (?P<n>{N})(?: st)?(?: for (?:\w++ ?){1,2}(?=[,;.]))?"
    )
    lead = lead or cursor.take(r"bo " + BEG + r"(?:next|foll) (?P<m>{N}) ?row ,? ?(?P<n>{N}) st")
    if lead:
        return BindOffs(figure(lead) or ONE, rows=figure(lead, "m") or ONE, edge="beg")
    match = cursor.take(
        r"(?:and )?(?:(?:to )?shape (?:[a-z]+ ){1,3}?)?(?:cont to |by )?bo(?: in (?:rib|patt))? (?P<n>{N})(?: st)?"
    )
    if match is None:
        return None
    n = figure(match) or ONE
    found = _cadenced(cursor, n)
    if found is None:
        cursor.pos = since
        return None
    _to_end(cursor)
    return found


def _cadenced(cursor: Cursor, n: Figure) -> Step | None:
    """Read the rows at whose beginning the stitches go."""
    again = cursor.take(
        BEG + r"next (?:row )?and (?:every )?(?:foll )?(?P<m>{N}) ?(?:foll )?(?P<o>alt |rs |k |p |ws |<\d+>th )?row"
    )
    if again:
        more = figure(again, "m")
        often = Figure(tuple(one + 1 for one in more.values)) if more else ONE
        alt = bool(again["o"])
        cadence = Cadence(first=ONE, every=Figure((2.0,)), goal=Goal(times=often, count="unclear"))
        return BindOffs(
            n, rows=None if alt else often, edge="beg", times=often if alt else None, cadence=cadence if alt else None
        )
    once = cursor.take(BEG + r"next (?:row )?and (?:every )?(?:foll )(?:alt |rs |<\d+>th )row(?: (?P<n>{N}) x)?")
    if once:
        return BindOffs(n, edge="beg", times=figure(once) or Figure((2.0,)))
    rows = cursor.take(
        BEG
        + r"(?:next|foll|<1>th|last|these|each of next|every) ?(?:foll )?(?P<m>{N})? ?(?P<o>alt |k |p |rs |ws )?(?:row|rnd)(?: (?P<t>{N}) x)?"
    )
    if rows:
        each = figure(rows, "t") if rows["t"] else None
        if rows["o"] or "every" in rows.group():
            return BindOffs(
                n, edge="beg", rows=None if rows["o"] else figure(rows, "m"), times=each or figure(rows, "m") or ONE
            )
        return BindOffs(n, rows=figure(rows, "m") or ONE, edge="beg")
    both = cursor.take(
        r"(?:at |on )?(?:each|both) (?:end|side|edge)(?: of)?(?: (?:next|needle|work|row)(?: row)?)?|for (?:each |both )?underarms? (?:at|on) (?:each|both) sides?"
    )
    if both:
        return BindOffs(n, edge="both", rows=Figure((2.0,)), both=True)
    edge = cursor.take(EDGE)
    if edge:
        times = cursor.take(r"(?:on )?(?:every alt row |each alt row |alt row )?(?P<n>{N}) x") or cursor.take(
            r"(?:on )?(?P<n>every alt row)(?!x)"
        )
        count = figure(times) if times and times["n"].startswith("<") else None
        both_sides = "each" in edge.group() or "both" in edge.group()
        return BindOffs(n, edge=edge["e"], times=count, both=both_sides)
    times = cursor.take(r"(?P<n>{N}) x(?: more)?(?: (?:at|on) (?:each|every) (?P<e>neck|armhole|side|shoulder) edge)?")
    if times:
        return BindOffs(n, edge=times["e"] or "same", times=figure(times))
    if cursor.take(r"(?:at )?(?:the )?(?:beg|end)(?: of (?:needle|row))?(?! of)"):
        return BindOffs(n, rows=ONE, edge="beg")
    return None


def _more(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read 'and 7 sts at beg of foll 2 rows', 'then 11 once' after a binding off."""
    last = next((step for step in reversed(before[-3:]) if isinstance(step, BindOffs)), None)
    grown = next((step for step in reversed(before[-2:]) if isinstance(step, CastOn) and step.rows), None)
    if grown is not None:
        match = cursor.take(r"(?:and )?(?P<n>{N}) st " + BEG + r"(?:next|foll) (?P<m>{N})? ?row")
        return CastOn(figure(match) or ONE, rows=figure(match, "m") or ONE, edge="beg") if match else None
    if last is None:
        return None
    since = cursor.pos
    match = cursor.take(r"(?:and )?(?P<n>{N})(?: st)?")
    if match is None:
        return None
    n = figure(match) or ONE
    found = _cadenced(cursor, n)
    if isinstance(found, BindOffs):
        same = found.edge == "same"
        return replace(found, edge=last.edge, both=last.both, times=found.times) if same else found
    cursor.pos = since
    return None


def _finish(cursor: Cursor) -> Step | None:
    match = cursor.take(r"(?:and )?bo (?:until|all but)(?: only)? (?P<n>{N})(?: st)?(?: (?:rem|left))?")
    if match:
        return Finish("bound off but", figure(match))
    match = cursor.take(
        r"(?:and )?(?:sl (?:next )?|p |k )?bo(?: (?:all|off|alike|rest|balance))*"
        + HOW
        + r" (?:rem|left|center|all|alike|balance|these|last|foll)(?: (?P<n>{N}))?(?: (?:st|rem|in all sizes))*(?: left)?"
        + HOW
        + r"(?: for (?:back of neck|neck|back neck|shoulder|back|front neck|top|each shoulder))?"
    )
    if match:
        return Finish("bound off", figure(match) if match["n"] else None)
    match = cursor.take(r"(?:and )?bo (?:until|all but) (?P<n>{N})(?: st)?(?: (?:rem|left))?")
    if match:
        return Finish("bound off but", figure(match))
    match = cursor.take(r"(?:and )?(?:then )?bo(?: st| all)?" + HOW + r"(?=(?: [,;.)]| and|$))")
    if match:
        return Finish("bound off")
    match = cursor.take(
        r"(?:and )?(?:(?:break|join)(?: off)? yarn(?: (?:leave|and|,|(?:an|long|end|<[^>]*>|inch|-))*){0,8}?,? ?(?:and )?)?(?:run|draw|thread|pass|sl|gather|slip|yarn(?= (?:end )?thru))(?: (?:end|yarn|it|needle|tapestry|double|up|thread|,|and|a))*(?: (?:of|on))?(?: (?:thru|up|into|in|onto|on))? (?:these |all |up )?(?:rem |left )?(?:(?P<n>{N})(?: st)?|st)?(?: (?:rem|left|st|on needle))*(?=(?: ?,| ?and| ?;| ?\.|$|  |draw|up))(?: ?,? ?(?:and )?(?:draw|pull|gather|fasten|up|tog|tightly|tight|off|sew|it|st|on|ws|in|place|sl|needle|securely|close) ?)*"
    )
    if match and (
        "draw" in match.group() or "gather" in match.group() or "pull" in match.group() or "thru" in match.group()
    ):
        return Finish("drawn up", figure(match) if match["n"] else None)
    if match:
        cursor.pos -= len(match.group())
    if cursor.take(
        r"(?:and )?(?:(?:break|cut)(?: off)? yarn (?:and )?)?fasten off(?: (?:on ws|rem st|last st|securely|yarn))?|draw yarn thru last st|pull yarn thru"
    ):
        return Finish("fastened off")
    match = cursor.take(
        r"(?:and )?(?:weave|graft)(?: (?:tog|these|rem|two|<2>))*(?: (?P<a>{N}) (?:\w+ )?st)?(?: (?:and|to|tog use|with|from) (?P<b>{N}) (?:\w+ )?st)?(?: tog)?(?: (?:st|tog|rem|toe|edges|on|<\d> needle|of|each))*"
    )
    if match and (match["a"] or "st" in match.group()):
        parts = tuple(
            one
            for one in (figure(match, "a") if match["a"] else None, figure(match, "b") if match["b"] else None)
            if one
        )
        return Finish("grafted", parts=parts)
    if match:
        cursor.pos -= len(match.group())
    return None


def holding(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read stitches left on holders, taken up again, divided over needles, joined into a round."""
    since = cursor.pos
    found = _hold(cursor) or _resume(cursor) or _divide(cursor)
    return replace(found, span=cursor.span(since)) if found else None


ONTO = r"(?:on|onto|to|upon|in)(?: to)? (?:(?:another|<1>|separate|extra|dpn|spare|needle|different|large|holders|hold|<2>|<3>|alt|one|first|each|thread|stitch|dp|strand|of|contrast|yarn|waste|left|hand|sleeve) ?)+(?:for (?:(?:later use|front neck|back neck|neck(?:band)?|front|back|hood|collar|pocket|front of neck|back of neck|thumb|sleeve|center|left|right|instep|shoulder|underarm|first|lining|border|band|second|half|alt|side) ?)+)?(?:to be (?:used|worked|k) (?:\w++ ?){1,2})?(?=[,;.(:)]| and|and|--|$|turn|leave|join|k |p |bo)"


def _hold(cursor: Cursor) -> Step | None:
    match = cursor.take(
        r"(?:and )?(?:divide|leave|place|sl|put|keep) (?:rem |alt |left |<1>th |last |next )*(?P<n>{N}) (?:rem )?st(?: (?:evenly|equally|on|onto|to|<\d>|needle|dpn|hold|and|leave|them|place))* for (?:instep|front|top of foot|heel|foot|upper)(?: (?:of foot|needle|later|use))*"
    )
    if match:
        return Hold(figure(match), "instep")
    match = cursor.take(
        r"(?:and )?(?:leave|place|sl|put|keep)(?: (?:these|those|rem|all|alt|the|next|rest of|balance of|left|center|front|<1>th|last))*(?: (?P<n>{N}))?(?: (?:st|rem|center|neck|shoulder|of|back|front|left|sleeve|raglan))* "
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


def _resume(cursor: Cursor) -> Step | None:
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
        r"(?:and )?(?:use rs (?:of work )?facing ,? ?)?(?:join|rejoin|attach|return|sl|place|take|cont|work|go back|with|now work)(?: (?:in|on|back|to|with|at|yarn|up|onto|work|cont|,|alt|first|and|neck edge|inner end|inside|center|edge|end|of|<\d> needle|needle|no <\d+>|larger|smaller|hold|next|start|beg|ws|rs|facing|pick|new|ball|another|same))* (?:the )?(?P<w>rem|alt|left|first|<1>th|<2>th|last|these|those|held|hold)(?: (?P<n>{N}))?(?: (?P<m>{N}))? st(?: (?:left|only|on needle|for (?:\w++ ?){1,3}(?=[,;.:])|of (?:\w++ ?){1,3}(?=[,;.:])|from hold|on hold|from (?:front|back) hold|again|onto needle|to needle|on(?:to)? (?:no <\d+> )?needle|to correspond|held))*(?! (?:k|p|in|even|as|every|until|of))"
    )
    if match:
        which = "first" if match["w"] in ("first", "<1>th", "these", "those") else "rem"
        n = figure(match) if match["n"] else None
        return Resume(n, which)
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


def _divide(cursor: Cursor) -> Step | None:
    each = cursor.take(
        r"(?:namely |viz |having |that is |,|\( ){0,6}(?P<n>{N})(?: st)? on each of (?P<m>{N})(?: [a-z]+)? needle(?: \))?"
    )
    if each:
        return Needles((figure(each) or ONE,) * min(6, (figure(each, "m") or ONE).whole(0)))
    match = cursor.take(
        r"(?:and )?(?:divide|arrange|place|distribute|having|sl)(?: (?:st|these|rem|all|them|having|{N}|evenly|equally|on|onto|into))* (?:on|onto|over|between|equally on) (?:<[234]> |three |four )(?:dpn |dp )?needle(?: (?:no <\d+>|evenly|equally))*"
    )
    parts: list[Figure] = []
    spans: list[Span] = []
    if match or cursor.see(
        r"(?:there (?:are|is|be|should be) |having |you (?:should |must |will )?having )?{N}(?: st)? on (?:<1>th|first) (?:needle)?"
    ):
        while True:
            part = cursor.take(
                r"(?:(?:,|and|, and|--|\(|having|there are|there should be|you having|you should having|you must having|:|;) ){0,6}(?P<n>{N})(?: st)? (?:on|in) (?:(?:<\d>th|first|each of next|each|alt|last|<2>|<3>|alt|heel|instep) ?)+(?:needle)?(?: \))?"
            )
            if part is None:
                break
            parts.append(figure(part) or ONE)
            spans.append(cursor.canon.span(part.start("n"), cursor.pos - 1))
        if len(parts) == 1 and re.search(
            r"<[\d|]+>(?: st)? on each", cursor.text[max(0, cursor.pos - 40) : cursor.pos]
        ):
            told = re.search(r"<([34])> (?:dpn |dp )?needle", match.group()) if match else None
            parts = parts * (int(told.group(1)) if told else 3)
            spans = spans * len(parts)
        each = cursor.take(r"\( (?P<n>{N}) st (?:on )?each(?: needle)? \)")
        if each:
            parts = [figure(each) or ONE] * 3
        if match or len(parts) > 1:
            return Needles(tuple(parts), tuple(spans))
        return None
    match = cursor.take(
        r"(?:and )?(?:join|taking care|being careful|form|work)(?: (?:in|into|to|a|rnd|st|ends|work|needle|for|circle|and|,|be|being|careful|care|taking|not|twist|twisting|it|on|is|that|st|are|carefully|together))* (?:rnd|twist(?:ed|ing)?(?: (?:st|it|work))?|circle|work)(?=[ ,;.]|$)"
    )
    if match and ("twist" in match.group() or "rnd" in match.group() or "circle" in match.group()):
        return Rounds()
    if match:
        cursor.pos -= len(match.group())
    return None
