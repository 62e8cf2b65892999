"""The edges that a band or border goes round, as stitches to pick up, and how each pick-up is spread."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.evenly import even, skips, times_words

NECKBAND_MM = 25.0


@dataclass(frozen=True)
class PickUp:
    """Stitches picked up along one edge."""

    where: str
    stitches: int
    rows: int | None
    """Row ends along the edge; None along stitches that are taken one for one."""

    @property
    def how(self) -> str:
        """Return how to spread it, as a sentence; empty where it is one for one."""
        if self.rows is None or self.rows == self.stitches:
            return ""
        table = skips(self.rows, self.stitches)
        ends_bare = sum(times for _, times in table) > self.rows - self.stitches
        parts = [f"pick up {pick}, skip 1, {times_words(times)}" for pick, times in table]
        if ends_bare:
            parts[-1] = f"pick up {table[-1][0]}"
        told = ", then ".join(parts)
        return f"{self.where}: {self.stitches} sts over {self.rows} rows; {told}."


@dataclass(frozen=True)
class BandEdges:
    """What a garment has to be edged."""

    neck: tuple[PickUp, ...]
    """Round the neck: from the right front's edge of a cardigan, else from the back on."""
    front_rows: int = 0
    """Row ends of each front edge, hem to neck; none in a pullover."""
    armhole: int = 0
    """Stitches round each armhole that gets no sleeve."""
    lead: str = ""
    """What has to be sewn before, as a sentence."""
    joined: bool = False
    """Whether the neckband is knitted in rounds."""
    bust_mm: float | None = None
    """How far above the hem the fullest bust lies; None where that is not known."""
    front_mm: float = 0.0

    @property
    def neck_stitches(self) -> int:
        """Return all that is picked up round the neck."""
        return sum(one.stitches for one in self.neck)

    def front(self, hand: str, asked: Asked) -> PickUp:
        """Return the stitches along one front edge, hem to neck."""
        return PickUp(f"{hand} front edge", along(self.front_rows, asked), self.front_rows)

    def all(self, asked: Asked) -> tuple[PickUp, ...]:
        """Return every pick-up, in the order in which they are told."""
        fronts = tuple(self.front(hand, asked) for hand in ("left", "right")) if self.front_rows else ()
        return (*self.neck, *fronts)


def along(rows: int, asked: Asked) -> int:
    """Return an even count for row ends, at the ratio of stitch to row gauge (Kelbourne Woolens, 2015)."""
    return max(2, even(rows * asked.band_stitches_per_mm / asked.rows_per_mm))


def band_rows(asked: Asked, mm: float) -> int:
    """Return the rows of a band, even."""
    return max(4, even(mm * asked.rows_per_mm))


def picked(picks: Sequence[PickUp]) -> str:
    """Return pick-ups as a leaflet lists them."""
    return ", pick up and k ".join(f"{one.stitches} sts along {one.where}" for one in picks)


def pick_up_notes(picks: Sequence[PickUp]) -> list[str]:
    """Return how each pick-up along row ends is spread."""
    return [one.how for one in picks if one.how]
