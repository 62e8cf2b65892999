"""The order of work for a skirt, as steps: what is pressed before what is crossed, where to fit, where to look last.

Press each seam before it is crossed, wool from the wrong side under a damp cloth (Fitting Dresses; Text-Book on
Domestic Art, read). The rest is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lastlook.paper.drafted import Drafted
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seams import Fullness

FINISHES: Mapping[str, tuple[str, float]] = {
    "wool": ("pink or overcast, pressed open", 0.0),
    "cotton": ("overcast, pressed open", 0.0),
    "linen": ("bind, or fell flat", 3.0),
    "silk": ("French seam", 6.0),
    "rayon": ("overcast closely; it frays", 2.0),
    "polyester": ("overcast", 0.0),
}
"""How seams are finished by cloth, and the allowance in mm that the finish eats."""
FLAMMABLE = frozenset({"cotton", "linen", "rayon", "viscose"})


@dataclass(frozen=True)
class Step:
    """One step; `last_look` is what can't be taken back after it."""

    do: str
    sort: str = "sew"
    """'cut', 'sew', 'press', 'fit' or 'hang'."""
    last_look: str | None = None
    piece: str | None = None
    care: str | None = None
    """What to mind, for hands and cloth."""


def order_of_work(
    drafted: Drafted, fibre: str = "", opening: str = "centred", child_mm: float = 0.0
) -> tuple[Step, ...]:
    """Return the steps; `child_mm` is a child's height in mm, 0 for a grown wearer."""
    steps = [*_before(drafted), *_shell(drafted, fibre, opening), *_top(drafted), *_end(drafted, fibre)]
    if 0 < child_mm <= CHILD_MM:
        steps.insert(0, Step("Plan no cord or drawstring with free ends.", "cut", care=CORDS))
    return tuple(steps)


CHILD_MM = 1760.0
CORDS = (
    "Cords catch, and children were hurt: none at hood or neck up to 7 years or 134 cm, no free ends there up to 14 "
    "years (EN 14682 as explained by Tukes). Local rules may ask for more; follow the stricter."
)
PINS = "Count the pins out and in again; sew over none."
IRON = "Stand the iron on its heel, keep the cord clear, and try a scrap first; unplug it when you leave the room."
FLAME = "Loose, brushed or gauzy cotton and rayon catch fire easily: keep full skirts from open flames and heaters."


def _before(drafted: Drafted) -> list[Step]:
    names = ", ".join(piece.name for piece in drafted.pieces)
    return [
        Step(f"Walk every seam of the paper once more: {names}.", "cut"),
        Step(
            "Lay and cut; keep scraps from every piece.",
            "cut",
            last_look="cut",
            care="Cut on a table, never in the hand; close the blade after each cut.",
        ),
        Step("Thread-mark seam lines, notches, darts and the hip line.", "cut", care=PINS),
    ]


def _shell(drafted: Drafted, fibre: str, opening: str) -> list[Step]:
    shell = [piece for piece in drafted.pieces if piece.role == "skirt"]
    finish, eaten = FINISHES.get(fibre, ("overcast", 0.0))
    eats = f"; that eats {eaten:.0f} mm of each allowance" if eaten else ""
    steps = [
        Step(f"Stay-stitch the waist edge of {piece.name}, from the side to the centre.", piece=piece.name)
        for piece in shell
    ]
    steps += [_darts(piece) for piece in shell if piece.darts]
    if any(piece.darts for piece in shell):
        steps.append(Step("Press darts towards the centre over a ham or a rolled towel.", "press", care=IRON))
    steps += [
        Step("Baste the side seams and the waist stay; try on.", "fit", care=PINS),
        Step("Sew the side seams, the opening left free.", last_look="sew up"),
        Step(f"Finish the seams: {finish}{eats}.", care=None),
        Step("Press the seams as sewn, then open, before one crosses another.", "press", last_look="press", care=IRON),
        Step(f"Set in the {opening} opening."),
    ]
    return steps


def _darts(piece: PaperPiece) -> Step:
    count = len(piece.darts) * piece.times
    return Step(f"Sew the {count} darts of {piece.name} from edge to point; knot the ends.", piece=piece.name)


def _top(drafted: Drafted) -> list[Step]:
    band = next((piece for piece in drafted.pieces if piece.role == "band"), None)
    if band is None:
        return [Step("Face the waist over a stay tape as long as the finished waist.")]
    full = any(join.fullness is Fullness.GATHERED for join in drafted.joins)
    return [
        *([_drawn_in(drafted)] if full else []),
        Step(f"Interface {band.name}: its full length, half its width, fused on a scrap first.", care=IRON),
        Step("Sew a waist stay of tape into the waist seam, as long as the finished waist."),
        Step(
            f"Sew {band.name} to the waist, notch to notch, fullness between side front and side back.", piece=band.name
        ),
        Step("Try on: waist, hip, sitting down.", "fit"),
        Step(f"Finish {band.name}; hook or button on the lap.", last_look="sewn buttonhole"),
    ]


def _drawn_in(drafted: Drafted) -> Step:
    """Return how the fullness of a skirt comes into its band."""
    if "pleated" in drafted.kind:
        return Step("Lay the pleats from mark to mark, baste them through all layers to the hip, and press.", "press")
    return Step("Sew two rows of long stitches along the top and draw them up, quarter by quarter, to the band.")


def _end(drafted: Drafted, fibre: str) -> list[Step]:
    hang = "three days" if "circle" in drafted.kind else "a day"
    return [
        Step(f"Let it hang for {hang} by the band.", "hang"),
        Step("Level the hem from the floor, on the wearer, in her shoes.", "fit"),
        Step("Trim, turn and sew the hem.", last_look="trim", care=FLAME if fibre in FLAMMABLE else None),
        Step("Press from the wrong side under a cloth.", "press", care=IRON),
        Step("Search the skirt for pins by hand and magnet before it is worn.", care=PINS),
    ]
