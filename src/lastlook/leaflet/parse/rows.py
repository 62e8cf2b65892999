"""Rows by their labels, by reference to other rows, and repeated."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.leaflet.instruction import (
    ONE,
    BindOff,
    BindOffs,
    Cadence,
    Ending,
    Figure,
    Goal,
    Label,
    Progress,
    RepeatRows,
    RowOf,
    Run,
    Shape,
    Step,
    Structure,
    Work,
)
from lastlook.leaflet.parse.cursor import Cursor, figure
from lastlook.leaflet.parse.lengths import ending, goal
from lastlook.leaflet.parse.stitch.runs import run
from lastlook.leaflet.parse.working import plain_rows, run_on

SIDE = r"(?: ?,? ?\( (?P<side>(?:(?!\)).){1,60}) \))?"
SIGN = r"(?: ?(?:: ?-|:|, ?--|\. ?--|--|\. ?-|\.|,|-))?"
MANY = r"(?:<\d+>(?:th)?(?: ?(?:,|and|to|thru|-|&|--|, and) ?<[\d|]+>(?:th)?)*)"


def labelled(cursor: Cursor, before: list[Step]) -> list[Step] | None:
    """Read a row with its label, or a run of stitches that stands alone."""
    since = cursor.pos
    label = _label(cursor)
    if label is not None:
        return _row_after(cursor, label, since)
    if cursor.see(r"rep|\* (?:rep|across)"):
        return None
    return _bare(cursor, since)


def _row_after(cursor: Cursor, label: Label, since: int) -> list[Step]:
    row = cursor.span(since)
    told = _shaped_rows(cursor, label, since)
    if told is not None:
        return [told]
    like = _reference(cursor)
    if like:
        return [RowOf(label, (), like, span=cursor.span(since))]
    plain = cursor.pos
    many = plain_rows(cursor) if cursor.see(r"(?:k|p|work|rib) (?:<1> )?(?:row|rnd)") else None
    if many is not None and label.numbers:
        cursor.pos = plain
        cursor.take(r"(?:k|p|work|rib) (?:<1> )?(?:row|rnd)")
        whole = Work("p" if cursor.text[plain] == "p" else "k", None, reach="all")
        return [RowOf(label, (whole,), span=cursor.span(since))]
    cursor.pos = plain
    cursor.take(
        r"(?:use (?:mc|cc|color|no|\w+ yarn|smaller|larger)(?: (?:\w+|<\d+>))?(?: needle)?|work as foll) ?[,:]? ?"
    )
    cursor.take(
        r"beg (?:at|from) (?:front|neck|armhole|side|center|inner|outer) edge ?,? ?(?=bo |k |p |work |co |dec )"
    )
    alone = cursor.take(r"(?P<v>k|p)(?= ?(?:--|-|\() ?<)")
    if alone:
        return [RowOf(label, (Work(alone["v"], None, reach="all"),), span=cursor.span(since))]
    items = run(cursor)
    if items:
        fabric = run_on(cursor, items, since)
        if fabric is not None and not label.numbers:
            return [fabric]
        cursor.take(r"across(?: (?:row|all st))?|to end(?: of row)?")
        return [RowOf(label, _with_rest(cursor, items), span=cursor.span(since))]
    return [RowOf(label, (), span=row)]


def _shaped_rows(cursor: Cursor, label: Label, since: int) -> Step | None:
    """Read 'Next 2 rows: bind off 3 sts at beg of each row', 'Next 6 rows: decrease 1 st at beg of each row'."""
    if label.rows is None:
        return None
    match = cursor.take(
        r"(?P<a>bo|dec|inc) (?P<n>{N})(?: st)? (?:at |on )?(?:(?P<e>beg|end) of (?:each|every|these)(?: row)?|(?P<b>each end|each side|both end|both side)(?: of (?:each|every) row)?)"
    )
    if match is None:
        return None
    n, edge = figure(match) or ONE, "both" if match["b"] else match["e"]
    if match["a"] == "bo":
        return BindOffs(n, rows=label.rows, edge="beg" if edge != "both" else "both", span=cursor.span(since))
    cadence = Cadence(every=ONE, first=ONE, goal=Goal(times=label.rows, count="in all"))
    return Shape(match["a"], n, edge, (cadence,), span=cursor.span(since))


def _bare(cursor: Cursor, since: int) -> list[Step] | None:
    items = run(cursor)
    if not items:
        cursor.pos = since
        return None
    fabric = run_on(cursor, items, since)
    if fabric is not None:
        return [fabric]
    return [RowOf(None, _with_rest(cursor, items), span=cursor.span(since))]


def _with_rest(cursor: Cursor, items: Run) -> Run:
    """'Bind off the next 28 and on the remaining 26 knit 5 ribs': the row is worked to its end."""
    if isinstance(items[-1], BindOff) and cursor.see(r",? ?(?:and )?(?:beg [a-z]+ )?on (?:rem|alt|last) {N} st"):
        return (*items, Work("k", None, reach="end"))
    return items


def _label(cursor: Cursor) -> Label | None:
    since = cursor.pos
    match = (
        cursor.take(r"(?:on |in |work |beg )?(?P<k>row|rnd)s? (?P<m>" + MANY + r")(?: and (?:all|every|each) (?P<e>even|odd|alt|foll alt|rs|ws)(?: numbered)?(?: (?:row|rnd))?)?(?: and (?P<e2>all|every) alt row)?" + SIDE + SIGN)
        or cursor.take(r"(?:on |in |work )?(?P<m>" + MANY + r") ?(?:and (?:(?:all|every|each) )?(?:foll )?(?P<e>alt|even|odd|foll|ws|rs)(?: numbered)? ?)?(?P<k>row|rnd|needle)(?: (?:and (?:all|every|each) (?P<e2>alt|even|foll)(?: (?:row|rnd))?)?)?" + SIDE + SIGN)
    )  # fmt: skip
    if match:
        counted = match.re.pattern.find("(?P<k>row|rnd)s? (?P<m>") < 0 and "th" not in match["m"]
        if (match["k"] == "needle" and cursor.see(r"{ROW}")) or (counted and not re.search(r"[:-] *$", match.group())):
            cursor.pos = since
            return None
        return _numbered(match)
    firsts = cursor.take(r"(?:work )?<1>th (?P<n><\d+>) (?P<w>row|rnd)" + SIDE + r"(?: ?(?:: ?-|:|\. ?--|--|,|-))")
    if firsts:
        return Label(
            tuple(range(1, 1 + int(firsts["n"].strip("<>")))), side=_side(firsts["side"]), round=firsts["w"] == "rnd"
        )
    match = cursor.take(
        r"(?:and )?(?:on |in |work |beg |for )?(?:the )?(?P<k>next|foll|last|dec|inc|<\d>th dec|buttonhole|patt|set up|cable|joining|divid\w*|eyelet|beading|opening|turning|hem|fold|beg|each (?:alt|foll)|alt|every|picot|final|first|starting|<1>th inc) (?:(?P<r>{N}) )?(?P<w>row|rnd)(?: (?:of|after) (?:rib|patt))?(?P<dec> \( (?:dec|inc) (?:row|rnd) \))?"
        + SIDE
        + r"(?: ?(?:: ?-|:|\. ?--|--|\.|,|-))"
    )
    if match:
        name = match["k"]
        return Label(
            (),
            rows=figure(match, "r") if match["r"] else None,
            side=_side(match["side"]),
            name=name,
            round=match["w"] == "rnd",
        )
    match = cursor.take(
        r"(?:(?:on|in) )?(?:next|foll|this|last) (?P<w>row|rnd)(?: ,)?(?= (?:k|p|work|bo|sl|\*|\(|rib|patt|moss|inc|m|yo|narrow|skip)\b| \*| \()"
    )
    if match:
        return Label((), name="next", round=match["w"] == "rnd")
    match = cursor.take(
        r"(?P<n><\d+>) \.(?= (?:k|p|sl|\*|\(|narrow|n |o |over|yo|like|same|as|make|inc|bo|co))"
    ) or cursor.take(
        r"(?P<n><\d+>th) (?:\. --|\. -|--|:|\.)(?= (?:k|p|sl|\*|\(|narrow|n |o |over|yo|like|same|as|make|inc|bo|co|rib|seam|work)\b)"
    )
    if match:
        return Label((int(match["n"].strip("<>th")),))
    return None


def _numbered(match: re.Match[str]) -> Label:
    text = match["m"]
    last_values: Figure | None = None
    numbers: list[int] = []
    for joiner, value in re.findall(r"(,|and|to|thru|-|&|--|, and)? ?<([\d|]+)>", text):
        part = [int(one) for one in value.split("|")]
        if joiner in ("to", "thru", "-", "--") and numbers:
            numbers += range(numbers[-1] + 1, min(part[0], numbers[-1] + 500) + 1)
            if len(part) > 1:
                last_values = Figure(tuple(float(one) for one in part))
        else:
            numbers.append(part[0])
    every = match.groupdict().get("e") or match.groupdict().get("e2") or ""
    every = {"odd": "alt", "even": "alt", "foll alt": "alt", "foll": "alt", "all": "alt", "every": "alt"}.get(
        every, every
    )
    return Label(
        tuple(numbers),
        last_values,
        every=every,
        side=_side(match["side"]),
        round=match["k"] == "rnd",
        needle=match["k"] == "needle",
    )


def _side(text: str | None) -> str:
    if not text:
        return ""
    if re.search(r"\bws\b", text):
        return "ws"
    return "rs" if re.search(r"\brs\b", text) else ""


def _reference(cursor: Cursor) -> tuple[int, ...]:
    match = cursor.take(
        r"(?:work |k )?(?:(?:same|exactly|worked) )?(?:as|like|rep|same)(?: as)?(?: (?:given|directed|described))? (?:in |for |of )?(?:(?:row|rnd)s? )?(?P<m>"
        + MANY
        + r")(?: (?:patt )?(?:row|rnd))?(?! (?:st|x|inch))(?: (?:of patt|row|again))*"
    )
    if match is None:
        return ()
    return _numbered_list(match["m"])


def _numbered_list(text: str) -> tuple[int, ...]:
    numbers: list[int] = []
    for joiner, value in re.findall(r"(,|and|to|thru|-|&|--|, and)? ?<([\d|]+)>", text):
        number = int(value.split("|")[0])
        if joiner in ("to", "thru", "-", "--") and numbers:
            numbers += range(numbers[-1] + 1, min(number, numbers[-1] + 500) + 1)
        else:
            numbers.append(number)
    return tuple(numbers)


def _rep_them(cursor: Cursor, before: list[Step]) -> Step | None:
    """'These 12 rows form one wedge. Repeat them 9 times more.'"""
    since = cursor.pos
    if not cursor.take(r"(?:and )?rep (?:them|these|it|whole)(?= <[^>]*> (?:x|more))"):
        return None
    told = next((step for step in reversed(before[-4:]) if isinstance(step, RepeatRows) and step.pattern), None)
    return _how_often(cursor, RepeatRows(told.last if told else None, rows=told.rows if told else ()), since)


def repeats(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read 'repeat last 2 rows until 30 remain', 'repeat these 8 rows for pattern', 'work the 2 raglan rows of back'."""
    them = _rep_them(cursor, before)
    if them is not None:
        return them
    since = cursor.pos
    match = cursor.take(
        r"(?:and )?(?:cont (?:to )?)?(?:work )?(?:rep|cont rep|work|alt|cont)(?: (?:in|to|by|of))?(?: (?:this|these|those|them|last|foll|above|<1>th|first|previous|both|all|same|rep))* (?:(?P<n>{N}) )?(?:(?:raglan|patt|dec|inc|shape|last|rib|lace|cable) )*(?P<w>row|rnd)(?! (?:<[^>]*>(?! (?:more )?x)|of (?:back|front)|and (?:p|k|plain|next|foll|even) (?:row|rnd)))"
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
        numbers = _numbered_list(match["m"] or match["m2"] or match["m3"])
        return _how_often(cursor, RepeatRows(None, rows=numbers, piece=match.groupdict().get("p") or ""), since)
    match = cursor.take(
        r"(?:and )?(?:work|rep)(?: <2>)?(?: last)? (?P<s>dec|raglan|inc|shape) (?:row|rnd) and (?:p|k|plain|next|foll|even) (?:row|rnd)(?: (?:of|as on|on|for|same as on) (?P<p>back|front|left front|sleeve))?"
    )
    if match:
        return _how_often(
            cursor, RepeatRows(Figure((2.0,)), piece=match["p"] or "", section="raglan" if match["p"] else ""), since
        )
    match = cursor.take(
        r"(?:and )?(?:these|above|last|foll) (?P<n>{N}) (?:row|rnd) (?:form|make|complete|are|comprise|constitute)s?(?: (?:[a-z]+|<1>)){1,3}(?= [.;,]|$)"
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
        r"(?:and )?cont (?:to )?(?:dec|inc)(?: <[^>]*>)?(?: st)?(?: in (?:this|same) (?:manner|way)| asbefore)?(?= (?:in |on )?(?:every|each)| ,)"
    ) or cursor.take(
        r"(?:and )?(?:(?:cont|work|proceed|rep|so on|and so on|keep on|go on)(?: (?:in|to|on|dec|inc|rep|work|as|these|row|<\d>))* ?(?:(?:in|as) (?:this|same|that)(?: (?:manner|way))?|thus|asbefore|dec|so|in foll)|and on|in this (?:manner|way)|so on|cont to dec|cont dec|cont(?: use)? (?:k|plain) and inc row|cont inc and (?:k|plain) row|cont to inc(?: {N} st)?(?: by yo)?(?= every| in| on| ,))"
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
        cadence = cursor.take(r"(?:on |in )?(?:every|each) (?P<o>alt|foll alt|<\d>th)? ?(?:row|rnd)")
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


def structure_after(steps: list[Step]) -> str:
    """Return the structure that was last named."""
    return next((step.name for step in reversed(steps) if isinstance(step, Structure)), "")
