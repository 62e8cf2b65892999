"""The pleated skirt: knife pleats that all lie one way, or box pleats of two that lie away from each other.

Take-up is cloth less finished, at waist, hip and hem separately; a knife pleat takes twice its depth, a box pleat
four times. Pleats are set by the hip and grow deeper towards the waist (Conover, 1922, pp. 63-69, read). Full pleats
leave a third of the cloth.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from lastlook.finding import Certainty, Finding
from lastlook.paper.draft.ask import Ask, read_ask
from lastlook.paper.draft.gathered import breadths
from lastlook.paper.drafted import Drafted
from lastlook.paper.paper_piece import Notch

LAYERS = {"knife-pleated": 2, "box-pleated": 4}
"""How many times its depth a pleat takes."""
COUNTS = {"knife-pleated": 16, "box-pleated": 8}
DEEPEST_SHARE = 1.0
"""A knife pleat deeper than its own width lies over the next one."""


def pleated_cloth_mm(finished_mm: float, pleats: float, depth_mm: float, layers: int = 2) -> float:
    """Return how wide the cloth is that pleats down to a finished width.

    >>> pleated_cloth_mm(700, 20, 30)
    1900
    """
    return finished_mm + layers * pleats * depth_mm


def take_up_mm(cloth_mm: float, finished_mm: float) -> float:
    """Return what pleats take in at one level.

    >>> take_up_mm(44, 14), take_up_mm(44, 20), take_up_mm(44, 27.5)
    (30, 24, 16.5)
    """
    return cloth_mm - finished_mm


def per_pleat_mm(take_up: float, panel_mm: float, others: int) -> float:
    """Return what each of the other pleats takes once the pleat at the panel has its share.

    >>> per_pleat_mm(24, 2.125, 7)
    3.125
    """
    return (take_up - panel_mm) / others


def pleated(kind: str) -> Callable[[Mapping[str, float], Mapping[str, float]], Drafted]:
    """Return the draft of one kind of pleats."""

    def draft(measures: Mapping[str, float], options: Mapping[str, float]) -> Drafted:
        ask = read_ask(kind, measures, options)
        if isinstance(ask, tuple):
            return Drafted(kind, (), measures=measures, options=options, findings=ask)
        return _drafted(ask, LAYERS[kind])

    return draft


def _drafted(ask: Ask, layers: int) -> Drafted:
    count = max(4, 4 * round(ask.options.get("pleats", COUNTS[ask.kind]) / 4))
    full = ask.around_hip_mm * 2 / (layers * count)
    depth = ask.options.get("pleat_depth_mm", full)
    if depth <= 0:
        full = depth = 0.0
    cloth = pleated_cloth_mm(ask.around_hip_mm, count, depth, layers)
    waist_take_up = (cloth - ask.top_mm) / count
    pitch = cloth / count
    notes = [_taken(ask, count, depth, waist_take_up / layers)]
    if depth > full * DEEPEST_SHARE + 0.05:
        notes.append(_overlap(count, depth, full))
    marks = tuple(_lines(ask, count // 4, pitch, (waist_take_up, layers * depth)))
    drafted = breadths(ask, cloth, marks)
    at_hip = count * layers * depth
    taken = {"hip": at_hip, "high hip": at_hip + (count * waist_take_up - at_hip) / 2}
    return replace(drafted, taken_mm=taken, findings=(*drafted.findings, *notes))


def _lines(ask: Ask, per_quarter: int, pitch: float, take_ups: tuple[float, float]) -> list[Notch]:
    """Return the fold and the placement of every pleat of a quarter, at the waist and at the hip."""
    out = []
    for number in range(per_quarter):
        middle = (number + 0.5) * pitch
        for y, take_up in ((0.0, take_ups[0]), (-ask.hip_depth_mm, take_ups[1])):
            for which, x in (("from", middle - take_up / 2), ("to", middle + take_up / 2)):
                out.append(Notch(f"pleat {number + 1} {which}", "waist", (x, y)))
    return out


def _taken(ask: Ask, count: int, depth: float, at_waist: float) -> Finding:
    return Finding(
        "pleats-set",
        Certainty.NOTE,
        f"The {count} pleats are {depth:.1f} mm deep at the hip and {at_waist:.1f} mm at the waist.",
        f"They are set by the hip, {ask.around_hip_mm / 10:.1f} cm with ease, and take in the waist as they rise.",
        "Turning cloth takes a little more: allow about 15 mm for 20 pleats, and press a sample of three first.",
    )


def _overlap(count: int, depth: float, full: float) -> Finding:
    return Finding(
        "pleats-overlap",
        Certainty.DOUBTFUL,
        f"{count} pleats of {depth:.1f} mm overlap each other: {full:.1f} mm is full.",
        "Beyond that three layers become five, and the skirt stands off.",
        f"Make them {full:.1f} mm deep or less, or take fewer pleats.",
    )
