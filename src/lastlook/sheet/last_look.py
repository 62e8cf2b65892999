"""The last look on paper: before one step, what stands open, what is proven, what can hurt."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.outfit import LastLook
from lastlook.sheet.layout.flow import BODY, SMALL, TITLE, Block, heading, pages, paragraph, rule, space
from lastlook.sheet.layout.frame import Framing
from lastlook.sheet.layout.looks import BEFORE, look_body
from lastlook.sheet.layout.page import Sheet
from lastlook.sheet.manner import Manner

COUNTS = ("No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten")
DEFER = (
    "Where a workroom, school or hall has rules of its own for blades, irons and plugs, those go before anything "
    "printed here."
)


@dataclass(frozen=True)
class Look:
    """The last looks of an outfit that are wanted on paper."""

    title: str
    size: str
    looks: tuple[LastLook, ...]


def last_look(look: Look, manner: Manner) -> Sheet:
    """Return the last looks, each beginning a page of its own."""
    framing = Framing(f"{look.title}: the last look", look.size, manner)
    room = framing.room_mm[0]
    blocks: list[Block] = []
    for one in look.looks:
        blocks += _page(one, room, manner)
    if not blocks:
        blocks.append(paragraph("No step is near that can’t be taken back.", room))
    return Sheet(framing.title, pages(blocks, framing))


def _page(one: LastLook, room: float, manner: Manner) -> list[Block]:
    title = manner.say(BEFORE[one.before]) + (f": {one.piece}" if one.piece else "")
    top = heading(title, room, TITLE)
    out = [Block(top.height_mm, top.items, True, True, title)]
    out.append(paragraph(_count(one), room, BODY))
    out.append(space(1.5))
    out += look_body(one, one.cautions, room, manner)
    out.append(rule(room))
    out.append(paragraph(DEFER, room, SMALL))
    return out


def _count(one: LastLook) -> str:
    open_ = len(one.open)
    if not open_:
        return "This step can’t be taken back; take it rested and in good light."
    count = COUNTS[open_] if open_ < len(COUNTS) else str(open_)
    things = "thing stands" if open_ == 1 else "things stand"
    return f"{count} {things} open. This step can’t be taken back; settle each, and tick it, before you take it."
