"""Single stitches: each wording with how many it uses and gives (standard lists; older words: common practice)."""

from __future__ import annotations

import re
from collections.abc import Callable

from lastlook.leaflet.instruction import (
    ONE,
    BindOff,
    CastOnInRow,
    Group,
    Held,
    Item,
    Parted,
    Taken,
    Turn,
    Work,
)
from lastlook.leaflet.parse.cursor import Cursor, figure
from lastlook.leaflet.trade.sizelist import Figure
from lastlook.leaflet.trade.vocabulary import vocabulary

VERB = r"(?:k|p|work|rib|patt|moss|garter|stst|seam)"
COLORS = (
    r"(?: (?:mc|cc|maincolor|main color|contrast|white|black|navy|gold|red|blue|green|gray|grey|yellow|pink|brown|"
    r"natural|color|dark|light|w|b|g|r|a|d|m|c)(?= |$)(?! <))?"
)
TWO = Figure((2.0,))
Made = Item | None
Maker = Callable[[re.Match[str]], Made]
NOT_STITCHES = (
    r"(?:k|p|work|rib|garter|cont|stst|moss) (?:even )?(?:next )?{N} (?:more |plain |complete |other )?"
    r"(?:row|rnd|ridge|inch|cm|patt|needle|rib(?<=[4-9]> rib)(?= ?[.,;:]|$| on))\b|(?:k|sl) (?:<1>th |last |next )?{N} st of rnd on\b|(?:k|sl) {N} (?:st )?(?:of|from) (?:<\d>th|first|last|next) needle"
)
_SL_TAIL = r"(?:(?: ,)? (?:taking it under|as if to (?:k|p)|as for (?:k|p)(?:ing)?|(?:k|p|knit|purl)ways|(?:k|p) ?wise|kwise|pwise|purlwise|knitwise|pw))?"


def _n(match: re.Match[str]) -> Figure:
    return figure(match) or ONE


def _plain(name: str) -> Maker:
    return lambda match: Work(_verb(match, name), figure(match) or ONE)


def _verb(match: re.Match[str], default: str) -> str:
    found = match.groupdict().get("v")
    return {"seam": "p"}.get(found, found) if found else default


def _tog(lean: str) -> Maker:
    def make(match: re.Match[str]) -> Made:
        together = figure(match) or TWO
        uses = round(together.values[0])
        side = "left" if match.groupdict().get("back") else lean
        if len(together.values) > 1:
            return Work("tog", together, 1, 0, side, "tog")
        return Work(f"{match['v'] or 'k'}{uses}tog", ONE, uses, 1, side)

    return make


def _fixed(name: str, uses: int, gives: int, lean: str = "") -> Maker:
    return lambda match: Work(
        name, figure(match) if "n" in match.groupdict() and match["n"] else ONE, uses, gives, lean
    )


def _reach(reach: str) -> Maker:
    return lambda match: Work(
        _verb(match, "k"), None, reach=reach, rest=figure(match) if "n" in match.groupdict() else None
    )


def _every_so_many(match: re.Match[str], last: Work) -> Made:
    """'Increase in every 8th stitch' is a group of seven plain and the increase, as often as it fits."""
    plain = _n(match).whole(0) - last.uses
    return Group((Work("k", Figure((float(plain),))), last), None, reach="end") if plain > 0 else None


PASS = (
    r"(?:pass|draw|pull|lift|bring|throw|slip|bind|sl|passing|drawing|pulling|slipping) "
    r"(?:(?:sl|first|<1>th|st|it|1st|previous|unknitted|one|<1>|that|last) ){0,4}over"
    r"(?: (?:it|them|(?:other|next|k|p|last|<1>|alt|tog|narrow|knit|same|st|narrowed|one) ?){1,3}(?= |$))?"
)

