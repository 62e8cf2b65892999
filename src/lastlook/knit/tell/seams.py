"""Edges that are sewn together and do not meet."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from lastlook.finding import Certainty, Finding, Span, Where
from lastlook.knit.tell.attempt import Attempt
from lastlook.knit.tell.wording import counted, listed, of_sizes
from lastlook.piece import Meets, Seam, Unit
from lastlook.quantity import Units, write_length

WORDS = {Unit.ROWS: "row", Unit.STITCHES: "stitch"}


def of_seams(
    by_size: Mapping[str, Sequence[Seam]],
    spans: Mapping[str, Span],
    attempts: Mapping[str, Attempt],
    units: Units,
) -> list[Finding]:
    """Return findings for seams that do not meet; left and right of one seam are one finding."""
    groups: dict[tuple[str, str, str], list[tuple[str, Seam]]] = {}
    for size, seams in by_size.items():
        for seam in seams:
            if seam.meets is Meets.NO:
                a, b = seam.mate.a, seam.mate.b
                key = (_plain(a.piece), _plain(b.piece), _plain(a.edge))
                groups.setdefault(key, []).append((size, seam))
    return [_finding(group, tuple(by_size), spans, (attempts, units)) for group in groups.values()]


def _plain(name: str) -> str:
    words = [word for word in name.lower().split() if word not in ("left", "right")]
    return " ".join(words)


def _finding(
    group: list[tuple[str, Seam]], sizes: tuple[str, ...], spans: Mapping[str, Span],
    how: tuple[Mapping[str, Attempt], Units],
) -> Finding:  # fmt: skip
    (size, seam), (attempts, units) = group[0], how
    named = list(dict.fromkeys(name for name, _ in group))

    def said(value: float) -> str:
        return write_length(value, units) if seam.mate.unit is Unit.MM else counted(value, WORDS[seam.mate.unit])

    a, b = said(seam.a_length), said(seam.b_length)
    if seam.mate.unit is not Unit.MM:
        b = b.split()[0]
    gap = said(abs(seam.difference))
    lead = f"{of_sizes(named).capitalize()}: " if len(named) < len(sizes) else ""
    likewise = ""
    if len({(one.a_length, one.b_length) for name, one in group if one.mate == seam.mate}) > 1:
        likewise = f" (in size {size}; {'the other sizes' if len(named) == len(sizes) else listed(named[1:])} likewise)"
    allowed = f"{said(seam.mate.allowed)} can be eased" if seam.mate.allowed else "they meet stitch for stitch"
    others = [name for name in sizes if name not in named]
    verb = "is" if seam.mate.unit is Unit.MM or round(abs(seam.difference)) == 1 else "are"
    why = f"These edges are sewn together; {allowed}, and here {gap} {verb} over."
    if others:
        why += f" In {of_sizes(others)} they meet."
    attempt = attempts.get(size)
    return Finding(
        kind="edges-differ", certainty=Certainty.PROVEN,
        say=f"{lead}{seam.mate.a} has {a} and {seam.mate.b} has {b}: {gap} of difference{likewise}.", why=why,
        attempt=attempt.say if attempt else "Look for the figure of this size that stands out from the other sizes in the shorter or the longer edge.",
        checked=bool(attempt), where=Where(span=spans.get(seam.mate.b.piece) or spans.get(seam.mate.a.piece), piece=seam.mate.a.piece, edge=seam.mate.a.edge),
        size=size if len(named) == 1 < len(sizes) else None, cures=attempt.cures if attempt else (),
    )  # fmt: skip
