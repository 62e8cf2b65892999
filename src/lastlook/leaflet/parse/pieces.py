"""Pieces by reference: as another piece, mirrored, a second side; and the names of their parts."""

from __future__ import annotations

from dataclasses import replace

from lastlook.leaflet.instruction import Apart, Buttonholes, Copy, Goal, Marker, OtherSide, Section, Step
from lastlook.leaflet.parse.cursor import Cursor, figure, mm_of
from lastlook.leaflet.parse.lengths import ending, goal
from lastlook.leaflet.parse.stitch.runs import run

PARTS = (
    r"raglan(?: (?:armhole|sleeve|shape))?|armhole|shoulder|neck(?:line)?|v neck|back neck|front neck|cap|top|sleeve cap|sleeve top|"
    r"top of sleeve|sleeve|crown|heel|turn heel|heel flap|gussets?|toe|foot|leg|cuff|instep|thumb|side|front|waist|yoke|hand|"
    r"pocket|back|collar|dart|underarm|hood|brim|body|hem|skirt|lapel|top shape|edge|tip|point|decs?"
)
PIECES = r"(?:left front|right front|left back|right back|back|front|left sleeve|right sleeve|sleeve|<1>th (?:front|sleeve|side|sock|mitten|glove|one|half|piece|shoulder)|left (?:side|shoulder|mitten|glove|half)|right (?:side|shoulder|mitten|glove|half)|first|pocket|alt (?:front|side|sock|sleeve|mitten|shoulder|piece|one)|that)"
WORDS = r"(?:exactly |just |much )?(?:same|as given|as|like|as directed|as described|as worked|as for|same way|in same (?:way|manner)|to correspond|correspond|from)(?: (?:as|given|directed|described|way|to|use|worked|work|was|were|that|for|of|on|in|instructions|those|the|manner|with))*"


