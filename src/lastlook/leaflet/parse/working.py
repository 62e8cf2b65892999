"""Working on: structures, with how far they go."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.leaflet.instruction import (
    Figure,
    Goal,
    Group,
    Nothing,
    OtherSide,
    RepeatRows,
    Run,
    Shape,
    Step,
    Structure,
    Work,
    WorkOn,
)
from lastlook.leaflet.parse.cursor import Cursor, figure
from lastlook.leaflet.parse.lengths import OPTIONAL, ending, goal
from lastlook.leaflet.parse.stitch.runs import run

MOST_BACK = 60
"""Words that belong to a step stand no further from it than so many steps."""
NAMED = {
    "stst": "stockinette", "garter": "garter", "moss": "moss", "dmoss": "double moss", "revstst": "reverse stockinette",
    "rib": "rib", "patt": "pattern", "plain": "garter",
}  # fmt: skip
VERB = (
    r"(?:and )?(?:(?:cont|work|keep|keeping|proceed|go on|in foll)(?: (?:on(?! (?:<|these|those|rem|all|center))|to|along))*(?: (?:work|k k|k|p|rib)(?! <))?(?: (?:neckband|band|border|collar|cuff|hem|heel|welt|waist|yoke|armband)(?= (?:in|even|for|on)))?|"
    r"(?:k|p)(?: k)?(?= (?:even|in|for|until|(?:every|each|all) (?:row|rnd|alt|<[^>]*>(?:th)? (?:row|rnd))|{N} (?:inch|row|rnd|ridge|more|cm)|k (?:until|for|even|to|in|on|every|each|rnd|around|all|<)|plain|straight|round|rnd|around|alt|to (?:meas|length)|as)\b)|"
    r"k k(?! st)|rib(?= (?:for|until|even|{N} (?:inch|row|rnd|more)|as|in|to))|rep(?= patt)|keep patt)"
)
ON = (
    r"(?:on|over|across|use)(?: (?:these|those|rem|<1>th|last|all|same|each set of|set of|foll|center|this|sole|heel|instep|each|both)){0,3} (?:(?P<n>{N}) )?(?:heel |instep |sleeve |front |back |shoulder |neck )?"
    r"(?:st|side|needle|shoulder|size needle|group)(?: in center)?(?: (?:for (?:\w++ ?){1,3}|in this way|as foll))?"
)
MANNER = (
    r"(?:in|as|on|keeping|and keep|and keeping|use|with|without|being careful)(?: (?:this|same|such|patt|these|established|"
    r"manner|way|patt-cont|of|continuity|correct|set|est|asbefore|placed|usual|now|any|further|more|is|shape|inc|dec|widen|narrow|"
    r"given|patt as|uniform|straight|border|st|in|to|at|as|place|foll|work|on|front|edge|both|edges|even|be|and|keep|well|right)){1,9}(?= ?[,;.]|--| until| for| to| end| dec| inc| and|$)|asbefore"
)


def work_on(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read 'work even until …', 'work in k 1, p 1 rib for …', 'continue in pattern'."""
    since = cursor.pos
    if cursor.see(r"(?:and )?(?:k|p|work|cont|rib) (?:across|over) (?:\w+ )*{N}"):
        return None
    if cursor.take(r"(?:and )?(?=when (?:[a-z]+ ){0,3}meas )"):
        far = goal(cursor)
        cursor.take(r",(?= (?:end|finish) )")
        last = ending(cursor)
        if far is not None:
            return WorkOn(goal=far, ending=last or WorkOn().ending, span=cursor.span(since))
        cursor.pos = since
    lead = cursor.take(
        r"(?:use|with|on|over) (?P<n>{N}) st(?: on needle)? ?,? ?(?=(?:work|cont|k) (?:even|straight|in)\b)"
    )
    verb = cursor.take(VERB) or cursor.take(
        r"(?:on next (?:rnd|row) )?change (?:st )?(?:in)?to (?=stst|garter|moss|revstst|rib|patt|k |p |<[^>]*> (?:k|p) )"
    )
    text = verb.group() if verb else ""
    found = WorkOn(structure=_of_verb(text), on=figure(lead) if lead else None)
    evidence = bool(found.structure)
    if verb and cursor.see(r"as (?:high|far|long) as"):
        far = goal(cursor)
        if far is not None:
            return replace(found, goal=far, span=cursor.span(since))
    if not verb and not cursor.see(
        r"(?:in )?(?:stst|garter|moss|revstst|rib)\b(?! (?:{N}|st {N}))|of (?:k|p|\(|stst|rib|garter|moss)\b"
    ):
        return None
    for _ in range(12):
        more = _modified(cursor, found)
        if more is None:
            break
        found, evidence = more, True
    if not evidence:
        cursor.pos = since
        return None
    span = cursor.span(since)
    bare = found.goal == WorkOn().goal and not found.ending.row and not found.ending.edge and found.on is None
    if bare and found.structure:
        return Structure(found.structure, found.run, span=span)
    return replace(found, span=span)


