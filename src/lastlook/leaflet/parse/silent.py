"""The wordings that move no stitch, each with what it tells: needles, yarn, a side, a place, an aside.

The first that fits is taken, so that what is told more closely stands before what is told loosely.
"""

from __future__ import annotations

NEEDLES = (
    r"(?:and |, )*(?:change (?:to|over|back)|use|with|on|to|take|taking|return to|put on|change|off)(?: (?:to|the|back|set|of|pair|<\d+>|one|colored|a|size|still))* ?"
    r"(?:(?:no|nos|size|larger|smaller|large|small|finer|coarser|bone|steel|fine|circular|thick|thin|same|main|inch|,|spare|these|new|<[^>]*>|\d+|mm|and|-|number) ?)*(?:needle|dpn|cn|hook)(?: no)?(?: <[^>]*>)?(?: (?:pointed at both end|mm))?"
)
YARNS = (
    r"(?:and |, )*(?:use|with|in|join|break|break off|attach|tie|tie in|join in|change to|drop|pick up|cut|carry|take|fasten off|pu)(?: (?:in|on|off|up|to|and|join|attach|double|<1>|<2>|strands? of|strand|of|alt|a|ball|end|length|the|second|new|contrast(?:ing)?|main|same|another|drop|more|leave|all|both|<\d+>th|ends?))*"
    r" (?:yarn|mc|cc|maincolor|color(?: [abcd])?|white|black|navy|gold|red|blue|green|grey|gray|pink|yellow|brown|natural|contrast|main|dark|light|background|w|b|a|c|d|wool)(?: (?:yarn|in <\d+>th st from (?:seam|edge|end)|color|double|off|and|at|only|on|in|w|b|cc|mc|st|end|leave(?: .{1,20}? inch)?(?: end)?|for sewing|to (?:front|back)|neck|edge|sleeve|inner|outer|side|front|armhole|of|left|right|shoulder|underarm|lower|top|beg|center|join|from|first|<1>th))*"
)
DONE = r"(?:work|proceed|cont|beg|start|dec|k|p|work in|make)?(?: (?:now|next|from here|on|work|raglan|shape|in patt|both sides?|armhole|patt|cont))* ?(?:as foll|thus|this way|in foll (?:way|manner)|asbefore)(?: ?:| ?,| ?--)?"

