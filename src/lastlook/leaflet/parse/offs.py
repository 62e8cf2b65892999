"""Casting on, binding off, and how pieces end."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.leaflet.instruction import (
    ONE,
    BindOffs,
    Cadence,
    CastOn,
    Finish,
    Goal,
    Nothing,
    Step,
)
from lastlook.leaflet.parse.cursor import Cursor, figure
from lastlook.leaflet.trade.sizelist import Figure

HOW = r"(?: k as k and p as p| k as k(?! and p)| p as p(?: and k as k)?| (?:k|work)(?: the)? k st(?: and p(?: the)? p(?: st)?)?| (?:in|on|as) (?:rib|patt|k|p|ws|rs|k row|p row|knit|each st|foll|moss|garter|next row)(?: \w+)?| ways|knitways| purlways| even| right across| all across)*"
BEG = r"(?:at |on |from )?(?:(?:the )?beg of |beg |every )(?:each of |every )?(?:the )?"
EDGE = r"(?:at |from |on )?(?:each |both |every )?(?P<e>neck|front|center front|center|armhole|side|raglan|same|this|that|shoulder|inner|outer|sleeve|underarm|lower|shaped|alt)(?: (?:front|neck|armhole|side))? (?:edge|side(?= ?[,;.]| every| <| once| bo|$))(?: of (?:each|both) (?:side|front))?"


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
        r"(?:and )?at (?P<e>end|beg) of (?:last|next|this|same|each|foll|each of next)? ?(?P<m>{N})? ?row(?: \( [a-z]+ edge \))? ,? ?co (?P<n>{N})(?: st)?(?: for [a-z]+(?=[ ,;.]))?"
    )
    if lead:
        return CastOn(figure(lead) or ONE, rows=None if lead["m"] is None else figure(lead, "m"), edge=lead["e"])
    match = cursor.take(
        r"(?:(?:use|on|with) (?:(?!co )(?:\w++|<[^>]*>|,) ){1,16}?)?(?:and )?(?:co|set up)(?: on)?(?: each)?(?: \( (?:use|with) [^()<]*\)| (?:use|with) (?:double|single) yarn)? (?P<n>{N})(?: (?:st|ch))?(?: (?:on (?:each|every|one|<\d+>) (?:of )?(?:<\d+> )?needle|use \w+ (?:yarn|no <\d+> needle)|in (?:mc|cc|color)))?"
    )
    if match is None:
        again = cursor.take(
            r"(?:make|with|on|ch|work) (?P<n>{N}) (?:ch|st) (?:for )?(?:foundation|on needle)"
        ) or cursor.take(
            r"(?:(?:use|on|with) (?:(?!k )(?:\w++|<[^>]*>|,) ){1,12}?)?(?:cast|set|k on|k(?= {N} st on(?:to)? (?:bone|steel|rubber|wooden|no|<\d>) ))(?: on)? (?P<n>{N}) st"
            r"(?: on(?:to)?(?: to)?)?(?: (?:each of|each|bone|steel|<[^>]*>|rubber|wooden|no|double|pointed|the))* ?(?:needle|hook)?(?: no <[^>]*>)?"
        )
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
        r"for (?:(?:left |right )?(?:underarm|sleeve|neck|border|front|back|thumb|buttonhole|shoulder|armhole|cuff|hem|body|bottom|facing|one side|lower edge)(?: edge)?)(?: of \w+)?|in place of (?:those|st) bo|in place of (?:thumb )?st(?: (?:on hold|left))?|over (?:bo|those bo|buttonhole|these)(?: st)?"
    )
    return CastOn(n)


def _at_edge(cursor: Cursor) -> Step | None:
    """Read 'at arm edge bind off 4 sts, k to end'."""
    since = cursor.pos
    cursor.take(r"(?:and )?(?:cont to |next row|on next row)(?: ,| :)?")
    match = cursor.take(r"(?:on next row |in next row |and )?" + EDGE + r" ?,? bo (?P<n>{N})(?: st)?") or cursor.take(
        r"(?:from|at) (?P<e>neck|armhole|side|front) ,? ?bo (?P<n>{N})(?: st)?"
    )
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
    ) or cursor.take(
        r"(?:and )?bo (?:(?:for )?(?:left |right )?(?:armholes?|shoulders?|neck|underarm|raglan) )?"
        + BEG
        + r"(?:next|foll|each of next) (?P<m>{N}) ?(?:row|rnd) (?P<n>{N})(?: st)?"
    )
    lead = lead or cursor.take(r"bo " + BEG + r"(?:next|foll) (?P<m>{N}) ?row ,? ?(?P<n>{N}) st")
    if lead:
        return BindOffs(figure(lead) or ONE, rows=figure(lead, "m") or ONE, edge="beg")
    match = cursor.take(
        r"(?:and )?(?:(?:to )?shape (?:[a-z]+ ){1,3}?)?(?:cont to |by )?bo(?: in (?:rib|patt))?(?: (?:for )?(?:left |right |each )?(?:shoulder|armhole|neck)(?= (?:at|from) ))?(?P<lead> (?:from|at) (?:each|both|neck|armhole|front|side|shoulder|<1>th)(?: (?:armhole|neck|front|side|shoulder))? edge)? (?P<n>{N})(?: st)?"
    )
    if match is None:
        return None
    n = figure(match) or ONE
    found = _cadenced(cursor, n)
    if match["lead"]:
        edge = re.search(r"neck|armhole|front|side|shoulder", match["lead"])
        both = bool(re.search(r"each|both", match["lead"]))
        told = found if isinstance(found, BindOffs) else BindOffs(n)
        found = replace(told, edge=edge.group() if edge else "both", both=both)
    if found is None:
        cursor.pos = since
        return None
    _to_end(cursor)
    return found


UNTIL = (
    r"(?:at |on )?(?:beg of |(?P<e>neck|armhole|front|side|shoulder|inner|outer) edge (?:of )?)?(?:on )?(?:every|each) (?P<o>alt |<\d+>th |k |p )?(?:foll )?row "
    r"(?:until|to) (?:there (?:are|rem) )?(?:(?P<n>{N})(?: st)?(?: rem| left| on needle)*|(?P<all>all st (?:are|have been|having been|having)(?: bo)?))"
)


def _cadenced(cursor: Cursor, n: Figure) -> Step | None:
    """Read the rows at whose beginning the stitches go."""
    goal = cursor.take(UNTIL)
    if goal:
        until = figure(goal) if goal["n"] else Figure((0.0,))
        cadence = Cadence(every=Figure((2.0 if goal["o"] or goal["e"] else 1.0,)), goal=Goal(until=until))
        return BindOffs(n, edge=goal["e"] or "beg", cadence=cadence)
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
        + r"(?:next|foll|<1>th|last|these|each of next|each|every) ?(?:foll )?(?P<m>{N})? ?(?P<o>alt |k |p |rs |ws )?(?:row|rnd)(?: (?P<t>{N}) x)?(?P<both> (?:at |on )?(?:each|both) sides?)?"
    )
    if rows:
        each = figure(rows, "t") if rows["t"] else None
        if rows["both"] and each:
            return BindOffs(n, rows=Figure(tuple(2 * one for one in each.values)), edge="beg")
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
    turned = cursor.take(r"(?:and )?" + BEG + r"(?:next|foll|each of next) (?P<m>{N}) ?(?:row|rnd) (?P<n>{N})(?: st)?")
    if turned:
        return BindOffs(figure(turned) or ONE, rows=figure(turned, "m") or ONE, edge="beg")
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
        r"(?:and )?(?:sl (?:next )?|p |k )?bo(?: (?:all|off|alike|rest|balance))*(?: for (?:back of neck|neck|back neck|shoulder|back|front neck|top|each shoulder))?"
        + HOW
        + r" (?:rem|left|center|all|alike|balance|these|last|foll)(?: (?P<n>{N}))?(?: (?:st|rem|in all sizes))*(?: left)?"
        + HOW
        + r"(?: for (?:back of neck|neck|back neck|shoulder|back|front neck|top|each shoulder))?"
    )
    if match:
        return Finish("bound off", figure(match) if match["n"] else None)
    match = cursor.take(
        r"(?:and )?(?:the )?rem (?P<n>{N}) st bo(?: for (?:neck|back of neck|back neck))?"
    ) or cursor.take(r"(?:and )?rem st bo(?P<n>(?!x)x)?(?: for (?:neck|back of neck|back neck))?")
    if match:
        return Finish("bound off", figure(match) if match["n"] else None)
    match = cursor.take(r"(?:and )?bo (?:until|all but) (?P<n>{N})(?: st)?(?: (?:rem|left))?")
    if match:
        return Finish("bound off but", figure(match))
    match = cursor.take(
        r"(?:and )?(?:then )?bo(?: st| all)?(?: for (?:left |right |each )?(?:shoulder|neck|back of neck|top))?"
        + HOW
        + r"(?=(?: [,;.)]| and|$))"
    )
    if match:
        return Finish("bound off")
    match = cursor.take(
        r"(?:and )?(?:(?:break|join)(?: off)? yarn(?: (?:leave|and|,|(?:an|long|end|<[^>]*>|inch|-))*){0,8}?,? ?(?:and )?)?(?:run|draw|thread|pass|sl|gather|slip|yarn(?= (?:end |it )?thru))(?: (?:end|yarn|it|needle|tapestry|double|up|thread|,|and|a))*(?: (?:of|on))?(?: (?:thru|up|into|in|onto|on))? (?:these |all |up )?(?:rem |left )?(?:(?P<n>{N})(?: st)?|st)?(?: (?:rem|left|st|on needle))*(?=(?: ?,| ?and| ?;| ?\.|$|  |draw|up))(?: ?,? ?(?:and )?(?:draw|pull|gather|fasten|up|tog|tightly|tight|off|sew|it|st|on|ws|in|place|sl|needle|securely|close) ?)*"
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
