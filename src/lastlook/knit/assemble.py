"""From the stretches of a leaflet to the pieces to be made, in order; and the patterns they are worked in."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from lastlook.finding import Span
from lastlook.knit.needle.hands import Task
from lastlook.knit.needle.rows import in_order
from lastlook.leaflet import Leaflet, Part
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Run, Step, Taken

GARMENTS = (
    "beret", "sock", "stocking", "mitten", "glove", "bonnet", "scarf", "shawl", "helmet", "muffler", "bootee",
    "slipper", "hat", "cap", "blanket", "bag", "tie", "belt", "collar", "edging", "insertion", "lace", "square",
    "purse", "doll", "counterpane", "vest", "pullover", "cardigan", "jumper", "jacket", "sweater", "wristlet",
    "legging", "skirt",
)  # fmt: skip
SECTIONS = (
    "raglan", "armhole", "shoulder", "neck", "cap", "top", "turn heel", "heel", "toe", "foot", "leg", "cuff", "gusset",
    "crown", "instep", "thumb",
)  # fmt: skip
PAIRS = ("sock", "stocking", "mitten", "glove", "bootee", "slipper", "wristlet", "legging", "sleeve")


@dataclass
class Plan:
    """The pieces to be made, and the patterns named beside them."""

    tasks: list[Task] = field(default_factory=list)
    patterns: dict[str, list[Run]] = field(default_factory=dict)
    spans: dict[str, list[Span]] = field(default_factory=dict)
    unsure: bool = False
    """Whether words among the rows of a pattern were not understood."""
    loose: list[Step] = field(default_factory=list)
    """Steps that belong to no piece."""
    told: set[Span] = field(default_factory=set)
    """Steps outside of pieces that are understood as what they are."""


def plan(leaflet: Leaflet) -> Plan:
    """Return what is to be made."""
    out = Plan()
    open_: list[Step] = []
    name, make, span, crochet = "", 1, Span(0, 0), False

    def end() -> None:
        nonlocal open_
        if name and _moves(open_):
            body, band = _parted(open_, leaflet)
            out.tasks.append(Task(_unique(out.tasks, name), make, tuple(body), crochet, span))
            if band:
                first = next(step for step in band if isinstance(step, say.RowOf))
                called = _band_name(first)
                called = f"{name}, band" if called == "Band" else called
                out.tasks.append(Task(_unique(out.tasks, called), make, tuple(band), crochet, first.span))
        else:
            out.loose += open_
        open_ = []

    for part in leaflet.parts:
        if part.kind == "pattern" and open_ and _goes_on(open_, part):
            open_ += part.steps
        elif part.kind == "pattern" and not _casts_on(part.steps):
            _pattern(out, part, leaflet.source.text)
        elif part.kind == "finishing":
            end()
            name = ""
            _finishing(out, part)
        elif part.kind == "piece" and open_ and _widens(open_, part):
            open_ += part.steps
        elif part.kind == "section" and open_ and not _restarts(open_, part):
            open_ += [say.Section(_section(part.name), span=part.span), *part.steps]
            out.told.add(part.span)
        elif part.kind == "other" and open_ and not _restarts(open_, part):
            open_ += part.steps
        else:
            end()
            name, make, span = _piece_name(part, leaflet), _make(part, leaflet), part.span
            crochet = part.kind == "crochet"
            open_ = list(part.steps)
    end()
    return _named_by_title(out, leaflet)


def _parted(steps: list[Step], leaflet: Leaflet) -> tuple[list[Step], list[Step]]:
    """Part a piece from the band that is picked up along it after it was bound off or grafted."""
    ended, opened = False, 0
    for spot, step in enumerate(steps):
        if isinstance(step, say.Finish):
            ended, opened = True, spot + 1
        elif isinstance(step, say.Nothing):
            if "graft" in leaflet.source.words(step.span).lower():
                ended, opened = True, spot + 1
        elif isinstance(step, say.RowOf):
            lone = step.run[0] if len(step.run) == 1 else None
            if ended and isinstance(lone, Taken) and lone.picked_up:
                return steps[:opened], steps[opened:]
            ended = False
        elif not isinstance(step, say.Section):
            ended = False
    return steps, []


def _moves(steps: Iterable[Step]) -> bool:
    return any(not isinstance(step, say.Nothing | say.Unread) for step in steps)


def _casts_on(steps: Iterable[Step]) -> bool:
    return any(isinstance(step, say.CastOn) and step.rows is None and step.until is None for step in steps)


def _goes_on(open_: list[Step], part: Part) -> bool:
    """Whether a pattern is worked where it stands, in a piece that is under way: it says how often."""
    under_way = _casts_on(open_) and not any(isinstance(step, say.Finish) for step in open_)
    return under_way and any(isinstance(step, say.RepeatRows) and step.goal != say.Goal() for step in part.steps)


def _widens(open_: list[Step], part: Part) -> bool:
    """Whether a 'piece' only widens the one under way: it casts on at the ends of rows."""
    if any(isinstance(step, say.Finish) for step in open_) or not _casts_on(open_):
        return False
    first = next((step for step in part.steps if not isinstance(step, say.Nothing)), None)
    return isinstance(first, say.CastOn) and (first.rows is not None or first.until is not None)


def _restarts(open_: list[Step], part: Part) -> bool:
    """Whether a section is really a piece of its own: it casts on after the piece before was ended."""
    ended = any(isinstance(step, say.Finish | say.Hold) for step in open_)
    for step in part.steps:
        if isinstance(step, say.CastOn) and step.rows is None and step.until is None:
            return ended or part.kind == "other"
        if isinstance(step, say.Nothing | say.Unread | say.Section):
            continue
        if isinstance(step, say.RowOf) and any(isinstance(item, Taken) for item in step.run[:1]):
            return ended and part.kind != "section"
        return False
    return False


def _section(name: str) -> str:
    low = name.lower()
    for word in SECTIONS:
        if word in low:
            return word
    return low


def _is_multiple(step: Step, text: str) -> bool:
    """Whether words only say on how many stitches a pattern is worked."""
    return "multiple" in text[max(0, step.span.start - 12) : step.span.end].lower()


def _pattern(out: Plan, part: Part, text: str) -> None:
    """Keep the numbered rows of a pattern stitch for whoever works in pattern."""
    rows = [step for step in in_order(part.steps) if isinstance(step, say.RowOf) and step.label and step.label.numbers]
    by_number: dict[int, say.RowOf] = {}
    for row in rows:
        number = row.label.numbers[0] if row.label else 0
        like = by_number.get(row.like[0]) if row.like else None
        by_number[number] = say.RowOf(row.label, like.run, span=row.span) if like else row
    out.told |= {step.span for step in part.steps if not isinstance(step, say.Unread)}
    if by_number:
        name = part.name
        unread = [step for step in part.steps if isinstance(step, say.Unread)]
        out.unsure = out.unsure or any(not _is_multiple(step, text) for step in unread)
        out.patterns[name] = [by_number[number].run for number in sorted(by_number)]
        out.spans[name] = [by_number[number].span for number in sorted(by_number)]
    out.loose += part.steps


def _finishing(out: Plan, part: Part) -> None:
    """Making up may hold bands that are picked up: each becomes a piece of its own."""
    current: list[Step] = []
    name = ""
    before: Step = say.Nothing()
    for step in part.steps:
        picks = isinstance(step, say.RowOf) and bool(step.run) and isinstance(step.run[0], Taken)
        starts = picks or (isinstance(step, say.CastOn) and step.rows is None)
        if starts:
            if current and name:
                out.tasks.append(Task(_unique(out.tasks, name), 1, tuple(current), span=part.span))
            current, name = ([before] if isinstance(before, say.Unread) else []), _band_name(step)
        if not isinstance(step, say.Nothing):
            before = step
        if name:
            current.append(step)
            if isinstance(step, say.Finish):
                out.tasks.append(Task(_unique(out.tasks, name), 1, tuple(current), span=part.span))
                current, name = [], ""
        else:
            out.loose.append(step)
            if not isinstance(step, say.Unread):
                out.told.add(step.span)
    if current and name:
        out.tasks.append(Task(_unique(out.tasks, name), 1, tuple(current), span=part.span))


def _band_name(step: Step) -> str:
    words = " ".join(item.source for item in step.run if isinstance(item, Taken)) if isinstance(step, say.RowOf) else ""
    for word, name in (("neck", "Neckband"), ("armhole", "Armband"), ("front", "Front band"), ("sleeve", "Cuff")):
        if word in words:
            return name
    return "Band"


def _piece_name(part: Part, leaflet: Leaflet) -> str:
    low = re.sub(r"\(.*?\)|\bmake \w+\b|\bboth alike\b|,", " ", part.name.lower())
    low = " ".join(re.sub(r"^(?:the|to make(?: the)?|a) ", "", low.strip(" .:-—")).split())
    if not low or part.kind in ("section", "other"):
        return _garment(leaflet) or (low.capitalize() if low else "Piece")
    words = low.split()
    last = words[-1]
    if last.endswith("s") and not last.endswith("ss") and last not in ("pants", "panties"):
        words[-1] = {"scarves": "scarf"}.get(last, last[:-1])
    return " ".join(words).capitalize()


def _garment(leaflet: Leaflet) -> str:
    title = (leaflet.title or "").lower()
    found = [(title.rfind(word), word) for word in GARMENTS if word in title]
    return max(found)[1].capitalize() if found else ""


def _make(part: Part, leaflet: Leaflet) -> int:
    if part.make > 1:
        return part.make
    low = part.name.lower()
    if re.search(r"\bboth\b|\bpair\b", low):
        return 2
    plural = re.search(
        r"\b(sleeves|front bands|pocket linings|pocket tops|cuffs|armbands|arm bands|armhole bands|pockets|mittens|"
        r"socks|fronts)\b",
        low,
    )
    if plural:
        return 2
    return 2 if not low and any(word in (leaflet.title or "").lower() for word in PAIRS) else 1


def _unique(tasks: list[Task], name: str) -> str:
    taken = {task.name for task in tasks}
    if name not in taken:
        return name
    number = 2
    while f"{name} {number}" in taken:
        number += 1
    return f"{name} {number}"


def _named_by_title(out: Plan, leaflet: Leaflet) -> Plan:
    """A leaflet of one piece is named by its garment."""
    garment = _garment(leaflet)
    if len(out.tasks) == 1 and garment and out.tasks[0].name in ("Piece", "Cuff", "Leg", "Crown", "Ribbing", "Body"):
        one = out.tasks[0]
        make = 2 if garment.lower() in PAIRS and one.make == 1 else one.make
        out.tasks[0] = Task(garment, make, one.steps, one.crochet, one.span)
    return out
