"""Words that move no stitch: prose, sewing, pressing, needles, colours, tools. They are recognised, not dropped."""

from __future__ import annotations

import re

from lastlook.leaflet.instruction import Nothing, Step
from lastlook.leaflet.parse.cursor import Cursor
from lastlook.leaflet.parse.silent import FORMS, SILENT

MANNERS = r"(?:and |, )*(?:still )?(?:(?:keeping|keep|being|taking|take|having|allow|beg(?:ing)? and end|always|being sure|be sure|be careful|making sure|work all|sl|inc|taking care|note|note that|n b|remember|while|whenever)(?: (?:\S+)){0,18}?)(?= [,;.:]| --|$)"
SEWING = (
    r"(?:sew|knot|st (?:down|up|tog|in place)|make st <\d+> inch|seam|press|block|steam|damp|pin|weave|stitch|fold|turn (?:up|under|in|back|hem|to (?:ws|inside))|hem|baste|tack|face|line|lace|wash|dry|stretch|crochet|fasten|overcast|whip|oversew|catch|finish|trim|"
    r"join (?:the )?(?:\w+ ){0,4}?(?:seam|edges?|shoulder|side|sleeve|band|raglan|underarm|collar|cap|back|end)|join (?:shoulder|side|sleeve|raglan|tog|underarm|both|two|right|left|neck)|set in|join fronts?|set (?:in )?sleeve|insert|attach|make (?:a |<1> |<2> )?(?:pompon|pompom|tassel|cord|fringe|twisted|buttonloop|loop|crochet)|work (?:buttonhole st|<\d+> row (?:of )?(?:sc|dc)|blanket)|"
    r"embroider|gather|thread|run|cut|starch|lay|pull|brush|wind|place (?:buttons?|zipper|elastic|on|a damp|between)|sl st(?! (?:of|from|on|to))|darn|<\d> (?:row|rnd) (?:of )?(?:sc|dc)\b|around [a-z]+ work (?:\S+ ){1,6}in crochet|bind (?:edges?|neck)|cover|put (?:in|on)|finish(?:ing)?|button|using (?:back|flat)|with (?:back st|flat seam)|stuff|adjust|reinforce|try|mark|measure|neaten|use backstitch|omit|avoid|easing|matching)"
)
MOVES = re.compile(
    r"(?:^| )(?:k|p|inc|dec|bo|co|sl|narrow|widen|yo|psso|rib|tog|rep|row|rnd|st|pu|correspond|same as|stst|garter|make|turn|until|needle)(?= |$)"
)
TALK = (
    r"(?:this|these|it|if|for|when|where|note|all|every|each|both|as|but|and|to|by|after|before|while|because|being|is|that|which|one|there|you|we|in|size|see|same|on|"
    r"of|directions?|instructions?|figures?|large|small|medium|continued|illustrated|page|from|about|or|be|do|not|lengthen|shorten|first|same|left|right|back|front|neck|with|side|make)"
)


STYLE = (
    r"(?:and )?(?:work|make|working|worked|taking)(?: (?:all|raglan|these|each|every|armhole|neck|the|edge))* (?:dec|inc) (?:(?:same |exactly )?as (?:(?:on|for|before|in|at|of|given) ?)*(?:back|front|sleeve|before|\w+ front)?|"
    r"(?:at|in|on|by|with|use|inside|within|\S+ st from|<\d> st in)(?: (?:\S+)){0,14}?)(?=(?: [,.;:]|$))",
    r"(?:and )?bo for (?:underarm|neck|armhole|shoulder)(?: shape)? at beg of (?:k|p|rs|ws) row",
    r"(?:and )?(?:all )?(?:dec|inc) (?:to be |are |being )(?:work|make|made|always)(?: \S+){0,12}?(?=(?: [,.;:]|$))",
)


