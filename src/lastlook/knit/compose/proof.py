"""The last look at a composed page: the reader reads it as a stranger would, and what does not add up is said."""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Certainty, Finding
from lastlook.knit.compose.composed import Composed, cant_hold
from lastlook.knit.compose.craft.texture import Texture
from lastlook.knit.read import read
from lastlook.knit.reading import ADDS_UP


def texture_trouble(texture: Texture) -> Finding | None:
    """Return what does not come out when a swatch of a texture is worked as its rows say; None where it does."""
    stitches = 3 * texture.multiple + texture.extra + 2
    rows = 2 * len(texture.rows)
    swatch = f"SWATCH\nCast on {stitches} sts. Work in pattern for {rows} rows. Bind off."
    reading = read("\n".join([texture.heading, *texture.lines(), "", swatch]))
    verdicts = [size.verdict for size in reading.by_size.values()]
    if verdicts and all(verdict == ADDS_UP for verdict in verdicts) and not reading.not_understood:
        return None
    first = next((one for one in reading.findings if one.certainty is not Certainty.NOTE), None)
    return cant_hold(
        f"{texture.name[:1].upper()}{texture.name[1:]} does not come out over {stitches} stitches, with its edges.",
        first.say if first else "No row of it could be worked.",
        "Compare its multiple and that row with the printed ones.",
    )


def proven(made: Composed) -> Composed:
    """Return the garment, with a finding where its own page does not read as adding up."""
    if not made.leaflet:
        return made
    reading = read(made.leaflet)
    verdicts = [size.verdict for size in reading.by_size.values()]
    if verdicts and all(verdict == ADDS_UP for verdict in verdicts):
        return made
    first = next((one.say for one in reading.findings if one.certainty is not Certainty.NOTE), "No piece was found.")
    doubt = Finding(
        "page-unproven",
        Certainty.DOUBTFUL,
        "The page as written was read again and is not proven to add up.",
        first,
        "Compare the row it names with the rows round it before you knit it.",
    )
    return replace(made, findings=(*made.findings, doubt))
