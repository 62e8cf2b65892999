"""Crochet borders: rows of chains and stitches worked on a knitted edge, summed like knitting.

US and UK names are told apart before this; here a stitch of any height is one for one.
"""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.leaflet.instruction import ONE, Group, Item, Label, Nothing, Printed, Run, Step, Taken, Turn, Unread, Work
from lastlook.leaflet.instruction import RowOf as Row
from lastlook.leaflet.parse.counts import printed
from lastlook.leaflet.parse.cursor import Cursor, figure
from lastlook.leaflet.parse.row.labels import label_of as row_label

S = r"(?:sc|dc|hdc|tr|dtr|d c|s c|st)"
ALONG = r"(?P<w>(?: (?:along|around|round|across|over|on|down|up|evenly|in|at|edge|front|neck|right|left|back|side|lower|of|to|corner|all|first|alt|sleeve|armhole|opening|border|each|rs)){1,12})"
ITEMS: tuple[tuple[str, str], ...] = (
    (r"(?:work )?(?P<n>{N}) " + S + r" (?:in|into|at|for) (?:each |same |next |alt |center (?:" + S + r" )?(?:of |at |in )?(?:each )?|the )*(?:corner|point|angle)(?: st| sc)?", "corner"),
    (r"(?:and )?(?:work )?(?P<n>{N}) " + S + r" (?:over|in|into|on|under) (?:(?:each|next|the) )*(?:ch(?: ?- ?{N}| {N})?|loop|sp|space|{N} ?- ?ch)(?: (?:loop|sp|space))?", "overchain"),
    (r"(?:and )?(?:work )?(?P<n>{N}) " + S + ALONG, "along"),
    (r"ch (?P<n>{N})(?: st)?(?: to turn)?(?= ?,? turn)", "turnchain"),
    (r"ch (?P<n>{N})|(?P<m>{N}) ch|make (?P<o>{N}) ch", "chain"),
    (r"(?:skip|miss|pass) (?:next )?(?P<n>{N})(?: " + S + r")?", "skip"),
    (r"(?:work )?(?P<n>{N}) " + S + r" in (?:next|same|one|<1>|each)(?: " + S + r")?(?! <)", "into"),
    (r"(?:work )?(?:<1> )?" + S + r" (?:in|into|on|over) (?:(?:each|every|<1>th|next|of|last|foll|the) )*(?P<n>{N})(?: " + S + r")?(?: before (?:corner|marker|end))?", "each"),
    (r"(?:<1> )?" + S + r" (?:in|into) (?:next|same|<1>th|last|center|corner)(?: (?:" + S + r"|st))?", "one"),
    (r"(?:work )?(?:<1> )?" + S + r" (?:in|into|on) (?:each|every)(?: (?:" + S + r"|st))*(?: (?:across|around|of (?:last|previous) (?:row|rnd)|to (?:end|corner)(?: of row)?|all (?:a)?round))*", "rest"),
    (r"(?:work )?(?:in )?" + S + r"(?: (?:in each " + S + r"))? (?:to end|across|to corner|all around|around|to last)(?: (?:of )?(?:row|rnd))?", "rest"),
    (r"(?:and )?dec <1> " + S, "dec"),
    (r"(?P<n>{N}) " + S + r"(?= [,;.*)]| and|$)", "plain"),
    (r"turn", "turn"),
    (r"(?:sl st|ss|join)(?: (?:in|to|into|use|with|<1>th|first|" + S + r"|sl|st|of|rnd|beg|top|next|row))*", "slip"),
)  # fmt: skip


def crochet(cursor: Cursor, before: list[Step]) -> list[Step] | None:
    """Read one row, count or remark of a crochet border."""
    since = cursor.pos
    count = printed(cursor, before) if before else None
    if count is not None and isinstance(count, Printed):
        return [count]
    label = row_label(cursor)
    cursor.take(r"(?:use|with) rs (?:of work )?(?:facing|toward you) ?,?")
    lead = cursor.take(
        r"(?:and )?(?:join|attach) yarn(?: (?:at|in|to|on|lower|corner|of|right|left|front|edge|seam|side|underarm|neck|back|center|beg|use|sl|st|with))*(?: ?[,;:])?"
    )
    items = _run(cursor)
    if items:
        return [Row(label, items, crochet=True, span=cursor.span(since))]
    if label is not None:
        rest = cursor.take(r"(?:rep|same as|as|like) ?(?:row|rnd)? ?(?P<n>{N})(?:th)?(?: row)?")
        like = (round((figure(rest) or ONE).values[0]),) if rest else ()
        return [Row(label, (), like, crochet=True, span=cursor.span(since))]
    if lead:
        return [Nothing("yarn", span=cursor.span(since))]
    cursor.pos = since
    return None


def _run(cursor: Cursor) -> Run:
    items: list[Item] = []
    star: int | None = None
    while not cursor.done:
        spot = cursor.pos
        if items or star is not None:
            while cursor.take(r",|;|and(?! fasten)|--(?! {N})"):
                pass
        if cursor.take(r"\*"):
            star = len(items)
            continue
        again = cursor.take(r"rep from \*(?: (?P<n>{N}) x(?P<more> more)?)?(?: (?:across|around|to end|all around))*")
        if again and star is not None:
            body = tuple(items[star:])
            times = figure(again) if again["n"] else None
            count = "in all" if times is None else "more" if again["more"] else "unclear"
            items[star:] = [Group(body, times, reach="" if times else "end", count=count, span=cursor.span(spot))]
            continue
        item = _item(cursor)
        if item is None:
            cursor.pos = spot
            break
        items.append(item)
    return tuple(items)


def _item(cursor: Cursor) -> Item | None:
    since = cursor.pos
    for pattern, kind in ITEMS:
        match = cursor.take(pattern)
        if match is None:
            continue
        groups = match.groupdict()
        text = next((groups[name] for name in ("n", "m", "o") if groups.get(name)), None)
        n = figure(re.match(r"(?P<n>.*)", text) or match) if text else ONE
        made = _made(kind, n or ONE, match.group())
        return replace(made, span=cursor.span(since))
    return None


def _made(kind: str, n, words: str) -> Item:  # type: ignore[no-untyped-def]
    fixed = {
        "corner": Work("corner", n, 0, 1), "overchain": Work("overchain", n, 1, 1), "turnchain": Work("turnchain", n, 0, 0),
        "chain": Work("chain", n, 0, 1), "skip": Work("skip", n, 1, 0), "into": Work("into", n, 0, 1),
        "each": Work("corner-end" if "before corner" in words else "sc", n, 1, 1), "one": Work("sc", ONE, 1, 1),
        "rest": Work("sc", None, 1, 1, reach="end"), "dec": Work("dec", ONE, 2, 1), "plain": Work("sc", n, 1, 1),
        "slip": Work("slip", ONE, 0, 0),
    }  # fmt: skip
    if kind == "along":
        return Taken(n, words, True)
    return Turn() if kind == "turn" else fixed[kind]


def remark(cursor: Cursor) -> Step | None:
    """Read 'fasten off' and unread words of a crochet border up to the stop."""
    since = cursor.pos
    stop = cursor.text.find(" .", cursor.pos)
    cursor.pos = stop + 1 if stop >= 0 else len(cursor.text)
    words = cursor.text[since : cursor.pos]
    if re.search(r"\b(?:motif|afghan|granny|shell|cluster|picot|flower|square)\b", words) or not re.search(
        r"\b(?:sc|dc|ch|tr|hdc)\b", words
    ):
        return Nothing("making up", span=cursor.span(since))
    return Unread(span=cursor.span(since))


__all__ = ["Label", "crochet", "remark"]