def style(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read how shapings are worked, where it moves no stitch of its own: 'working decs as on back'."""
    since = cursor.pos
    for pattern in STYLE:
        match = cursor.take(pattern)
        if match is None:
            continue
        if re.search(r"use (?:k|p|sl) <|by (?:k|p) <", match.group()):
            cursor.take(r"(?:, )?(?:k|p) <\d+>(?= [.,;]|$)")
        return Nothing("style", span=cursor.span(since))
    return None


LONGEST_SENTENCE = 2000
"""No sentence has more characters than so many."""


def nothing(cursor: Cursor, before: list[Step]) -> Step | None:
    """Read words that move no stitch, where they are known as such."""
    since = cursor.pos
    if not cursor.see_any(FORMS):
        return None
    for pattern, why in SILENT:
        if cursor.take(pattern):
            return Nothing(why, span=cursor.span(since))
    return None


def sentence(cursor: Cursor, fresh: bool) -> Step | None:
    """Read a whole clause or sentence of sewing or of talk that moves no stitch; None where it may move some."""
    since, far = cursor.pos, cursor.pos + LONGEST_SENTENCE
    if fresh and cursor.see(ADVICE):
        _to_stop(cursor)
        return Nothing("prose", span=cursor.span(since))
    if fresh and _materials(cursor):
        return Nothing("materials", span=cursor.span(since))
    if (fresh or cursor.see(r"(?:and )?sew ")) and cursor.see(
        r"(?:and )?" + SEWING + r"|" + r"(?:do )?not (?:press|block|iron)|lightly"
    ):
        _to_stop(cursor)
        return Nothing("making up", span=cursor.span(since))
    page = re.compile(r"(?:(?! [.;]).)*? page <[^>]*>(?:(?! [.;]).)*").match(cursor.text, cursor.pos, far)
    if page and fresh:
        cursor.pos = min(len(cursor.text), page.end() + 1)
        return Nothing("prose", span=cursor.span(since))
    clause = re.compile(r"(?:(?! [.;:]| -- ).)*").match(cursor.text, cursor.pos, far)
    words = clause.group() if clause else ""
    if words and not MOVES.search(words):
        cursor.pos = min(len(cursor.text), cursor.pos + len(words) + 1)
        return Nothing("prose", span=cursor.span(since))
    part = re.compile(r"(?:(?! [,.;:]| -- ).)*").match(cursor.text, cursor.pos, far)
    words = part.group() if part else ""
    if words and not MOVES.search(words):
        cursor.pos = min(len(cursor.text), cursor.pos + len(words) + 1)
        return Nothing("prose", span=cursor.span(since))
    if cursor.take(MANNERS):
        return Nothing("manner", span=cursor.span(since))
    return None


ADVICE = r"(?:[a-z]+ ){0,6}?(?:you (?:will )?(?:need|want|require|desired)|it is (?:better|best|well|as well|advisable)|(?:great )?care (?:must|should)|it takes|they (?:are|will)|these pieces)\b"
"""How a sentence begins that advises, or says what will be wanted."""
GOODS = re.compile(
    r"(?:(?:about|one|also|and|or|each|{N}|<[^>]*>|small|large|medium|few|fine|some|strong|full|odd) )*(?:pairs?|prs?|sets?|ozs?|ounces?|lbs?|pounds?|skeins?|hanks?|balls?|spools?|reels?|yards?|yds?|buttons?|bone|steel|"
    r"needle|dpn|hook|zipper|ribbon|elastic|yarn)(?: (?=of|no|nos|size|for|in|each|and|,|bone|steel|wooden|k|dpn|needle|yarn|<|are|will|is|[a-z]+ (?:yarn|needle))|$| [.;,])"
)
ACTS = re.compile(
    r"(?:^| )(?:co|bo|inc|dec|rep|row|rnd|until|turn|tog|psso|st|pu|sl|p|yo|work|change|join|break|cont|:|k(?= <))(?= |$)"
)


def _materials(cursor: Cursor) -> bool:
    """Move over a clause that lists wools, needles and notions: it begins with how many, and nothing in it is an act."""
    clause = re.compile(r"(?:(?! [.;]).)*").match(cursor.text, cursor.pos, cursor.pos + LONGEST_SENTENCE)
    words = clause.group() if clause else ""
    if not words or not GOODS.match(words) or ACTS.search(words):
        return False
    cursor.pos = min(len(cursor.text), cursor.pos + len(words) + 1)
    return True


def _to_stop(cursor: Cursor) -> None:
    stop = cursor.text.find(" . ", cursor.pos)
    if stop < 0:
        stop = len(cursor.text) - 2 if cursor.text.endswith(" .") else len(cursor.text)
    cursor.pos = stop + 1 if stop > cursor.pos else len(cursor.text)
