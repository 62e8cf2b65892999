"""What a lay can't have: room for a piece, enough cloth, or use of both layers under a single piece."""

from __future__ import annotations

from collections import Counter

from lastlook import geometry
from lastlook.finding import Certainty, Finding, Where
from lastlook.lay.clash import Plan
from lastlook.lay.clash.job import MOST_CORNERS
from lastlook.lay.cloth import Fold
from lastlook.lay.judge.laid import copies
from lastlook.lay.placement import Lay
from lastlook.lay.wanted import Problem


def never_fits(problem: Problem, plan: Plan) -> tuple[Finding, ...]:
    """Return proofs that no lay exists: a piece with no place at all, or more area than the cloth has."""
    out = []
    for name in dict.fromkeys(job.wanted.id for job in plan.lacking()):
        if any(piece.id == name and piece.pieced for piece in problem.pieces):
            continue
        piece = problem.piece(name)
        free = piece is not None and piece.angles_deg is None and (piece.grain_deg is None or piece.tilt_deg > 0)
        if free or (piece is not None and len(piece.outline) > MOST_CORNERS):
            certainty, way = Certainty.DOUBTFUL, "in any way that was tried"
        else:
            certainty, way = Certainty.PROVEN, "in any way it may lie"
        say = f"{name} finds no place on this cloth {way}."
        why = f"The cloth can be used over {_usable(problem)}; the piece is larger one way or the other."
        attempt = "Piece it, narrow it, or open the cloth out."
        out.append(Finding("piece-without-room", certainty, say, why, attempt, where=Where(piece=name)))
    if not out and problem.cloth.length_mm is not None:
        out += _too_much(problem) or _too_long(problem)
    return tuple(out)


def _too_long(problem: Problem) -> list[Finding]:
    """Return the proof that pieces too wide to lie beside each other are too long to lie behind each other."""
    cloth = problem.cloth
    wide = cloth.width_mm - 2 * cloth.selvedge_mm
    if cloth.fold is not Fold.NONE:
        return []
    lengths: list[float] = []
    names: list[str] = []
    for piece in problem.pieces:
        if piece.grain_deg != 0.0 or piece.tilt_deg or piece.angles_deg is not None or piece.pieced:
            continue
        length = geometry.box_length_mm(piece.outline, max(0.0, wide - cloth.gap_mm) / 2 + 0.01)
        if length:
            lengths += [length] * piece.quantity
            names.append(f"{piece.quantity} × {piece.id}" if piece.quantity > 1 else piece.id)
    need, have = sum(lengths) + cloth.gap_mm * (len(lengths) - 1), _long(problem)
    if len(lengths) < 2 or need <= have + 0.1 * len(lengths):
        return []
    say = f"{', '.join(names)} can only lie one behind the other: {need:.0f} mm; the cloth has {have:.0f} mm."
    why = f"Each of them takes more than half of the {wide:g} mm of width over that length."
    return [Finding("cloth-short", Certainty.PROVEN, say, why, "Shorten or piece one, or cut one from another cloth.")]


def _long(problem: Problem) -> float:
    outline = problem.cloth.outline
    return max(x for x, _ in outline) - min(x for x, _ in outline) if outline else problem.cloth.length_mm or 0.0


def _usable(problem: Problem) -> str:
    cloth = problem.cloth
    wide = cloth.width_mm - 2 * cloth.selvedge_mm
    long = "any length" if cloth.length_mm is None else f"{cloth.length_mm:g} mm of length"
    return f"{wide:g} mm of width and {long}"


def _too_much(problem: Problem) -> list[Finding]:
    cloth = problem.cloth
    box = ((0.0, cloth.selvedge_mm), (cloth.length_mm or 0.0, cloth.selvedge_mm))
    top = cloth.width_mm - cloth.selvedge_mm
    whole = cloth.outline or (*box, (box[1][0], top), (0.0, top))
    have = geometry.open_area_mm2(whole, cloth.flaws) if cloth.flaws else geometry.signed_area_mm2(whole)
    need = 0.0
    for piece in problem.pieces:
        if piece.flaw_free is not None:
            have = max(have, geometry.signed_area_mm2(whole))
        need += geometry.signed_area_mm2(piece.outline) * piece.quantity * (2 if piece.on_fold else 1)
    if need <= have + 1:
        return []
    say = f"The pieces cover {need / 100:.1f} cm²; the cloth has {have / 100:.1f} cm² that can be used."
    why = f"{(need - have) / 100:.1f} cm² are missing even if not a thread were wasted."
    return [Finding("cloth-short", Certainty.PROVEN, say, why, "Shorten a piece, or cut one from another cloth.")]


def not_found(problem: Problem, part: Lay, passes: int) -> tuple[Finding, ...]:
    """Return what found no room in the time given; that is no proof that there is none."""
    laid: Counter[str] = Counter()
    for one in part.placements:
        piece = problem.piece(one.id)
        if piece is not None and one.part == 1:
            laid[one.id] += len(copies(piece, one, problem.cloth, problem.cloth.length_mm or 0.0))
    lacking = [
        f"{piece.id}" + (f" ({piece.quantity - laid[piece.id]} of {piece.quantity})" if piece.quantity > 1 else "")
        for piece in problem.pieces
        if laid[piece.id] < piece.quantity
    ]
    say = f"No lay was found in {passes} passes: {', '.join(lacking) or 'something'} stayed without room."
    why = "That is no proof that there is none; it was searched for so long and no longer."
    attempt = "Give it more time, or ask what would make it fit."
    return (Finding("lay-not-found", Certainty.UNKNOWN, say, why, attempt),)


def wasted(problem: Problem, lay: Lay) -> tuple[Finding, ...]:
    """Return a note for each piece that is cut singly out of double cloth, with what is lost under it."""
    lost: dict[str, float] = {}
    for one in lay.placements:
        piece = problem.piece(one.id)
        if piece is not None:
            for copy in copies(piece, one, problem.cloth, problem.cloth.length_mm or 0.0):
                shapes = [[(float(x), float(y)) for x, y in shape] for shape in copy.waste]
                area = sum(abs(geometry.signed_area_mm2(shape)) for shape in shapes)
                if area:
                    lost[one.id] = lost.get(one.id, 0.0) + area
    why = "Cut folded, the layer under a single piece is cut away with it."
    attempt = "Cut the pairs first, open the cloth out, and cut this piece singly."
    out = []
    for name, area in lost.items():
        say = f"{name} lies on one layer of double cloth; {area / 100:.0f} cm² go with it."
        out.append(Finding("layer-wasted", Certainty.NOTE, say, why, attempt, where=Where(piece=name)))
    return tuple(out)
