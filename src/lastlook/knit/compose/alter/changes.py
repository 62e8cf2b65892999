"""What is to be changed in a leaflet, in the maker's words: another gauge, longer, wider, the sleeve of
another size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from lastlook.knit.compose.alter.shape.recompose import Stretching
from lastlook.knit.worked import WorkedPiece
from lastlook.quantity import Gauge, Unread, read_length

LONGER = ("body", "sleeve", "armhole")
WIDER = ("upper-arm", "bust", "shoulder")
MOST_MM = 400.0
BODY = ("back", "front", "body", "vest")


@dataclass(frozen=True)
class Made:
    """What a piece really has."""

    piece: str
    below: int
    above: int | None = None


@dataclass(frozen=True)
class Changes:
    """What is asked, lengths in mm; shorter and narrower are below nothing."""

    gauge: Gauge | None = None
    longer_mm: Mapping[str, float] = field(default_factory=dict)
    wider_mm: Mapping[str, float] = field(default_factory=dict)
    made: tuple[Made, ...] = ()
    """Pieces that came off the needles; the others follow them."""
    build: str | None = None
    """'round' or 'pieces'; None as it is."""

    @property
    def is_nothing(self) -> bool:
        """Whether nothing is asked."""
        return self.gauge is None and not self.longer_mm and not self.wider_mm and not self.made and not self.build


def read_changes(texts: list[str], known: tuple[str, ...], sign: float) -> dict[str, float] | Unread:
    """Return `body=2cm` and the like as mm by place.

    >>> read_changes(["body=2cm"], LONGER, 1.0)
    {'body': 20.0}
    """
    out: dict[str, float] = {}
    for text in texts:
        where, _, length = text.partition("=")
        name = where.strip().lower().replace("_", "-").replace(" ", "-")
        if name not in known:
            return Unread(text, f"“{where}” is no place that can change so.", f"Use one of: {', '.join(known)}.")
        mm = read_length(length)
        if isinstance(mm, Unread):
            return mm
        if mm > MOST_MM:
            return Unread(text, f"“{text}” is more than 40 cm.", "Look at the figure and its unit.")
        out[name] = out.get(name, 0.0) + sign * mm
    return out


def is_body(piece: WorkedPiece) -> bool:
    """Whether a piece goes round the body."""
    return any(word in piece.name.lower() for word in BODY) and not is_band(piece)


def is_sleeve(piece: WorkedPiece) -> bool:
    """Whether a piece goes round an arm."""
    return "sleeve" in piece.name.lower()


def is_band(piece: WorkedPiece) -> bool:
    """Whether a piece is an edging."""
    return any(word in piece.name.lower() for word in ("band", "border", "collar", "edging"))


def stretching(piece: WorkedPiece, changes: Changes, across: float, up: float) -> Stretching:
    """Return what a piece gets beyond the gauge; `across` and `up` are stitches and rows in a mm."""
    longer, wider = changes.longer_mm, changes.wider_mm
    below = longer.get("body", 0.0) if is_body(piece) else longer.get("sleeve", 0.0) if is_sleeve(piece) else 0.0
    above = longer.get("armhole", 0.0) if is_body(piece) or is_sleeve(piece) else 0.0
    arm = wider.get("upper-arm", 0.0) if is_sleeve(piece) else 0.0
    bust = wider.get("bust", 0.0) * _share(piece) if is_body(piece) else 0.0
    if piece.part_of is not None:
        below = bust = 0.0
    deeper = is_body(piece) and "body" not in longer and piece.part_of is None
    return Stretching(
        _even(below * up - (above * up if deeper else 0.0)),
        _even(above * up),
        _even(arm * across),
        _even(bust * across),
    )


def _share(piece: WorkedPiece) -> float:
    """Return a piece's share of the girth: fronts of a cardigan have a quarter each."""
    return 0.25 if "left" in piece.name.lower() or "right" in piece.name.lower() else 0.5


def _even(count: float) -> int:
    return 2 * round(count / 2)
