"""Before the shears: the cloth made ready, the paper walked once more, cut and marked."""

from __future__ import annotations

from lastlook.paper.make.order.care import BLADE, CHILD_MM, CORDS, IRON, PINS
from lastlook.paper.make.order.step import Making, Step


def before(making: Making) -> list[Step]:
    """Return the steps up to the marked pieces."""
    out = []
    if 0 < making.child_mm <= CHILD_MM:
        out.append(Step("Plan no cord or drawstring with free ends.", care=CORDS))
    if making.shrinks is not False:
        why = "It is known to shrink." if making.shrinks else "Whether it shrinks is not known yet."
        out.append(Step("Wash and dry the cloth as the skirt will be, then measure it again.", why))
    out += [
        Step("Press the cloth, and see that its cut ends lie square to the selvedges.", care=IRON),
        Step(f"Walk every seam of the paper once more: {', '.join(piece.name for piece in making.drafted.pieces)}."),
        Step("Lay the pieces by the cutting sheet, measure both ends of every grainline, pin.", care=PINS),
        Step("Cut, in the order of the cutting sheet; keep scraps from every piece.", last_look="cut", care=BLADE),
        _marks(making),
    ]
    return out


def _marks(making: Making) -> Step:
    darts = sum(len(piece.darts) for piece in making.drafted.pieces)
    marks = sum(len(piece.notches) + len(piece.marks) for piece in making.drafted.pieces)
    counted = [f"{darts} {'dart' if darts == 1 else 'darts'}"] if darts else []
    counted.append(f"{marks} {'notch' if marks == 1 else 'notches'}")
    say = f"Mark before the paper comes off: {', '.join(counted)} on the drawn pieces, and every centre."
    return Step(say, "Thread-mark the seam line and the hip line too; chalk rubs off in the hand.")
