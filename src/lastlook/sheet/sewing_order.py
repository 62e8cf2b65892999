"""The order of work of a sewn skirt, from what is known of its pieces, its seams and its cloth.

The order is common practice (no source) but for: each seam pressed before it is crossed (Fitting Dresses and
Domestic Art, early bulletins, read); fitting in the order waist, grain at the hip, width, length (the same); a flared
hem hung one to three days before it is levelled (retroglam, 2013, read).
"""

from __future__ import annotations

from lastlook import outfit, paper
from lastlook.paper import PaperPiece, Use
from lastlook.piece import EdgeName, Meets, Seam
from lastlook.quantity import Missing, write_length
from lastlook.sheet.manner import Manner
from lastlook.sheet.schedule import Task

FLARED = 1.15
"""From this hem over hip on, a hem hangs out of true and is levelled after hanging; our own bound."""
Parts = tuple[tuple[str, tuple[Task, ...]], ...]


def sewing_order(one: outfit.Sewn, manner: Manner) -> Parts:
    """Return the order of work of a skirt, part by part; empty where nothing is drafted."""
    if not one.drafted.pieces:
        return ()
    return (
        ("Before the shears", tuple(_before(one, manner))),
        ("Pieces", tuple(_pieces(one, manner))),
        ("Seams", tuple(_seams(one, manner))),
        ("On the body", tuple(_fitting(one))),
        ("Band and hem", tuple(_finish(one, manner))),
    )


def _before(one: outfit.Sewn, manner: Manner) -> list[Task]:
    out = []
    if one.cloth is None or isinstance(one.cloth.shrinkage, Missing):
        why = "Whether it shrinks is not known yet, and the pieces were laid on it as it is."
        out.append(Task("Wash and dry the cloth as the skirt will be, then measure it again.", why))
    out.append(Task("Press the cloth, and see that its cut ends lie square to the selvedges."))
    out.append(Task("Lay the pieces by the cutting sheet, measure both ends of every grainline, pin."))
    out.append(Task("Cut, in the order of the cutting sheet.", is_final=True))
    marks = sum(len(piece.notches) + len(piece.marks) for piece in one.drafted.pieces)
    darts = sum(len(piece.darts) for piece in one.drafted.pieces)
    said = f"Mark before the paper comes off: {_number(darts, 'dart')}, {_number(marks, 'notch', 'notches')}"
    out.append(Task(f"{said} on the drawn pieces, and every centre."))
    return out


def _number(count: int, one: str, many: str = "") -> str:
    return f"{count} {one if count == 1 else many or one + 's'}"


def _pieces(one: outfit.Sewn, manner: Manner) -> list[Task]:
    out = []
    for piece in one.drafted.pieces:
        if piece.role == "skirt" and piece.side("waist"):
            why = "It is off grain there and stretches in the hand."
            out.append(Task(f"{piece.name}: stay-stitch the waist edge just inside its seam line.", why))
        out += _darts(piece, manner)
        if piece.role == "band":
            out.append(Task(f"{piece.name}: interface half of its width, from end to end of the seam line."))
    return out


def _darts(piece: PaperPiece, manner: Manner) -> list[Task]:
    """Return the darts of a piece, those of one size together."""
    half = " on each half" if piece.fold else ""
    sizes = [
        (write_length(dart.intake_mm, manner.units), write_length(dart.length_mm, manner.units)) for dart in piece.darts
    ]
    out = []
    for size in dict.fromkeys(sizes):
        count = sizes.count(size)
        which = "the dart" if count == 1 else f"{count} darts"
        said = f"{piece.name}: sew {which}{half}, {size[0]} wide at the edge, both legs together, {size[1]} long."
        out.append(Task(said, "From the edge to nothing at the point; press towards the centre."))
    return out


def _seams(one: outfit.Sewn, manner: Manner) -> list[Task]:
    out = []
    for seam in one.drafted.seams:
        if not _is_band(seam):
            first = one.drafted.piece(seam.mate.a.piece)
            twice = ", left and right" if first is not None and first.fold else ""
            said = f"Sew {_edge(seam.mate.a)} to {_edge(seam.mate.b)}{twice}: {_lengths(seam, manner)}."
            out.append(Task(said, "Notch to notch, from the hem up; press it before it is crossed."))
    if out:
        why = "Which seam it is in, and how long it has to be to go over the hip, is not known yet."
        out.insert(0, Task("Settle the opening, and leave it unsewn.", why))
    return out


def _is_band(seam: Seam) -> bool:
    return "band" in f"{seam.mate.a} {seam.mate.b}".lower()


def _edge(name: EdgeName) -> str:
    return f"the {name.edge} edge of {name.piece.replace(' + ', ' and ')}"


def _lengths(seam: Seam, manner: Manner) -> str:
    a, b = write_length(seam.a_length, manner.units), write_length(seam.b_length, manner.units)
    if seam.meets is Meets.EXACTLY or a == b:
        return f"{a} on both"
    return f"{a} to {b}, {seam.meets.value}"


def _fitting(one: outfit.Sewn) -> list[Task]:
    look = "Try it on, right side out, over what will be worn beneath, a tape round the waist."
    why = "Look in this order: the waist, the cross grain at the hip, the width, the length."
    return [Task(look, why), Task("Sit down, take a step, raise both arms.", "Ease is spent sitting.")]


def _finish(one: outfit.Sewn, manner: Manner) -> list[Task]:
    out = [
        Task(f"Sew {_edge(seam.mate.a)} to {_edge(seam.mate.b)}: {_lengths(seam, manner)}.")
        for seam in one.drafted.seams
        if _is_band(seam)
    ]
    if _is_flared(one.drafted):
        why = "Bias drops; a hem levelled too early is wrong by evening."
        out.append(Task("Let it hang by the band for one to three days.", why))
    hems = {side.allowance_mm for piece in one.drafted.pieces for side in piece.sides if side.use is Use.HEM}
    for mm in sorted(hems):
        out.append(Task(f"Level the hem from the floor and turn up {write_length(mm, manner.units)}."))
    out.append(Task("Trim the hem only when the length is settled on the body.", is_final=True))
    out.append(Task("Press from the wrong side, after a trial on a scrap.", is_final=True))
    return out


def _is_flared(drafted: paper.Drafted) -> bool:
    hem, hip = drafted.girths_mm.get("hem"), drafted.girths_mm.get("hip")
    return hem is not None and hip is not None and hem > FLARED * hip
