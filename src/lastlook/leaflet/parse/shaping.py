"""Increases and decreases: how many, at which edge, on which rows, how often, and with which stitch."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.leaflet.instruction import ONE, Cadence, Goal, Shape, Step, WorkOn
from lastlook.leaflet.parse.cursor import Cursor, figure, mm_of
from lastlook.leaflet.parse.lengths import ending, goal
from lastlook.leaflet.parse.stitch.runs import run
from lastlook.leaflet.trade.sizelist import Figure

TWO = Figure((2.0,))
MOST_BACK = 200
"""A shaping that goes on was begun no more than so many steps before."""
ACT = r"(?:and )?(?:make (?=inc |dec ))?(?:at |on |keeping (?:\w++ ?){1,4}, )?(?:cont |still |cont work |work even |keep |cont use )?(?:in patt )?(?:to )?(?:shape (?P<sp>neck|armhole|front|raglan|shoulder|side)(?: (?:edge|slope))? ,? ?)?(?:by )?(?P<act>dec|inc|narrow|widen|(?:(?:k|p|take|work) <2> (?:st )?tog(?: tbl)?|k2tog|p2tog|skp|ssk|skpo)(?= (?:(?:at|on|in) )?(?:the )?(?:inside|within|each|both|every|beg|end|neck|armhole|front)\b(?! of row)))(?: for (?:neck|armhole|raglan|v|front)(?= <))?(?: (?:(?P<n>{N})(?! (?:row|rnd|x))|st|again))?(?: st| in-all)*"
EDGES: tuple[tuple[str, str], ...] = (
    (r"(?:at|in|on) (?:beg|end) of (?:each|every) needle", "needles"),
    (r"(?:at |on |in )?(?:each|both) (?:end|side|edge)(?! of (?:each |every )?(?:marker|marked|center|seam|instep))(?: of)?(?: (?:needle|work|piece))?(?: edge)?", "both"),
    (r"(?:at|in) (?:the )?(?P<e>beg|end) of last (?:row|rnd)(?: of rib)?", "named"),
    (r"(?:at |in )?(?:the )?beg and (?:at )?(?:the )?end(?: of(?! (?:next|every|each|this|foll|<|alt|rs))(?: needle| row)?)?", "both"),
    (r"(?:at |on )?(?:each|both|every) (?P<e>neck|front|center|armhole|side|raglan|shoulder|inner|outer|sleeve|underarm) edge", "named"),
    (r"(?:at |on |along )?(?:the )?(?P<e>neck|center front|front|center|armhole|side|raglan|same|this|that|shoulder|inner|outer|alt|sleeve|underarm|toe|heel|shaped|lower|cuff|opposite|seam|right|left|back)(?: (?:side|or))?(?: (?:front|neck|armhole|side))? edge(?: (?:in same way|only))?", "named"),
    (r"(?:at |on )(?:the )?(?P<e>neck|front|armhole|side|raglan|underarm)(?: side| seam)?(?= [,;.]| every| on| next| in)", "named"),
    (r"(?:at|in) (?:the )?(?P<e>beg|end)(?: of (?:needle|row))?(?! (?:of )?(?:next|every|each|foll|<|this|rs|alt))", "named"),
    (r"(?:at|in) (?:the )?(?P<e>beg|end) of(?= (?:next|every|each|foll|<|this|rs|alt))", "named"),
    (r"(?:(?:before|after) and (?:before|after)|(?:on |at )?(?:each|both) side of|before and after) (?:each |every |the |<\d> )?(?:marker|marked|center|seam|instep)(?: st| <\d> st| <\d>)?", "places"),
    (r"(?:in |on )?(?:the )?center(?: of)?(?: (?:st|row|needle))?", "center"),
)  # fmt: skip
ROW = r"(?:(?:k|p|rs|ws|patt|inc|dec) )?(?:row|rnd)"
EVERY = r"(?:(?:on |in |at |of |thereafter )*)(?:(?:every|each) (?:foll )?(?:(?P<o>alt|{N}(?:th)?) )?(?P<s>k |p |rs |ws |right side |patt )?(?P<w>row|rnd|inch|cm|rs|ridge)(?: on rs)?(?: thereafter)?|foll (?P<x>alt) row(?P<y>(?!x)x)?)"


def shape(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read one shaping with all that is said of it."""
    since = cursor.pos
    same_time, start = _same_time(cursor)
    lead = _edge(cursor, Shape("dec"))
    if lead:
        cursor.take(r",|and")
        timed = _cadence(cursor)
        cursor.take(r",|and")
    else:
        timed = (
            _cadence(cursor)
            if cursor.see(
                r"(?:on |in |at )?(?:every|each|next|this|foll|<\d+>th) (?:(?:\w+|<[^>]*>(?:th)?) ){0,5}(?:row |rnd ),? ?(?:and )?(?:dec|inc|narrow)"
            )
            else None
        )
        cursor.take(r",")
    match = cursor.take(ACT)
    if match is None or cursor.see(r"row|rnd\b"):
        cursor.pos = since
        return None
    act = "dec" if match["act"] in ("dec", "narrow") or "tog" in match["act"] else "inc"
    found = replace(lead or Shape(act), act=act, n=figure(match) or ONE, same_time=same_time, start=start)
    if timed:
        found = replace(found, cadences=(timed,))
    if match["sp"] and not found.edge:
        found = replace(found, edge=match["sp"])
    found = _modifiers(cursor, found)
    if found.edge == "inside" and found.places == 2 and not found.cadences:
        found = replace(found, cadences=(Cadence(ONE, first=ONE, goal=Goal(times=ONE, count="in all")),))
    grows = cursor.see(r",? ?(?:(?:work|having|k|with|p|always) )*{N} (?:st )?(?:more|less|fewer)")
    if grows or not (found.edge or found.cadences or found.to or same_time):
        cursor.pos = since
        return None
    return replace(found, span=cursor.span(since))


