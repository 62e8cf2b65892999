"""A stretch of instructions as steps: each form is tried where the cursor stands; what none reads stays, marked."""

from __future__ import annotations

import re
from collections.abc import Callable

from lastlook.leaflet.instruction import Finish, Nothing, Step, Unread
from lastlook.leaflet.parse.counts import printed
from lastlook.leaflet.parse.cursor import Cursor
from lastlook.leaflet.parse.holding import holding
from lastlook.leaflet.parse.offs import offs
from lastlook.leaflet.parse.pieces import pieces
from lastlook.leaflet.parse.prose import nothing, sentence, style
from lastlook.leaflet.parse.row.again import progress, repeats
from lastlook.leaflet.parse.row.told import labelled
from lastlook.leaflet.parse.shaping import shape, shape_more
from lastlook.leaflet.parse.stitch.crochet import crochet, remark
from lastlook.leaflet.parse.working import plain_rows, work_more, work_on
from lastlook.leaflet.trade.canon import Canon

LEADING = frozenset({"needles", "yarn", "side", "place"})
"""What may stand before the verb of a sentence: 'using light wool, sew …'."""
Form = Callable[[Cursor, list[Step]], Step | None]
FORMS: tuple[Form, ...] = (
    printed, style, pieces, offs, holding, shape, repeats, progress, shape_more, work_on, work_more,
)  # fmt: skip
SEPARATORS = r"(?:,|;|\.|:|--|and(?! {N} st (?:on|at)| on (?:,|;))|but|-|or|=|after which|next(?= ?[,:]))"
PASSAGE = (
    r"(?:and )?(?:work|rep|k|foll|co and work)(?: (?:directions|instructions|patt))?(?: (?:from|between))? \* \* (?:to|and) \* \*"
    r"(?: (?:as|same as) (?:(?:given|on|for|of|in|work) )*(?:back|front|left front|right front|sleeve|<1>th [a-z]+))?(?: {N} x(?: more)?)?"
)
CLAUSE_END = re.compile(r" [,;.:](?= |$)| -- | and ")


def steps(canon: Canon, crocheted: str = "") -> list[Step]:
    """Return the steps of a stretch; with `crocheted` 'border' it is read as a crochet border."""
    cursor = Cursor(canon)
    out: list[Step] = []
    fresh = True
    while not cursor.done:
        separator = cursor.take(SEPARATORS)
        if separator:
            fresh = fresh or separator.group().strip() in (".", ":", ";", "--")
            continue
        found = _crocheted(cursor, out) if crocheted else _one(cursor, out, fresh)
        out += found
        fresh = fresh and all(isinstance(step, Nothing) and step.why in LEADING for step in found)
    return out


def _one(cursor: Cursor, out: list[Step], fresh: bool) -> list[Step]:
    since = cursor.pos
    if cursor.take(r"(?:(?:[()]|--|-) ){8,}"):
        return [Nothing("bracket", span=cursor.span(since))]
    if cursor.take(PASSAGE):
        return [Nothing("passage", span=cursor.span(since))]
    rows = labelled(cursor, out) if _starts_label(cursor) else None
    if rows:
        return rows
    if cursor.take(r"join (?:in )?(?:new|another|<2>th|separate|fresh) (?:ball|skein)(?: of yarn)?(?= ?[.;]|$)"):
        return [Nothing("yarn", span=cursor.span(since))]
    plain = plain_rows(cursor)
    if plain is not None:
        return [plain]
    for form in FORMS:
        step = form(cursor, out)
        if step is not None:
            return [step]
        cursor.pos = since
    rows = labelled(cursor, out)
    if rows:
        return rows
    cursor.pos = since
    known = nothing(cursor, out) or sentence(cursor, fresh)
    if known is not None:
        return [known]
    return [_unread(cursor)]


def _starts_label(cursor: Cursor) -> bool:
    if cursor.see(
        r"(?:work )?(?:row|rnd) <\d+>(?: ?(?:,|and|to|thru|-|--) ?<\d+>)* (?:of (?:back|front|left front|sleeve)|<\d+> x|until)"
    ):
        return False
    return bool(
        cursor.see(
            r"(?:on |in |work )?(?:row|rnd|next|<\d+>th|side needle|front needle|instep needle|alt side needle|dec|narrow(?= (?:on )?(?:<\d>th |next |every <\d>th |every alt )?(?:row|rnd) (?:as|in))|buttonhole|foll|<\d+>(?= (?:\.|row|rnd|,|and|to|-))|inc|set|cable|last|beg|first)"
        )
    )


def _crocheted(cursor: Cursor, out: list[Step]) -> list[Step]:
    since = cursor.pos
    rows = crochet(cursor, out)
    if rows:
        return rows
    cursor.pos = since
    if cursor.take(r"fasten off|break(?: off)?(?: yarn)?"):
        return [Finish("fastened off", span=cursor.span(since))]
    step = remark(cursor)
    return [step] if step else [Nothing(span=cursor.span(since))]


def _unread(cursor: Cursor) -> Step:
    """Move to the end of the clause and say that it was not understood."""
    since = cursor.pos
    stop = CLAUSE_END.search(cursor.text, cursor.pos + 1)
    cursor.pos = stop.start() + 1 if stop else len(cursor.text)
    if cursor.pos <= since:
        cursor.skip_word()
    return Unread(span=cursor.span(since))
