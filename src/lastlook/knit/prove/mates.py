"""Which edges are sewn together in a garment of such pieces, and how they meet.

A row of difference is none where one side must bind off a row later; two rows are eased (sewing up of knitted pieces,
common practice, no source). Stitches bound off at an underarm or a shoulder meet stitch for stitch. A cap may differ
from its armhole by 22 mm (3/4 inch and the height of a row; common practice, no source), and by more where the
leaflet gathers it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from lastlook.knit.needle import Hands, garments
from lastlook.knit.prove.edges import edges_of, stretch
from lastlook.piece import Edge, EdgeName, Mate, Seam, Unit, walk
from lastlook.quantity import Gauge

UPWARDS = ("side", "armhole", "raglan")
ROWS_EASED = 2.0
CAP_EASE_MM = 22.0
CAP_FULLER_MM = 38.0
"""A cap that is the longer of the two is eased in: 1 to 1½ inches in textbooks on sleeves (madalynne.com;
emmakespatterns; read), less for knits (common practice, no source)."""
TOP_EASE_MM = 12.7
GATHERED = re.compile(
    r"(?i)\bgather|\bfullness|\bfulness|\bpuff(?:ed)? sleeve|\beas(?:e|ing) (?:in )?(?:the )?(?:fullness|sleeve|top)"
)


def seams(pieces: Mapping[str, Hands], gauge: Gauge | None, text: str) -> tuple[Seam, ...]:
    """Return every seam that the pieces make, walked; each garment of the leaflet has its own."""
    out: list[Seam] = []
    for own in garments(pieces):
        out += _of_garment({plain: pieces[name] for plain, name in own.items()}, gauge, text)
    return tuple(out)


def _of_garment(pieces: Mapping[str, Hands], gauge: Gauge | None, text: str) -> tuple[Seam, ...]:
    table = {edge.name: edge for hands in pieces.values() for edge in edges_of(hands, gauge)}
    out = []
    for mate in _mates(pieces, table, text):
        a, b = table.get(mate.a), table.get(mate.b)
        seam = walk(mate, a, b) if a and b else None
        if seam is not None:
            out.append(seam)
    return (*out, *_caps(pieces, gauge, text))


def _find(pieces: Mapping[str, Hands], *words: str) -> Hands | None:
    for name, hands in pieces.items():
        if all(word in name.split() for word in words) and hands.parts and len(name.split()) <= 2 and not hands.crochet:
            return hands
    return None


def _fronts(pieces: Mapping[str, Hands]) -> dict[str, tuple[Hands, str]]:
    """Return, for each side as worn, the front piece and which of its edges lies there."""
    left, right = _find(pieces, "left", "front"), _find(pieces, "right", "front")
    whole = pieces.get("front")
    out: dict[str, tuple[Hands, str]] = {}
    if left:
        out["left"] = (left, "right")
    if right:
        out["right"] = (right, "left")
    if whole and not out and whole.parts:
        out = {"left": (whole, "right"), "right": (whole, "left")}
    return out


def _mates(pieces: Mapping[str, Hands], table: Mapping[EdgeName, Edge], text: str) -> Iterator[Mate]:
    back, fronts = pieces.get("back"), _fronts(pieces)
    sleeve = pieces.get("sleeve") or _find(pieces, "sleeve")
    unknown = any(hands.lengths_unknown for hands in pieces.values())
    for worn, (front, edge) in fronts.items():
        if back is not None and back.parts:
            pairs = [("underarm", Unit.STITCHES), ("shoulder", Unit.STITCHES)]
            if not unknown:
                pairs += [("side", Unit.ROWS), ("armhole", Unit.ROWS), ("raglan", Unit.ROWS)]
            for name, unit in pairs:
                a, b = EdgeName(back.name, f"{worn} {name}"), EdgeName(front.name, f"{edge} {name}")
                if name in UPWARDS and not (_is_done(back, name) and _is_done(front, name)):
                    continue
                if a in table and b in table and not (name == "raglan" and sleeve):
                    if name == "underarm" and sleeve:
                        continue
                    yield _mate(a, b, unit)
        if sleeve is not None and sleeve.parts:
            yield from _to_sleeve(front, edge, worn, "front", table)
    if back is not None and sleeve is not None and sleeve.parts:
        for worn in ("left", "right"):
            yield from _to_sleeve(back, worn, worn, "back", table)


def _is_done(hands: Hands, name: str) -> bool:
    """Whether a piece goes on to the end of that edge; a text may break off before."""
    if name == "side" and hands.armhole_row is not None:
        return True
    return hands.ended != "open" or any(live.ended not in ("open", "joined") for live in hands.parts)


def _to_sleeve(body: Hands, edge: str, worn: str, to: str, table: Mapping[EdgeName, Edge]) -> Iterator[Mate]:
    sleeve = f"{worn.capitalize()} sleeve"
    for name, unit in (("raglan", Unit.ROWS), ("underarm", Unit.STITCHES)):
        a, b = EdgeName(body.name, f"{edge} {name}"), EdgeName(sleeve, f"{to} {name}")
        if a in table and b in table:
            yield _mate(a, b, unit)


def _mate(a: EdgeName, b: EdgeName, unit: Unit) -> Mate:
    if unit is Unit.ROWS:
        return Mate(a, b, unit, allowed=ROWS_EASED, exact_within=1.0)
    return Mate(a, b, unit)


def _caps(pieces: Mapping[str, Hands], gauge: Gauge | None, text: str) -> tuple[Seam, ...]:
    """Lay the cap of a set-in sleeve along its armhole, or a straight sleeve top between its markers."""
    sleeve, back = pieces.get("sleeve") or _find(pieces, "sleeve"), pieces.get("back")
    fronts = _fronts(pieces)
    if sleeve is None or back is None or gauge is None or not sleeve.parts or not back.parts:
        return ()
    cap = stretch(sleeve, "left", gauge)
    width = gauge.width_mm(sleeve.parts[0].n).best
    front = fronts.get("left")
    if cap.upper == "cap" and cap.upper_mm and front:
        b_side, f_side = stretch(back, "left", gauge), stretch(front[0], front[1], gauge)
        if 0 in (back.armhole_row, front[0].armhole_row):
            return ()  # They go on from an underarm that was bound off in another piece.
        if not b_side.upper_mm or not f_side.upper_mm or "armhole" not in (b_side.upper, f_side.upper):
            return ()
        whole = 2 * cap.upper_mm + width
        hole = b_side.upper_mm + f_side.upper_mm
        ease = CAP_FULLER_MM if whole > hole else CAP_EASE_MM
        return (_seam("armhole", "cap", hole, whole, ease, bool(GATHERED.search(text)) and whole > hole),)
    if cap.upper == "" and back.marker_mm is not None and not back.lengths_unknown:
        length = gauge.length_mm(stretch(back, "left", gauge).side_rows)
        if not hasattr(length, "best"):
            return ()
        hole = 2 * (length.best - back.marker_mm)
        return (_seam("armhole between markers", "top", hole, width, TOP_EASE_MM, False),)
    return ()


def _seam(hole: str, top: str, a_mm: float, b_mm: float, ease: float, on_purpose: bool) -> Seam:
    mate = Mate(
        EdgeName("Body", hole), EdgeName("Sleeve", top), Unit.MM, allowed=ease, exact_within=2.0, on_purpose=on_purpose
    )
    a = Edge(mate.a, mm=round(a_mm, 1))
    b = Edge(mate.b, mm=round(b_mm, 1))
    seam = walk(mate, a, b)
    assert seam is not None
    return seam
