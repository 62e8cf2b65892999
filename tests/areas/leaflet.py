"""The leaflet's words on a page: each step with the words it was read from.

Asked `words` gives the canonical words; nothing gives the steps, one a line.
"""

from __future__ import annotations

from lastlook import leaflet


def answer(given: str, asked: str) -> str:
    if asked == "words":
        return leaflet.canon(given, 0, len(given), leaflet.vocabulary(), 0).text
    read = leaflet.read(given)
    lines = [f"sizes {', '.join(read.sizes)}"]
    for part in read.parts:
        lines.append(f"{part.kind} {part.name}".strip())
        for step in part.steps:
            words = " ".join(given[step.span.start : step.span.end].split())
            lines.append(f"  {type(step).__name__}: {words}")
    return "\n".join(lines)
