"""The stitches of a row in order, with their repeats: stars, brackets, times, reaches and endings."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from lastlook.leaflet.instruction import Figure, Group, Held, Item, Run, Taken, Turn, Work
from lastlook.leaflet.parse.cursor import Cursor, figure
from lastlook.leaflet.parse.stitch.stitches import stitch

DEEPEST = 6
MOST_ITEMS = 400
"""A row of more different things than this is no row that anybody printed."""
BETWEEN = r"(?:,|;|and|\.|--|:|-)"
REACH = (
    r"(?:alt )?(?:(?:across|around|all around|all rnd|all along|all way(?: (?:along|across|round|rnd))?|along|rnd|all across|to end|until end|over all st|to last st|on way back|to beg of (?:heel )?needle)"
    r"(?: (?:of )?(?:row|rnd|needle|all st|st|work|each row))*|for entire row|for (?:rest|rem|length) of row|entire row)"
)


RIBBED_NEXT = r",? ?(?:and )?(?:work )?(?:in )?(?:k|p) <\d>(?: (?:k|p))? ,? ?(?:and )?(?:(?:k|p) <\d>|<\d> (?:k|p)) ,? ?(?:in )?(?:rib|for|until|rnd)"
"""What begins a fabric, not more stitches of the row in which stitches were picked up."""
NEEDLE_NEXT = (
    r"[;,.] (?:and )?(?:k|work|rib)(?: (?:across|even|plain))* (?:front|instep|<[23]>th) needle"
    r"|[;,.] (?:and )?(?:on|use|with|in) (?:<\d>th|alt|side|front|instep)(?: side)? needle"
)
"""Where a round told needle by needle goes on with the next needle."""
HELD_NOW = (
    r"(?:,|;)? ?(?:and )?(?:sl|place|leave|put) (?:these|those|them)(?: st)? on(?:to)? (?:st )?hold"
    r"(?: for (?:left |right )?(?:back|front|sleeve|neck|thumb|left|right)(?= ?[ ,;.:]))?"
)
FOR_WHAT = (
    r"for (?:(?:left|right|<1>th|<2>th|alt|<1>|center) )?(?:back|front|sleeve|shoulder|underarm|thumb|instep|heel|yoke|band|border|neck)"
    r"(?: of neck| edge)?(?=[ ,;.:])|(?:\( on (?:rs|ws) of work \) )?for (?:turn of hem|turn|hem|fold|turn line)(?=[ ,;.:]|$)"
)


ASIDE = (
    r"\( (?:by|that is|this (?:will be|is) called|as|called|viz|i e|always|being)\b(?: [^()]*)?\)|\( (?:seam|center|edge|border|marked|instep|heel) st \)|\( (?:or|this|these|to|for|border|edge|front|neck|right|left|center|rs|ws)\b(?: [^()<]*)?\)"
    r"|asbefore|as directed(?: above)?|by (?:k|work|p)(?:ing)? (?:<1> )?(?:into |in )?(?:the )?(?:front and back|back and front)(?: of (?:it|st|same st))?"
)
"""What is said of a stitch between the stitches of a row, and moves none."""


@dataclass
class _Open:
    """What was read so far: the items, and where stars stand open."""

    items: list[Item] = field(default_factory=list)
    stars: list[int] = field(default_factory=list)
    doubles: list[int] = field(default_factory=list)
    """Where double stars stand open."""
    closed: tuple[int, int] | None = None


def run(cursor: Cursor, depth: int = 0) -> Run:
    """Return the stitches that stand here, as far as they go; empty where none do."""
    found = _Open()
    while not cursor.done and depth < DEEPEST and len(found.items) < MOST_ITEMS:
        before = cursor.pos
        if found.items and cursor.see(r"(?:in )?rib(?:bing)?(?= [.;:]|$| for| until)"):
            break
        if found.items and isinstance(found.items[-1], Taken) and cursor.see(RIBBED_NEXT):
            break
        if found.items and cursor.see(NEEDLE_NEXT):
            break
        if found.items and not found.stars and _whole(found.items[-1]) and cursor.see(r"[.;]"):
            break
        if found.items or found.stars:
            while cursor.take(BETWEEN):
                pass
        if not _one(cursor, found, depth):
            cursor.pos = before
            break
    if found.stars and found.items:
        _lost_repeat(cursor, found)
    return _gaps_closed(tuple(found.items))


def _whole(item: Item) -> bool:
    """Whether an item is a row of its own, or turns: what is told after the stop is another row."""
    filled = isinstance(item, Group) and item.times is None and item.reach == "end"
    return filled or isinstance(item, Turn) or (isinstance(item, Work) and item.reach == "all")


def _gaps_closed(items: Run) -> Run:
    """'P to cast-off sts., cast on 3, P 3': what lies before a gap is all but what is told after it."""
    out = list(items)
    for spot, item in enumerate(items):
        if isinstance(item, Work) and item.reach == "gap":
            after = [one for one in items[spot + 1 :] if isinstance(one, Work)]
            if any(one.n is None for one in after):
                out[spot] = replace(item, n=Figure((0.0,)), reach="")
            else:
                rest = sum(one.uses * (one.n.values[0] if one.n else 0) for one in after)
                out[spot] = replace(item, reach="last" if rest else "end", rest=Figure((rest,)) if rest else None)
    return tuple(out)


def _one(cursor: Cursor, found: _Open, depth: int) -> bool:
    """Read one item or mark; say whether there was one."""
    if cursor.take(r"\* \*(?: \*)?"):
        found.doubles.append(len(found.items))
        return bool(found.items) or bool(cursor.see(r"k|p|sl|\(|\*"))
    if cursor.see(r"\* (?:bo {N} st (?:at|each)|dec {N} st|inc {N} st (?:at|each)|(?:work|k|p) {N} (?:row|rnd))"):
        return False
    if cursor.see(r"\*|dagger"):
        return _star(cursor, found)
    if found.items and _repeat(cursor, found, depth):
        return True
    if found.items and isinstance(found.items[-1], Taken) and cursor.take(r"\( (?:mark|place|with|use)[^()]*\)"):
        return True
    if found.items and cursor.take(ASIDE):
        return True
    if cursor.see(r"\("):
        group = _bracket(cursor, depth)
        if group is None:
            return False
        found.items.append(group)
        return True
    if found.items and cursor.take(HELD_NOW):
        last = found.items[-1]
        if isinstance(last, Work) and last.n is not None and not last.reach:
            found.items[-1] = Held(last.n, span=last.span)
        return True
    item = _picked_more(cursor, found) or _crossed(cursor, found) or stitch(cursor)
    if item is None:
        return False
    found.items.append(_times(cursor, item))
    _pair_times(cursor, found)
    _over_so_many(cursor, found)
    cursor.take(FOR_WHAT)
    return True


def _over_so_many(cursor: Cursor, found: _Open) -> None:
    """'Knit 2, purl 2 for 18 stitches' is a rib over so many."""
    plain = [one for one in found.items if isinstance(one, Work) and one.name in ("k", "p") and one.n is not None]
    if len(found.items) != 2 or len(plain) != 2 or found.stars:
        return
    since = cursor.pos
    over = cursor.take(r"(?:for|over) (?P<n>{N}) st")
    if over:
        found.items[:] = [Work("rib", figure(over), span=cursor.span(since))]


def _crossed(cursor: Cursor, found: _Open) -> Item | None:
    """After stitches slipped to a spare needle within a row, 'knit the 2 sts from spare needle' works those."""
    if not any(isinstance(item, Work) and item.name == "cn" for item in found.items[-3:]):
        return None
    since = cursor.pos
    match = cursor.take(
        r"(?:bring (?:it )?fwd and )?(?P<v>k|p) (?:{N} )?{ST}(?:from|off|on) (?:hold|cn|spare|dpn|cable|separate|short)(?: needle)?"
    )
    return Work("fromcn", Figure((1.0,)), 0, 0, span=cursor.span(since)) if match else None


def _pair_times(cursor: Cursor, found: _Open) -> None:
    """'Make 1 and knit 2 together 4 times': both, where an over and its narrowing are joined by 'and'."""
    last, before = found.items[-1], found.items[-2] if len(found.items) > 1 else None
    single = isinstance(last, Group) and len(last.items) == 1 and last.times is not None
    over = isinstance(before, Work) and before.uses == 0 and before.gives > 0 and before.n is not None
    if isinstance(last, Group) and isinstance(before, Work) and single and over:
        between = cursor.text[max(0, cursor.pos - 80) : cursor.pos]
        if re.search(r"(?:make|made|m|yo|over|o)(?: <1>)? and (?:k|p|sl|narrow|n)\b[^,;.]*$", between.rstrip()):
            found.items[-2:] = [replace(last, items=(before, *last.items))]


def _picked_more(cursor: Cursor, found: _Open) -> Item | None:
    """After stitches that were picked up: '20 sts along side of neck'."""
    if not found.items or not isinstance(found.items[-1], Taken):
        return None
    since = cursor.pos
    cursor.take(r"\( (?:mark|place marker)[^()]*\)(?: ,)?(?: and)?")
    match = cursor.take(
        r"(?:and )?(?P<n>{N})(?: st)? (?P<w>(?:along|across|down|up|rnd|around|at|on|over|from|to|in)(?: (?!and |pu |k )[a-z-]+| <\d>th){1,7})(?= [,;.:(]| and| --|$)"
    )
    if match is None:
        cursor.pos = since
        return None
    return Taken(
        figure(match), match["w"], "from" not in match["w"] and "hold" not in match["w"], span=cursor.span(since)
    )


def _times(cursor: Cursor, item: Item) -> Item:
    """Read 'twice' or '3 times' after a single stitch."""
    if isinstance(item, Work) and item.n is not None:
        match = cursor.take(r"(?P<n>{N}) x(?! (?:more|in-all))")
        if match:
            return Group((item,), figure(match), span=item.span)
        alone = item.uses != item.gives and not item.reach and item.gives >= 0
        if alone and cursor.take(REACH):
            return Group((item,), None, reach="end", span=item.span)
    return item


def _star(cursor: Cursor, found: _Open) -> bool:
    since = cursor.pos
    cursor.take(r"\*|dagger")
    if found.stars:
        start = found.stars[-1]
        times = cursor.take(r"(?:rep )?(?P<n>{N}) x")
        if times and _depth(tuple(found.items[start:])) < DEEPEST:
            found.stars.pop()
            body = tuple(found.items[start:])
            found.items[start:] = [Group(body, figure(times), span=cursor.span(since))]
            return True
        body = tuple(found.items[start:])
        whole = body and start == 0 and len(found.stars) == 1 and cursor.see(r"[.;]|$")
        if whole and not cursor.see(r"[,;.]? ?(?:and )?rep") and _depth(body) < DEEPEST:
            found.stars.pop()
            found.items[start:] = [Group(body, None, reach="end", span=cursor.span(since))]
            return True
        if cursor.see(r"[,;.]? ?(?:rep|$)"):
            found.closed = (start, len(found.items))
            return True
    found.stars.append(len(found.items))
    return True


def _depth(items: Run) -> int:
    """How many repeats stand one inside the other."""
    return max((1 + _depth(one.items) for one in items if isinstance(one, Group)), default=0)


def _repeat(cursor: Cursor, found: _Open, depth: int) -> bool:
    """Read 'repeat from * …' and fold what it repeats."""
    since = cursor.pos
    match = cursor.take(r"(?:and )?rep(?: (?:pattern|patt|these st))? (?:from|between|fr)(?: (?P<which>last|<1>th|<2>th))? (?:\*(?: \*)?(?: 's| s)?)(?: (?:to|and) \*(?: \*)?)?") or (
        cursor.take(r"(?:and )?rep(?: from)?(?= (?:to end|across|around|to last|all around|all rnd|{N} x(?: more)?(?= ?[.,;]|$))| [.,;]|$)|(?=(?:all rnd|all around|all along|all across)(?: row| rnd)?(?: [.,;]|$))") or _bare_reach(cursor, found)
    )  # fmt: skip
    if match is None:
        return False
    if _copied(cursor, found, match.group(), depth):
        return True
    which = "**" if "* *" in match.group() and found.doubles else match.groupdict().get("which") or ""
    start, stop = _body(found, which)
    body = tuple(found.items[start:stop])
    if not body or _depth(body) >= DEEPEST:
        cursor.pos = since
        return False
    group = _extent(cursor, Group(body, None, reach="end", span=cursor.span(since)), depth)
    between = "between" in match.group() or "to *" in match.group()
    if between and group.count == "unclear":
        group = replace(group, count="more")
    found.items[start:stop] = [replace(group, span=cursor.span(since))]
    return True


def _copied(cursor: Cursor, found: _Open, told: str, depth: int) -> bool:
    """'* A *, B, repeat from * to * once, C': what stands between the two stars comes again after B."""
    between = "between" in told or "to *" in told
    if not between or "* *" in told or len(found.stars) < 2 or found.stars[-1] >= len(found.items):
        return False
    body = tuple(found.items[found.stars[-2] : found.stars[-1]])
    if not body or _depth(body) >= DEEPEST:
        return False
    since = cursor.pos
    group = _extent(cursor, Group(body, Figure((1.0,)), span=cursor.span(since - len(told))), depth)
    times = group.times or Figure((1.0,))
    found.items.append(replace(group, times=times, reach="", count="in all", span=cursor.span(since - len(told))))
    return True


def _counted_from(found: _Open) -> int:
    """Where the stitches begin that are told by number, after what was bound off or reaches to somewhere."""
    for spot in range(len(found.items) - 1, -1, -1):
        item = found.items[spot]
        if not ((isinstance(item, Work) and item.n is not None) or isinstance(item, Group)):
            return spot + 1
    return 0


def _bare_reach(cursor: Cursor, found: _Open) -> re.Match[str] | None:
    """'K 1, P 1 across' repeats both."""
    if found.stars or len(found.items) - _counted_from(found) < 2:
        return None
    return cursor.take(r"(?=,? ?(?:alt )?(?:across|around|all along|all across)(?: row| rnd)?(?: [.,;]|$| for| until))")


def _body(found: _Open, which: str) -> tuple[int, int]:
    if found.closed:
        start, stop = found.closed
        found.closed = None
        found.stars = [one for one in found.stars if one < start]
        return start, stop
    if which == "**":
        return found.doubles.pop(), len(found.items)
    if not found.stars:
        start = _counted_from(found)
        return (start if len(found.items) - start > 1 else 0), len(found.items)
    if which == "<1>th":
        start = found.stars[0]
        found.stars.clear()
    else:
        start = found.stars.pop()
    return start, len(found.items)


def _extent(cursor: Cursor, group: Group, depth: int) -> Group:
    """Read how often: across, to the last so many, so many times; and how it ends."""
    while True:
        if cursor.take(r"," + " " + REACH) or cursor.take(REACH):
            group = replace(group, times=None, reach="end")
            continue
        match = (
            cursor.take(r"(?:, )?(?:to|until|up to) (?:within )?last (?P<n>{N})(?: st)?(?: of (?:row|rnd|needle))?")
            or cursor.take(r"(?:, )?(?:to|until) (?:within )?(?P<n>{N}) {ST}(?:of|from|before) end(?: of (?:row|rnd))?")
            or cursor.take(r"(?:, )?(?:until|to) (?P<n>{N}) st {LEFT}")
            or cursor.take(r"(?:, )?(?:until|to) within (?P<n>{N}) st")
        )
        if match:
            group = replace(group, times=None, reach="last", rest=figure(match))
            continue
        match = cursor.take(
            r"(?:, )?(?P<n>{N}) (?:x more|more x|more|further x|x altogether|x in-all|x)(?: (?P<all>in-all))?"
        )
        if match:
            text = match.group()
            count = "more" if "more" in text or "further" in text else "in all" if "in-all" in text else "unclear"
            group = replace(group, times=figure(match), reach="", count=count)
            continue
        break
    return _ending(cursor, group, depth)


def _ending(cursor: Cursor, group: Group, depth: int) -> Group:
    since = cursor.pos
    match = cursor.take(
        r"(?:[,;.] )?(?:and )?(?:end|finish|finishing)s?(?P<last> last (?:rep|patt|st))?(?: (?:of )?(?:row|rnd))?(?: (?:use|with|in))?(?: :)?(?! (?:p|k) row| (?:on )?[rw]s)"
    )
    if match is None:
        return group
    tail = run(cursor, depth + 1)
    if not tail:
        cursor.pos = since
        return group
    how = "last" if match["last"] else "unclear"
    if cursor.take(r"(?:instead|in place) of"):
        run(cursor, depth + 1)
        how = "last"
    return replace(group, tail=tail, tail_replaces=how)


def _bracket(cursor: Cursor, depth: int) -> Item | None:
    """Read `(…) 4 times`, `(…) to end`, `(…, twice,)`, `(…) in next stitch`."""
    since = cursor.pos
    cursor.take(r"\(")
    items = run(cursor, depth + 1)
    inside = cursor.take(r"(?:[,;] )?(?P<n>{N}) x(?: ,)?")
    cursor.take(r"[.,;]")
    if not items or not cursor.take(r"\)"):
        cursor.pos = since
        return None
    group = Group(items, figure(inside) if inside else Figure((1.0,)), span=cursor.span(since))
    if cursor.take(r"(?:in|into) (?:double over|<2> yo|double yo|yo|<2> over|loops?|<2> st of yo)"):
        return group
    if cursor.take(r"(?:all )?(?:in|into) (?:next|<1>|same|one|each|center|<1>th|every)(?: (?:st|of|<1>))*"):
        gives = _gives(items)
        return Work("into1", Figure((1.0,)), 1, gives, span=cursor.span(since))
    if inside:
        return group
    match = cursor.take(r"(?P<n>{N}) x(?! more)") or cursor.take(r"rep(?: from)? (?P<n>{N}) x")
    if match:
        return replace(group, times=figure(match), span=cursor.span(since))
    match = cursor.take(r"(?:rep )?(?:to|until) (?:within )?(?:last )?(?P<n>{N})(?: st)?(?: (?:of|from) end| {LEFT})?")
    if match:
        return replace(group, times=None, reach="last", rest=figure(match), span=cursor.span(since))
    if cursor.take(r"(?:rep )?(?:from )?" + REACH) or cursor.take(r"rep"):
        return _ending(cursor, replace(group, times=None, reach="end", span=cursor.span(since)), depth)
    return group


def _gives(items: Run) -> int:
    total = 0
    for item in items:
        if isinstance(item, Work) and item.n is not None:
            total += round(item.n.values[0]) * (1 if item.name in ("k", "p", "yo", "sl") else item.gives)
    return max(1, total)


def _lost_repeat(cursor: Cursor, found: _Open) -> None:
    """A star without its 'repeat from *': the words 'across row' alone stand for it (seen in old print)."""
    start = found.stars[-1]
    since = cursor.pos
    if cursor.take(r"(?:[,;] )?(?:rep )?(?:from )?" + REACH):
        body = tuple(found.items[start:])
        found.items[start:] = [_ending(cursor, Group(body, None, reach="end", span=cursor.span(since)), 0)]
