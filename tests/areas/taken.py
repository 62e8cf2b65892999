"""Paper pieces from elsewhere: a table of points (millimetres), a line `---`, and what the maker says of them.

What comes out is every piece with its edges, darts, notches and grain, then what there is to say; asked for a kind
of finding, the first finding of that kind.
"""

from __future__ import annotations

from lastlook import outfit
from lastlook.finding import say

MAIN = '[outfit]\nname = "Taken"\n[sewing.skirt]\nkind = "a-line"\n'


def answer(given: str, asked: str) -> str:
    points, _, said = given.partition("---\n")
    files = {outfit.MAIN: (MAIN + said).encode(), "taken/points.txt": points.encode()}
    whole = outfit.read(outfit.document(files))
    (one,) = outfit.derive(whole).sewn
    findings = (*whole.findings, *one.drafted.findings)
    if asked != "pieces":
        found = next((finding for finding in findings if finding.kind == asked), None)
        return say(found) if found else f"no {asked}; said: {', '.join(finding.kind for finding in findings)}"
    lines = [line for piece in one.drafted.pieces for line in _told(piece)]
    lines += [
        f"{seam.mate.a} and {seam.mate.b}: {seam.difference:.1f} mm apart, {seam.meets.value}"
        for seam in one.drafted.seams
    ]
    return "\n".join([*lines, *(say(finding) for finding in findings)])


def _told(piece):  # type: ignore[no-untyped-def]
    yield f"{piece.name}, cut {piece.quantity}" + (" as a pair" if piece.mirrored_pair else "")
    for side in piece.sides:
        yield f"  {side.name}: {side.sewn_mm:.1f} mm, {side.use.value}, allowance {side.allowance_mm:.0f} mm"
    for dart in piece.darts:
        yield f"  dart in {dart.edge}: {dart.intake_mm:.1f} mm wide, {dart.length_mm:.1f} mm deep"
    for notch in piece.notches:
        yield f"  notch on {notch.edge} at {notch.point[0]:.1f}, {notch.point[1]:.1f}"
    (a, b), (c, d) = piece.grain
    yield f"  grain {a:.0f}, {b:.0f} to {c:.0f}, {d:.0f}"
