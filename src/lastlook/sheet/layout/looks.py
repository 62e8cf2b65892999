"""A last look in blocks: what is proven, what stands open, what can hurt.

Everything open has a box to tick when it is settled, the word for how sure the program is, and the quickest way.
"""

from __future__ import annotations

from lastlook.finding import Certainty, Finding
from lastlook.outfit import LastLook, Step
from lastlook.sheet.layout.flow import BODY, SECTION, SMALL, Block, beside, heading, paragraph, pencilled, stacked
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import INK, PENCIL, Face, Ink, Item, Stroke, Style, Words, box

BEFORE = {
    Step.CAST_ON: "Before you cast on",
    Step.CUT: "Before you cut",
    Step.SEW_UP: "Before you sew up",
    Step.PRESS: "Before you press",
}
SURE = {
    Certainty.PROVEN: "a trouble, proven",
    Certainty.DOUBTFUL: "doubtful",
    Certainty.UNKNOWN: "not known yet",
    Certainty.NOTE: "mind",
}
MARK_MM = 7.0
BOLD = Style(9, Face.BOLD)
THIRD = Style(9.5, Face.HEAD)
LABEL = Style(7.5, Face.ITALIC, PENCIL)


def look_blocks(look: LastLook, room_mm: float, manner: Manner) -> list[Block]:
    """Return one last look under its heading, the open things first."""
    title = BEFORE[look.before] + (f": {look.piece}" if look.piece else "")
    return [heading(manner.say(title), room_mm, SECTION), *look_body(look, look.cautions, room_mm, manner)]


def look_body(look: LastLook, cautions: tuple[str, ...], room_mm: float, manner: Manner) -> list[Block]:
    """Return what stands open, what is proven, and the cautions."""
    out = [_open(finding, room_mm, manner) for finding in look.open]
    if not look.open:
        out.append(paragraph("Nothing stands open.", room_mm))
    if look.proven:
        out.append(heading("Proven", room_mm, THIRD))
        out += [_proven(manner.say(one), room_mm) for one in look.proven]
    if cautions:
        out.append(heading("Mind your hands", room_mm, THIRD))
        out += [paragraph(manner.say(one), room_mm) for one in cautions]
    return out


def _open(finding: Finding, room_mm: float, manner: Manner) -> Block:
    room = room_mm - MARK_MM
    parts = [paragraph(SURE[finding.certainty] if not finding.asks else "your choice", room, LABEL)]
    parts.append(paragraph(manner.say(finding.say), room, BOLD))
    if finding.why:
        parts.append(paragraph(manner.say(finding.why), room, SMALL))
    parts += [paragraph(f"– {manner.say(reading)}", room, SMALL, 3.0) for reading in finding.readings or ()]
    if finding.attempt:
        checked = " (tried, and it works)" if finding.checked else ""
        parts.append(paragraph(f"Quickest way: {manner.say(finding.attempt)}{checked}", room, BODY))
    said = stacked(parts)
    tick: tuple[Item, ...] = (Stroke((box(0, 0.6, 4.2, 4.2),), Ink(INK, 0.25)),)
    both = beside(((0.0, Block(5.0, tick)), (MARK_MM, said)))
    return pencilled(Block(both.height_mm + 1.5, both.items))


def _proven(text: str, room_mm: float) -> Block:
    said = paragraph(text, room_mm - MARK_MM)
    mark: tuple[Item, ...] = (Words((1.2, 3.5), "yes", Style(7.5, Face.HEAD_ITALIC)),)
    return beside(((0.0, Block(4.0, mark)), (MARK_MM, said)))
