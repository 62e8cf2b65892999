"""A raglan in one piece as a leaflet."""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.raglan.leaflet import page_head, turned, wrapped
from lastlook.knit.compose.raglan.whole.section import Section


def write_whole(title: str, sections: Sequence[Section], bands: Sequence[str], asked: Asked, size: str) -> str:
    """Return the leaflet."""
    parts = [title.upper(), *page_head(asked, size)]
    parts += ["\n".join([one.heading, *one.lines]) for one in sections]
    parts += bands
    under = "Weave" if asked.construction == "hem up" else "Close the small gaps at"
    how = f"{under} the underarms{' together' if under == 'Weave' else ''}. Block to measurements."
    parts.append(f"FINISHING\n{how} {turned(asked)}".rstrip())
    return "\n\n".join(wrapped(part) for part in parts) + "\n"
