"""Pages that are tests: Markdown files whose `##` sections hold an input block and an answer block.

A page lives in `tests/cases/AREA/` or names its area in its first comment, `<!-- area: AREA -->`. In each
section the first fenced block is the input, the block marked `answer` is what must come out; the words after
the first block's fence are handed to the area's driver, `tests/areas/AREA.py`, as `asked`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

FENCE = re.compile(r"^(`{3,})([^\n`]*)\n(.*?)^\1[ ]*$", re.M | re.S)


@dataclass(frozen=True)
class Section:
    """One test: where it stands, what goes in, what comes out."""

    page: Path
    title: str
    area: str
    asked: str
    given: str
    answer: str
    span: tuple[int, int]
    """Where the answer stands in the page, so that it can be rewritten."""


def sections(page: Path) -> list[Section]:
    """Return the tests of a page in the order in which they stand."""
    text = page.read_text(encoding="utf-8")
    area = re.search(r"<!-- area: (\w+) -->", text)
    name = area.group(1) if area else page.parent.name
    out = []
    starts = [match.start() for match in re.finditer(r"^## ", text, re.M)] or [0]
    for start, end in zip(starts, [*starts[1:], len(text)], strict=True):
        blocks = list(FENCE.finditer(text, start, end))
        answer = next((block for block in blocks if block.group(2).strip() == "answer"), None)
        if not blocks or answer is None or blocks[0] is answer:
            continue
        title = text[start:].splitlines()[0].removeprefix("## ")
        given = blocks[0]
        spot = (answer.start(3), answer.end(3))
        out.append(Section(page, title, name, given.group(2).strip(), given.group(3), answer.group(3), spot))
    return out


def accept(section: Section, answer: str) -> None:
    """Rewrite one answer in its page."""
    text = section.page.read_text(encoding="utf-8")
    fresh = next(one for one in sections(section.page) if one.title == section.title)
    start, end = fresh.span
    section.page.write_text(text[:start] + answer + text[end:], encoding="utf-8")
