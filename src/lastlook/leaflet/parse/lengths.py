"""How far: lengths, rows, matching lengths, and the row or edge an instruction ends at."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.leaflet.instruction import Ending, Goal
from lastlook.leaflet.parse.cursor import Cursor, figure, mm_of
from lastlook.leaflet.trade.sizelist import Figure

THING = (
    r"(?:piece|work|it|underarm|back|front|sleeve|armhole|foot|leg|band|collar|rib|strip|all|underarm|left front|right front|cuff|"
    r"garment|length|edge|side|sleeve seam|beret|total length|whole|shoulder|hat|scarf|belt|body|raglan|side edge|"
    r"sweater|join|tie|panel|coat|jacket|vest|blanket|afghan|dress|stocking|glove|mitten|helmet|muffler|cape|pocket|shawl|stole|jumper|cardigan|"
    r"pullover|blouse|skirt|bonnet|bootee|cover|rug|square|lace|edging|tube|hood|insertion|robe|sacque|"
    r"hand|crown|yoke|thumb|border|sock|fronts|this|entire piece|neckband|seam|hem|st|cap|side seam|patt|center)"
)
ANYTHING = r"(?!there |you |st |it is )[a-z]++(?: [a-z]++){0,5}?"
"""Whatever may be measured: what is said of it follows."""
ABOUT = r"(?:about |approx |not quite |almost |nearly |full |fully |good )?"
OTHER = r"(?:(?:armhole|underarm|side|length|sleeve) of (?:back|front)|back|front|left front|right front|<1>th (?:front|side|sleeve|piece)|alt (?:front|side|sleeve|piece)|left|right|sleeve|that of back|other|back armhole|back shoulder|on back|of back|left side|right side|piece)"
PLACES = r"(?:underarm|armhole(?: shape)?|shoulder(?: shape)?|neck(?: shape)?|raglan(?: shape)?|beg of armhole|bo|markers?|beg of raglan|(?:start of )?shape|sleeve|waist(?:line)?|top|rib|cuff|beg)"
OPTIONAL = (
    r"(?:[,(] )?or (?:(?:to |for |any |as )?(?:length |long )?(?:desired|as desired|as required)(?: length)?"
    r"(?: (?:to|for|from|at|of) (?:\w++ ?){1,3}?)?(?: \))?(?=[,;.)]| end| and|$)|(?:about )?{N} {L} (?:less|shorter|more|longer) than (?:\w++ ?){1,5}?(?=[,;.]|$))"
)


def _place(text: str, subject: str) -> str:
    if subject == "armhole" and re.search(r"\bshape\b|\bbeg of\b", text):
        return "armhole"
    for word, place in (("heel", "heel"), ("underarm", "underarm"), ("armhole", "armhole"), ("marker", "marker"),
                        ("bo", "armhole"), ("rib", "rib"), ("cuff", "rib"), ("divid", "divide"), ("neck", "neck")):  # fmt: skip
        if re.search(rf"\b{word}", text):
            return place
    if text.strip() and not text.startswith("meas on"):
        return "beg"
    subject = " ".join(subject.split()[:3])
    for word in re.findall(r"[a-z]+", subject):
        if word in OWN_START:
            return OWN_START[word]
    return "beg"


OWN_START = {
    "armhole": "armhole", "raglan": "armhole", "rib": "here", "foot": "heel", "cap": "armhole", "border": "here",
    "band": "beg", "heel": "here",
}  # fmt: skip
"""Where a length is measured from that is named by the part alone: an armhole from its own beginning."""


FROM = (
    r"(?: ?,? ?(?P<f>(?:(?:even )?(?:up )?from|above|after|beyond|meas on|meas from|past|below) (?:(?:(?:straight|even)(?: from \w+)?)|"
    r"(?:last |first |<1>th |center |lower |back |beg |end |top )*(?:beg|bo off|co st|dec point|co(?: edge)?|start|row|hem(?:line)?|underarm|armhole(?: shape)?|edge|bo|rib|"
    r"of|shape|heel|marker|neck|cuff|inc|dec|side|tip|waist|turning|divid\w*|picked|st|here|shoulder|back|point|border|base|ridge|toe)"
    r"(?: (?:of|shape|edge|row|rib|heel|st|bo|back|armhole|neck|underarm|raglan|beg|at underarm|at armhole|for armhole|for underarm))*)))?"
)


def goal(cursor: Cursor) -> Goal | None:
    """Read how far, None where nothing here says it."""
    found = _length(cursor) or _open(cursor) or _like(cursor) or _rows(cursor) or _count(cursor)
    if found is None:
        return None
    if cursor.take(OPTIONAL):
        found = replace(found, optional=True)
    return found


def _open(cursor: Cursor) -> Goal | None:
    """Read 'until of the length required', 'until band fits along front edge': a length that the maker settles."""
    match = cursor.take(
        r"(?:until|for|to) (?:(?:you (?:have|having)|it is|is|of|(?:work|piece|band|strip|border) is|a|as long as|sufficient|any) )*"
        r"(?:length|size) (?:is )?(?:desired|as desired)|until (?:you having |there is )?(?:sufficient|enough)(?: length)?|(?:until|to) (?:it is |band is |(?:work|piece|strip|border) is )?as long as desired"
    ) or cursor.take(
        r"until (?:[a-z]+ )?is (?:a perfect )?square"
        r"|until (?:band|border|strip|it|piece|edging|work|collar)(?: ,? ?(?:when )?(?:stretched|st slightly|slightly stretched)(?: ,)?)? (?:fits?|is long enough|will (?:fit|reach|go)|reaches|is sufficient)(?: (?!end |and bo|bo )[a-z]+){0,14}"
    )
    if match is None:
        parts = cursor.take(
            r"until (?:there are|you having(?: made)?) (?P<n>{N}) (?:points?|scallops?|patt|rep|wedges?|squares?|holes?|stripes?|repeats?)(?: in-all)?"
        )
        return Goal(times=_n(parts), count="in all") if parts else None
    return Goal(like="?", optional=True)


def _length(cursor: Cursor) -> Goal | None:
    match = cursor.take(
        r"(?:until|to|when|for) (?:(?:the |total )?(?P<s>" + ANYTHING + r") )?(?:meas|is|are|be|is about|having reached) (?:(?P<b>from (?:[a-z]+|<1>th)(?: [a-z]+){0,5}?) )?" + ABOUT
        + r"(?P<n>{N})(?: (?P<u>{L})|(?= [,;.]))(?: (?:long|deep|in length|high|in depth|in-all|wide))*" + FROM
    )  # fmt: skip
    if match:
        return Goal(
            mm=mm_of(_n(match), match["u"] or "inch"), place=_place(match["f"] or match["b"] or "", match["s"] or "")
        )
    match = cursor.take(
        r"(?:until|to|when) (?:you have |there are |there is |you having |having )?" + ABOUT + r"(?P<n>{N}) (?P<u>{L})"
        r"(?: (?:long|deep|in length|high|have been (?:work|k|made)|having been (?:work|k)|are (?:work|k|done)|is work|work|k))*" + FROM
    )  # fmt: skip
    if match:
        return Goal(mm=mm_of(_n(match), match["u"]), place=_place(match["f"] or "", ""))
    match = cursor.take(
        r"(?:until|to) (?:(?P<s>"
        + THING
        + r") (?:meas|is) )?(?:(?:length|depth|total|total length|meas) (?:of )?)?"
        + ABOUT
        + r"(?P<n>{N}) (?P<u>{L})"
        + FROM
    )
    if match:
        return Goal(mm=mm_of(_n(match), match["u"]), place=_place(match["f"] or "", match["s"] or ""))
    match = cursor.take(
        r"(?:for |over )?(?:a )?"
        + ABOUT
        + r"(?:another |further |depth of |length of |total of |additional )?(?P<n>{N}) (?P<u>{L})(?P<more> more)?(?: (?:deep|long|in-all|wide|in depth|in length))?"
        + FROM
    )
    if match:
        place = _place(match["f"] or "", "") if match["f"] else "here"
        return Goal(mm=mm_of(_n(match), match["u"]), place=place)
    return None


def _like(cursor: Cursor) -> Goal | None:
    match = cursor.take(
        r"(?:(?:until|to|for|when) )?(?:(?P<s>" + THING + r") )?(?:(?:is |are |to |meas |be |has )*)(?:of |the )?"
        r"(?:same (?:length|depth|number of row|meas)|(?:same|that) as(?= (?:armhole|underarm|side|sleeve) of)|same|length|as long|correspond(?: in length)?|equal(?:s)?(?: in length)?|"
        r"even) (?:(?:as|to|with|use|in length to|use that of|in length) )?(?:(?:on|of|for|in|for) )?(?P<w>" + OTHER + r")"
        r"(?: armhole| shoulder)?(?: (?:to|at|up to|as far as|until) (?:beg of )?(?P<t>" + PLACES + r"))?"
    )  # fmt: skip
    if match:
        own = _length(cursor) if cursor.see(r" ?for {N} {L}") else None
        if own is not None:  # 'in ribbing same as for back for 3 inches' has a length of its own
            return own
        to = match["t"] or ("shoulder" if match["s"] == "armhole" else "")
        return Goal(like=match["w"], to=to, place="armhole" if match["s"] == "armhole" else "beg")
    tall = cursor.take(
        r"(?:until |to )?(?:(?:it|work|piece|this side) )?(?:is )?(?:as high|as far|as long|to same height|same height|level|even) (?:as|with|use) (?P<w>"
        + OTHER
        + r")(?: (?:to|at|up to) (?P<t>"
        + PLACES
        + r"))?"
    )
    if tall:
        return Goal(like=tall["w"], to=tall["t"] or "")
    match = cursor.take(r"until (?:work |piece )?(?:reaches |comes to |to )(?P<t>underarm|armhole|shoulder|neck)")
    return Goal(like="?", to=match["t"]) if match else None


def _rows(cursor: Cursor) -> Goal | None:
    match = cursor.take(
        r"(?:for |until )?(?:you having |there are |there having |you having made )?(?:the )?(?:next |foll |another |about )*(?P<n>{N}) (?:more |plain |foll |complete |further |k |alt |even )*"
        r"(?P<w>row|rnd|ridge|rib(?= ?[.,;:(]|$| on| (?:are|having)))(?! {N}| (?:above|of (?:k|p)\b))(?: (?:have been|are|having been|in-all) ?(?:work|k|made|done|complete|completed|finished)?)?"
    )  # fmt: skip
    if match is None:
        return None
    rows = _n(match)
    if match["w"] in ("ridge", "rib"):
        rows = Figure(tuple(2 * one for one in rows.values))
        cursor.take(r"\( {N} row \)")
    return Goal(rows=rows)


NEEDLES = {"each side": "<1>th", "front": "<2>th", "instep": "<2>th"}


def _count(cursor: Cursor) -> Goal | None:
    match = cursor.take(
        r"(?:until|to) (?:(?:there are|there is|there be|there will be|there should be|you have|you having|having|only|but|rem|there rem|have|all but|of|number|st|reduced to|number is reduced to|decreased to|dec to|number is dec to|inc to|is|are) )*(?P<n>{N})(?: st)?"
        r"(?: (?:{LEFT}(?: over)?|across|upon needle|on (?:(?:each side|each|<1>th|<2>th|<3>th|<4>th|hold|all|front|instep) )?needle|on (?:each|both)(?: side)?|are {LEFT}(?: over)?|in-all|of raglan {LEFT}|on (?:all )?needle in-all))*"
        r"(?: in (?:raglan|armhole|neck|\w+)(?: shape)?)?"
    )  # fmt: skip
    if match is None:
        return None
    if cursor.take(r"(?:st )?(?:{LEFT} )?unworked(?: (?:at|on) (?:each|both|either) (?:side|end))?"):
        return Goal(until=_n(match), until_what="unworked")
    what = re.search(r"on (<\d>th|each|each side|front|instep) needle", match.group())
    between = cursor.take(
        r"(?:st )?between (?:the )?(?:<2> )?(?:markers?|inc|widen|dec|p st|p|seam st)(?: , m <1> at each side included)?"
    )
    return Goal(
        until=_n(match), until_what=NEEDLES.get(what.group(1), what.group(1)) if what else "between" if between else ""
    )


def _n(match: re.Match[str]) -> Figure:
    return figure(match) or Figure((1.0,))


def ending(cursor: Cursor) -> Ending | None:
    """Read 'ending with a purl row', 'ending at front edge'."""
    since = cursor.pos
    match = cursor.take(
        r"(?:(?:[,(]|--|-) )?(?:and |or )?(?:end|finish|finishing|last row)(?: (?:use|on|after|in|at|off use|having|to have|being))*(?: (?:last|one|work|complete|either|<1>))*"
        r" (?:(?P<row>{N} (?:k|p)(?= row)|p|k|ws|rs|<\d+>th(?: or <\d+>th)?|row <\d+>|rib|patt|even|dec|inc|buttonhole)(?: (?:of|st|patt|rib))*(?: (?P<o>row|rnd|patt|side|rep))?(?: of work| of patt| (?:of )?ws| facing| row)*|(?P<e>front|neck|center|armhole|side|underarm|cuff|shoulder|inner|outer|toe|back)(?: front)?(?: edge)?)(?: \))?"
    )  # fmt: skip
    if match is None:
        after = cursor.take(
            r"(?:[,] )?(?:so that )?(?:use )?(?P<r>rs|ws)(?: of work)? facing(?: (?:for|you|use) (?:next row|{N}|\w+))?"
        )
        if after is None:
            return None
        return Ending(row="ws" if after["r"] == "rs" else "rs", span=cursor.span(since))
    edge = match["e"] or ""
    extra = cursor.take(
        r"\( (?:at|on) (?P<e>front|neck|center|armhole|side) edge \)|at (?P<g>front|neck|center|armhole|side) edge"
    )
    row = match["row"] or ""
    if row in ("rib", "patt", "even", "dec", "inc", "buttonhole") or "<" in row:
        row = _numbered(row)
    if extra and not edge and not row:
        edge = extra["e"] or extra["g"]
    return Ending(row=row, edge=edge, span=cursor.span(since))


def _numbered(row: str) -> str:
    """The 4th row of a pattern is a wrong-side row if it is even."""
    row = row.removeprefix("row ")
    if not row.startswith("<"):
        return ""
    told = re.fullmatch(r"<(\d+)>th(?: or <\d+>th)?|<(\d+)>", row)
    if told is None:
        return row[-1] if row[-1] in ("k", "p") else ""
    return "ws" if int(told[1] or told[2]) % 2 == 0 else "rs"
