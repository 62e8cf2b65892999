"""A change of one printed figure, in one size or in all, or of one word for the side of a row."""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass, replace

from lastlook.finding import Span
from lastlook.leaflet import Figure, Leaflet
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Step


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

    def text(self, text: str, span: Span | None = None) -> str:
        """Return the text, or a stretch of it, with the change made."""
        start, end = (span.start, span.end) if span else (0, len(text))
        out, at = "", start
        for spot, new in self.spots:
            out += text[at : spot.start] + new
            at = spot.end
        return out + text[at:end]


def _swapped(value: object, old: tuple[float, ...], new: tuple[float, ...], nth: int) -> tuple[object, int]:
    """Return a value with the nth figure of these values replaced, and how many there were up to it."""
    if isinstance(value, Figure):
        for factor in (1.0, 25.4, 10.0, 2.0):
            if value.values == tuple(one * factor for one in old):
                return (Figure(tuple(one * factor for one in new)) if nth == 0 else value), 1
        return value, 0
    seen = 0
    if isinstance(value, tuple):
        out = []
        for one in value:
            fresh, found = _swapped(one, old, new, nth - seen) if nth >= seen else (one, 0)
            out.append(fresh)
            seen += found
        return tuple(out), seen
    if is_dataclass(value) and not isinstance(value, type | Span):
        changes = {}
        for one in fields(value):
            inner = getattr(value, one.name)
            if not isinstance(inner, tuple | Figure) and not is_dataclass(inner):
                continue
            fresh, found = _swapped(inner, old, new, nth - seen) if nth >= seen else (inner, 0)
            seen += found
            if fresh is not inner:
                changes[one.name] = fresh
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
