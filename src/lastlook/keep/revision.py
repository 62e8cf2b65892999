"""One revision of an outfit: a whole document, what changed, and which revision it came from."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Revision:
    """What was kept, when, and after what."""

    id: int
    parent: int | None
    said: str
    """What changed, as a sentence: 'Waist is now 74 cm.'"""
    kept: str
    """When, as the caller's clock told it (ISO 8601)."""
