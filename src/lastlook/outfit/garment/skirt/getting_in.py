"""How the wearer gets into a skirt: whether it opens far enough for her hip, and its seam has the cloth for that."""

from __future__ import annotations

from lastlook import paper
from lastlook.finding import Certainty, Cure, Edit, Finding, Where
from lastlook.outfit.answer import Answer, Part, answer_of
from lastlook.outfit.garment.sewn import Sewn
from lastlook.outfit.garment.skirt.levels import band_mm
from lastlook.outfit.names import title
from lastlook.outfit.outfit import Outfit
from lastlook.paper import fit
from lastlook.quantity import Missing
from lastlook.wearer import measure

SEAMS = {"left side": "side", "right side": "side", "centre back": "centre", "centre front": "centre"}
PIECES = {"centre back": "back", "centre front": "front"}


def getting_in(outfit: Outfit, one: Sewn) -> Part | None:
    """Return whether the skirt goes over the hip; None where nothing is drafted or no hip is known."""
    hip, depth = measure(outfit.wearer, "hip_girth"), measure(outfit.wearer, "waist_to_hip")
    waist = band_mm(one.drafted)
    if not one.drafted.pieces or waist is None or isinstance(hip, Missing):
        return None
    deep = paper.ASSUMED_HIP_DEPTH_MM if isinstance(depth, Missing) else depth.mm.best
    give = 0.0 if one.plan.elastic is None else one.plan.elastic.give_mm
    subject, over = f"{title(one.plan.name)} opening", fit.Over(waist + give, hip.mm.best, deep, outfit.manner.units)
    if one.plan.elastic is not None and one.plan.opening is None:
        top = paper.top_mm(one.drafted.pieces) or waist
        found = fit.elastic_findings(one.plan.elastic, top, over.hip_mm, outfit.manner.units)
        return _part(subject, found, f"{subject}: the elastic pulls out over the hip.")
    if one.plan.opening is None:
        return _wanted(outfit, one, over)
    return _judged(one, one.plan.opening, over)


def _part(subject: str, found: tuple[Finding, ...], good: str) -> Part:
    answer = answer_of(found)
    if answer is Answer.YES and any(one.certainty is Certainty.DOUBTFUL for one in found):
        answer = Answer.NOT_KNOWN_YET
    return Part(subject, answer, found[0].say if answer is not Answer.YES else good, found)


def _wanted(outfit: Outfit, one: Sewn, over: fit.Over) -> Part:
    """Return the opening that the skirt wants, offered with its edits; a zip that is in the box is named."""
    subject, note, needed_mm = f"{title(one.plan.name)} opening", fit.opening_note(over), over.needed_mm
    if not needed_mm:
        return Part(subject, Answer.YES, note.say, (note,))
    sold = fit.zip_for_mm(needed_mm)
    at_hand = [zip_ for zip_ in outfit.notions if zip_.kind == "zip" and (zip_.length_mm or 0.0) >= needed_mm]
    best = min(at_hand, key=lambda zip_: zip_.length_mm or 0.0) if at_hand else None
    length = (best.length_mm if best else None) or sold or needed_mm
    words = f"Set {f'the {best.name}' if best else 'a zip'} of {over.shown(length)}"
    cures = tuple(
        Cure(f"{words}, {kind}, into the left side.", _edits(one, kind, over.shown(length)))
        for kind in ("lapped", "centred")
    )
    finding = Finding(**{**vars(note), "cures": cures})
    return Part(subject, Answer.YES, note.say, (finding,))


def _edits(one: Sewn, kind: str, length: str) -> tuple[Edit, ...]:
    start = f"sewing.{one.plan.name}.opening"
    facts = {"kind": kind, "length": length, "at": "left side"}
    return tuple(Edit(f"{start}.{key}", value) for key, value in facts.items())


def _judged(one: Sewn, opening: fit.Opening, over: fit.Over) -> Part:
    subject = f"{title(one.plan.name)} opening"
    side = _seam(one, opening.at)
    if side is None or side.use is paper.Use.FOLD:
        return _part(subject, (_no_seam(one, opening),), "")
    found = fit.opening_findings(opening, over, side.allowance_mm)
    if side.sewn_mm < opening.length_mm:
        found = (*found, _too_long(opening, side.sewn_mm, over))
    opened = over.shown(over.waist_mm + 2 * opening.length_mm)
    good = (
        f"{subject}: with {over.shown(opening.length_mm)} open at the {opening.at} it measures "
        f"{opened} and passes over the hip. {fit.lap_rule(opening.at)}"
    )
    return _part(subject, found, good)


def _seam(one: Sewn, at: str) -> paper.SeamEdge | None:
    """Return the edge that the opening is left in."""
    shell = [piece for piece in one.drafted.pieces if piece.role == "skirt"]
    near = [piece for piece in shell if PIECES.get(at, "") in piece.name.lower()] or shell
    for name in (SEAMS[at], at):
        for piece in near:
            if (side := piece.side(name)) is not None:
                return side
    return None


def _no_seam(one: Sewn, opening: fit.Opening) -> Finding:
    fact = f"sewing.{one.plan.name}."
    cures = [Cure("Leave it open at the left side.", (Edit(f"{fact}opening.at", "left side"),))]
    if opening.at == "centre back" and one.plan.kind in ("straight", "a-line"):
        cures.append(Cure("Cut the back with a seam at its centre.", (Edit(f"{fact}options.centre_back_seam", 1),)))
    return Finding(
        "opening-without-seam",
        Certainty.PROVEN,
        f"The skirt has no seam at the {opening.at} to leave open.",
        "The piece lies on a fold there.",
        "Open it at a side, or cut that piece in two with a seam.",
        cures=tuple(cures),
        where=Where(piece=one.plan.name, fact=f"{fact}opening.at"),
    )


def _too_long(opening: fit.Opening, seam_mm: float, over: fit.Over) -> Finding:
    return Finding(
        "opening-longer-than-seam",
        Certainty.PROVEN,
        f"An opening of {over.shown(opening.length_mm)} does not go into a seam of {over.shown(seam_mm)}.",
        "It would come out at the hem.",
        "Take a shorter zip, or open the skirt at both sides.",
        where=Where(edge=opening.at),
    )
