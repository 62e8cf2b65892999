"""Edges that are sewn together and do not meet."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from lastlook.finding import Certainty, Finding, Span, Where
from lastlook.knit.tell.attempt import Attempt
from lastlook.piece import Meets, Seam, Unit

WORDS = {Unit.ROWS: "rows", Unit.STITCHES: "stitches", Unit.MM: "mm"}


def of_seams(
    by_size: Mapping[str, Sequence[Seam]], spans: Mapping[str, Span], attempts: Mapping[str, Attempt]
) -> list[Finding]:
    """Return findings for seams that do not meet; left and right of one seam are one finding."""
    groups: dict[tuple[str, str, str], list[tuple[str, Seam]]] = {}
    for size, seams in by_size.items():
        for seam in seams:
            if seam.meets is Meets.NO:
                a, b = seam.mate.a, seam.mate.b
                key = (_plain(a.piece), _plain(b.piece), _plain(a.edge))
                groups.setdefault(key, []).append((size, seam))
    return [_finding(group, tuple(by_size), spans, attempts) for group in groups.values()]


def _plain(name: str) -> str:
    words = [word for word in name.lower().split() if word not in ("left", "right")]
    return " ".join(words)


def _finding(
    group: list[tuple[str, Seam]], sizes: tuple[str, ...], spans: Mapping[str, Span], attempts: Mapping[str, Attempt]
) -> Finding:
    size, seam = group[0]
    named = list(dict.fromkeys(name for name, _ in group))
    unit = WORDS[seam.mate.unit]
    a, b, gap = (f"{value:.0f}" for value in (seam.a_length, seam.b_length, abs(seam.difference)))
    lead = f"Size {' and '.join(named)}: " if len(named) < len(sizes) else ""
    allowed = f"{seam.mate.allowed:.0f} {unit} can be eased" if seam.mate.allowed else "they meet stitch for stitch"
    others = [name for name in sizes if name not in named]
    why = f"These edges are sewn together; {allowed}, and here {gap} {unit} are over."
    if others:
        why += f" In size {' and '.join(others)} they meet."
    attempt = attempts.get(size)
    return Finding(
        kind="edges-differ", certainty=Certainty.PROVEN,
        say=f"{lead}{seam.mate.a} has {a} {unit} and {seam.mate.b} has {b}: {gap} {unit} of difference.", why=why,
        attempt=attempt.say if attempt else "Look for the figure of this size that stands out from the other sizes in the shorter or the longer edge.",
        checked=bool(attempt), where=Where(span=spans.get(seam.mate.b.piece) or spans.get(seam.mate.a.piece), piece=seam.mate.a.piece, edge=seam.mate.a.edge),
        size=size if len(named) == 1 < len(sizes) else None, cures=attempt.cures if attempt else (),
    )  # fmt: skip
