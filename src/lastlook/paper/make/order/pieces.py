"""Each piece by itself, while it lies flat: stay-stitching, darts, pleats, pockets, interfacing."""

from __future__ import annotations

from lastlook.paper.make.order.care import IRON
from lastlook.paper.make.order.step import Making, Step
from lastlook.paper.paper_piece import PaperPiece


def pieces(making: Making) -> list[Step]:
    """Return what is done to each piece before it is sewn to another."""
    out: list[Step] = []
    for piece in making.shell:
        if piece.side("waist"):
            why = "It is off grain there and stretches in the hand."
            out.append(
                Step(f"{piece.name}: stay-stitch the waist edge just inside its seam line.", why, None, piece.name)
            )
        out += _darts(making, piece)
    if any(piece.darts for piece in making.shell):
        out.append(Step("Press the darts towards the centre over a ham or a rolled towel.", care=IRON))
    if "pleated" in making.drafted.kind:
        say = "Lay the pleats from mark to mark, baste them through all layers down to the hip, and press."
        out.append(Step(say, "Press a sample of three first.", care=IRON))
    out += _patches(making)
    if making.band is not None and making.elastic is None:
        say = f"{making.band.name}: interface half of its width, from end to end of the seam line."
        out.append(Step(say, "Fuse or baste a scrap first.", None, making.band.name, IRON))
    for facing in making.parts("facing"):
        say = f"{facing.name}: interface it to the seam line, and overcast its lower edge."
        out.append(Step(say, "", None, facing.name, IRON))
    return [*out, *_belt(making)]


def _darts(making: Making, piece: PaperPiece) -> list[Step]:
    """Return the darts of a piece, those of one size together."""
    half = " on each half" if piece.fold else ""
    sizes = [(making.shown(dart.intake_mm), making.shown(dart.length_mm)) for dart in piece.darts]
    out = []
    for size in dict.fromkeys(sizes):
        count = sizes.count(size)
        which = "the dart" if count == 1 else f"{count} darts"
        say = f"{piece.name}: sew {which}{half}, {size[0]} wide at the edge, both legs together, {size[1]} long."
        out.append(Step(say, "From the edge to nothing at the point; knot the ends.", None, piece.name))
    return out


def _patches(making: Making) -> list[Step]:
    found = making.parts("patch")
    if not found:
        return []
    say = f"{found[0].name}: turn its hem, press its edges over a card, and sew it on level with its mate."
    return [Step(say, "A pocket is easier to sew on while the piece lies flat.", None, found[0].name, IRON)]


def _belt(making: Making) -> list[Step]:
    out = []
    for word, said in (
        ("belt loop", "sew them as one strip, turn it, and cut it into the loops"),
        ("tab", "sew, turn"),
    ):
        found = making.parts(word)
        if found:
            out.append(Step(f"{found[0].name}: {said}, and press.", "", None, found[0].name, IRON))
    return out
