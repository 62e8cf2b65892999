"""US and UK crochet terms told apart: the same word names different stitches in the two countries.

Source of the pairs: common published tables of crochet terms (US sc = UK dc, US dc = UK tr); old British print
also says 'single crochet' for slip stitch (from memory).
"""

from __future__ import annotations

import re

from lastlook.finding import Span

BRITISH = re.compile(r"(?i)\b(?:tension|cast off|colour|centre|miss|wool|press|st\.st|work straight|treble)\b")
AMERICAN = re.compile(r"(?i)\b(?:gauge|bind off|color|center|skip|worsted|work even|block|sc|single crochet)\b")


def is_british(text: str) -> bool:
    """Whether the leaflet's other words are British rather than American."""
    return len(BRITISH.findall(text)) > len(AMERICAN.findall(text))


def american(text: str, body: Span) -> str:
    """Return the text with British single stitches of the border renamed, of the same length: dc to sc."""
    part = text[body.start : body.end]
    if not is_british(text) or re.search(r"(?i)\bs\.?\s?c\b", part):
        return text
    renamed = re.sub(r"\bd(\.?)c\b", r"s\1c", part)
    return text[: body.start] + renamed + text[body.end :]
