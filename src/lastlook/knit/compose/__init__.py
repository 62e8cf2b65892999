"""A shape in millimetres made into stitches and rows, and written down in the trade's notation."""

from lastlook.knit.compose.asked import Asked, Edging, edging_of
from lastlook.knit.compose.composed import Composed, FinishedMeasure
from lastlook.knit.compose.contract import as_json
from lastlook.knit.compose.craft.buttons import Buttons, buttons_of
from lastlook.knit.compose.craft.texture import Texture, texture_of
from lastlook.knit.compose.design import design_raglan
from lastlook.knit.compose.ease import EASE, EaseClass, ease_of, ease_words
from lastlook.knit.compose.garments import GARMENTS, LENGTHS, length_trouble, unread
from lastlook.knit.compose.proof import proven

__all__ = [
    "EASE",
    "GARMENTS",
    "LENGTHS",
    "Asked",
    "Buttons",
    "Composed",
    "EaseClass",
    "Edging",
    "FinishedMeasure",
    "Texture",
    "as_json",
    "buttons_of",
    "design_raglan",
    "ease_of",
    "ease_words",
    "edging_of",
    "length_trouble",
    "proven",
    "texture_of",
    "unread",
]
