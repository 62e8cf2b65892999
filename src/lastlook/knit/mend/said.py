"""A correction in words: what to read instead, what then agrees, and what the other sizes print."""

from __future__ import annotations

from lastlook.finding import Cure, Edit, Span
from lastlook.knit.choose import Reader
from lastlook.knit.mend.change import Change
from lastlook.knit.tell.attempt import Attempt


def said(reader: Reader, change: Change, left: float) -> Attempt:
    """Return a correction as a sentence with the cure that does it."""
    text, sizes = reader.leaflet.source.text, reader.leaflet.sizes
    old = _listed([text[spot.start : spot.end] for spot, _ in change.spots])
    new = _listed([value for _, value in change.spots])
    span = change.quoted()
    phrase = " ".join(text[span.start : span.end].split())
    one = len(change.sizes) == 1 < len(sizes)
    lead = f"In size {change.sizes[0]}, read" if one else "Read"
    then = "everything then adds up" if left < 1 else "this much then adds up"
    edit = Edit(f"corrections.{_piece_of(reader, change)}: {phrase}", change.text(text, span))
    sentence = f"{lead} {new} for {old}{_context(text, change)}: {then}{_others(change, sizes) if one else ''}."
    return Attempt(sentence, (Cure(sentence, (edit,)),))


def joined(offers: list[Attempt]) -> Attempt:
    """Offer the best first, and the others that do as well."""
    if len(offers) == 1:
        return offers[0]
    also = "; or ".join(
        one.say[0].lower() + one.say[1:].split(": everything")[0].split(": this much")[0] for one in offers[1:]
    )
    return Attempt(
        f"{offers[0].say.removesuffix('.')}. Just as well: {also}.", tuple(cure for one in offers for cure in one.cures)
    )


def _others(change: Change, sizes: tuple[str, ...]) -> str:
    """Say what the other sizes have in the same place: '; sizes 32 and 36 work with 28, 34 prints 26'."""
    odd = sizes.index(change.sizes[0])
    rest = [(name, value) for number, (name, value) in enumerate(zip(sizes, change.old, strict=True)) if number != odd]
    if len({value for _, value in rest}) == 1:
        names = _listed([name for name, _ in rest])
        told = f"size {names} works" if len(rest) == 1 else f"sizes {names} work"
        told = f"{told} with {rest[0][1]:g}"
    else:
        told = _listed([f"size {name} works with {value:g}" for name, value in rest])
    return f"; {told}, {change.sizes[0]} prints {change.old[odd]:g}"


def _listed(words: list[str]) -> str:
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def _context(text: str, change: Change) -> str:
    """Show the words round the figure as they would read: '(K 2, * yo)'."""
    spot = change.spots[0][0]
    words = change.quoted()
    start = max(words.start, text.rfind(" ", 0, max(0, spot.start - 14)) + 1)
    stop = text.find(" ", min(len(text), change.spots[-1][0].end + 12))
    piece = change.text(text, Span(start, max(spot.end, min(words.end, stop if stop > 0 else len(text)))))
    return f" (“{' '.join(piece.split())}”)"


def _piece_of(reader: Reader, change: Change) -> str:
    for task in reader.plan.tasks:
        if any(step.span == change.step for step in task.steps):
            return task.name.lower()
    return reader.leaflet.parts[change.part].name.lower()