def _same_time(cursor: Cursor) -> tuple[bool, WorkOn | None]:
    """Read 'and at the same time when work measures 14 ins., ending with a purl row'."""
    since = cursor.pos
    same = cursor.take(r"(?:and )?(?:but )?(?:sametime)(?: as (?:\w++ ?){1,3}(?=,))?(?: ,)?(?: and)?")
    when = cursor.take(r"(?:and )?(?=(?:when|after|from) )")
    start = None
    if when is not None or same:
        spot = cursor.pos
        cursor.take(r"when|after")
        far = _when(cursor)
        if far is not None:
            last = ending(cursor)
            cursor.take(r",")
            start = WorkOn(goal=far, when=True)
            if last:
                start = replace(start, ending=last)
            cursor.take(r"(?:and )?sametime")
        else:
            cursor.pos = spot
    if not same and start is None:
        cursor.pos = since
    return bool(same) or (start is not None), start


def _when(cursor: Cursor) -> Goal | None:
    for lead in ("until ", ""):
        if lead:
            text, spot = cursor.text, cursor.pos
            cursor.text = text[:spot] + lead + text[spot:]
            found = goal(cursor)
            shift = cursor.pos - len(lead)
            cursor.text = text
            cursor.pos = shift if found else spot
            if found:
                return found
    return None


def _modifiers(cursor: Cursor, found: Shape) -> Shape:
    for _ in range(14):
        since = cursor.pos
        cursor.take(r"\(") if cursor.see(r"\( (?:on|every|each|at)") else None
        more = _edge(cursor, found) if not found.edge else None
        more = more or _evenly(cursor, found) or _timed(cursor, found) or _style(cursor, found)
        if more is None:
            last = ending(cursor)
            more = replace(found, ending=last) if last else None
        if more is None:
            cursor.pos = since
            break
        found = more
    return found


def _edge(cursor: Cursor, found: Shape) -> Shape | None:
    for pattern, kind in EDGES:
        match = cursor.take(pattern)
        if match is None:
            continue
        if kind == "named":
            return replace(found, edge=match["e"])
        if kind == "places":
            return replace(found, edge="inside", places=2)
        if kind == "needles":
            return replace(found, edge="evenly", n=Figure(tuple(3 * one for one in found.n.values)))
        return replace(found, edge="inside" if kind == "center" else "both")
    return None


def _evenly(cursor: Cursor, found: Shape) -> Shape | None:
    match = cursor.take(
        r"(?:evenly|at (?:even|equal|regular) (?:intervals|distances))(?: (?:spaced|spacing|distributed|across|along|over|in|on|around|round|apart))*(?: (?:row|last row|<1>th row|next row|rnd|<1> row|this row|last rnd|next rnd|first row|st|last row of rib|back|each needle|rib))*(?: to (?P<t>{N})(?: st)?)?"
    )
    if match:
        return replace(found, edge="evenly", to=figure(match, "t") or found.to)
    match = cursor.take(
        r"(?:across|along|over|in|on) (?:(?:last|next|<1>th|this|foll|same|final) )?(?:row|rnd|row of rib)(?: (?:of rib|evenly))*(?! (?:and|<))(?: to (?P<t>{N})(?: st)?)?"
    )
    if match and (found.edge in ("", "evenly")) and not found.cadences:
        return replace(found, edge="evenly", to=figure(match, "t") or found.to)
    if cursor.take(r"in last of (?:them|these)(?: (?:row|rnd))?"):
        return replace(found, edge="evenly")
    match = cursor.take(r"to (?P<t>{N}) st") if found.edge == "evenly" or found.n == ONE else None
    if match:
        return replace(found, edge=found.edge or "evenly", to=figure(match, "t"))
    return None


