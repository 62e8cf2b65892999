"""A change of one printed figure, in one size or in all, or of one word for the side of a row."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass, replace

from lastlook.finding import Span
from lastlook.leaflet import Figure, Leaflet
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Step

FACTORS = (1.0, 25.4, 10.0, 2.0)
"""What is printed in inches or centimetres is kept in millimetres; dozens of forms double what they print."""
REFERENCES = frozenset({"like", "rows"})
"""Fields that name rows by their numbers."""


@dataclass(frozen=True)
class Change:
    """Figures or words of one phrase, to be read otherwise."""

    part: int
    step: Span
    spots: tuple[tuple[Span, str], ...]
    weight: float
    sizes: tuple[str, ...]
    old: tuple[float, ...] = ()
    """The values of the figure as printed; empty where a word changes."""
    new: tuple[float, ...] = ()
    phrase: Span | None = None
    """The words that are quoted; those of the step where None."""
    nth: int = 0
    """Which of the figures with these values in the step it is."""

    def figures(self, step: Step) -> Step | None:
        """Return the step with its figure changed."""
        if not self.old:
            return _other_ending(step)
        changed, seen = _swapped(step, self.old, self.new, self.nth)
        return changed if seen > self.nth and isinstance(changed, Step) else None

    def quoted(self) -> Span:
        """Return the words that hold all that changes: those of the step, and brackets that stand behind it."""
        span = self.phrase or self.step
        return Span(span.start, max(span.end, max((spot.end for spot, _ in self.spots), default=0)))

    def text(self, text: str, span: Span | None = None) -> str:
        """Return the text, or a stretch of it, with the change made."""
        start, end = (span.start, span.end) if span else (0, len(text))
        out, at = "", start
        for spot, new in self.spots:
            out += text[at : spot.start] + new
            at = spot.end
        return out + text[at:end]


def places(value: object, name: str = "") -> Iterator[tuple[str, tuple[float, ...]]]:
    """Yield every figure in a step in order: the field it stands in, and its values."""
    if isinstance(value, Figure):
        yield name, value.values
    elif isinstance(value, tuple):
        if _numbers(name, value):
            yield from ((name, (float(one),)) for one in value)
        else:
            for one in value:
                yield from places(one, name)
    elif is_dataclass(value) and not isinstance(value, type | Span):
        for one in fields(value):
            yield from places(getattr(value, one.name), one.name)


def _numbers(name: str, value: tuple[object, ...]) -> bool:
    return name in REFERENCES and all(isinstance(one, int) for one in value)


def _swapped(
    value: object, old: tuple[float, ...], new: tuple[float, ...], nth: int, name: str = ""
) -> tuple[object, int]:  # fmt: skip
    """Return a value with the nth figure of these values replaced, and how many there were up to it."""
    if isinstance(value, Figure):
        for factor in FACTORS:
            if value.values == tuple(one * factor for one in old):
                return (Figure(tuple(one * factor for one in new)) if nth == 0 else value), 1
        return value, 0
    seen = 0
    if isinstance(value, tuple):
        out: list[object] = []
        for one in value:
            if _numbers(name, value):
                found = int((float(one),) == old)
                fresh: object = int(new[0]) if found and seen == nth else one
            else:
                fresh, found = _swapped(one, old, new, nth - seen, name) if nth >= seen else (one, 0)
            out.append(fresh)
            seen += found
        return tuple(out), seen
    if is_dataclass(value) and not isinstance(value, type | Span):
        changes = {}
        for each in fields(value):
            inner = getattr(value, each.name)
            if not isinstance(inner, tuple | Figure) and not is_dataclass(inner):
                continue
            fresh, found = _swapped(inner, old, new, nth - seen, each.name) if nth >= seen else (inner, 0)
            seen += found
            if fresh is not inner:
                changes[each.name] = fresh
        return (replace(value, **changes) if changes else value), seen
    return value, 0


def _other_ending(step: Step) -> Step | None:
    if isinstance(step, say.WorkOn | say.RepeatRows | say.Copy | say.Shape) and step.ending.row:
        other = {"p": "k", "k": "p", "ws": "rs", "rs": "ws"}.get(step.ending.row, "")
        return replace(step, ending=replace(step.ending, row=other))
    return None


def changed_leaflet(leaflet: Leaflet, change: Change) -> Leaflet | None:
    """Return the leaflet with the figures of one step changed; None where the figure has no place of its own in it."""
    part = leaflet.parts[change.part]
    out = []
    for step in part.steps:
        if step.span != change.step:
            out.append(step)
            continue
        new = change.figures(step)
        if new is None:
            return None
        out.append(new)
    parts = (*leaflet.parts[: change.part], replace(part, steps=tuple(out)), *leaflet.parts[change.part + 1 :])
    return replace(leaflet, parts=parts)