def _of_verb(text: str) -> str:
    words = text.split()
    if "rib" in words:
        return "rib"
    if words[:1] == ["k"] or words[-2:] == ["k", "k"]:
        return "plain"
    return "purl" if words[:1] == ["p"] else ""


def _modified(cursor: Cursor, found: WorkOn) -> WorkOn | None:
    """Read one more word of how, how far or up to which row."""
    since = cursor.pos
    cursor.take(r",|and|\(")
    if found.run:
        cursor.take(
            r"(?:rib )?(?:and )?(?:cont|k|work)(?: (?:this|so|in this way))?(?= (?:for|until|another|{N} (?:inch|row)))"
        )
    structured = _structure(cursor, found)
    if structured is not None:
        cursor.take(r"\)")
        return structured
    far = goal(cursor) if found.goal == WorkOn().goal else None
    if far is not None:
        cursor.take(r"\)")
        return replace(found, goal=far)
    last = ending(cursor)
    if last is not None:
        return replace(found, ending=last)
    match = cursor.take(ON)
    if match:
        return replace(found, on=figure(match) or found.on)
    if (
        cursor.take(MANNER)
        or cursor.take(r"(?:on |at )?(?:each|both) (?:side|shoulder|half|front)s?(?= (?:until|for|to)\b)")
        or cursor.take(OPTIONAL)
        or cursor.take(r"back and (?:forth|fwd)(?: in row)?|fwd and back|round and round")
    ):
        return found
    if found.structure and cursor.take(
        r"as (?:(?:on|for|in|of|given|work|worked) )+(?:the )?(?:back|front|left front|right front|sleeve)(?= (?:for )?{N} {L})"
    ):
        return found
    if cursor.take(
        r"beg (?:and end )?(?:use|on|with) (?:a )?(?:p|k|rs|ws|<\d+>th|row <\d+>)(?: patt| side)?(?: row)?(?: of patt)?"
    ):
        return found
    cursor.pos = since
    return None


