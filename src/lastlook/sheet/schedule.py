"""The order of work on paper: each step has a box; one that can't be taken back has a red pencil line."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.sheet.layout.flow import (
    BODY,
    SECTION,
    SMALL,
    TITLE,
    Block,
    beside,
    heading,
    pages,
    paragraph,
    pencilled,
    stacked,
)
from lastlook.sheet.layout.frame import Framing
from lastlook.sheet.layout.page import Sheet
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import INK, PENCIL, Face, Ink, Stroke, Style, Words, box

MARK_MM = 14.0
FINAL = Style(7.5, Face.ITALIC, PENCIL)


@dataclass(frozen=True)
class Task:
    """One step of the work."""

    say: str
    why: str = ""
    is_final: bool = False
    """Whether it can't be taken back, so that a last look comes before it."""


@dataclass(frozen=True)
class Schedule:
    """The order of work of one garment."""

    title: str
    size: str
    parts: tuple[tuple[str, tuple[Task, ...]], ...]
    """Each part's name with its steps, in order."""


def schedule(work: Schedule, manner: Manner) -> Sheet:
    """Return the pages; steps are numbered through."""
    framing = Framing(f"{work.title}: order of work", work.size, manner)
    room = framing.room_mm[0]
    blocks = [heading("Order of work", room, TITLE)]
    number = 0
    for name, tasks in work.parts:
        blocks.append(heading(manner.say(name), room, SECTION))
        for task in tasks:
            number += 1
            blocks.append(_task(number, task, room, manner))
    return Sheet(framing.title, pages(blocks, framing))


def _task(number: int, task: Task, room: float, manner: Manner) -> Block:
    parts = [paragraph("the last look comes before this", room - MARK_MM, FINAL)] if task.is_final else []
    parts.append(paragraph(manner.say(task.say), room - MARK_MM, BODY))
    if task.why:
        parts.append(paragraph(manner.say(task.why), room - MARK_MM, SMALL))
    tick = (
        Stroke((box(0, 0.3, 4.2, 4.2),), Ink(INK, 0.25)),
        Words((6.4, 3.9), str(number), Style(10.5, Face.HEAD)),
    )
    whole = beside(((0.0, Block(5.0, tick)), (MARK_MM, stacked(parts))))
    spaced = Block(whole.height_mm + 0.8, whole.items)
    return pencilled(spaced) if task.is_final else spaced
