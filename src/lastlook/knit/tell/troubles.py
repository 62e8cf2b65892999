"""Counts, rows, goals and lengths that do not add up, each told once for all the sizes it is found in."""

from __future__ import annotations

from collections.abc import Iterable

from lastlook.finding import Certainty, Finding, Where
from lastlook.knit.needle import Trouble
from lastlook.knit.tell.attempt import Attempt
from lastlook.knit.tell.wording import are, counted, listed, of_sizes

SAYING: dict[str, tuple[str, str]] = {
    "count-short": (
        "{place} leaves {worked_sts}; the leaflet says {stated}.",
        "Working what is printed gives {worked}, which is {gap} fewer than the count printed here.",
    ),
    "count-over": (
        "{place} leaves {worked_sts}; the leaflet says {stated}.",
        "Working what is printed gives {worked}, which is {gap} more than the count printed here.",
    ),
    "row-short": (
        "This row of {piece} uses {worked} of the {stated_sts} on the needle; {gap_are} left over.",
        "A row has to use up every stitch that the row before it left: here {there_stated}, and its stitches and repeats come to {worked}.",
    ),
    "row-long": (
        "This row of {piece} asks for {worked_sts}, and only {stated_are} on the needle.",
        "The row before leaves {stated}; what is printed for this one comes to {worked}, {gap} more than {stated_there}.",
    ),
    "repeat-does-not-fit": (
        "The repeat does not fit into the {stated_sts} of {piece}; {gap_are} left over.",
        "Whole repeats use {worked} of the {stated_sts}, and nothing is named for the rest.",
    ),
    "pattern-drifts": (
        "The pattern of {piece} begins on {stated_sts}, and after its last row there are {worked}.",
        "A pattern that is worked over and over comes back to the count it began with; this one is {gap} out every time its rows come round.",
    ),
    "goal-unreachable": (
        "{piece} never comes to {stated_sts} here; the nearest it reaches is {worked}.",
        "Each shaping takes or gives the same number every time, and from what is on the needle that never lands on {stated}.",
    ),
    "length-too-short": (
        "The shaping of {piece} needs {worked_rows}, and the length printed here holds {stated}.",
        "At this gauge the shaping goes on for {gap_rows} after the piece should have reached its length.",
    ),
    "buttonholes-do-not-fit": (
        "The last buttonhole of {piece} comes on row {worked}, and the edge has only {stated_rows}.",
        "Counted from the first one, with the rows between that are printed, the last falls {gap_rows} above the end of its edge.",
    ),
    "wrong-edge": (
        "The neck of {piece} is bound off at its side edge, not at the front.",
        "The row that binds off here begins at the {from_edge} edge, seen from the right side, and on this piece the front edge is the {to_edge} one. So the front is not the mirror image of its twin.",
    ),
    "lean-not-mirrored": (
        "The decreases at the {from_edge} edge of {piece} lean to the {to_edge}, and so do those at the edge they should mirror.",
        "Two edges that mirror each other take decreases that lean against each other, as at the other edges of this leaflet. The counts are the same either way, so no count shows it; the two slopes will not look alike.",
    ),
    "row-not-there": (
        "{piece} refers to row {stated}, and no such row is given.",
        "No row of that number was worked in this piece before these words.",
    ),
}  # fmt: skip


def of_troubles(
    found: Iterable[tuple[str, Trouble]],
    sizes: tuple[tuple[str, ...], tuple[str, ...]],
    attempts: dict[Trouble, Attempt],
) -> list[Finding]:
    """Return findings for troubles by size; the same trouble in several sizes is one finding.

    `sizes` are all that the leaflet has and those that were asked for, whose figures are told.
    """
    names, asked = sizes
    groups: dict[tuple[object, ...], list[tuple[str, Trouble]]] = {}
    for size, one in found:
        groups.setdefault((one.kind, one.span, one.piece), []).append((size, one))
    ordered = (sorted(group, key=lambda pair: pair[0] not in asked) for group in groups.values())
    return [_finding(group, names, attempts) for group in ordered if group[0][0] in asked]


def _finding(group: list[tuple[str, Trouble]], sizes: tuple[str, ...], attempts: dict[Trouble, Attempt]) -> Finding:
    size, one = group[0]
    saying, why = SAYING.get(one.kind, ("{piece} does not add up here.", "{worked} against {stated}."))
    values = _values(one)
    where_sizes = list(dict.fromkeys(name for name, _ in group))
    every = len(where_sizes) == len(sizes)
    told = saying.format(**values)
    if len({(trouble.worked, trouble.stated) for _, trouble in group}) > 1:
        rest = "the other sizes" if every else listed(where_sizes[1:])
        told = f"{told.removesuffix('.')} (in size {size}; {rest} likewise)."
    if not every and len(sizes) > 1:
        told = f"{of_sizes([name for name in sizes if name in where_sizes]).capitalize()}: {told}"
    reason = why.format(**values)
    if not every and len(sizes) > 1:
        reason += f" In {of_sizes([name for name in sizes if name not in where_sizes])} it adds up."
    if one.blind:
        reason += " Words before it in this piece were not understood, so it may come from them."
    elif one.far:
        reason += (
            " The two lie so far apart that these words may have been misread here, or a line of the print is missing."
        )
    attempt = next((attempts[trouble] for _, trouble in group if trouble in attempts), None)
    return Finding(
        kind=one.kind, certainty=Certainty.DOUBTFUL if one.doubted else Certainty.PROVEN, say=told, why=reason,
        attempt=attempt.say if attempt else _by_hand(one), checked=bool(attempt),
        where=Where(span=one.span, piece=one.piece, row=one.row, edge=None),
        size=size if len(where_sizes) == 1 < len(sizes) else None, cures=attempt.cures if attempt else (),
    )  # fmt: skip


def _by_hand(one: Trouble) -> str | None:
    if one.kind in ("row-short", "row-long", "repeat-does-not-fit"):
        return "Compare this row with the rows round it: one stitch, one repeat or one edge stitch is printed too few or too many."
    if one.kind in ("count-short", "count-over"):
        return "Compare the figures of this sentence with those of the other sizes and of the pieces it is sewn to."
    if one.kind == "lean-not-mirrored":
        taken, other = "sl 1, K 1, psso", "K 2 tog"
        if one.words.endswith("right"):
            taken, other = other, taken
        return f"Work {other} where this row says {taken}: it takes away as many stitches and leans the other way."
    if one.kind == "length-too-short":
        return "Work the shaping a little closer together, or the piece a little longer; whatever is sewn to it must follow."
    return None


def _values(one: Trouble) -> dict[str, str]:
    edges = [*one.words.split("|"), "", ""][:2] if one.kind in ("wrong-edge", "lean-not-mirrored") else ["", ""]
    gap = abs(round(one.worked) - round(one.stated))
    return {
        "piece": one.piece, "place": f"Row {one.row} of {one.piece}" if one.row else f"{one.piece}, before its first row,",
        "worked": f"{round(one.worked)}", "worked_sts": counted(one.worked, "stitch"), "worked_rows": counted(one.worked, "row"),
        "stated": f"{round(one.stated)}", "stated_sts": counted(one.stated, "stitch"), "stated_rows": counted(one.stated, "row"),
        "stated_are": are(one.stated), "stated_there": f"there {'is' if round(one.stated) == 1 else 'are'}",
        "there_stated": f"there {'is' if round(one.stated) == 1 else 'are'} {round(one.stated)}",
        "gap": f"{gap}", "gap_are": are(gap), "gap_rows": counted(gap, "row"),
        "from_edge": edges[0], "to_edge": edges[1],
    }  # fmt: skip
