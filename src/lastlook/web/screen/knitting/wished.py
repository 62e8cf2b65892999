"""What a maker fills in to have a garment designed, read into what the composing takes."""

from __future__ import annotations

from collections.abc import Mapping

from lastlook.knit import compose
from lastlook.outfit import Outfit
from lastlook.quantity import Gauge, Missing, Units, Unread, read_length
from lastlook.stock import read_gauge

NECKS = ("round", "v")
SLEEVES = ("long", "three-quarter", "short", "none")
EDGINGS = (
    ("rib", "ribbing of k 1, p 1"),
    ("2x2", "ribbing of k 2, p 2"),
    ("garter", "garter stitch"),
    ("hem", "a turned hem"),
)
SHORTEST_MM, LONGEST_MM = 10.0, 1500.0
FOUR_INCHES = 1.016
"""Four inches, in units of 10 cm."""


def wish_of(whole: Outfit, asked: Mapping[str, str]) -> compose.Asked | Unread:
    """Return the garment in words, or what of it can't be read."""
    texture = compose.texture_of(asked["texture"]) if asked.get("texture", "").strip() else None
    if isinstance(texture, Unread):
        return texture
    gauge = gauge_of(whole, asked)
    own = texture.gauge if texture else None
    if isinstance(gauge, Unread) and own is None:
        return gauge
    ease, edging = compose.ease_of(asked.get("ease") or "standard"), compose.edging_of(asked.get("edging") or "rib")
    neck, sleeve = asked.get("neck") or NECKS[0], asked.get("sleeve") or SLEEVES[0]
    lengths, trims = _lengths(whole, asked), _trims(whole, asked)
    for read in (ease, edging, lengths, trims):
        if isinstance(read, Unread):
            return read
    if neck not in NECKS or sleeve not in SLEEVES:
        return Unread(neck, "That neck or sleeve is not known here.", "Choose one of those that are listed.")
    assert isinstance(ease, compose.EaseClass) and isinstance(edging, compose.Edging)
    assert isinstance(lengths, dict) and isinstance(trims, tuple)
    bands = gauge if isinstance(gauge, Gauge) else None
    return compose.Asked(
        own or bands or gauge,  # type: ignore[arg-type]
        neck=neck,
        sleeve=sleeve,
        edging=edging,
        ease=ease,
        lengths_mm=lengths,
        buttons=trims[0],
        crochet_per_10cm=trims[1],
        texture=texture,
        band_gauge=bands if own else None,
    )


def gauge_of(whole: Outfit, asked: Mapping[str, str]) -> Gauge | Unread:
    """Return the gauge that was typed, else that of the swatch that was chosen."""
    swatch = whole.swatch(asked.get("swatch"))
    typed = [asked.get(key, "").strip() for key in ("stitches", "rows")]
    if all(typed):
        return _counted(typed[0], typed[1], whole.manner.units)
    if swatch is not None and not isinstance(swatch.gauge.rows, Missing):
        return swatch.gauge
    attempt = "Count a washed swatch, and choose it or type what you counted."
    return Unread("", "Nothing can be designed without a gauge in stitches and rows.", attempt)


def _counted(stitches: str, rows: str, units: Units) -> Gauge | Unread:
    """Return the gauge as it was counted: over 10 cm, or over 4 inches where the outfit is kept in inches."""
    try:
        per = 1.0 / FOUR_INCHES if units is Units.INCHES else 1.0
        counts = [float(text.replace(",", ".")) * per for text in (stitches, rows)]
    except ValueError:
        counts = []
    if not counts or not all(0 < count < 1000 for count in counts):
        return Unread(stitches, f"“{stitches}” and “{rows}” are no gauge.", "Write plain counts, like 24 and 32.")
    return read_gauge(f"{counts[0]:.4g}x{counts[1]:.4g}")


def _lengths(whole: Outfit, asked: Mapping[str, str]) -> dict[str, float] | Unread:
    lengths: dict[str, float] = {}
    for where in compose.LENGTHS:
        text = asked.get(where, "").strip()
        mm = read_length(text, whole.manner.units) if text else None
        if isinstance(mm, Unread):
            return mm
        if mm is not None and not SHORTEST_MM <= mm <= LONGEST_MM:
            return Unread(text, f"“{text}” is no length for a garment.", "Look at the figure and its unit.")
        if mm is not None:
            lengths[where] = mm
    return lengths


def _trims(whole: Outfit, asked: Mapping[str, str]) -> tuple[compose.Buttons | None, float | None] | Unread:
    """Return the buttons at hand, and the single crochet in 10 cm where the border is crocheted."""
    buttons = compose.buttons_of(asked["buttons"]) if asked.get("buttons", "").strip() else None
    if isinstance(buttons, Unread):
        return buttons
    typed = asked.get("crochet", "").strip()
    if not typed:
        return buttons, None
    crochet = _counted(typed, typed, whole.manner.units)
    return crochet if isinstance(crochet, Unread) else (buttons, crochet.stitches.best)
