"""The smaller pieces that are wanted with a skirt, each asked for by its name."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from lastlook.paper.draft.ask import Ask, read_ask
from lastlook.paper.draft.parts.belt import belt
from lastlook.paper.draft.parts.contour import Contour, contour_band
from lastlook.paper.draft.parts.facing import facings
from lastlook.paper.draft.parts.lining import linings
from lastlook.paper.draft.parts.pocket import inseam_pocket, patch_pocket, with_opening
from lastlook.paper.drafted import Drafted
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seams import Join
from lastlook.piece import EdgeName

PARTS: Mapping[str, str] = {
    "belt": "a belt with loops",
    "tabs": "tabs in place of belt loops",
    "facing": "a facing in place of the band",
    "shaped_band": "a shaped band in place of the straight one",
    "pocket": "pockets in the side seams",
    "patch": "patch pockets",
    "lining": "a simple lining",
}
"""What can be wanted with a skirt; as an option it is 1."""


SLOPE_SHARE = 0.5
"""Just below the waist a body widens about half as fast as on the whole way to the hip (common practice, no source)."""


def with_parts(drafted: Drafted) -> Drafted:
    """Return the set with the parts that its options want."""
    wanted = {name for name in PARTS if drafted.options.get(name)}
    ask = read_ask(drafted.kind, drafted.measures, drafted.options, ("waist_girth",))
    if not wanted or isinstance(ask, tuple):
        return drafted
    pieces = drafted.pieces
    if "pocket" in wanted:
        pieces = tuple(with_opening(piece) if piece.role == "skirt" else piece for piece in pieces)
    drafted = replace(drafted, pieces=pieces)
    if "facing" in wanted:
        drafted = _faced(ask, drafted)
    elif "shaped_band" in wanted:
        drafted = _shaped(ask, drafted)
    extra: tuple[PaperPiece, ...] = ()
    extra += belt(ask) if wanted & {"belt", "tabs"} else ()
    extra += (inseam_pocket(ask),) if "pocket" in wanted else ()
    extra += (patch_pocket(ask),) if "patch" in wanted else ()
    extra += linings(pieces) if "lining" in wanted else ()
    return replace(drafted, pieces=(*drafted.pieces, *extra))


def _faced(ask: Ask, drafted: Drafted) -> Drafted:
    """Put facings in the band's place; each is sewn to the waist of its own piece."""
    shell = tuple(piece for piece in drafted.pieces if piece.role == "skirt")
    made = facings(ask, shell)
    joins = tuple(join for join in drafted.joins if not any(name.edge == "waist" for name in join.a))
    joins += tuple(
        Join((EdgeName(piece.name, "waist"),), (EdgeName(one.name, "waist"),))
        for piece, one in zip(shell, made, strict=True)
    )
    return replace(drafted, pieces=(*shell, *made), joins=joins)


def _shaped(ask: Ask, drafted: Drafted) -> Drafted:
    """Put a shaped band in the straight one's place, its lower edge as long as the skirt top."""
    width = ask.option("band_width_mm")
    lower = drafted.options.get("band_mm", ask.top_mm)
    slope = (drafted.girths_mm.get("hip") or lower) - lower
    upper = lower - max(1.0, slope / max(ask.hip_depth_mm, 1.0) * width * SLOPE_SHARE)
    band = contour_band(Contour(upper, lower, width, ask.option("lap_mm"), ask.option("seam_allowance_mm")))
    pieces: list[PaperPiece] = []
    for piece in drafted.pieces:
        inside = replace(band, name=f"{piece.name} facing", role="part")
        pieces += [replace(band, name=piece.name), inside] if piece.role == "band" else [piece]
    return replace(drafted, pieces=tuple(pieces))