SILENT: tuple[tuple[str, str], ...] = (
    (NEEDLES, "needles"),
    (r"(?:and )?(?:use |with )?(?:(?:tapestry|sewing|blunt|darning|yarn|wool) needle|(?:no <[^>]*>|<[^>]*> mm|smaller|larger|finer|coarser|size <[^>]*>|dp|dpn|circular|same|free)(?: dp| dpn| circular)? needle)(?: ,)?", "needles"),
    (YARNS, "yarn"), (DONE, "as follows"),
    (r"\( to (?:make|inc|dec|work) [^()]*\)", "told"),
    (r"(?:and )?(?:work|k|use|read|with|p|substituting|make) (?:[a-z]+ |<[^>]*> ){1,6}?(?:in place|instead) of (?:[a-z0-9]+ ?|<[^>]*> ?){1,5}?(?=[,;.:]|$)", "exchange"),
    (r"for (?:neck|sleeve|thumb|heel|cuff|border|collar|band|instep)(?= (?:pu|widen|co|take)\b)", "heading"),
    (r"(?:work |k )?<1> (?:st )?(?:for|in|to|from) (?:each|every) (?:<\d> )?(?:row|ridge|st|bo|of|edge)(?: (?:row|st|ridge))*", "spread"),
    (r"when there (?:are|is|having) (?:enough|sufficient|too many) st", "needles"),
    (r"beg at (?:lower|bottom|upper|top|front|neck|back|center|side|cuff|wrist|toe) (?:edge|border)?(?: use (?:[a-z]++ ?|<[^>]*> ?){1,8}?)?(?: ?\( or [^()]*\))? ?,(?= (?:co|use|with|ch)\b)", "beginning"),
    (r"on (?:heel|instep|sole|<\d>th|front|back) needle(?: only)?(?: :| ,)?", "needles"),
    (r"(?:and )?(?:on|at) (?:alt|<1>th|first|this|same|opposite|<2>th|each|both|right|left) (?:side|half|shoulder|front)(?: of (?:neck|front|opening))?(?: ,)?(?= (?:dec|inc|bo|k|p|work|cont|rib)\b)", "place"),
    (r"(?:make|work|k) (?:alt|<2>th|another|<1> more) (?:sleeve|pocket|cuff|bootee|glove|mitten|sock|slipper|leg|armhole|armhole band|band|strap|tab|piece|one)(?: (?:to correspond|exactly|same|in same (?:way|manner)|like (?:it|this|<1>th)|as <1>th|as this|alike|to match))+(?: (?:<1>th|first|one|sleeve))*(?= ?[,;.:]|$| rev)", "make"),
    (r"(?:next )?(?:make|work|form) (?:row of )?(?:beading|eyelets?|holes?|ribbon holes?|picots?|tucks?|hem|heading)(?: row)?(?: as foll)? ?(?:--|-|:)", "heading"),
    (r"(?:by )?k k(?: st)?(?: ,)? and p p(?: (?:st|ones))?|k as k and p as p", "style"),
    (r"(?:and )?(?:k|sl|place|put) (?:<1>th |last |next |rem )?{N} st of (?:rnd|heel|instep) on(?: to)?(?: (?:same|<1>|alt|end|of|first|<\d>th|that))* needle", "needles"),
    (r"after having (?:k|p|work)(?: [^.;,]*)?|follow on|as you having (?:[^.;,]*)", "place"),
    (r"(?:and )?(?:sametime )?(?:cabling|crossing|twisting|work|making|make|beg|rep)(?: (?:first|<1>th|next|all|a|each))* (?:cable|twist|cross|crossing)(?: (?:row|over))? (?:on|every|in)(?: (?:every|each|all|[a-z]+|<[^>]*>(?:th)?))*(?: ,(?: (?:on|every|in)(?: (?:every|each|[a-z]+|<[^>]*>(?:th)?))*))*(?= ?[.;]|$)|work (?:first|<1>th) dec row on (?:[a-z<>0-9]+ ){1,3}row", "told"),
    (r"(?:disc|discontinue|omit|drop) (?:patt|cable|border)(?: (?:st|patt))?", "told"),
    (r"make hem [^.;]*", "hem"),
    (r"(?:to be |which is |this is )?called [^.;,)]*", "told"),
    (r"k (?:use|in|of) (?:[a-z]+ ){0,3}yarn(?: [a-z]+){0,2}(?= ?[.;]| --|$)", "yarn"),
    (r"\( (?:from |about )?{N} to {N} (?:row|rnd|inch|st)[^()]*\)?", "aside"),
    (r"(?:end|finishing|finish) (?:at|use|with) (?:complete |end of )(?:row|rnd|patt)", "ending"),
    (r"(?:you are )?(?:to )?(?:k|work) back and (?:fwd|forth) on heel needle(?: only)?", "place"),
    (r"(?:\( )?to make buttonhole ?(?:,|--|:)(?! ?(?:next|<[^>]*>th|row|work as foll))(?:(?! [.)]).)*(?: \))?", "buttonhole told"),
    (r"(?:\( )?(?:after (?:the )?(?:first |<1>th )?(?:{N} )?{L} and )?every {N} {L}(?: thereafter)?(?: \( [^()]*\))? until {N} (?:buttonhole )?(?:in-all )?(?:are|having been|have been|have|were) (?:made|make|work|complete|completed)", "buttonholes"),
    (r"until {N} in-all (?:are|having been|have been) (?:made|make|work|complete)", "buttonholes"),
    (r"except (?:for )?(?:(?! until | [.;]).)*(?= until| [.;]|$)", "border"),
    (r"{N} st in from [^,.;]*", "place"),
    (r"which (?:will be|is|are|forms?|makes?) [^.;,]*", "told"),
    (r"(?:and )?(?:work|k|p) (?:the )?(?:o|yo|over) as (?:<1> )?st", "style"),
    (r"beg at (?:beg|end|center|edge|top|underarm) (?:of )?(?:(?! ,)[^.;])*,(?= )", "beginning"),
    (r"(?:k|make|work) (?:another|alt|<1> more|<2>th|<2> more) (?:strip|square|section|piece|motif|point)s?(?: (?:(?:in )?same(?: way)?|like (?:it|this)|use|with|yarn|dark|light|medium|[a-z]+))*(?= ?[,.;]|$)", "make"),
    (r"\( (?!k |p |sl |rib |work |rep |bo |co |inc |dec |yo |narrow |make |cable )[^()<]{3,200}\)", "aside"),
    (r"\( (?:about |this is |full )?{N}(?: (?:to|or|-) {N})? {L}(?: (?:wide|long|deep|in-all|across|[a-z]+)){0,3} ?\)", "aside"),
    (r"\( (?:work|k) <1>th row [^()]*\)", "aside"),
    (r"(?:and )?c(?= ?[.,;])", "and so on"),
    (r"\( but [^()]*\)|\( [^()]*\b(?:referred to|called|known|quoted) as\b[^()]*\)", "aside"),
    (r"(?:this )?patt (?:requires?|needs?|takes?) (?:(?! \.).)*|{N} row (?:completes?|forms?|makes?)(?: <1>)? patt|to (?:beg|start|form) patt(?: ?:)?", "told"),
    (r"note ?(?::|--) ?(?:(?! \.).)*", "note"),
    (r"(?:and )?turn work(?: that)? (?:ws|rs)(?: side)? (?:faces|is facing|is toward) you", "side"),
    (r"to make (?:wider|narrower|larger|smaller|longer|shorter)(?:(?! \.).)*", "told"),
    (r"making (?:inc|dec) in (?:center|middle) of [^.;,]*", "told"),
    (r"(?:use|with|on) (?:d p|dp|dpn|d\.p\.) needle(?: ,)?", "needles"),
    (r"(?:rev |but )?placing (?:the )?[a-z]+ (?:at|on) [^.;,]*", "place"),
    (r"(?:always )?(?:k|work|p) (?:<1>th row )?(?:into|in) back of (?:each |all )?(?:co )?st(?: of <1>th row)?(?= ?[.;,]|$)", "style"),
    (r"after <\d+>th (?:row|rnd)(?: ,)?(?= (?:bo|k|p|work|dec|inc|cont)\b)", "place"),
    (r"making {N} (?:narrow|dec|inc|widen)[^.;,]*|reducing (?:them|it)[^.;,]*|which (?:afterwards|then|later) (?:are|is)[^.;,]*", "told"),
    (r"(?:k|make|work) (?:another|<2>th|alt) piece(?: (?:to correspond|like|same|exactly|it|this|as))*(?: for (?:back|front))?(?= ?[.,;]|$)", "make"),
    (r"(?:and )?on next (?:row|rnd) (?:[a-z]+ ){1,6}(?:is|are) (?:made|make|work|formed|begun|k) (?:as foll|thus|in foll way)", "heading"),
    (r"(?:make|work|form|shape) (?:[a-z]+ ){1,3}as foll", "heading"),
    (r"(?:[a-z]+ ){0,3}needle (?:no|size) <[^>]*>(?= ?[.,;]|$)", "needles"),
    (r"from hold (?:on|to|onto)(?: (?:[a-z]+|<\d>)){0,3}? ?(?:needle|dpn|cn)", "needles"),
    (r"to (?:make|form|work) (?:opening|thumb|hole|slit)(?: (?:for )?[a-z]+){0,3}(?=[ ,;.:])", "heading"),
    (r"(?:join|ending) (?:use|with) sl st(?: (?:to|in|into) (?:[a-z<>0-9]+ ?){1,4}?(?=[,;.]|$))?", "crochet"),
    (r"(?:this|these|which|it) (?:is|are|form|forms|make|makes)\b(?:(?! [.;:])(?!<).)*(?= [.;:]|$)", "told"),
    (r"\( (?:mark|right|left|rs|ws|all|both|back|front|inc|dec|buttonhole|cable|same|main|note|see|this|first|center|make|optional|for|or|neck|armhole|side)(?: [^()]*)?\)", "aside"),
    (r"for (?:the )?(?:left|right|back|front|sleeve|collar|cuff|all|both|small|medium|large|first|second|lower|body|upper|underarm|neck)(?: [a-z]+){0,4}(?= [,;.:])", "heading"),
    (r"(?:all|both) size|(?:\( )(?:all|both) size(?: \))", "sizes"),
    (r"(?:and )?(?:break|cut)(?: off)?(?: yarn| it)?(?= [,;.]|$| and)", "yarn"),
    (r"(?:in |keeping |keep )patt(?: (?:as|correct|est|established|throughout))*(?= [,;.:]|$)", "pattern"),
    (r"(?:having )?(?:rs|ws)(?: of work)? (?:facing|toward|towards|to)(?: (?:you|for next row|use))?(?: ,)?", "side"),
    (r"(?:with|use) (?:rs|ws)(?: of (?:work|piece|garment|back|front|sleeve))?(?: (?:facing|toward you|towards you|out|together|tog))*", "side"),
    (r"beg (?:and end )?(?:at|use|on|in) (?:(?!co |bo |sl |pu |k |work )(?:[a-z]++ ?|<[^>]*>(?:th)? ?)){1,6}?(?=[,;.]| and|work|k |pu |co |bo |sl )", "beginning"),
    (r"beg (?:at|use) (?:\S+ ){1,4}?(?=work|cont|k |,)", "beginning"),
    (r"(?:and )?(?:on|at) (?:rs|ws) of work|from (?:rs|ws)(?: of work)?", "side"),
    (r"(?:and )?sl (?:last|first|next) {N} st of (?:rnd|row|next needle|needle|<\d>th needle|last needle|first needle)(?: (?:on|to|onto|alt|end|of|same|needle|<\d>th|other|heel)){1,8}", "needles"),
    (r"(?:and )?(?:k|sl) {N} (?:st )?(?:of|from) (?:<\d>th|first|last|next|front|sole) needle (?:on|onto|to)(?: to)? (?:<\d>th|alt|last|same|back|heel) needle", "needles"),
    (r"(?:turn and )?(?:now )?(?:work|cont) (?:on|with) (?:heel|these|sole|instep|rem|those)(?: {N})?(?: st)?(?: only)?(?= [,;.:]|$)", "place"),
    (r"turn(?: and)?(?= work| [.;,]|$)", "turn"),
    (r"(?:\S+ ){0,9}may be (?:[^.]*)", "prose"),
    (r"(?:(?:first|<\d>th|last|sixth|remainder|others?|next|rem|alt) )(?:<[\d.]+> (?:inch|cm) |to be |level |evenly |spaced |at |placed )+(?:[^,.;])*", "places"),
    (r"to (?:make|work|form) (?:<1> )?buttonhole", "heading"),
    (r"(?:<1>th|first|alt|others?|rem|remainder|last|<\d>th)(?: (?:one|buttonhole|button))? (?:on|at|every|to come|to be|being|coming|in) (?:[^.;,])*", "places"),
    (r"(?:and )?(?:dpn|circular needle)(?: no <\d+>)?(?= k | pu | co | p |,)", "needles"),
    (r"of (?:alt|other|<2>th|first|same|left|right) (?:side|half|shoulder|st)(?: (?:to correspond|only))*", "place"),
    (r"\(|\)", "bracket"),
    (r"(?:use|with|over|in) (?:the )?(?:<\d>th|first|second|third|same|alt|free|empty) needle(?: ,)?", "needles"),
    (r"(?:on|at) (?:heel|sole|instep) st only", "place"),
    (r"(?:k|work|make) (?:back|front|alt|another|<2>th|<1>|alt <1>)(?: (?:piece|sleeve|front|one|side|sock|glove|mitten))?(?: (?:exactly|just))? (?:in )?(?:same (?:way|manner)|same as this|like (?:it|this|<1>th))(?= ?[,;.]|$)", "make"),
    (r"make (?:<2>|another|<1>|both|alt|<2>th)(?: (?:more|alike|pieces?|the same|same|in same way|like this|like it|exactly|like|it|to correspond))*(?= [,;.]|$)", "make"),
    (r"\*(?: \*)*", "mark"),
)  # fmt: skip
FORMS = tuple(pattern for pattern, _ in SILENT)