def pieces(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read one reference to a piece or a part."""
    since = cursor.pos
    found = _other_side(cursor) or _part_like(cursor) or _copy(cursor) or _section(cursor, before) or _apart(cursor)
    found = found or _buttonholes(cursor) or _marker(cursor)
    return replace(found, span=cursor.span(since)) if found else None


def _other_side(cursor: Cursor) -> Step | None:
    if cursor.take(
        r"(?:and )?(?:(?:work|complete|finish|cont|k|make)(?: (?:off|it|this|alt|<2>th|rem|left|right|side|shoulder|st|neck|half|of|and|work|these|other|in|patt|front))* )(?:to correspond|same as|as|like|as for|same manner as|in same (?:way|manner) as|to correspond to|to correspond use|correspond)(?: (?:<1>th|first|alt|left|right|other))? ?(?:side|shoulder|half|one|side of neck|first|<1>th)(?: ?,? ?(?:but )?(?:rev|omit)(?: (?:all|shape|directions|the|neck|side|of)){0,4})?"
    ):
        return OtherSide()
    if cursor.take(
        r"(?:and )?(?:(?:work|complete|finish) )?(?:the )?(?:alt|<2>th|rem|left|right|opposite) (?:side|shoulder|half|neck edge)(?: of (?:\w++ ?){1,3})?(?: (?:in|to|the|same|way|manner|exactly|is|work|as|<1>th|first|correspond|side|like|alike)){1,8}(?: ?,? ?rev(?: (?:all|shape|directions|the|of)){0,4})?"
    ):
        return OtherSide()
    if cursor.take(
        r"(?:and )?(?:make|work|k) (?:alt|<2>th) (?:front|side|shoulder|half)(?: of (?:neck|front))? (?:in )?(?:the )?same(?: (?:way|manner))?(?= ?[,;.]| rev|$)"
    ):
        return OtherSide()
    if cursor.take(
        r"(?:and )?(?:connect|join|attach|fasten)(?: (?:in|yarn|on|at|to))* (?:alt|<2>th|opposite|rem) side(?: of (?:\w++ ){1,2}?)?(?: ?,)? ?and (?:finish|work|complete|k)(?: (?:to|as|alt|this|side|it|off))* correspond(?: (?:to|use|<1>th|first|side))*"
    ):
        return OtherSide()
    if cursor.take(
        r"(?:and )?(?:complete|finish|work)(?: (?:to|as|alt|this|side|st|rem|these|front|half|shoulder|opposite|of neck))* correspond(?: (?:to|use|side|alt|<1>th|first))*(?: ?,? ?rev (?:all )?shape)?(?= [,;.:]|$)"
    ):
        return OtherSide()
    if cursor.take(
        r"(?:and )?(?:finish|complete)(?: (?:same|alt|st|side))* as (?:<1>th|first)(?: (?:side|shoulder))?(?: ?,? ?(?:rev|but rev)(?: (?:all )?shape)?)?"
    ):
        return OtherSide()
    return None


PAIRED = r"(?:sleeve|pocket|cuff|bootee|glove|mitten|mitt|sock|slipper|leg|band|strap|gusset|earflap|tab|half|piece)s?"


def _copy(cursor: Cursor) -> Step | None:
    since = cursor.pos
    match = cursor.take(
        r"(?:and )?(?:work|make|k|cont|follow(?:ing)?|complete|finish|proceed|this piece is work|foll|co and work|rep|worked)(?: (?:directions|instructions|even|for|another|exactly|piece|on|work|it|the|front|this|side|right|left|sleeve|<2>th|rnd|a|alt|off|in|patt|and|st))* ?"
        + WORDS
        + r" (?P<p>"
        + PIECES
        + r")(?! (?:edge|st|needle|row))"
    )
    if match is None:
        match = cursor.take(
            r"(?:exactly )?(?:same|like|as)(?: (?:as|for|given|of|directions))* (?P<p>"
            + PIECES
            + r")(?=(?: [,;.:]|$| until| to| rev| but| use))"
        )
    if match is None:
        match = cursor.take(
            r"(?:work |make )?(?:to correspond|rev)(?: (?:to|use|all|directions|shape|of|for|in))* (?P<p>"
            + PIECES
            + r")"
        )
    if match is None:
        return None
    mirrored = "correspond" in match.group() or "rev" in match.group().split()
    found = Copy(match["p"], mirrored=mirrored)
    for _ in range(6):
        spot = cursor.pos
        cursor.take(r",|;|and|but|:")
        if (
            cursor.take(
                r"(?:but )?(?:rev|with|use)(?: (?:all|shape|the|shapings|position|of|directions|neck|armhole|shoulder|side|edges|end|row|border|opening|front|and|rev|every|patt|instructions)){1,9}"
            )
            and "rev" in cursor.text[spot : cursor.pos]
        ):
            found = replace(found, mirrored=True)
            continue
        until = cursor.take(
            r"(?:to|until|up to|as far as)(?: (?:beg of|start of|end of|you (?:come|get|reach) to|reach|complete|the))* (?P<t>armhole|shoulder|neck|raglan|underarm|rib|cuff|heel|shape|toe|thumb)(?: (?:shape|opening|dec|armhole|edge))?(?: (?:is|are|has been|have been|having been|having) (?P<d>bo|work|complete|completed|reached|done|finished|made)(?: \( (?P<n>{N}) st(?: now)?(?: on needle)? \))?)?(?! meas)"
        )
        if until:
            if until["n"]:
                found = replace(found, goal=Goal(until=figure(until)))
            else:
                done = until["d"] is not None and until["d"] != "reached" and until["t"] in ("armhole", "raglan")
                found = replace(found, until_section=f"{until['t']} done" if done else until["t"])
            continue
        far = goal(cursor) if found.goal == Goal() else None
        if far is not None:
            cursor.take(r"in (?:raglan|armhole|neck)(?: shape)?|of raglan rem|on needle")
            found = replace(found, goal=far)
            continue
        last = ending(cursor)
        if last is not None:
            found = replace(found, ending=last)
            continue
        cursor.pos = spot
        break
    if not mirrored and found == Copy(match["p"]) and "rep" in match.group().split():
        cursor.pos = since
        return None
    return found


def _part_like(cursor: Cursor) -> Step | None:
    """Read 'shape armhole same as back', 'complete raglan as on back', 'work neckband as for front'."""
    since = cursor.pos
    same = cursor.take(r"(?:and )?sametime(?: ,)?")
    cursor.take(r"(?:and )?when front meas same as back ,?")
    match = cursor.take(
        r"(?:to )?(?:and )?(?:shape|work|complete|cont|make|bo|dec for|finish|cont to shape)(?: (?:dec|shape|at|the|for|of|all|edge|st|left|right))* (?P<s>raglan|armhole|shoulder|neck|cap|top|collar|waist)(?: (?:shape|edge|dec|and (?:shoulder|neck)|only))* "
        + WORDS
        + r" (?P<p>"
        + PIECES
        + r")(?: to correspond)?"
    )
    if match is None:
        cursor.pos = since
        return None
    return Copy(match["p"], section=match["s"], same_time=bool(same))


def _section(cursor: Cursor, before: list[Step]) -> Step | None:
    match = cursor.take(
        r"(?:to )?(?:(?:next )?(?:shape|divide) (?:st )?(?:for )?)(?:(?:left|right|beg|front|back|the|of|for|<1>th|<2>th|first|side|lower) )*(?P<s>"
        + PARTS
        + r")(?: (?:and (?:neck|armhole|shoulder|back|front|sleeve)|shape|edge|opening|of (?:neck|sleeve)|line|slope|opening|armhole))*(?: (?:on|in) next (?:(?:k|p|rs|ws) )?row)?(?: ?(?:as foll|and work as foll))?(?: ?(?:: ?-|:|\. ?--|\. ?-|--|\.|,|-|$)|(?= (?:bo|co|next row|dec|<1>th row|k|work|cont|keep|beg|at|on|to|with|use)\b))"
    )
    if match:
        return Section(match["s"])
    match = cursor.take(
        r"(?:and )?(?:dec|narrow|inc|widen|work) (?:for|at) (?P<s>toe|heel|thumb|crown|top|ankle|instep|leg|gussets?)(?: shape)? (?:as foll|in foll (?:way|manner)|thus)(?: ?:)?"
    )
    if match:
        return Section(match["s"])
    match = cursor.take(r"(?:left |right |for |front |back )?(?P<s>" + PARTS + r")(?: shape)? (?:: ?-|:|\. ?--|--)")
    if match:
        return Section(match["s"])
    match = cursor.take(
        r"(?:and )?(?:shape|beg|start|work)(?: (?:to|and|work|the|dec|beg|shape))* (?P<s>raglan|neck|armhole|shoulder|cap|crown|toe|heel)(?: (?:shape|edge|dec))*(?: ?(?:as foll|thus))(?: ?:)?"
    )
    if match:
        return Section(match["s"])
    return None


def _apart(cursor: Cursor) -> Step | None:
    if cursor.take(
        r"(?:and )?(?:cont |now )?(?:work(?: on)?|k)(?: (?:on|in|each|patt|even|stst))* (?:(?:both|each|two|these <2>) (?:side|shoulder|set of st|half|front|part)|both (?:set of )?st|<2> (?:side|shoulder|set of st|half|part))s?(?: (?:of neck|of st|at (?:once|same x)|sametime|separately|tog|use separate (?:balls?|skeins?)(?: of yarn)?|at one time|simultaneously|at <1> x|alike|of (?:neck|work)))*"
    ):
        return Apart()
    return None


def _buttonholes(cursor: Cursor) -> Step | None:
    match = cursor.take(
        r"(?:and )?(?:sametime )?,? ?(?:work|make|making|with|having|forming|use)(?: (?:more|<1>|first|further|foll))* (?:(?P<n>{N}) )?(?:more )?buttonhole(?: in (?:[a-z]+ ){1,3}border)?(?: (?:on|in|at|every|evenly|spaced|asbefore))*"
    )
    if match is None:
        return None
    cursor.take(r"after (?:the )?(?:<[^>]*>th|next|<[^>]*>|first) {L}(?: and)?")
    first = cursor.take(
        r"(?:[,:] ?)*(?:<1>th (?:<1> )?(?:on|in) )?(?P<f>{N})th row(?: from (?:\w++ ?){1,3}?)?(?= and| ,)"
    )
    every = cursor.take(
        r"(?:,|and)? ?(?:(?:others?|alt|rem|rest|foll) )?(?:on |in )?(?:every )?(?:foll )?(?P<e>{N})(?:th)? row(?: (?:thereafter|after that|from <1>th buttonhole))*"
    ) or cursor.take(r"(?P<e>(?!x)x)?(?:every )?(?:foll )?{N} {L}(?: apart| thereafter)?")
    total = cursor.take(
        r"until (?:there are )?(?P<n>{N}) buttonhole(?: in-all)?(?: (?:having|have|been|are|were|in-all|is))*(?: (?:make|made|work|complete|completed|in-all))*"
    )
    n = figure(total) if total else (figure(match) if match["n"] else None)
    return Buttonholes(n, figure(first, "f") if first else None, figure(every, "e") if every and every["e"] else None)


def _marker(cursor: Cursor) -> Step | None:
    match = cursor.take(
        r"(?:and )?(?:place|placing|put|sl|tie|mark|marking|with)(?: (?:in|with|use))* (?:marker|marker of (?:\w++ ?){1,2}|colored yarn|yarn|contrast yarn|loop|end|thread|pin|row|each end|both ends)(?: (?:on|at|in|of|each|both|end|side|edge|row|needle|the|next|last|this|center|st|before|after|and|<[^>]*>|to|for|beg|marker|here|armhole|underarm|rnd|first|between|back|front|neck|<1>th|as|on back|use|to correspond|correspond|back to|pocket|sleeve|seam))*"
    )
    if match is None:
        return None
    when = cursor.take(
        r"when (?:work|piece|it|back|front|sleeve)? ?meas (?P<n>{N}) (?P<u>inch|cm)(?: from (?:\w++ ?){1,2})?"
    )
    value = figure(when) if when else None
    return Marker(mm_of(value, when["u"]) if when and value else None)


def same_run(cursor: Cursor) -> bool:
    """Whether stitches stand here."""
    spot = cursor.pos
    found = bool(run(cursor))
    cursor.pos = spot
    return found