def _structure(cursor: Cursor, found: WorkOn) -> WorkOn | None:
    if cursor.take(
        r"(?:even|straight)(?: (?:and )?(?:without (?:\w++ ?){1,2}))?|without (?:further |more |any )?(?:shape|inc|dec|widen|narrow|\w+)"
    ):
        return replace(found, structure=found.structure)
    if cursor.take(
        r"in k(?: k)?(?: (?:st|fabric|row|rnd))?(?= (?:until|for|to|and|on|[,;.:(]|{N} (?:inch|row|cm))|$)|in k k"
    ):
        return replace(found, structure="plain")
    if cursor.take(r"(?:in |of )?(?:rnd|row) of (?:stst)|(?:in )?(?:k|p) (?:every|each|all) (?:row|rnd)s?"):
        return replace(found, structure="stockinette" if "stst" in cursor.text[: cursor.pos][-12:] else "plain")
    since = cursor.pos
    if cursor.take(r"(?:in |of )?(?:k row|k <1> row) ,? ?(?:and )?p (?:<1> )?row(?: alt)?") or cursor.take(
        r"\( k <1> row , p <1> row \)"
    ):
        return replace(found, structure="stockinette")
    match = cursor.take(
        r"(?:in |of |with |into |use |for )?(?:(?:rnd|row) (?:of|in) )?(?:(?:k|p|plain|single|twisted|double|wide|fancy|lace|cable|same|main|foll|k <\d> p <\d>) )?(?P<s>stst|garter|moss|dmoss|revstst|patt|rib)(?: (?:st|patt|in rnd|fabric|stitch))*(?: of| on(?= k <| p <))?(?! (?:{N}|row))"
    )
    if match:
        name = NAMED[match["s"]]
        if name in ("rib", "pattern", "stockinette", "garter"):
            ribbed = _ribbing(cursor)
            if ribbed:
                return replace(found, structure=structure_name(ribbed, name), run=ribbed)
        if name in ("moss", "garter", "stockinette"):
            cursor.take(r"(?:\. )?\( (?:k|p|work)\b[^()]*\)")
        if name == "rib":
            cursor.take(r"of \w+ ")
        return replace(found, structure=name)
    if cursor.take(
        r"(?:(?:in |of |with |use )|(?<=change to )|(?<=change st to ))(?:(?:rnd|row) (?:of|in) )?(?:rib (?:of )?)?(?=k\b|p\b|\(|{N} k\b|{N} p\b|\*)|(?=(?:k|p) <\d+> ,? ?(?:and )?(?:k|p) <\d+> (?:(?:in )?rib|for|until|around)\b)"
    ):
        ribbed = _ribbing(cursor)
        if ribbed:
            cursor.take(r"(?:in )?rib(?: st| patt)?|alt|for rib")
            return replace(found, structure=structure_name(ribbed, "rib"), run=ribbed)
    cursor.pos = since
    return None


def _ribbing(cursor: Cursor) -> Run:
    since = cursor.pos
    opened = cursor.take(r"\(|,|of|:")
    items = run(cursor)
    if items and all(isinstance(item, Work | Group) for item in items) and not _reaches(items):
        if opened and "(" in opened.group():
            cursor.take(r"\)")
        return items
    cursor.pos = since
    if cursor.take(
        r"\( k (?:each|every) (?:row|rnd) \)|, k (?:each|every) row|\( k (?:<1> )?row , p (?:<1> )?row \)|\( k <1> row , p <1> row \)"
    ):
        return ()
    return ()


def _reaches(items: Run) -> bool:
    return any(isinstance(item, Work) and item.reach for item in items)


def structure_name(items: Run, default: str) -> str:
    """Name a rib after its stitches: 'rib 2x2'."""
    flat = items[0].items if len(items) == 1 and isinstance(items[0], Group) else items
    counts = [item for item in flat if isinstance(item, Work)]
    pair = len(counts) == 2 and {item.name for item in counts} == {"k", "p"} and all(item.n for item in counts)
    if pair:
        a, b = (item.n.whole(0) if item.n else 1 for item in counts)
        return f"rib {a}x{b}"
    return default


def run_on(cursor: Cursor, items: Run, since: int) -> Step | None:
    """After a run of stitches: 'for 3 inches', 'in ribbing until …' makes it a fabric; None where it is a row."""
    start = cursor.pos
    cursor.take(r"and") if cursor.see(r"and rep") else None
    ribbed = cursor.take(r",? ?(?:in |of )?(?:alt )?rib(?:bing)?(?: patt| st)?|,? ?alt(?= for)")
    cursor.take(r",(?= for {N})")
    far = (
        goal(cursor)
        if cursor.see(r",? ?(?:for|until|to (?:meas|depth|length)|{N} (?:inch|cm)|(?:for )?{N} row)")
        else None
    )
    if far is None and not ribbed:
        cursor.pos = start
        return None
    found = WorkOn(structure=structure_name(items, "rib" if ribbed else "pattern"), run=items)
    if far is not None:
        found = replace(found, goal=far)
    for _ in range(4):
        more = _modified(cursor, found)
        if more is None:
            break
        found = more
    span = cursor.span(since)
    if found.goal == WorkOn().goal:
        return Structure(found.structure, found.run, span=span)
    return replace(found, span=span)


