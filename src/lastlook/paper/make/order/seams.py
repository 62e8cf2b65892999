"""The long seams: pockets and opening first, then sewn, finished by the cloth, pressed."""

from __future__ import annotations

from lastlook.paper.easing import prior_of
from lastlook.paper.fit import lap_rule, opening_note
from lastlook.paper.fit.opening import Over
from lastlook.paper.make.order.care import FINISHES, IRON, LEAST_LEFT_MM, NEEDLE
from lastlook.paper.make.order.step import Making, Step
from lastlook.paper.seam_edge import Use
from lastlook.piece import EdgeName, Meets, Seam


def seams(making: Making) -> list[Step]:
    """Return the steps from pinned pieces to a skirt without its top."""
    long_seams = [seam for seam in making.drafted.seams if "waist" not in f"{seam.mate.a.edge} {seam.mate.b.edge}"]
    if not long_seams:
        return []
    out = [_left_open(making), *_pockets(making)]
    out.append(
        Step("Baste the long seams and try the skirt on before they are sewn.", "Basting can be taken out again.")
    )
    out += [_sew(making, seam) for seam in long_seams]
    return [*out, *_centres(making), _finished(making), _pressed(), *_set_in(making)]


def _left_open(making: Making) -> Step:
    opening = making.opening
    if opening is not None and opening.length_mm:
        say = f"Mark the opening: {making.shown(opening.length_mm)} down from the waist seam, at the {opening.at}."
        return Step(say, "What is marked stays unsewn.")
    if making.elastic is not None:
        return Step("Leave no opening: the elastic pulls out over the hip.")
    waist, hip = making.drafted.girths_mm.get("waist"), making.drafted.measures.get("hip_girth")
    depth = making.drafted.measures.get("waist_to_hip")
    why = "Which seam it is in is not settled yet."
    if waist is not None and hip is not None and depth is not None:
        why = f"{opening_note(Over(waist, hip, depth, making.units)).say} {why}"
    return Step("Settle the opening, and leave it unsewn.", why)


def _pockets(making: Making) -> list[Step]:
    bags = making.parts("pocket bag")
    if not bags:
        return []
    say = f"{bags[0].name}: sew one to each side edge, between the pocket notches, right sides together."
    round_say = "Sew the side seams above and below the pockets, and round the bags, in one."
    return [
        Step(say, "Press them outwards before the side seams are sewn.", None, bags[0].name, IRON),
        Step(round_say, "A pocket in the side of the opening is set into the zip's lower end.", None, bags[0].name),
    ]


def _sew(making: Making, seam: Seam) -> Step:
    first = making.drafted.piece(seam.mate.a.piece)
    twice = ", left and right" if first is not None and first.fold and first.name != seam.mate.b.piece else ""
    count = f", {first.quantity} times" if first is not None and first.quantity > 2 else ""
    say = f"Sew {edge(seam.mate.a)} to {edge(seam.mate.b)}{twice or count}: {lengths(making, seam)}."
    return Step(say, "Notch to notch, from the hem up; press it before it is crossed.", "sew up", care=NEEDLE)


def _centres(making: Making) -> list[Step]:
    """Return the seams at a centre, which a piece has with its own mirror image."""
    out = []
    for piece in making.shell:
        side = piece.side("centre")
        if side is not None and side.use is Use.SEAM and piece.mirrored_pair:
            say = f"Sew the centre of {piece.name} to its mirror image: {making.shown(side.sewn_mm)}."
            out.append(Step(say, "", "sew up", piece.name, NEEDLE))
    return out


def edge(name: EdgeName) -> str:
    """Return an edge as a sentence names it."""
    return f"the {name.edge} edge of {name.piece.replace(' + ', ' and ')}"


def lengths(making: Making, seam: Seam) -> str:
    """Return both lengths of a seam, and how they meet."""
    a, b = making.shown(seam.a_length), making.shown(seam.b_length)
    if seam.meets is Meets.EXACTLY or a == b:
        return f"{a} on both"
    return f"{a} to {b}, {seam.meets.value}"


def _finished(making: Making) -> Step:
    """Return how the seams are finished, and what that eats of the allowance that they have."""
    known = prior_of(making.fibre)
    finish, eaten = FINISHES.get(known or making.fibre.strip().lower(), ("overcast them, pressed open", 0.0))
    sides = [side for piece in making.shell for side in piece.sides if side.name.endswith("side")]
    narrow = min((side.allowance_mm for side in sides), default=0.0)
    why = ""
    if eaten and sides:
        left = narrow - eaten
        why = f"That eats {making.shown(eaten)} of {making.shown(narrow)}; {making.shown(left)} stay."
        if left < LEAST_LEFT_MM:
            why += f" That is narrow: cut {making.shown(LEAST_LEFT_MM - left)} more at the sides."
    return Step(f"Finish the seams: {finish}.", why)


def _pressed() -> Step:
    say = "Press the seams as sewn, then open, before one crosses another."
    return Step(
        say, "Wool from the wrong side under a damp cloth; lift the iron, let it cool flat.", "press", care=IRON
    )


def _set_in(making: Making) -> list[Step]:
    opening = making.opening
    if opening is None or not opening.length_mm:
        return []
    how = {
        "lapped": f"Set in the zip, lapped: the back edge at its teeth, the front over it by {making.shown(10.0)}.",
        "centred": "Set in the zip, centred: both edges meet over its teeth.",
        "hand-picked": "Set in the zip, lapped, its front row picked by hand in small back stitches.",
        "placket": "Face the front edge of the placket and bind the back one; the bound one lies beneath.",
    }[opening.kind]
    return [Step(how, lap_rule(opening.at))]