def _style(cursor: Cursor, found: Shape) -> Shape | None:
    """Read 'by k 2 tog', 'inside border', 'as before', 'working decs as on back' after the shaping."""
    match = cursor.take(r"(?:, )?(?:by |use |with |in(?:side)? |within )(?:work )?(?=k|p|sl|narrow)")
    if match:
        if run(cursor):
            return found
        return None
    if cursor.take(
        r"asbefore(?: described)?|in same (?:way|manner)|as (?:before|on back|for back|on front|given|usual|<1>th|in back|described)"
    ):
        if not found.cadences:
            return replace(found, cadences=(Cadence(same=True),))
        return found
    if cursor.take(
        r"(?:, )?(?:inside|within|keeping|work inc st into|taking inc st into|taking extra st into|bringing inc st into|inc st into) (?:\w+ |<[^>]*> ?){1,6}?(?=[,;.(]|--|until|every|on |$)"
    ):
        return found
    return None


def _timed(cursor: Cursor, found: Shape) -> Shape | None:
    """Read a cadence, or how often the last one goes."""
    since = cursor.pos
    joined = cursor.take(r"(?:,|;|and|, and)")
    cadence = _cadence(cursor)
    if cadence is not None:
        last = found.cadences[-1] if found.cadences else None
        if (
            last is not None
            and last.goal == Goal()
            and cadence.first is None
            and cadence.goal != Goal()
            and last.every is None
        ):
            return replace(found, cadences=(*found.cadences[:-1], replace(cadence, first=last.first)))
        return replace(found, cadences=(*found.cadences, cadence))
    if joined:
        cursor.pos = since
    far = _times(cursor)
    if far is None:
        return None
    if not found.cadences:
        return replace(found, cadences=(Cadence(goal=far),))
    last = found.cadences[-1]
    if last.goal != Goal():
        merged = (
            replace(last.goal, until=far.until) if far.until else replace(last.goal, count=far.count or last.goal.count)
        )
        return replace(found, cadences=(*found.cadences[:-1], replace(last, goal=merged)))
    return replace(found, cadences=(*found.cadences[:-1], replace(last, goal=far)))


def _times(cursor: Cursor) -> Goal | None:
    match = cursor.take(
        r"(?:, )?(?:for )?(?P<n>{N}) (?P<m>more |further |foll )?(?:x|dec)(?P<a>(?: more| in-all| altogether| further)?)"
    )
    if match:
        text = match.group()
        count = "more" if "more" in text or "further" in text else "in all" if "in-all" in text else "unclear"
        return Goal(times=figure(match), count=count)
    return goal(cursor) if cursor.see(r"(?:until|to) (?!end|last)") else None