TOLD_LATER = r"until |when (?:you (?:have|having)|there (?:are|is)) {N}(?: st)?"
"""How far a shaping goes, told after it: 'increase every 4th row; when you have 60 stitches knit 4 rows'."""


def work_more(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read 'until back measures 9 inches', 'ending with a purl row' apart from the words that they belong to."""
    since, spot = cursor.pos, len(before) - 1
    bound = spot - MOST_BACK
    while spot >= max(0, bound) and isinstance(before[spot], Nothing):
        spot -= 1
    old = before[spot] if spot >= 0 else None
    if isinstance(old, Shape) and old.cadences and old.cadences[-1].goal == Goal() and cursor.see(TOLD_LATER):
        reached = cursor.take(r"when (?:you (?:have|having)|there (?:are|is)) (?P<n>{N})(?: st)?(?: on needle)?(?: ,)?")
        far = Goal(until=figure(reached)) if reached else goal(cursor)
        if far is not None:
            before[spot] = replace(old, cadences=(*old.cadences[:-1], replace(old.cadences[-1], goal=far)))
            return Nothing("told of the step before", span=cursor.span(since))
    if isinstance(old, Shape | OtherSide):
        last = ending(cursor)
        if last is not None and isinstance(old, Shape) and old.ending == WorkOn().ending:
            before[spot] = replace(old, ending=last)
        return Nothing("told of the step before", span=cursor.span(since)) if last else None
    if not isinstance(old, WorkOn | Structure | RepeatRows):
        return None
    far = goal(cursor) if cursor.see(r"(?:until|for|to) ") else None
    cursor.take(r",") if far is not None and cursor.see(r", (?:end|finish)") else None
    last = ending(cursor)
    if isinstance(old, Structure):
        old = WorkOn(structure=old.name, run=old.run, span=old.span)
    fits = (far is None or old.goal == WorkOn().goal) and (last is None or old.ending == WorkOn().ending)
    if (far is None and last is None) or not fits:
        cursor.pos = since
        return None
    before[spot] = replace(old, goal=far or old.goal, ending=last or old.ending)
    return Nothing("told of the step before", span=cursor.span(since))


def plain_rows(cursor: Cursor) -> Step | None:
    """Read 'P 1 row', 'knit 3 rounds', 'work 1 row'."""
    since = cursor.pos
    turns = cursor.take(r"k (?:<1> )?row ,? ?(?:and )?p (?:<1> )?row(?: alt)?(?= ?,? ?(?:for|until) )")
    if turns:
        cursor.take(r",")
        far = goal(cursor)
        if far is not None:
            return WorkOn(structure="stockinette", goal=far, span=cursor.span(since))
        cursor.pos = since
    of = cursor.take(
        r"(?:and )?(?:k |work )?(?P<n>{N}) (?:row|rnd) (?:of )?(?:(?P<a>{N}) (?P<x>k|p)|(?P<x2>k|p) (?P<a2>{N})) ?,? ?(?:and )?(?:(?P<b>{N}) (?P<y>k|p)|(?P<y2>k|p) (?P<b2>{N}))(?: ?,)?(?: alt| rib)?(?= ?[.,;:]| and|$)"
    )
    if of:
        one, two = of["x"] or of["x2"], of["y"] or of["y2"]
        pair = (Work(one, figure(of, "a") or figure(of, "a2")), Work(two, figure(of, "b") or figure(of, "b2")))
        return WorkOn(
            structure=structure_name(pair, "rib"), run=pair, goal=Goal(rows=figure(of)), span=cursor.span(since)
        )
    on = cursor.take(
        r"(?:and )?(?:k|work|rib) on(?: (?:these|first|<1>th|alt|last|those))* (?P<m>{N}) st (?P<n>{N}) row"
    )
    if on:
        return WorkOn(on=figure(on, "m"), goal=Goal(rows=figure(on)), span=cursor.span(since))
    match = cursor.take(
        r"(?:and )?(?P<v>k|p|work|rib|cont)(?: (?:even|in rib|in patt|straight|back|across|k|plain|a|further|another|about|foll|<1> more(?= row)))* (?P<n>{N}) (?:more |k |plain |foll |complete |alt |even |p )*(?P<w>row|rnd|ridge|rib(?= ?[.,;:]|$| on))"
        r"(?: (?:k|plain|even|straight|without (?:shape|dec|inc)|p|on (?:rs|ws)(?: of work)?|for (?:a )?(?:hem|hemline|turn|fold|turn(?:ing)? ridge|turn row|fold line|ridge)(?: line| ridge)?|in (?:rib|patt|garter|stst|moss)|back and forth))*"
    ) or cursor.take(r"(?P<v>k|p|work|rib) (?:next |<1> |foll |one |back |k |another |<1> more )?(?P<w>row|rnd)(?P<n>(?!x)x)?") or cursor.take(
        r"(?:k|work|make)? ?(?P<n>{N}) (?:plain |k |more )?(?P<v>k|p) (?P<w>row|rnd)"
    ) or cursor.take(r"(?P<n>{N}) (?:more )?(?P<w>row|rnd) (?:of )?(?P<v>k|p|rib|garter)(?: st)?") or cursor.take(
        r"(?:and )?(?P<v>k|p)(?: k)? back(?! (?:in same|same|as|like|exactly|of|st))(?: (?:to end|row))?(?P<w>(?!x)x)?(?P<n>(?!x)x)?")  # fmt: skip
    if match is None:
        return None
    n = figure(match) or Figure((1.0,))
    if match["w"] in ("ridge", "rib"):
        n = Figure(tuple(2 * one for one in n.values))
        cursor.take(r"\( {N} row \)(?: even)?")  # '5 ridges (10 rows) even' says the same twice
    turned = cursor.take(
        r",? ?(?:in )?(?P<a>{N}) (?P<x>k|p)(?: st)? (?:,|and|,? and) (?P<b>{N}) (?P<y>k|p)(?: st)?(?: alt)?(?= ?[.,;:]|$)"
    )
    if turned and turned["x"] != turned["y"]:
        pair = (Work(turned["x"], figure(turned, "a")), Work(turned["y"], figure(turned, "b")))
        return WorkOn(structure=structure_name(pair, "rib"), run=pair, goal=Goal(rows=n), span=cursor.span(since))
    name = {"k": "plain", "p": "purl", "rib": "rib", "garter": "garter"}.get(match["v"], "")
    told = re.search(r"\bin (rib|patt|garter|stst|moss)\b", match.group())
    name = NAMED[told.group(1)] if told and match["v"] in ("work", "cont") else name
    cursor.take(r"\( (?:k|p|work)(?: (?:every|each|all|across|row|rnd|<1>|,|p|k|alt|st|plain))* \)")
    found = WorkOn(structure=name, goal=replace(WorkOn().goal, rows=n))
    last = ending(cursor)
    if last is not None:
        found = replace(found, ending=last)
    if cursor.see(
        r"(?:in|of) (?:k|p|rib|moss|garter|stst|single|double|twisted|\()\b|,? ?beg (?:and end )?(?:use|with|on) |on (?:these|those|<|each|all|sole|heel)"
    ):
        found = _modified(cursor, found) or found
        found = _modified(cursor, found) or found
    return replace(found, span=cursor.span(since))