STITCHES: tuple[tuple[str, Maker], ...] = (
    (r"(?:k|p) (?:into|in) back of (?:all |each )?st (?:in|of|on) (?:<1>th|first|next) row", lambda m: Work("k", None, reach="all")),
    (r"k <1> in (?:each|every) st(?: and (?:in )?(?:each|every) (?:yo|over))?(?: around)?(?= ?[.,;]|$)", lambda m: Work("k", None, reach="all")),
    (r"(?P<v>k|p) (?:next |these |those |last |first )?(?P<n>{N}) {ST}(?:taken )?(?:tog|t)(?P<back> (?:tbl|(?:thru|in|into|from|at|taken at) (?:the )?back(?: of(?: st)?)?| ?b))?", _tog("right")),
    (r"(?P<v>work|take)(?: up)? (?P<n>{N}) {ST}tog", _tog("right")),
    (r"(?:p )?(?:narrow) (?P<n>{N}) (?:x|st)", _fixed("k2tog", 2, 1, "right")),
    (r"(?P<v>p|k) (?:next )?{ST}(?P<n>{N}) {ST}(?:into|in) (?:one|<1>)(?: st)?", _tog("right")),
    (r"p narrow", _fixed("p2tog", 2, 1, "right")),
    (r"narrow(?: <1>)?(?! every)", _fixed("k2tog", 2, 1, "right")),
    (r"n(?: <1>)?(?= [,;.*)]|$)", _fixed("k2tog", 2, 1, "right")),
    (r"sl and (?:bind|b)|sl bind", _fixed("skp", 2, 1, "left")),
    (r"sl,? narrow and (?:bind|b)", _fixed("sk2p", 3, 1, "left")),
    (r"(?:k|work) (?:into |in )?(?:front and back|back and front) (?:of |in |into )?(?:each|every) st", lambda m: Group((Work("kfb", ONE, 1, 2),), None, reach="end")),
    (r"(?:k|work) (?:<1> )?(?:st )?(?:into|in|thru)? ?(?:both )?(?:front and back|back and front)(?: (?:of|loop|in|into)(?: (?:next|same|each|this|every|<\d>th|last|first))?(?: st)?)?", _fixed("kfb", 1, 2)),
    (r"k (?:<1> )?st in (?:horizontal )?(?:st|bar|thread|yarn|strand) (?:preceding|before|between)(?: next)? st", _fixed("m1", 0, 1)),
    (r"sl(?: <1>)?(?: st)? ?,? k(?: <1>)? ?,? ?and pass(?: sl st over)?(?= [,;.*)]|$)", _fixed("skp", 2, 1, "left")),
    (r"cont(?: in)? patt across(?: row)?|(?:k|p|work) across (?:heel|sole|instep|these|those|all) st(?= ?[.,;]|$)|(?:finish|complete) row|cont across(?: row| rem(?: {N})? st| {N} st)?(?= [.,;]| and|$)", lambda m: Work("k", None, reach="end")),
    (r"(?:k|p|work)(?: <2>)?(?: st)? (?:twice|<2> x) (?:into|in) (?:next|same|last|<1>th)(?: st)?", _fixed("kfb", 1, 2)),
    (r"(?:k|work|make) <2> {ST}(?:in|into|out of|from) (?:next|<1>|one|last|<1>th|same)(?: st)?", _fixed("kfb", 1, 2)),
    (r"(?P<v>k|p|make|work) (?P<n>{N}) {ST}(?:in|into|out of) (?:next|<1>|same|<1>th)(?: st)?", lambda m: Work("into1", ONE, 1, round(_n(m).values[0]))),
    (r"(?:inc|widen)(?: <1>)?(?: st)?(?: (?:k|p)(?:ways|wise))? (?:in|into|on) (?:each|every)(?! <\d+>th)(?: <1>)?(?: of)?(?: next)?(?: (?P<n>{N}))?(?: st)?", _fixed("inc", 1, 2)),
    (r"inc (?:<1> )?(?:x )?{ST}(?:(?:k|p)(?:ways|wise) )?(?:in|into|on|by) (?:next|last|<1>th|same(?! (?:manner|way|place|x))|this|following|foll|k|p|k twice into|center|end)(?: (?:st|<1> st))?", _fixed("inc", 1, 2)),
    (r"inc (?P<n>{N})(?: st)?(?: asbefore)?(?= [,;.)*]| and| k| p|$)", _fixed("inc", 1, 2)),
    (r"inc(?: st)?(?= [,;)])", _fixed("inc", 1, 2)),
    (r"widen(?: <1>)?(?! (?:<\d+> )?(?:st )?(?:at|along|on|down|up|from) )", _fixed("m1", 0, 1)),
    (r"(?:pu|raise|lift|pick up) (?:(?:loop|st|yarn|<1>|thread|horizontal|parallel|bar|strand) ?){1,3}(?:between|before)(?: (?:st|needle|next|<2>|and(?! k)|last)){0,4}(?:(?: ?,)? ?and (?:k|p)(?: (?:it|thru|into|back|of|tbl|in|this)){0,4})?", _fixed("m1", 0, 1)),
    (r"(?:dec)(?: <1>)?(?: st)?(?= [,;.)*]| k| p| and|$)", _fixed("dec", 2, 1)),
    (r"(?:make|made|m) (?P<n>{N})(?: st)?(?! (?:row|buttonhole|rnd))", _fixed("yo", 0, 1)),
    (r"(?:bring |throw |put |pass |carry |turn )?(?:yarn )?(?:yo|over|o|yarn over)(?: (?:needle|pin))? (?P<n>{N})(?: x)?(?! (?:row|rnd|k\b|p\b|st))", _fixed("yo", 0, 1)),
    (r"(?P<n>{N}) (?:yo|over)(?:s)?(?= [,;.)*]|$)", _fixed("yo", 0, 1)),
    (r"yarn (?P<n>{N}) x (?:rnd|round|around|over)(?: (?:needle|pin))?", _fixed("yo", 0, 1)),
    (r"(?:bring|throw|put|pass|turn|carry|take) (?:the )?(?:yarn )?(?:yo|(?:yarn )?(?:fwd|forwards|rnd|around|over|in front)(?: (?:needle|of|rnd|around|over|pin))*)(?: (?P<n>{N}) x)?", _fixed("yo", 0, 1)),
    (r"yo(?: needle)?|over(?= [,;.*)]| k| p| narrow| n\b| sl)|yarn (?:over|fwd|rnd|around)(?: needle)?(?: (?P<n>{N}) x)?|o(?= [,;.)*]| <2>| k| p| n\b| sl)", _fixed("yo", 0, 1)),
    (r"(?:and )?(?:bring |with |keeping |keep |put |carry |having |take |pass )?(?:the )?yarn (?:to |in |at )?(?:front|back|before|behind)(?: of (?:work|needle))?", lambda m: Work("yarn", Figure((0.0,)), 0, 0)),
    (r"skip (?:next |<1> |<1>th )?(?:st )?(?:,? ?(?:and )?)(?:k|p) (?:in(?:to)? )?(?:(?:back|front)(?: st)?(?: of)? )?(?:next|<2>th)(?: st)?(?: (?:on|of) left(?: hand)? needle)?(?: (?:thru back|in front|in back|tbl))?(?: ?,)?(?: (?:and|but|leave|it|on|needle|do|not|donot|drop|this|st|off|from|left|hand|sl))* ?,? ?(?:k|p) (?:into )?(?:skip|<1>th)(?: st)?(?: ?,? ?(?:and )?(?:sl|take|drop|let)(?: (?:both|off|st|tog|needle|from|left|hand))+)?(?: \( [^()<]*twist[^()<]*\))?", lambda m: Work("twist", ONE, 2, 2)),
    (r"(?P<v>k|p)(?: (?:each|every|all|across))*(?: st)?(?: ,)? (?:and )?wrap(?: yarn)?(?: (?:{N} x|around|rnd|over|needle|pin|for|each|st))+", _reach("all")),
    (r"(?P<v>k|p)(?: across| row)?(?: ,)? (?:and )?(?:dropping|drop|letting|let)(?: (?:all|spare|off|<2>th|yo|wrap|st|loops|each|of|drop|extra))+", _reach("all")),
    (r"(?P<v>k|p) (?:each|every|all) st(?: (?:on|in|to end of) (?:way back|row|rnd|(?:heel |sole |instep )?needle|this row))?(?= [,.;:]|$)", _reach("all")),
    (r"(?P<v>k|p|work) until (?:there are |you having )?(?P<n>{N}) st on (?:right )?needle(?: (?:hand )?(?:after|from|since|beyond) bo)?(?= ?[,;.(]| and| --|$)", _plain("k")),
    (r"(?P<v>k|p|rib|work)(?: row| k)?(?: ,)?(?: and)? (?=widen (?:{N} )?(?:st )?at )", _reach("end")),
    (r"(?P<v>k|p|rib|work)(?: row)?(?: ,)?(?: and)? (?=(?:inc|dec|narrow) (?:{N} )?(?:st )?(?:evenly|at even|at equal|to {N}|across))", _reach("end")),
    (r"(?P<v>k|p|rib|work)(?: back)?(?: ,)? (?=co {N} st (?:over|in place|above|where|to replace))", _reach("gap")),
    (r"(?P<v>k|p|rib|work) (?:to|until) (?:the )?(?:bo|buttonhole|gap|opening)(?: st)?", _reach("gap")),
    (r"(?P<v>k|p)(?: across)?(?: ,)?(?: and)? (?:sl|carry|move) marker(?= ?[.;]|$)", _reach("all")),
    (r"(?:put|pass|throw|bring|turn|wind|carry|take) yarn (?:rnd|around|over|before)(?: needle)?(?: (?P<n>{N}) x)?", _fixed("yo", 0, 1)),
    (r"cable (?P<n>{N})(?: st)?(?= [,;.)]| to | across|$)", lambda m: Work(f"c{_n(m).whole(0)}", ONE, _n(m).whole(0), _n(m).whole(0))),
    (r"psso", _fixed("psso", 0, -1, "left")),
    (r"p2sso|(?:pass|pull|draw|slip|sl) (?:both|<2>)(?: sl)?(?: st)? over(?: it)?", _fixed("p2sso", 0, -2, "")),
    (PASS, _fixed("psso", 0, -1, "left")),
    (r"cable(?P<c>4|6|8|10|12)", lambda m: Work(f"c{m['c']}", ONE, int(m["c"]), int(m["c"]))),
    (r"take (?P<n>{N}) (?:of <\d+> )?st (?:off )?on(?:to)? (?:separate|spare|cn|extra|hold)(?: needle)? ,? ?(?:and )?(?:hold|leave|keep)(?: (?:this|it|them))? (?:at|in) (?:back|front)(?: of work)?", lambda m: Work("cn", figure(m), 1, 1)),
    (r"(?:sl|place|put) (?:next |<1>th |foll )?(?P<n>{N}) {ST}(?:on|onto|to|in)(?: to)?(?: (?:cn|dpn|alt|<1>|<2>th|cable|needle|short(?= needle)|separate(?= needle ,? ?(?:and )?hold)|hold(?=(?: and| ,)? (?:hold|leave|place|keep|put|let|drop)\b[^.]{0,24}(?:front|back))|spare(?! st))){1,3}(?: ,)?(?: (?:and )?(?:hold|leave|place|keep|held|left|at|to|in|drop|put|fold|letting|let)?(?: (?:in|at|to|it|them|on|this|fall|drop))*(?: (?:the )?(?:front|back)(?: of work)?))?", lambda m: Work("cn", figure(m), 1, 1)),
    (r"(?P<v>k|p) (?:the )?(?:{N} )?{ST}(?:from|off|on) (?:cn|spare|cable|dpn)(?: needle)?", lambda m: Work("fromcn", ONE, 0, 0)),
    (r"sl (?:next )?(?P<n>{N}) {ST}(?:on|onto|to)(?: to)?(?: (?:another|hold|dpn|needle|<1>|safety|thread|strand|spare))+(?: for (?:\w++ ?){1,4}(?=[,;.]|$))?", lambda m: Held(figure(m))),
    (r"sl (?P<n>{N}) (?:\w+ )?st (?:left )?(?:from hold )?(?:on|onto)(?: to)? (?:no <\d+> |larger |smaller |size <\d+> |fine |<1> )?needle(?: no <\d+>)?", lambda m: Taken(figure(m), "hold", False)),
    (r"sl (?P<n>{N}) st of (?P<s>back|front|left front|right front|sleeve)(?= (?:and|,))", lambda m: Taken(figure(m), m["s"], False)),
    (r"(?:sl|s|slip) (?P<n>{N})(?: st)?" + _SL_TAIL, _plain("sl")),
    (r"sl(?: next)?(?: st)?" + _SL_TAIL + r"(?= [,;.*)]| k\b| p\b|$)", _plain("sl")),
    (r"drop (?P<n>{N})?(?: st)?(?: off needle)?(?= [,;.)]|$)", _fixed("drop", 1, 0)),
    (r"(?:bo) (?:the |<1>th |center |next |foll |first |last )*(?P<n>{N})(?: st)?+(?: in (?:rib|patt|k|p))?(?: for (?:(?:neck|face|arm|head) opening|neck|front|back|underarm|buttonhole|face|pocket|thumb)(?: of neck)?)?(?: ,? ?(?:loose|loosely))?(?! (?:at|on|from|each|both) )", lambda m: BindOff(figure(m))),
    (r"co (?P<n>{N})(?: st)?(?: (?:over (?:\w++ ?){1,6}|for (?:\w++ ?){1,4}|in place of (?:(?!and )\w++ ?){1,6})(?=[,;.]|and |$))?(?! at )", lambda m: CastOnInRow(_n(m))),
    (r"(?:and )?(?:pu|k up|widen(?= <\d+> (?:st )?(?:along|on|at|down|up|from)))(?: and (?:k|p))? (?P<n>{N})(?: st| loops)?(?P<w>(?: (?:along|down|up|from|across|rnd|around|at|on|in|evenly|for|of|to|over) (?:(?!pu |k |and k |and pu |sl |co (?!edge)|work )[a-z-]++ ?|<1>th ){1,9})?)(?= ?[,;.(:)]|and|--|$|k |pu )", lambda m: Taken(figure(m), (m["w"] or "").strip(), True)),
    (r"(?:and )?pu(?: and (?:k|p))?(?: (?:use|with) (?:no <[^>]*>|dp|smaller|larger|circular|<[^>]*>|dpn|no)(?: needle)?)?(?P<w>(?: (?:for|around|along|at) (?:neck|armhole|neckband|front|collar|border)(?: edge| band)?)?)(?: (?:use|with) (?:no <[^>]*>|dp|smaller|larger|circular|<[^>]*>|no) needle)?(?: beg (?:at|use) [a-z]+(?: [a-z]+){0,2}?)?(?: ,)? (?P<n>{N}) st", lambda m: Taken(figure(m), (m["w"] or "along").strip(), True)),
    (r"(?:and )?(?:(?P<v>k|p|rib|work|patt|cont)(?: (?:across|over|on))?)(?: next)?(?: the)? (?P<n>{N}) (?P<s>(?:\w+ )?st (?:of|from|on|left on)(?: (?:<1>|<2>th|one))? (?:back|front|left|right|sleeve|hold|pocket|st|first|alt|instep|center|spare|heel)(?: (?!and )(?:[a-z]+)){0,4}|st (?:left |rem )?(?:of|from|at|on) (?:(?!and )[a-z]++ ?){1,5}|(?:st )?from (?:(?!and )[a-z]++ ?){1,5}|instep st|heel st)", lambda m: Taken(figure(m), (m["s"] or "").strip(), False)),
    (r"(?:and )?(?P<v>k|work)(?: (?:on|onto)(?: to)? (?:same|one|<\d>th|that|next|<1>) needle)? (?P<n>{N})(?: st)? of (?P<s>heel st|instep st|heel|instep)", lambda m: Taken(figure(m), "heel st" if "heel" in m["s"] else "instep st", False)),
    (r"(?P<n>{N}) st (?:of|from) (?P<s>(?:back|front|left|right|sleeve|hold|first|<1>th|<2>th|alt|spare)(?: (?!and )[a-z]+){0,5})", lambda m: Taken(figure(m), (m["s"] or "").strip(), False)),
    (r"turn(?: ?,)?(?: and)? work back and (?:forth|fwd)(?: (?:on|over) (?:these )?(?:{N} )?st(?: of [a-z]+)?)?(?: only)?", lambda m: Turn()),
    (r"turn(?: work)?(?! (?:work )?(?:that )?(?:ws|rs) )", lambda m: Turn()),
    (r"(?:and )?(?:join(?: in)?|use|with|work)(?: in)? (?:another|alt|<2>th|new|second|separate)(?: (?:ball|skein|length|end))(?: of)?(?: yarn)?", lambda m: Parted()),
    (r"(?P<v>" + VERB + r")(?: \w+)? (?:to|up to|until) (?:within )?(?:last )?(?P<n>{N}) {ST}(?:from|of|before) (?:(?:shoulder|armhole|neck|front|side) edge|end)(?: of (?:(?:<\d>th side |alt side |side |<\d>th |heel |instep |front )?needle|row|rnd))?", _reach("last")),
    (r"(?P<v>" + VERB + r") (?:all (?:st )?(?:but|except)|to all but) (?:last )?(?P<n>{N})(?: st)?(?: of (?:row|rnd|needle))?", _reach("last")),
    (r"(?P<v>" + VERB + r")(?: (?:\w+|all))? (?:to|until|up to) (?:within )?last (?P<n>{N})(?: st)?(?: (?:of|on) (?:(?:<\d>th |heel |instep |front )?needle|row|rnd))?", _reach("last")),
    (r"(?P<v>" + VERB + r") (?:to|until) (?:within )?(?P<n>{N}) {ST}(?:are )?{LEFT}(?: on (?:left |left hand )?needle)?", _reach("last")),
    (r"(?P<v>" + VERB + r") (?:until|to) (?:within )?(?P<n>{N}) {ST}(?:before|from|of) (?:next |each )?(?:marker|seam st)", _reach("marker")),
    (r"(?P<v>" + VERB + r")(?: \w+)? to (?:next |<1>th )?marker", _reach("marker0")),
    (r"(?P<v>" + VERB + r")(?: (?:even|all|back|rem|rest|in patt|plain|k|p))*(?: st)? (?:(?:to|until) (?:the )?end|across|all across|back|rest of|balance of|all around|around|all rnd|all along|rem (?:of )?(?:row|st)|all|rem|rest|to (?:front|neck|armhole|side) edge|entire)(?: (?:of )?(?:all )?(?:row|rnd|needle|these st|all st|st|rem st|rem row))*(?! (?:rem |last |next |alt |first |center )*<)", _reach("end")),
    (r"(?P<v>k|p)nit? row", _reach("all")),
    (r"(?P<v>k|p|work|rib|patt|moss|garter)(?: (?:plain|across|k))?(?= [.;:]|$)", _reach("all")),
    (r"(?P<v>k|p|rib|work|patt|moss|seam|garter)(?: (?:across|over|next|<1>th|last|these|those|center|rem|all|alt|same))* (?P<n>{N})(?: (?:plain|st|st plain|in back|tbl|b|more|thru back(?: of st)?|of (?:heel|sole|instep|rem|foot) st|in (?:back of )?(?:row|st) below|st in (?:patt|rib|moss|garter|stst)|in (?:patt|rib|moss|garter)|(?:k|p)(?! <)))?" + COLORS, _plain("k")),
    (r"(?P<v>k|p|work|rib|patt) (?:in |into )?(?:back of )?(?:next|same|edge|each|this|seam|center|last|<1>th|sl|that)(?: (?:st|and|below|row|in|k))*(?= [,;.*)]| and| k| p|$)", _plain("k")),
    (r"(?P<n>{N}) (?P<v>k|p|seam|rib)(?: st)?", _plain("k")),
    (r"(?:k|narrow|dec|take)(?P<t> tog)? every (?P<a><\d+>)th and (?P<n><\d+>)th(?: st)?(?: tog)?(?: (?:in|on|across) (?:next|<1>th|this|foll) (?:row|rnd))?", lambda m: _every_so_many(m, Work("k2tog", ONE, 2, 1, "right"))),
    (r"(?:k|p|take) (?:each|every) <2> st tog", lambda m: Group((Work("k2tog", ONE, 2, 1, "right"),), None, reach="end")),
    (r"(?:inc|widen) (?:<1> )?(?:st )?(?:in|on) every (?P<n><\d+>)th(?: st)?", lambda m: _every_so_many(m, Work("inc", ONE, 1, 2))),
    (r"(?:narrow|dec|k <2> tog)(?: <1>)?(?: st)? every (?P<a><\d+>)th and (?P<n><\d+>)th(?: st)?", lambda m: _every_so_many(m, Work("k2tog", ONE, 2, 1, "right"))),
    (r"(?P<n>{N})(?: st)? in (?:garter|moss|patt|rib|stst)(?: st)?", lambda m: Work("patt", figure(m))),
    (r"(?P<n>{N}) (?:mc|cc|white|black|navy|gold|red|blue|green|w|b|g|r|d|a|c|m)(?= |$)", lambda m: Work("k", figure(m))),
    (r"(?P<v>k|p)(?: st)?(?= [,)*;]| -- | yo| over| o\b| and bo)", _plain("k")),
    (r"co (?P<n>{N})(?: st)? at (?:center )?(?:front|neck|side|armhole) edge(?=(?: ,)? (?:and )?(?:k|p|work|rib) )", lambda m: CastOnInRow(_n(m))),
    (r"when you reach (?:neck|armhole|center|front|side)? ?edge(?: of (?:last|next|this|same) row)?(?: ,)?(?= co )", lambda m: Work("k", None, reach="gap")),
    (r"(?:and )?join on to (?:<1>th|first|alt|other) (?:set of )?st", lambda m: Work("yarn", Figure((0.0,)), 0, 0)),
    (r"cont(?: in (?:k k|k|patt|rib|stst))? (?:to|until) end(?: of (?:row|rnd))?", lambda m: Work("k", None, reach="end")),
    (r"(?:sl|place|put|leave) (?:next |<1>th |foll |last )?(?P<n>{N}) st(?: for (?:thumb|finger|pocket|neck|sleeve))?(?: \( (?:(?:k|p) <\d+>(?: ,)? ?)+\))? (?:on|onto|to)(?: to)? (?:hold|waste yarn|thread|yarn|contrast yarn)(?: (?:and )?leave(?: (?:them|aside|until|desired|for|thumb|later|hold|now))*)?", lambda m: Held(figure(m))),
    (r"(?:make|work) (?:<1> )?(?:right|left|back|front) twist", lambda m: Work("twist", ONE, 2, 2)),
    (r"rep (?:cable|twist)", lambda m: None),
    (r"(?:place|sl|slip|pm|sm|remove|pass|put)(?: on)? ?marker(?: on needle)?|pm|sm", lambda m: Work("marker", Figure((0.0,)), 0, 0)),
    (r"wrap(?: next)?(?: st)?", lambda m: Work("wrap", Figure((0.0,)), 0, 0)),
)  # fmt: skip
FORMS = tuple(pattern for pattern, _ in STITCHES)


def stitch(cursor: Cursor) -> Item | None:
    """Return the stitch that stands here, None where there is none; the cursor moves over it."""
    if cursor.see(NOT_STITCHES):
        return None
    since = cursor.pos
    word = _first_word(cursor)
    fused = vocabulary().fused.get(word)
    if fused is not None:
        times = cursor.take(r"\w+ (?P<n>{N}) x") or cursor.take(r"\w+(?: st)?")
        n = figure(times) if times and "n" in times.groupdict() and times["n"] else ONE
        return Work(fused.name, n or ONE, fused.uses, fused.gives, fused.lean, span=cursor.span(since))
    if not cursor.see_any(FORMS):
        return None
    for pattern, make in STITCHES:
        match = cursor.take(pattern)
        if match is not None:
            made = make(match)
            if made is None:
                cursor.pos = since
                return None
            return _with_span(made, cursor, since)
    return None


def _first_word(cursor: Cursor) -> str:
    stop = cursor.text.find(" ", cursor.pos)
    return cursor.text[cursor.pos : stop if stop > 0 else len(cursor.text)]


def _with_span(item: Item, cursor: Cursor, since: int) -> Item:
    from dataclasses import replace

    return replace(item, span=cursor.span(since))