def _cadence(cursor: Cursor) -> Cadence | None:
    """Read on which rows."""
    match = cursor.take(
        r"(?:on |of |in |at |beg )*(?P<f>next|this|<\d+>th|same|first|<1>th|foll)(?: (?P<fs>k|p|rs|ws))?(?: row| rnd)?(?: after rib)? ?,? ?(?:and|then)(?: (?:on|of|in))* "
        r"(?:(?:every|each) (?:foll )?|foll (?=alt))(?P<o>alt|{N}(?:th)?)?(?: foll)? ?(?P<s>k|p|rs|ws)? ?(?P<w>row|rnd|inch|cm)(?: thereafter)?"
    )  # fmt: skip
    if match:
        return _with_times(cursor, Cadence(_every(match["o"]) if match["w"] in ("row", "rnd") else None, on=_on(match["s"]),
                                           mm=_mm(match) , first=_first(match["f"])))  # fmt: skip
    match = cursor.take(
        r"(?:on |of |in |at )*next (?:row )?and (?:on )?(?:every )?(?:foll )?(?P<n>{N}) (?:foll )?(?P<o>alt|rs|k|<\d+>th) row(?: after)?"
    )
    if match:
        more = figure(match)
        times = Figure(tuple(one + 1 for one in more.values)) if more else ONE
        return Cadence(_every(match["o"]), first=ONE, goal=Goal(times=times, count="in all"))
    match = cursor.take(
        r"(?:on |of |in |at )*(?:every )?(?:next|foll) (?P<n>{N}) (?P<o>alt |rs |k |<\d+>th |ws |p )?(?:row|rnd)"
    )
    if match:
        order = (match["o"] or "").strip()
        return Cadence(
            _every(order) if order else ONE,
            on=_on(order),
            first=None if order else ONE,
            goal=Goal(times=figure(match), count="in all"),
        )
    match = cursor.take(
        r"(?:on |in |at )*every (?P<a>{N})(?:th)? and (?P<b>{N})(?:th)? (?:row|rnd) alt|(?:on )?alt(?:ernately)? every (?P<c>{N})(?:th)? and (?P<d>{N})(?:th)? row"
    )
    if match:
        one, two = ("a", "b") if match["a"] else ("c", "d")
        return _with_times(cursor, Cadence(_every(match[one]), alternate=_every(match[two])))
    match = cursor.take(EVERY)
    if match:
        unit = match["w"] or "row"
        if unit in ("inch", "cm"):
            step = figure(match, "o") if match["o"] and match["o"] != "alt" else ONE
            return _with_times(cursor, Cadence(mm=mm_of(step or ONE, unit)))
        every = _every(match["o"]) if match["o"] else (TWO if match["x"] else ONE)
        return _with_times(cursor, Cadence(every, on=_on((match["s"] or "").strip() or (unit if unit == "rs" else ""))))
    match = cursor.take(
        r"(?:on |of |in |at )*(?P<f>next|this|<\d+>th|foll|first|same)(?: (?P<n>{N}))?(?: (?P<s>k|p|rs|ws|inc|dec))? (?:row|rnd)(?: (?:after|of) (?:rib|dec|patt|cuff))?"
    )
    if match:
        n = figure(match)
        return Cadence(ONE, first=_first(match["f"]), goal=Goal(times=n or ONE, count="in all"))
    match = cursor.take(r"on (?P<s>k|p|rs|ws|alt)(?: row)?(?! and)(?: (?:row|side))?")
    if match:
        return _with_times(cursor, Cadence(TWO, on=_on(match["s"])))
    return None


def _mm(match: re.Match[str]) -> Figure | None:
    if match["w"] not in ("inch", "cm") or not match["o"] or match["o"] == "alt":
        return None
    return mm_of(figure(match, "o") or ONE, match["w"])


def _with_times(cursor: Cursor, cadence: Cadence) -> Cadence:
    far = _times(cursor)
    return replace(cadence, goal=far) if far else cadence


def _every(order: str | None) -> Figure:
    if not order:
        return ONE
    if order in ("alt", "rs", "k", "ws", "p"):
        return TWO
    return figure_of(order)


def figure_of(order: str) -> Figure:
    """Return the figure of '<6>th' or '<14|16|18>th'."""
    return Figure(tuple(float(part) for part in order.removesuffix("th").strip("<>").split("|")))


def _first(word: str | None) -> Figure | None:
    if not word or word == "foll":
        return None
    return figure_of(word) if word.startswith("<") else ONE


def _on(word: str | None) -> str:
    return {"k": "rs", "rs": "rs", "right side": "rs", "p": "ws", "ws": "ws"}.get(word or "", "")


def _as_before(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read 'decrease in the same proportion as you increased until you have but 52 stitches'."""
    since = cursor.pos
    match = cursor.take(
        r"(?:and )?(?P<a>dec|inc|narrow) (?:in )?(?:same )?(?:proportion|ratio|way|manner|intervals?)(?: ?as| ?in which) you (?:inc|dec|narrow|widen)"
    )
    last = next((step for step in reversed(before[-MOST_BACK:]) if isinstance(step, Shape)), None)
    if match is None or last is None or not last.cadences:
        cursor.pos = since
        return None
    far = goal(cursor)
    act = "inc" if match["a"] == "inc" else "dec"
    cadence = Cadence(last.cadences[-1].every, last.cadences[-1].mm, goal=far or Goal())
    return Shape(act, last.n, last.edge, (cadence,), span=cursor.span(since))


def shape_more(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read 'then every k row until 8 sts remain': more rows of the shaping before."""
    last = next((step for step in reversed(before[-MOST_BACK:]) if isinstance(step, Shape)), None)
    if last is None:
        return None
    same = _as_before(cursor, before)
    if same is not None:
        return same
    since = cursor.pos
    cursor.take(r"(?:and )?(?:cont )?(?:then )?")
    again = _edge(cursor, Shape(last.act, last.n)) if cursor.see(r"(?:at|on) (?:each|both|same|neck|armhole)") else None
    begins = r"(?:then )?(?:on |in |at |of )*(?:every|each|foll|next|alt|this)"
    cadence = _cadence(cursor) if cursor.see(begins) else None
    if cadence is None:
        cursor.pos = since
        return None
    edge = again.edge if again else last.edge
    found = _modifiers(cursor, Shape(last.act, last.n, edge, (cadence,), style=last.style))
    return replace(found, span=cursor.span(since))
